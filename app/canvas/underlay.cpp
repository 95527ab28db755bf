#include "app/canvas/underlay.h"

#include "core/plan/edits_group.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QImageReader>
#include <QSvgRenderer>

namespace sump {

namespace {

/// Longest side of a kept pixmap: sharp at site scale, and under 64 MB for four bytes a pixel.
constexpr int kMostPixels = 4000;

QString pictureText(const char* source) {
  return QCoreApplication::translate("Pictures", source);
}

/// By what the file begins with; a name can lie.
QString mediaOf(const QByteArray& bytes) {
  if (bytes.startsWith("\x89PNG\r\n\x1a\n")) return "image/png";
  if (bytes.startsWith("\xff\xd8\xff")) return "image/jpeg";
  if (bytes.left(4096).contains("<svg")) return "image/svg+xml";
  return {};
}

QSize fitted(QSizeF shape) {
  const double longest = std::max(shape.width(), shape.height());
  const double factor = longest > kMostPixels ? kMostPixels / longest : 1;
  return (shape * factor).toSize().expandedTo({1, 1});
}

QPixmap renderedSvg(const QByteArray& bytes) {
  QSvgRenderer renderer(bytes);
  if (!renderer.isValid()) return {};
  // Line work may be drawn in few units; it is kept as fine as the limit allows.
  const QSizeF shape = renderer.defaultSize();
  QPixmap pixmap(shape.scaled(kMostPixels, kMostPixels, Qt::KeepAspectRatio).toSize());
  pixmap.fill(Qt::transparent);
  QPainter painter(&pixmap);
  renderer.render(&painter);
  return pixmap;
}

QPixmap readPixels(QByteArray bytes) {
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::ReadOnly);
  QImageReader reader(&buffer);
  reader.setAutoTransform(true);
  const QSize size = reader.size();
  if (std::max(size.width(), size.height()) > kMostPixels) reader.setScaledSize(fitted(size));
  return QPixmap::fromImage(reader.read());
}

void paintMissing(QPainter& painter, const QRectF& frame, const QString& why,
                  const CanvasTheme& theme) {
  painter.setPen(QPen(theme.ink(Ink::Grey), 1, Qt::DashLine));
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(frame);
  painter.drawText(frame.adjusted(8, 8, -8, -8), Qt::AlignCenter | Qt::TextWordWrap, why);
}

} // namespace

PictureFile checkPicture(const QByteArray& bytes, const QString& name) {
  PictureFile file;
  const auto wrong = [&](const QString& why) {
    file.error = QString("%1: %2").arg(name, why);
    file.media.clear();
    file.bytes.clear();
    return file;
  };
  if (bytes.size() > kLargestPicture) {
    return wrong(pictureText("is larger than 30 MB. Save it smaller, for instance as JPEG."));
  }
  file.media = mediaOf(bytes);
  if (file.media.isEmpty()) {
    return wrong(pictureText("is neither PNG, JPEG nor SVG. Save the site plan as one of these."));
  }
  if (file.media == "image/svg+xml") {
    QSvgRenderer renderer(bytes);
    if (renderer.isValid()) file.shape = renderer.defaultSize();
  } else {
    QByteArray copy = bytes;
    QBuffer buffer(&copy);
    buffer.open(QIODevice::ReadOnly);
    QImageReader reader(&buffer);
    reader.setAutoTransform(true);
    file.shape = reader.canRead() ? reader.size() : QSize();
    if (reader.transformation() & QImageIOHandler::TransformationRotate90) {
      file.shape.transpose();
    }
  }
  if (!(file.shape.width() > 0) || !(file.shape.height() > 0)) {
    return wrong(pictureText("is damaged or has no size. Open it in a picture program and save it "
                             "again."));
  }
  file.bytes = bytes;
  return file;
}

PictureFile readPicture(const QString& path) {
  const QString name = QDir::toNativeSeparators(path);
  QFile file(path);
  PictureFile wrong;
  if (!file.open(QIODevice::ReadOnly)) {
    wrong.error = QString("%1: %2").arg(name, file.errorString());
    return wrong;
  }
  return checkPicture(file.read(kLargestPicture + 1), name);
}

UnderlayPainter::Kept UnderlayPainter::decode(const Underlay& underlay, const QString& folder) {
  ++decoded_;
  Kept kept;
  PictureFile file;
  if (underlay.file.empty()) {
    const QByteArray base64 = QByteArray::fromStdString(underlay.data.text);
    file = checkPicture(QByteArray::fromBase64(base64), QString::fromStdString(underlay.name));
  } else {
    file = readPicture(QDir(folder).filePath(QString::fromStdString(underlay.file)));
  }
  kept.error = file.error;
  if (file.media.isEmpty()) return kept;
  kept.pixmap = file.media == "image/svg+xml" ? renderedSvg(file.bytes) : readPixels(file.bytes);
  if (kept.pixmap.isNull()) kept.error = pictureText("The picture cannot be shown.");
  return kept;
}

const UnderlayPainter::Kept& UnderlayPainter::picture(const Underlay& underlay,
                                                      const QString& folder) {
  // A moved picture is another object with the same bytes: they are told by their length and both
  // ends, which differ between any two compressed pictures.
  const std::string& data = underlay.data.text;
  constexpr std::size_t kSample = 4096;
  QCryptographicHash hash(QCryptographicHash::Md5);
  hash.addData(QByteArray::fromStdString(data.substr(0, kSample)));
  if (data.size() > kSample)
    hash.addData(QByteArray::fromStdString(data.substr(data.size() - kSample)));
  const QString source = QString("%1|%2|%3|%4")
                             .arg(folder, QString::fromStdString(underlay.file))
                             .arg(data.size())
                             .arg(QString::fromLatin1(hash.result().toHex()));
  Kept& kept = kept_[underlay.id];
  if (kept.source != source) {
    kept = decode(underlay, folder);
    kept.source = source;
  }
  return kept;
}

void UnderlayPainter::paint(QPainter& painter, const View& view, const Plan& plan,
                            const QString& folder, const CanvasTheme& theme) {
  for (const Underlay& u : plan.underlays) {
    if (!u.shown) continue;
    const Kept& kept = picture(u, folder);
    const QRectF frame(0, 0, inMetres(u.width) * view.scale(), inMetres(u.height) * view.scale());
    painter.save();
    painter.translate(view.toScreen(u.at));
    painter.rotate(-inDegrees(u.angle));
    if (kept.pixmap.isNull()) {
      paintMissing(painter, frame, kept.error, theme);
    } else {
      painter.setRenderHint(QPainter::SmoothPixmapTransform);
      painter.setOpacity(u.strength);
      painter.drawPixmap(frame, kept.pixmap, QRectF(kept.pixmap.rect()));
      painter.setOpacity(1);
    }
    painter.restore();
  }
}

void paintSelectedPictures(QPainter& painter, const View& view, const Plan& plan,
                           const std::set<Id>& selection, const CanvasTheme& theme) {
  for (const Underlay& u : plan.underlays) {
    if (!u.shown || !selection.contains(u.id)) continue;
    painter.save();
    painter.translate(view.toScreen(u.at));
    painter.rotate(-inDegrees(u.angle));
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(theme.accent, 1.6, isLocked(plan, u.id) ? Qt::DashLine : Qt::SolidLine));
    painter.drawRect(
        QRectF(0, 0, inMetres(u.width) * view.scale(), inMetres(u.height) * view.scale()));
    painter.restore();
  }
}

} // namespace sump
