#pragma once
// A real window on the offscreen platform, with answers in place of dialogs.

#include "app/window/main_window.h"
#include "app/window/resources.h"
#include "tests/support/places.h"

#include <QApplication>
#include <QSettings>
#include <QTemporaryDir>
#include <QtTest/QTest>

#include <gtest/gtest.h>

namespace sump::testing {

inline QString samplePath(const char* name) {
  return QString::fromStdString(sourceFolder() + "/samples/") + name;
}

/// Keeps what was told and gives the answers that the test has laid ready.
struct CannedTalk : Talk {
  void tellProblem(QWidget*, const QString&, const QString& text) override { told << text; }
  SaveAnswer askSave(QWidget*, const QString&) override {
    ++saveAsked;
    return saveAnswer;
  }
  ChangedAnswer askChanged(QWidget*, const QString&, bool) override {
    ++changedAsked;
    return changedAnswer;
  }
  HeldAnswer askHeld(QWidget*, const QString&, const QString& holder) override {
    holders << holder;
    return heldAnswer;
  }
  QString askOpenFile(QWidget*, const QString&) override { return openFile; }
  QString askTable(QWidget*, const QString&, const QString&, const QString&) override {
    return table;
  }
  QString table;
  QString askSaveFile(QWidget*, const QString&, const QString& suggestion,
                      const QString&) override {
    suggested = suggestion;
    return saveFile;
  }
  QDate askDay(QWidget*, const QString&, const QString&) override { return day; }
  QDate day;
  QStringList told;
  int saveAsked = 0;
  SaveAnswer saveAnswer = SaveAnswer::Stay;
  int changedAsked = 0;
  ChangedAnswer changedAnswer = ChangedAnswer::KeepMine;
  QStringList holders;
  /// Tests that run at once share the samples.
  HeldAnswer heldAnswer = HeldAnswer::Anyway;
  QString openFile, saveFile, suggested;
};

class WindowTest : public ::testing::Test {
protected:
  void SetUp() override {
    // The user's own settings are neither read nor written.
    QSettings::setPath(QSettings::NativeFormat, QSettings::UserScope, folder.path());
    qputenv("XDG_STATE_HOME", folder.path().toLocal8Bit());
    nameApplication();
    QSettings().clear();
    // Light, whatever the palette that an earlier test has left.
    QSettings().setValue("window/dark", false);
    window = std::make_unique<MainWindow>(talk);
    window->resize(1400, 900);
    window->show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(window.get()));
  }

  void open(const QString& path) {
    ASSERT_TRUE(window->files().open(path)) << talk.told.join("\n").toStdString();
    settle();
  }
  /// Until the newest state is reviewed and drawn, and the lists in sight are of it.
  void settle() {
    QCoreApplication::processEvents();
    ASSERT_TRUE(QTest::qWaitFor([this] { return document().isSettled(); }, 20000));
    QCoreApplication::processEvents();
  }

  Document& document() { return window->document(); }
  Canvas& canvas() { return window->canvas(); }
  const Plan& plan() { return document().plan(); }

  QPoint pixel(Point2 site) { return canvas().view().toScreen(site).toPoint(); }
  void click(Point2 site, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
    QTest::mouseMove(&canvas(), pixel(site));
    QTest::mouseClick(&canvas(), Qt::LeftButton, modifiers, pixel(site));
  }
  /// A place where a click means this object and nothing drawn over it.
  Point2 placeOn(const Id& id) {
    const Box box = *canvas().scene()->bounds({id});
    const double reach = kReachPixels / canvas().view().scale();
    constexpr int kSteps = 40;
    for (int i = 1; i < kSteps; ++i) {
      for (int k = 1; k < kSteps; ++k) {
        const Point2 p{box.low.x + (box.high.x - box.low.x) * i / kSteps,
                       box.low.y + (box.high.y - box.low.y) * k / kSteps};
        if (canvas().scene()->objectAt(p, reach) == id) return p;
      }
    }
    ADD_FAILURE() << "no free place on " << id;
    return box.low;
  }
  /// The same where a pixel more or less means it too: two lines may be as near as each other.
  Point2 surePlaceOn(const Id& id) {
    const Box box = *canvas().scene()->bounds({id});
    const double one = 1 / canvas().view().scale();
    const auto means = [&](Point2 p) {
      return canvas().scene()->objectAt(p, kReachPixels * one) == id;
    };
    constexpr int kSteps = 40;
    for (int i = 1; i < kSteps * kSteps; ++i) {
      const Point2 p = box.low + Point2{(box.high.x - box.low.x) * (i / kSteps) / kSteps,
                                        (box.high.y - box.low.y) * (i % kSteps) / kSteps};
      if (means(p) && means(p + Point2{one, 0}) && means(p - Point2{one, 0}) &&
          means(p + Point2{0, one}) && means(p - Point2{0, one}))
        return p;
    }
    ADD_FAILURE() << "no sure place on " << id;
    return box.low;
  }
  void dragFrom(Point2 from, Point2 to) {
    QTest::mousePress(&canvas(), Qt::LeftButton, Qt::NoModifier, pixel(from));
    QTest::mouseMove(&canvas(), pixel(lerp(from, to, 0.5)));
    QTest::mouseMove(&canvas(), pixel(to));
  }
  void release(Point2 at) {
    QTest::mouseRelease(&canvas(), Qt::LeftButton, Qt::NoModifier, pixel(at));
  }
  template <class T> T* field(const char* label) {
    for (T* editor : window->properties().findChildren<T*>()) {
      if (editor->accessibleName() == label) return editor;
    }
    return nullptr;
  }

  QTemporaryDir folder;
  CannedTalk talk;
  std::unique_ptr<MainWindow> window;
};

} // namespace sump::testing
