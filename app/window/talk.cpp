#include "app/window/talk.h"

#include <QFileDialog>
#include <QMessageBox>

namespace sump {

void Talk::tellProblem(QWidget* parent, const QString& title, const QString& text) {
  QMessageBox box(QMessageBox::Warning, title, text, QMessageBox::Ok, parent);
  box.setTextFormat(Qt::PlainText);
  box.exec();
}

SaveAnswer Talk::askSave(QWidget* parent, const QString& planName) {
  QMessageBox box(QMessageBox::Question, QObject::tr("Save changes?"),
                  QObject::tr("%1 has changes that are not saved.").arg(planName),
                  QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, parent);
  box.setDefaultButton(QMessageBox::Save);
  box.setTextFormat(Qt::PlainText);
  switch (box.exec()) {
  case QMessageBox::Save:
    return SaveAnswer::Save;
  case QMessageBox::Discard:
    return SaveAnswer::Discard;
  default:
    return SaveAnswer::Stay;
  }
}

QString Talk::askOpenFile(QWidget* parent, const QString& folder) {
  return QFileDialog::getOpenFileName(parent, QObject::tr("Open a plan"), folder,
                                      QObject::tr("Sumpwright plans (*.sump);;All files (*)"));
}

QString Talk::askSaveFile(QWidget* parent, const QString& title, const QString& suggestion,
                          const QString& filter) {
  return QFileDialog::getSaveFileName(parent, title, suggestion, filter);
}

} // namespace sump
