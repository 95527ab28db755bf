#pragma once
// Site pictures: choosing a file, keeping it in the plan or beside it, and scaling it.

#include "app/canvas/canvas.h"
#include "app/window/document.h"

#include <QObject>

#include <functional>
#include <memory>
#include <optional>

class QInputDialog;

namespace sump {

enum class KeepPicture { InPlan, BesidePlan };

/// Asks how far two places are apart; `error` says what was wrong with the last answer.
QInputDialog* distanceDialog(QWidget* parent, const QString& now, const QString& error);

class PictureDesk : public QObject {
  Q_OBJECT

public:
  PictureDesk(Document& document, Canvas& canvas);

  /// Asks for a file and adds it in the middle of the view.
  void place(KeepPicture keep);
  /// False when the file cannot be used; why has then been told.
  bool add(const QString& path, KeepPicture keep);
  /// Starts picking two places on the selected picture, or on the only one.
  void scale();

  /// What is asked, replaced by tests. Empty text: given up.
  std::function<QString()> askFile;
  std::function<QString(const QString& now, const QString& error)> askDistance;
  /// Puts a tool into use; set by the window.
  std::function<void(std::unique_ptr<Tool>)> useTool;

signals:
  void told(const QString& sentence);

private:
  std::optional<Length> distance(Length now);
  /// The picture's file as the plan names it, or nothing when it cannot be.
  std::optional<QString> besideName(const QString& path);

  Document& document_;
  Canvas& canvas_;
};

} // namespace sump
