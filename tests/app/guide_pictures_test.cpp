// The pictures of the user guide, made from the real window:
//   SUMPWRIGHT_GUIDE_PICTURES=resources/guide build/tests/app_tests
//   --gtest_filter='GuidePictures.*'
// Without the variable only the guide is checked: each picture that it names is made here and lies
// in resources/guide, and none lies there that it does not name.

#include "app/panels/basis_panel.h"
#include "app/window/guided_dialog.h"
#include "tests/app/window_fixture.h"
#include "tests/support/places.h"

#include <QDir>
#include <QDockWidget>
#include <QListWidget>
#include <QRegularExpression>

namespace sump {
namespace {

const QString kGuide = QString::fromStdString(sourceFolder() + "/resources/guide/");

class GuidePictures : public testing::WindowTest {
protected:
  void keep(const QString& name, QWidget* widget) {
    QCoreApplication::processEvents();
    made << name;
    const QString folder = qEnvironmentVariable("SUMPWRIGHT_GUIDE_PICTURES");
    if (folder.isEmpty()) return;
    QImage picture = widget->grab().toImage().convertToFormat(QImage::Format_RGB888);
    constexpr int kPage = 840; // what the guide's window shows without scrolling sideways
    if (picture.width() > kPage) picture = picture.scaledToWidth(kPage, Qt::SmoothTransformation);
    EXPECT_TRUE(picture.save(folder + "/" + name, "PNG", 0)); // as small as it gets
  }
  QWidget* dock(const char* name) {
    auto* found = window->findChild<QDockWidget*>(name);
    found->show();
    found->raise();
    settle();
    return found;
  }
  void useTool(ActionId id) {
    window->action(id)->trigger();
    QCoreApplication::processEvents();
  }
  void moveOver(Point2 site) { QTest::mouseMove(&canvas(), pixel(site)); }

  void beginning();
  void drawing();
  void panels();

  QStringList made;
};

void GuidePictures::beginning() {
  window->resize(1100, 700);
  window->showStart();
  keep("start.png", window->centralWidget());
  GuidedDialog six(window.get());
  six.show();
  keep("six-answers.png", &six);
}

void GuidePictures::drawing() {
  window->resize(1400, 900);
  open(testing::samplePath("transit-depot.sump"));
  canvas().lookAt({"V1", "V2"}, std::nullopt);
  canvas().zoomBy(0.55);
  useTool(ActionId::ToolVault);
  moveOver({26, 11.5});
  QTest::keyClicks(&canvas(), "85");
  keep("placing.png", window->centralWidget());
  QTest::keyClick(window->focusWidget(), Qt::Key_Escape);
  useTool(ActionId::ToolRun);
  click({26.5, 12});
  moveOver({26.5, 15.1});
  click({26.5, 15.24});
  moveOver({22.1, 15.24});
  keep("line.png", window->centralWidget());
  QTest::keyClick(&canvas(), Qt::Key_Escape);
  useTool(ActionId::ToolSelect);
}

void GuidePictures::panels() {
  canvas().fitAll();
  click(surePlaceOn("V2"));
  keep("window.png", window.get());
  keep("wrong.png", dock("dock-findings"));
  keep("deep.png", dock("dock-levels"));
  dock("dock-basis");
  window->resizeDocks({window->findChild<QDockWidget*>("dock-basis")}, {420}, Qt::Vertical);
  window->findChild<QListWidget*>("basis-groups")->setCurrentRow(2);
  keep("known.png", window->findChild<BasisPanel*>());
}

TEST_F(GuidePictures, AreThoseThatTheGuideNames) {
  beginning();
  drawing();
  panels();
  QFile guide(kGuide + "guide.md");
  ASSERT_TRUE(guide.open(QIODevice::ReadOnly));
  const QString text = QString::fromUtf8(guide.readAll());
  QStringList named;
  for (const auto& match : QRegularExpression(R"(!\[[^\]]+\]\(([^)]+)\))").globalMatch(text))
    named << match.captured(1);
  named.sort();
  made.sort();
  EXPECT_EQ(named.join(" "), made.join(" "));
  EXPECT_EQ(QDir(kGuide).entryList({"*.png"}, QDir::Files, QDir::Name).join(" "), made.join(" "));
  for (const QString& name : made)
    EXPECT_TRUE(QFile::exists(":/guide/" + name)) << name.toStdString() << " is not built in";
}

} // namespace
} // namespace sump
