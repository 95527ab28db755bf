#pragma once
// New, open, save and export, with what must be asked before and told after.

#include "app/window/document.h"
#include "app/window/talk.h"

#include <QObject>
#include <QStringList>

namespace sump {

enum class ExportKind { Pdf, Svg, Bill };

class FileDesk : public QObject {
  Q_OBJECT

public:
  FileDesk(Document& document, Talk& talk, QWidget* window);

  void startNew();
  void askOpen();
  /// False when the file could not be used or the user kept what is open.
  bool open(const QString& path);
  bool save();
  bool saveAs();
  void exportAs(ExportKind kind);
  /// Asks about unsaved changes; false when the plan must stay.
  bool mayLeave();

  QStringList recentFiles() const;

signals:
  void recentChanged();
  void told(const QString& sentence);

private:
  bool saveTo(const QString& path);
  void remember(const QString& path);
  QString suggestion(const QString& suffix) const;

  Document& document_;
  Talk& talk_;
  QWidget* window_;
};

} // namespace sump
