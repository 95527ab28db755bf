#include "app/window/talk.h"

#include "app/window/day_dialog.h"

#include <QFileDialog>
#include <QFileInfo>
#include <QHeaderView>
#include <QMessageBox>
#include <QPushButton>
#include <QTreeView>

#include <memory>

namespace sump {

namespace {

constexpr const char* kAnswers[] = {"answer-0", "answer-1", "answer-2"};

} // namespace

void Talk::tellProblem(QWidget* parent, const QString& title, const QString& text) {
  const std::unique_ptr<QMessageBox> box(problemBox(parent, title, text));
  box->exec();
}

QMessageBox* problemBox(QWidget* parent, const QString& title, const QString& text) {
  auto* box = new QMessageBox(QMessageBox::Warning, title, text, QMessageBox::Ok, parent);
  box->setTextFormat(Qt::PlainText);
  return box;
}

namespace {

/// The place of the answer among the box's own buttons; `otherwise` when it was closed.
int answerOf(QMessageBox* box, int otherwise) {
  const std::unique_ptr<QMessageBox> owned(box);
  box->exec();
  for (int i = 0; i < otherwise; ++i) {
    if (box->clickedButton() == box->property(kAnswers[i]).value<QAbstractButton*>()) return i;
  }
  return otherwise;
}

void addAnswer(QMessageBox* box, int index, const QString& text, QMessageBox::ButtonRole role) {
  QPushButton* button = box->addButton(text, role);
  box->setProperty(kAnswers[index], QVariant::fromValue<QAbstractButton*>(button));
}

QMessageBox* plainBox(QWidget* parent, const QString& title, const QString& text) {
  auto* box = new QMessageBox(QMessageBox::Question, title, text, QMessageBox::NoButton, parent);
  box->setTextFormat(Qt::PlainText);
  return box;
}

} // namespace

QMessageBox* saveBox(QWidget* parent, const QString& planName) {
  QMessageBox* box = plainBox(parent, QObject::tr("Save changes?"),
                              QObject::tr("%1 has changes that are not saved.").arg(planName));
  addAnswer(box, 0, QObject::tr("Save"), QMessageBox::AcceptRole);
  addAnswer(box, 1, QObject::tr("Give them up"), QMessageBox::DestructiveRole);
  addAnswer(box, 2, QObject::tr("Go on working"), QMessageBox::RejectRole);
  return box;
}

SaveAnswer Talk::askSave(QWidget* parent, const QString& planName) {
  return static_cast<SaveAnswer>(answerOf(saveBox(parent, planName), 2));
}

QMessageBox* changedBox(QWidget* parent, const QString& fileName, bool modified) {
  QMessageBox* box =
      plainBox(parent, QObject::tr("The file was changed"),
               QObject::tr("%1 was changed by another program or window.").arg(fileName));
  box->setInformativeText(
      modified ? QObject::tr("Reading it again gives up the changes made here.")
               : QObject::tr("Nothing was changed here since it was opened or saved."));
  addAnswer(box, 0, QObject::tr("Read it again"), QMessageBox::DestructiveRole);
  addAnswer(box, 1, QObject::tr("Keep mine"), QMessageBox::RejectRole);
  addAnswer(box, 2, QObject::tr("Save mine as..."), QMessageBox::AcceptRole);
  return box;
}

ChangedAnswer Talk::askChanged(QWidget* parent, const QString& fileName, bool modified) {
  // A box that is closed changes nothing: mine is kept.
  constexpr int kClosed = 3;
  const int answer = answerOf(changedBox(parent, fileName, modified), kClosed);
  return answer == kClosed ? ChangedAnswer::KeepMine : static_cast<ChangedAnswer>(answer);
}

QMessageBox* heldBox(QWidget* parent, const QString& fileName, const QString& holder) {
  QMessageBox* box = plainBox(parent, QObject::tr("The plan is open elsewhere"),
                              QObject::tr("%1 is open in %2.").arg(fileName, holder));
  box->setInformativeText(QObject::tr(
      "If it is changed in two places, whoever saves last replaces the work of the other."));
  addAnswer(box, 0, QObject::tr("Open a copy"), QMessageBox::AcceptRole);
  addAnswer(box, 1, QObject::tr("Open it all the same"), QMessageBox::DestructiveRole);
  addAnswer(box, 2, QObject::tr("Do not open it"), QMessageBox::RejectRole);
  return box;
}

HeldAnswer Talk::askHeld(QWidget* parent, const QString& fileName, const QString& holder) {
  return static_cast<HeldAnswer>(answerOf(heldBox(parent, fileName, holder), 2));
}

namespace {

/// Where the desktop has no file dialog of its own, names and dates stand there in full.
class FileBox : public QFileDialog {
public:
  using QFileDialog::QFileDialog;

protected:
  void showEvent(QShowEvent* event) override {
    if (auto* list = findChild<QTreeView*>("treeView")) fit(*list->header());
    QFileDialog::showEvent(event);
  }

private:
  void fit(QHeaderView& header) {
    constexpr QSize kRoomy(900, 560);
    resize(size().expandedTo(kRoomy));
    header.setStretchLastSection(false);
    for (int c = 0; c < header.count(); ++c)
      header.setSectionResizeMode(c, c == 0 ? QHeaderView::Stretch : QHeaderView::ResizeToContents);
  }
};

} // namespace

QFileDialog* openBox(QWidget* parent, const QString& title, const QString& folder,
                     const QString& filter) {
  auto* box = new FileBox(parent, title, folder, filter);
  box->setFileMode(QFileDialog::ExistingFile);
  return box;
}

QFileDialog* saveFileBox(QWidget* parent, const QString& title, const QString& suggestion,
                         const QString& filter) {
  auto* box = new FileBox(parent, title, QFileInfo(suggestion).path(), filter);
  box->setAcceptMode(QFileDialog::AcceptSave);
  box->selectFile(QFileInfo(suggestion).fileName());
  return box;
}

namespace {

/// Empty when the user gives up.
QString fileOf(QFileDialog* box) {
  const std::unique_ptr<QFileDialog> owned(box);
  return box->exec() == QDialog::Accepted ? box->selectedFiles().value(0) : QString();
}

} // namespace

QString Talk::askOpenFile(QWidget* parent, const QString& folder) {
  return askTable(parent, QObject::tr("Open a plan"), folder,
                  QObject::tr("Sumpwright plans (*.sump);;All files (*)"));
}

QString Talk::askTable(QWidget* parent, const QString& title, const QString& folder,
                       const QString& filter) {
  return fileOf(openBox(parent, title, folder, filter));
}

QString Talk::askSaveFile(QWidget* parent, const QString& title, const QString& suggestion,
                          const QString& filter) {
  return fileOf(saveFileBox(parent, title, suggestion, filter));
}

QDate Talk::askDay(QWidget* parent, const QString& title, const QString& label) {
  DayDialog dialog(title, label, QDate::currentDate(), parent);
  return dialog.exec() == QDialog::Accepted ? dialog.day() : QDate();
}

} // namespace sump
