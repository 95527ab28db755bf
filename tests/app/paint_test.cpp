#include "app/paint/paint.h"

#include "core/exchange/input_error.h"
#include "core/sheet/compose.h"
#include "tests/sheet/small_plan.h"

#include <QFile>
#include <QFontMetricsF>
#include <QRegularExpression>
#include <QSvgRenderer>
#include <QTemporaryDir>
#include <QXmlStreamReader>

#include <gtest/gtest.h>

namespace sump {
namespace {

std::vector<Page> smallSheets(const char* paper) {
  return composeSheets(review(testing::smallPlan(), builtinCatalog()), {paper, 0});
}

/// Its first page on A1.
Page sheetOf(const char* key) {
  return composeSheets(review(testing::smallPlan(), builtinCatalog()), {"a1", 0, nullptr, {key}})
      .front();
}

QByteArray contents(const std::filesystem::path& file) {
  QFile in(QString::fromStdString(file.string()));
  return in.open(QIODevice::ReadOnly) ? in.readAll() : QByteArray();
}

TEST(Paint, TheFaceIsBundled) {
  sheetFont(false);
  EXPECT_TRUE(QFile::exists(":/fonts/DejaVuSansCondensed.ttf"));
  EXPECT_TRUE(QFile::exists(":/fonts/DejaVuSansCondensed-Bold.ttf"));
}

TEST(Paint, QtMeasuresTextAsTheSheetDoes) {
  for (bool bold : {false, true}) {
    const QFontMetricsF metrics(sheetFont(bold));
    // The font is 100 pixels high, its capitals 1493/2048 of that.
    const double cap = 100 * 1493.0 / 2048.0;
    for (const char* text : {"RUN SCHEDULE", "SU-1  2\" PVC Sch 80", "12'-6 1/2\"", "45° 22½° m³ Ø",
                             "Overflow inv. 97.25", "WAVE To AV"}) {
      const double ours = textWidth(text, cap, bold);
      EXPECT_NEAR(metrics.horizontalAdvance(text), ours, 0.01 * ours) << text << " bold " << bold;
    }
  }
}

TEST(Paint, PdfHasExactPagesRealTextAndATitle) {
  const QTemporaryDir folder;
  const std::filesystem::path file = folder.filePath("small.pdf").toStdString();
  const std::vector<Page> pages = smallSheets("arch-d");
  writePdf(pages, file, testing::smallPlan().project);
  const QByteArray pdf = contents(file);
  ASSERT_TRUE(pdf.startsWith("%PDF-"));
  // ARCH D is 36 x 24 in: 2592 x 1728 points.
  const QRegularExpression box(
      "/MediaBox \\[ *0(?:\\.0+)? 0(?:\\.0+)? 2592(?:\\.0+)? 1728(?:\\.0+)? *\\]");
  EXPECT_TRUE(box.match(QString::fromLatin1(pdf)).hasMatch());
  EXPECT_TRUE(pdf.contains("/FontFile2")) << "the face is embedded";
  EXPECT_TRUE(pdf.contains("DejaVuSansCondensed-Bold"));
  EXPECT_EQ(pdf.count("/Type /Page"),
            static_cast<qsizetype>(pages.size()) + pdf.count("/Type /Pages"));
}

TEST(Paint, PdfHasABookmarkForEachPageAndTheAuthor) {
  const QTemporaryDir folder;
  const std::filesystem::path file = folder.filePath("small.pdf").toStdString();
  const std::vector<Page> pages = smallSheets("arch-d");
  const Project project = testing::smallPlan().project;
  writePdf(pages, file, project);
  const QByteArray pdf = contents(file);
  EXPECT_TRUE(pdf.contains("/Author (" + QByteArray::fromStdString(project.createdBy) + ")"));
  EXPECT_TRUE(pdf.contains("/Outlines"));
  for (const Page& page : pages) {
    const std::string title = page.number + "  " + page.title;
    EXPECT_TRUE(pdf.contains("/Title (" + QByteArray::fromStdString(title) + ")")) << title;
  }
  for (const char* group : {"/Title (General)", "/Title (Site work)", "/Title (Plumbing)"})
    EXPECT_TRUE(pdf.contains(group)) << group;
}

TEST(Paint, SvgIsInMillimetresWithRealText) {
  const QTemporaryDir folder;
  const std::filesystem::path file = folder.filePath("small.svg").toStdString();
  const Page page = sheetOf("schedules");
  writeSvg(page, file);
  const QByteArray svg = contents(file);
  EXPECT_TRUE(svg.contains("width=\"841mm\" height=\"594mm\"")) << svg.left(400).toStdString();
  QXmlStreamReader xml(svg);
  QStringList texts;
  while (!xml.atEnd()) {
    if (xml.readNext() == QXmlStreamReader::StartElement && xml.name() == QString("text")) {
      texts << xml.readElementText();
    }
  }
  EXPECT_FALSE(xml.hasError()) << xml.errorString().toStdString();
  EXPECT_TRUE(texts.join('|').contains("RUN SCHEDULE"));
  EXPECT_TRUE(QSvgRenderer(svg).isValid());
}

TEST(Paint, AFileThatCannotBeWrittenIsAnInputError) {
  EXPECT_THROW(writePdf(smallSheets("a1"), "/no/such/folder/x.pdf", Project{}), InputError);
  EXPECT_THROW(writeSvg(sheetOf("plan"), "/no/such/folder/x.svg"), InputError);
}

} // namespace
} // namespace sump
