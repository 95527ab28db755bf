// Pictures beside the plan are found wherever the plan is saved to.

#include "app/canvas/underlay.h"
#include "core/plan/edits.h"
#include "tests/app/window_fixture.h"

#include <QDir>

namespace sump {
namespace {

class BesidePictures : public testing::WindowTest {
protected:
  void SetUp() override {
    WindowTest::SetUp();
    home = folder.path() + "/home";
    ASSERT_TRUE(QDir().mkpath(home + "/pictures") && QDir().mkpath(folder.path() + "/other/deep"));
    QImage image(40, 20, QImage::Format_RGB32);
    image.fill(Qt::red);
    ASSERT_TRUE(image.save(home + "/pictures/site.png"));
    Underlay picture;
    picture.id = "PIC-1";
    picture.file = "pictures/site.png";
    picture.width = metres(40);
    picture.height = metres(20);
    ASSERT_FALSE(document().commit("Picture", withObject(plan(), picture)));
    talk.saveFile = home + "/plan.sump";
    window->action(ActionId::SaveAs)->trigger();
  }
  QString pictureFile() const {
    const Document& d = window->document();
    const QString name = QString::fromStdString(d.plan().underlays[0].file);
    return QDir::cleanPath(QFileInfo(d.filePath()).absoluteDir().absoluteFilePath(name));
  }
  QString home;
};

TEST_F(BesidePictures, FollowThePlanIntoAnotherFolder) {
  EXPECT_EQ(plan().underlays[0].file, "pictures/site.png") << "as it was given";
  talk.saveFile = folder.path() + "/other/deep/plan.sump";
  window->action(ActionId::SaveAs)->trigger();
  EXPECT_EQ(plan().underlays[0].file, "../../home/pictures/site.png");
  EXPECT_EQ(pictureFile(), home + "/pictures/site.png");
  EXPECT_FALSE(document().isModified());
  open(talk.saveFile);
  EXPECT_TRUE(QFile::exists(pictureFile()));
}

TEST_F(BesidePictures, StayWhenTheSaveFails) {
  talk.saveFile = folder.path() + "/missing/plan.sump";
  window->action(ActionId::SaveAs)->trigger();
  EXPECT_EQ(talk.told.size(), 1);
  EXPECT_EQ(plan().underlays[0].file, "pictures/site.png");
  EXPECT_TRUE(QFile::exists(pictureFile()));
}

TEST_F(BesidePictures, ACopyNamesThemInFullUntilItIsSaved) {
  talk.heldAnswer = HeldAnswer::Copy;
  MainWindow second(talk);
  ASSERT_TRUE(second.files().open(home + "/plan.sump"));
  ASSERT_TRUE(second.document().filePath().isEmpty()) << "held by the first window, so a copy";
  EXPECT_EQ(second.document().plan().underlays[0].file,
            (home + "/pictures/site.png").toStdString());
  talk.saveFile = folder.path() + "/other/copy.sump";
  second.action(ActionId::Save)->trigger();
  EXPECT_EQ(second.document().plan().underlays[0].file, "../home/pictures/site.png");
}

} // namespace
} // namespace sump
