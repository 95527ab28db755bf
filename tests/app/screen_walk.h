#pragma once
// A walk through every panel, dialog, menu and page of the window, light and dark, in English and
// in the pseudo-language whose texts are two fifths longer, at 1x and 2x. Each place is checked for
// texts that are cut off, left untranslated, and for widgets that lie over each other; with
// SUMPWRIGHT_SCREENSHOTS set to a folder a picture of each is left there for people to look at.

#include "app/core_text.h"
#include "app/window/pseudo_language.h"
#include "tests/app/drawing_check.h"
#include "tests/app/fit_check.h"
#include "tests/app/window_fixture.h"

#include <QDialog>
#include <QLayout>
#include <QTest>
#include <QTimer>

#include <functional>
#include <memory>

namespace sump::testing {

struct Look {
  bool pseudo = false;
  bool dark = false;
  QString name() const {
    return QString("%1-%2-%3x")
        .arg(pseudo ? "pseudo" : "english", dark ? "dark" : "light")
        .arg(qApp->devicePixelRatio());
  }
};

inline auto everyLook() {
  return ::testing::Values(Look{false, false}, Look{false, true}, Look{true, false},
                           Look{true, true});
}
inline std::string lookName(const ::testing::TestParamInfo<Look>& info) {
  return std::string(info.param.pseudo ? "Pseudo" : "English") +
         (info.param.dark ? "Dark" : "Light");
}

class ScreenWalk : public WindowTest, public ::testing::WithParamInterface<Look> {
protected:
  void SetUp() override {
    if (GetParam().pseudo) QCoreApplication::installTranslator(&pseudo_);
    WindowTest::SetUp();
    if (HasFatalFailure()) return;
    window->resize(1500, 950);
    window->setDarkWindow(GetParam().dark);
    window->setDarkDrawing(GetParam().dark);
  }
  /// Other names that belong to no language.
  void alsoKnow(const QStringList& names) { more_ << names; }
  void TearDown() override {
    window.reset();
    QCoreApplication::removeTranslator(&pseudo_);
  }

  /// Checks the widget as it stands and takes its picture.
  void look(const QString& name, QWidget* widget) {
    QCoreApplication::processEvents();
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete); // as the main loop would
    QCoreApplication::processEvents();
    for (const auto* rest : widget->findChildren<QTimer*>("columnsRest"))
      QTRY_VERIFY(!rest->isActive()); // lists share their columns out when a change is over
    for (const QString& problem :
         FitCheck::of(widget, GetParam().pseudo, names()) + DrawingCheck::of(widget))
      ADD_FAILURE() << GetParam().name().toStdString() << ", " << name.toStdString() << ": "
                    << problem.toStdString();
    const QString folder = qEnvironmentVariable("SUMPWRIGHT_SCREENSHOTS");
    if (folder.isEmpty()) return;
    EXPECT_TRUE(widget->grab().save(QString("%1/%2--%3.png").arg(folder, name, GetParam().name())));
  }
  /// `turn` shows the dialog's page of this number; false when there is none.
  void lookAtDialog(const QString& name, QDialog* dialog,
                    const std::function<bool(int)>& turn = {}) {
    const std::unique_ptr<QDialog> owned(dialog);
    dialog->setAttribute(Qt::WA_DeleteOnClose, false);
    dialog->show();
    // This platform's screen has 800 dots, 400 at 2x: dialogs get the room that any desk has.
    QSize room = dialog->size().expandedTo(dialog->layout()->totalSizeHint());
    if (dialog->layout()->hasHeightForWidth())
      room.setHeight(std::max(room.height(), dialog->layout()->totalHeightForWidth(room.width())));
    dialog->setFixedSize(room); // message boxes keep the size that they chose
    look(name, dialog);
    for (int page = 1; turn && turn(page); ++page)
      look(QString("%1-%2").arg(name).arg(page), dialog);
    dialog->close();
  }
  /// The whole of a scrolled panel, however little of it shows.
  void lookInside(const QString& name, QScrollArea* area) {
    QCoreApplication::processEvents();
    look(name, area);
    look(name + "-whole", area->widget());
  }

private:
  /// What the plan calls its things, and what its title block says.
  QStringList names() {
    const Project& p = plan().project;
    QStringList all = namesIn(plan());
    for (const std::string& text :
         {p.title, p.supplementaryTitle, p.legalOwner, p.siteAddress, p.identificationNumber,
          p.createdBy, p.approvedBy, p.documentStatus, p.revision, plan().site.datum})
      all << QString::fromStdString(text);
    for (const RevisionEntry& entry : plan().revisions)
      all << QString::fromStdString(entry.text) << QString::fromStdString(entry.by);
    for (const Acceptance& accepted : plan().acceptances)
      all << QString::fromStdString(accepted.reason);
    all.removeAll(QString());
    return all << more_ << document().displayName() << "transit-depot.sump";
  }

  PseudoTranslator pseudo_;
  QStringList more_;
};

} // namespace sump::testing
