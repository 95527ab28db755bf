#pragma once
// What the window asks and tells the user in dialogs. Tests answer in its place.

#include <QString>

class QWidget;

namespace sump {

enum class SaveAnswer { Save, Discard, Stay };

class Talk {
public:
  virtual ~Talk() = default;
  virtual void tellProblem(QWidget* parent, const QString& title, const QString& text);
  virtual SaveAnswer askSave(QWidget* parent, const QString& planName);
  /// Empty when the user gives up.
  virtual QString askOpenFile(QWidget* parent, const QString& folder);
  virtual QString askSaveFile(QWidget* parent, const QString& title, const QString& suggestion,
                              const QString& filter);
};

} // namespace sump
