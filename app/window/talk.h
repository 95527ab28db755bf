#pragma once
// What the window asks and tells the user in dialogs. Tests answer in its place.

#include <QDate>
#include <QString>

class QFileDialog;
class QMessageBox;
class QWidget;

namespace sump {

enum class SaveAnswer { Save, Discard, Stay };

/// What to do when the plan's file was changed by something else.
enum class ChangedAnswer { Reload, KeepMine, SaveAs };
/// What to do with a file that another window or program has open.
enum class HeldAnswer { Copy, Anyway, Leave };

class Talk {
public:
  virtual ~Talk() = default;
  virtual void tellProblem(QWidget* parent, const QString& title, const QString& text);
  virtual SaveAnswer askSave(QWidget* parent, const QString& planName);
  virtual ChangedAnswer askChanged(QWidget* parent, const QString& fileName, bool modified);
  virtual HeldAnswer askHeld(QWidget* parent, const QString& fileName, const QString& holder);
  /// Empty when the user gives up.
  virtual QString askOpenFile(QWidget* parent, const QString& folder);
  /// A list or table to read: prices, upkeep.
  virtual QString askTable(QWidget* parent, const QString& title, const QString& folder,
                           const QString& filter);
  virtual QString askSaveFile(QWidget* parent, const QString& title, const QString& suggestion,
                              const QString& filter);
  /// Today is proposed; no valid date when the user gives up.
  virtual QDate askDay(QWidget* parent, const QString& title, const QString& label);
};

/// The boxes themselves, for the walk through all dialogs; the caller owns them. Buttons stand in
/// the order of the answers.
QMessageBox* problemBox(QWidget* parent, const QString& title, const QString& text);
QMessageBox* saveBox(QWidget* parent, const QString& planName);
QMessageBox* changedBox(QWidget* parent, const QString& fileName, bool modified);
QMessageBox* heldBox(QWidget* parent, const QString& fileName, const QString& holder);
/// `suggestion` is a path.
QFileDialog* openBox(QWidget* parent, const QString& title, const QString& folder,
                     const QString& filter);
QFileDialog* saveFileBox(QWidget* parent, const QString& title, const QString& suggestion,
                         const QString& filter);

} // namespace sump
