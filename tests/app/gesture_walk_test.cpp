// What stands over the drawing and the long section in the midst of each gesture: drawing, typing,
// measuring, dragging. Light and dark, at 1x and 2x (tests/app/screen_walk.h).

#include "app/section/section_panel.h"
#include "core/plan/edits.h"
#include "tests/app/screen_walk.h"

#include <QBuffer>
#include <QDockWidget>
#include <QImage>
#include <QLineEdit>
#include <QPainter>

namespace sump {
namespace {

using testing::ScreenWalk;

class GestureWalk : public ScreenWalk {
protected:
  void SetUp() override {
    ScreenWalk::SetUp();
    if (HasFatalFailure()) return;
    open(testing::samplePath("transit-depot.sump"));
    canvas().lookAt({"V1", "V2"}, std::nullopt);
    canvas().zoomBy(0.6);
  }
  void use(ActionId tool) { window->action(tool)->trigger(); }
  /// QTest moves the cursor, which brings no event where it rests already.
  void hover(Point2 at) {
    QMouseEvent move(QEvent::MouseMove, QPointF(pixel(at)), canvas().mapToGlobal(pixel(at)),
                     Qt::NoButton, Qt::NoButton, Qt::NoModifier);
    QApplication::sendEvent(&canvas(), &move);
  }
  void look(const QString& name) { ScreenWalk::look("gesture-" + name, &canvas()); }
  void type(const QString& text) {
    for (const QChar c : text) {
      QWidget* focus = window->focusWidget();
      QTest::keyClicks(focus == nullptr ? &canvas() : focus, QString(c));
    }
  }
  void key(int key) {
    QWidget* focus = window->focusWidget();
    QTest::keyClick(focus == nullptr ? &canvas() : focus, static_cast<Qt::Key>(key));
  }
  void giveUp() {
    key(Qt::Key_Escape);
    key(Qt::Key_Escape);
    canvas().setFocus();
  }
  Point2 inVault(const Id& id, Point2 local) {
    return plan().vaults.find(id)->frame().toSite(local);
  }
  /// Drags, looks before letting go, and takes it back.
  void lookAtDrag(const QString& name, Point2 from, Point2 to) {
    hover(from);
    dragFrom(from, to);
    settle();
    look(name);
    QTest::keyClick(&canvas(), Qt::Key_Escape);
    release(to);
    settle();
  }
};

TEST_P(GestureWalk, DrawingARun) {
  use(ActionId::ToolRun);
  const std::pair<const char*, Point2> marks[] = {{"chamber", inVault("V1", {1, 0.4})},
                                                  {"wall", inVault("V1", {-1.9, 0.3})},
                                                  {"line", {24.40, 18}},
                                                  {"port", {19.8, 21.03}},
                                                  {"face", {30, 20.74}},
                                                  {"corner", {22.56, 16.16}},
                                                  {"in-line", {26.0, 16.16}},
                                                  {"grid", {27.3, 13.3}}};
  for (const auto& [what, at] : marks) {
    hover(at);
    look(QString("run-over-") + what);
  }
  click({26.5, 12});
  hover({26.5, 15.1});
  look("run-first-leg");
  type("12");
  look("run-length");
  key(Qt::Key_Tab);
  type("N 45 E");
  look("run-bearing");
  key(Qt::Key_Return);
  hover({25, 18});
  look("run-second-leg");
  type("3 yard");
  key(Qt::Key_Return);
  look("run-wrong");
  giveUp();
}

TEST_P(GestureWalk, LayingALineBeside) {
  canvas().select({"WW-1"});
  use(ActionId::ToolParallel);
  hover({25.2, 18});
  look("parallel");
  type("2");
  look("parallel-typed");
  giveUp();
}

TEST_P(GestureWalk, MeasuringAndNoting) {
  use(ActionId::ToolMeasure);
  hover({22.56, 16.16});
  look("tape-from");
  click({22.5552, 16.1544});
  hover({18.9, 20.72});
  look("tape-to");
  hover(canvas().view().toSite(QPointF(60, canvas().height() - 20)));
  look("tape-to-scale-bar");
  hover(canvas().view().toSite(QPointF(canvas().width() - 20, 20)));
  look("tape-to-corner");
  giveUp();
  use(ActionId::ToolNote);
  click({22.5552, 16.1544});
  hover({22.5552, 16.76});
  look("note-to");
  click({22.5552, 16.764});
  hover({23.6, 16.5});
  look("note-line");
  click({23.6, 16.5});
  settle();
  look("note-placed");
  giveUp();
}

TEST_P(GestureWalk, DraggingWhatIsSelected) {
  canvas().select({"WW-1"});
  look("line-selected");
  lookAtDrag("line-corner", {24.384, 13.4112}, {25, 13});
  lookAtDrag("line-leg", {24.384, 20.193}, {25.1, 19.7});
  canvas().select({"OF-1"});
  lookAtDrag("line-end", inVault("V2", {1.3716, 0.3048}), inVault("V2", {0.8, 0.1}));
  canvas().select({"V1"});
  look("vault-selected");
  lookAtDrag("baffle", inVault("V1", {0, 0.35}), inVault("V1", {-0.4, 0.35}));
  const Point2 on = placeOn("V1");
  lookAtDrag("vault", on, on + Point2{0.7, -0.9});
  const Box box = *canvas().scene()->bounds({"V1"});
  const Point2 top{(box.low.x + box.high.x) / 2, box.high.y + 30 / canvas().view().scale()};
  lookAtDrag("turn", top, top + Point2{1.2, -0.6});
  canvas().select({"ER-1"});
  look("room-selected");
  canvas().select({"V1", "V2", "ER-1", "WW-1"});
  look("many-selected");
}

TEST_P(GestureWalk, TypingForATakenHandle) {
  canvas().select({"WW-1"});
  click({24.384, 13.4112});
  type("9");
  look("corner-typed");
  giveUp();
}

TEST_P(GestureWalk, DrawingAnOutline) {
  use(ActionId::ToolPaving);
  click({25.5, 11});
  hover({28, 14});
  look("outline-first");
  click({28, 14});
  hover({26, 17.5});
  look("outline-second");
  type("4");
  look("outline-typed");
  giveUp();
  use(ActionId::ToolVault);
  hover({26.5, 13});
  look("vault-ghost");
  type("26");
  look("vault-typed");
  giveUp();
}

/// A survey with a frame, a cross and a few lines, as an office scans it.
QByteArray survey() {
  QImage image(400, 500, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  painter.setPen(QPen(Qt::black, 4));
  painter.drawRect(image.rect().adjusted(10, 10, -10, -10));
  for (int y = 60; y < image.height(); y += 60)
    painter.drawLine(QPointF(10, y), QPointF(390, y + 25));
  painter.drawLine(QPointF(200, 200), QPointF(200, 300));
  painter.drawLine(QPointF(150, 250), QPointF(250, 250));
  painter.end();
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  image.save(&buffer, "PNG");
  return bytes;
}

TEST_P(GestureWalk, ScalingASitePicture) {
  Underlay picture;
  picture.id = "PIC-1";
  picture.name = "Site survey";
  picture.media = "image/png";
  picture.data.text = survey().toBase64().toStdString();
  picture.at = {-15, 10}; // beside the site, whose paving would lie over it
  picture.width = metres(8);
  picture.height = metres(10);
  ASSERT_FALSE(document().commit("Picture", withObject(plan(), picture)));
  settle();
  canvas().lookAt({}, Point2{-11, 5});
  canvas().select({"PIC-1"});
  look("picture");
  window->action(ActionId::PictureScale)->trigger();
  click({-13, 7});
  hover({-9, 6});
  look("picture-second");
  giveUp();
}

TEST_P(GestureWalk, LevelsInTheLongSection) {
  window->action(ActionId::LongSection)->trigger();
  auto* dock = window->findChild<QDockWidget*>("dock-section");
  LongSection& section = window->findChild<SectionPanel*>("section-panel")->section();
  for (int height : {170, 300}) {
    window->resizeDocks({dock}, {height}, Qt::Vertical);
    canvas().select({"OF-1"});
    settle();
    const QString high = QString::number(height);
    const SectionHandle handle = section.drawing().handles.front();
    const QPoint at = section.place(handle).toPoint();
    QTest::mousePress(&section, Qt::LeftButton, Qt::NoModifier, at);
    QTest::mouseMove(&section, at - QPoint(0, 5));
    QTest::mouseMove(&section, at - QPoint(0, 11));
    settle();
    ScreenWalk::look("gesture-level-dragged-" + high, dock);
    QTest::keyClick(&section, Qt::Key_Escape);
    QTest::mouseRelease(&section, Qt::LeftButton, Qt::NoModifier, at);
    settle();
    QTest::mouseDClick(&section, Qt::LeftButton, Qt::NoModifier, at);
    ScreenWalk::look("gesture-level-typed-" + high, dock);
    QTest::keyClick(section.entry().findChildren<QLineEdit*>().last(), Qt::Key_Escape);
  }
}

INSTANTIATE_TEST_SUITE_P(Looks, GestureWalk, testing::everyLook(), testing::lookName);

} // namespace
} // namespace sump
