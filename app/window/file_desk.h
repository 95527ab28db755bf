#pragma once
// New, open, save and export, with what must be asked before and told after.

#include "app/window/document.h"
#include "app/window/file_watch.h"
#include "app/window/talk.h"

#include <QObject>
#include <QStringList>

namespace sump {

enum class ExportKind { Pdf, Svg, Bill, Cuts, Stakes, Calculations, Upkeep, Calendar };

class FileDesk : public QObject {
  Q_OBJECT

public:
  FileDesk(Document& document, Talk& talk, QWidget* window);

  void startNew();
  void askOpen();
  /// False when the file could not be used or the user kept what is open.
  bool open(const QString& path);
  /// A plan without a file: a sample, a guided start.
  bool startWith(const std::function<Plan()>& make);
  /// The document was resumed after a crash; its file is looked after from here on.
  void resumed();
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
  bool load(const QString& path, bool asCopy);
  bool saveTo(const QString& path);
  bool mayWrite(const QString& path);
  bool fileWasChanged();
  void changedOutside();
  void takeHold(const QString& path);
  void remember(const QString& path);
  QString suggestion(const QString& suffix) const;

  Document& document_;
  Talk& talk_;
  QWidget* window_;
  FileWatch watch_;
  FileHold hold_;
};

} // namespace sump
