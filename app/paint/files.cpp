#include "app/paint/bookmarks.h"
#include "app/paint/paint.h"

#include "core/exchange/input_error.h"
#include "core/exchange/plan_file.h"

#include <QBuffer>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QRegularExpression>
#include <QSvgGenerator>

namespace sump {

namespace {

constexpr int kPdfDpi = 1200;
constexpr double kSvgDpi = 254; // ten user units a millimetre
constexpr double kMmPerInch = 25.4;

[[noreturn]] void fail(const std::filesystem::path& file) {
  throw InputError(file.string(), "", 0, "the sheet could not be painted",
                   "free some memory and disk space, then try again");
}

QPageLayout layout(const Page& page) {
  const QPageSize size(QSizeF(page.width, page.height), QPageSize::Millimeter, QString(),
                       QPageSize::ExactMatch);
  QPageLayout result(size, QPageLayout::Portrait, QMarginsF());
  result.setMode(QPageLayout::FullPageMode);
  return result;
}

QString unescaped(QString text) {
  return text.replace("&lt;", "<")
      .replace("&gt;", ">")
      .replace("&quot;", "\"")
      .replace("&amp;", "&");
}

/// Qt's SVG names neither the face's width nor the length of a text, so that a viewer would set the
/// wider face and texts would run into each other. Both are added here.
QByteArray withTextLengths(const QByteArray& svg) {
  static const QRegularExpression element("<text ([^>]*)>([^<]*)</text>");
  static const QRegularExpression family("font-family=\"[^\"]*\"");
  const QString text = QString::fromUtf8(svg);
  QString result;
  qsizetype done = 0;
  for (auto it = element.globalMatch(text); it.hasNext();) {
    const QRegularExpressionMatch match = it.next();
    QString attributes = match.captured(1);
    const bool bold = attributes.contains("font-weight=\"700\"");
    attributes.replace(family, "font-family=\"'DejaVu Sans Condensed', 'DejaVu Sans'\" "
                               "font-stretch=\"semi-condensed\"");
    const double length =
        textWidth(unescaped(match.captured(2)).toStdString(), sheetFontCapHeight(), bold);
    result += QStringView(text).mid(done, match.capturedStart() - done);
    result += "<text " + attributes.simplified() + " textLength=\"" +
              QString::number(length, 'f', 2) + "\" lengthAdjust=\"spacingAndGlyphs\">" +
              match.captured(2) + "</text>";
    done = match.capturedEnd();
  }
  result += QStringView(text).mid(done);
  return result.toUtf8();
}

void write(const std::filesystem::path& file, const QByteArray& bytes) {
  writeFileAtomically(file,
                      std::string_view(bytes.constData(), static_cast<std::size_t>(bytes.size())));
}

QByteArray pdfBytes(const std::vector<Page>& pages, const Project& project) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QPdfWriter writer(&buffer);
  writer.setResolution(kPdfDpi);
  writer.setTitle(QString::fromStdString(project.title + " - " + project.identificationNumber));
  writer.setCreator("Sumpwright");
  if (!writer.setPageLayout(layout(pages.front()))) return {};
  QPainter painter;
  if (!painter.begin(&writer)) return {};
  for (std::size_t i = 0; i < pages.size(); ++i) {
    if (i > 0) {
      writer.setPageLayout(layout(pages[i]));
      if (!writer.newPage()) return {};
    }
    painter.resetTransform();
    painter.scale(kPdfDpi / kMmPerInch, kPdfDpi / kMmPerInch);
    paintPage(painter, pages[i]);
  }
  return painter.end() ? bytes : QByteArray();
}

} // namespace

void writePdf(const std::vector<Page>& pages, const std::filesystem::path& file,
              const Project& project) {
  if (pages.empty()) fail(file);
  const QByteArray bytes = pdfBytes(pages, project);
  if (bytes.isEmpty()) fail(file);
  write(file, withBookmarks(bytes, pages, project));
}

void writeSvg(const Page& page, const std::filesystem::path& file) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QSvgGenerator generator;
  generator.setOutputDevice(&buffer);
  generator.setTitle(QString::fromStdString(page.number + " " + page.title));
  generator.setResolution(static_cast<int>(kSvgDpi));
  const double unit = kSvgDpi / kMmPerInch;
  generator.setSize(QSize(qRound(page.width * unit), qRound(page.height * unit)));
  generator.setViewBox(QRectF(0, 0, page.width * unit, page.height * unit));
  QPainter painter;
  if (!painter.begin(&generator)) fail(file);
  painter.scale(unit, unit);
  paintPage(painter, page);
  if (!painter.end()) fail(file);
  write(file, withTextLengths(bytes));
}

} // namespace sump
