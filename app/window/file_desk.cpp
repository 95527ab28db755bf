#include "app/window/file_desk.h"

#include "app/core_text.h"
#include "app/window/beside_pictures.h"

#include "app/window/exports.h"
#include "app/window/recovery_file.h"

#include "core/exchange/plan_file.h"

#include <QDir>
#include <QFileInfo>
#include <QSettings>
#include <QTimer>
#include <QWidget>

#include <exception>

namespace sump {

namespace {

constexpr int kMostRecent = 8;
constexpr const char* kRecentKey = "recentFiles";

struct ExportFacts {
  const char* suffix;
  const char* title;
  const char* filter;
};

ExportFacts exportFacts(ExportKind kind) {
  switch (kind) {
  case ExportKind::Pdf:
    return {".pdf", QT_TRANSLATE_NOOP("sump::FileDesk", "Write the plan sheet as PDF"),
            QT_TRANSLATE_NOOP("sump::FileDesk", "PDF (*.pdf)")};
  case ExportKind::Svg:
    return {".svg", QT_TRANSLATE_NOOP("sump::FileDesk", "Write the plan sheet as SVG"),
            QT_TRANSLATE_NOOP("sump::FileDesk", "SVG (*.svg)")};
  case ExportKind::Calculations:
    return {"-calculations.pdf",
            QT_TRANSLATE_NOOP("sump::FileDesk", "Write the calculation report as PDF"),
            QT_TRANSLATE_NOOP("sump::FileDesk", "PDF (*.pdf)")};
  case ExportKind::Cuts:
    return {".pdf", QT_TRANSLATE_NOOP("sump::FileDesk", "Write the cutting list"),
            QT_TRANSLATE_NOOP("sump::FileDesk", "PDF (*.pdf);;CSV (*.csv)")};
  case ExportKind::Stakes:
    return {".csv", QT_TRANSLATE_NOOP("sump::FileDesk", "Write the stake-out points"),
            QT_TRANSLATE_NOOP("sump::FileDesk", "CSV (*.csv)")};
  case ExportKind::Upkeep:
    return {"-upkeep.pdf",
            QT_TRANSLATE_NOOP("sump::FileDesk", "Write the start-up and upkeep sheets as PDF"),
            QT_TRANSLATE_NOOP("sump::FileDesk", "PDF (*.pdf)")};
  case ExportKind::Calendar:
    return {"-upkeep.ics", QT_TRANSLATE_NOOP("sump::FileDesk", "Write the upkeep calendar"),
            QT_TRANSLATE_NOOP("sump::FileDesk", "iCalendar (*.ics)")};
  case ExportKind::Bill:
    break;
  }
  return {".xlsx", QT_TRANSLATE_NOOP("sump::FileDesk", "Write the bill of materials"),
          QT_TRANSLATE_NOOP("sump::FileDesk", "Workbook (*.xlsx);;CSV (*.csv)")};
}

/// `start` is for the calendar only.
void write(ExportKind kind, const Review& review, QDate start, const QString& path) {
  switch (kind) {
  case ExportKind::Pdf:
    return exportPdf(review, path);
  case ExportKind::Svg:
    return exportSvg(review, path);
  case ExportKind::Bill:
    return exportBill(review, path);
  case ExportKind::Calculations:
    return exportCalculations(review, path);
  case ExportKind::Cuts:
    return exportCuts(review, path);
  case ExportKind::Stakes:
    return exportStakes(review, path);
  case ExportKind::Upkeep:
    return exportUpkeep(review, path);
  case ExportKind::Calendar:
    return exportCalendar(review, start, path);
  }
}

} // namespace

FileDesk::FileDesk(Document& document, Talk& talk, QWidget* window)
    : QObject(window), document_(document), talk_(talk), window_(window) {
  connect(&watch_, &FileWatch::changedOutside, this, &FileDesk::changedOutside);
}

bool FileDesk::mayLeave() {
  if (!document_.isModified()) return true;
  switch (talk_.askSave(window_, document_.displayName())) {
  case SaveAnswer::Save:
    return save();
  case SaveAnswer::Discard:
    return true;
  case SaveAnswer::Stay:
    break;
  }
  return false;
}

void FileDesk::startNew() {
  startWith([this] {
    Plan plan;
    plan.project.units = document_.plan().project.units; // those that the user works in
    return plan;
  });
}

bool FileDesk::startWith(const std::function<Plan()>& make) {
  if (!mayLeave()) return false;
  try {
    document_.startNew(make());
  } catch (const std::exception& e) {
    talk_.tellProblem(window_, tr("The plan cannot be opened"), errorWords(e));
    return false;
  }
  watch_.follow({});
  hold_.release();
  return true;
}

void FileDesk::askOpen() {
  const QString folder = QFileInfo(document_.filePath()).absolutePath();
  const QString path = talk_.askOpenFile(window_, folder);
  if (!path.isEmpty()) open(path);
}

bool FileDesk::open(const QString& path) {
  if (!mayLeave()) return false;
  FileHold other;
  const bool mine = hold_.holds(path);
  if (const std::optional<QString> holder = mine ? std::nullopt : other.take(path)) {
    switch (talk_.askHeld(window_, QFileInfo(path).fileName(), *holder)) {
    case HeldAnswer::Copy:
      return load(path, true);
    case HeldAnswer::Anyway:
      break;
    case HeldAnswer::Leave:
      return false;
    }
  }
  other.release();
  return load(path, false);
}

bool FileDesk::load(const QString& path, bool asCopy) {
  const QByteArray contents = FileWatch::fingerprint(path); // before reading: no change slips by
  try {
    document_.open(path);
    if (asCopy) document_.startNew(withPicturesFrom(document_.plan(), path, QString()));
  } catch (const std::exception& e) {
    talk_.tellProblem(window_, tr("The plan cannot be opened"), errorWords(e));
    return false;
  }
  watch_.follow(asCopy ? QString() : path, contents);
  takeHold(asCopy ? QString() : path);
  if (asCopy) return true;
  remember(path);
  if (isWriteProtected(path)) {
    emit told(tr("%1 is write-protected: save changes under another name.")
                  .arg(QFileInfo(path).fileName()));
  }
  return true;
}

void FileDesk::takeHold(const QString& path) {
  if (path.isEmpty() || hold_.take(path)) {
    hold_.release();
  } else {
    removeDeadTemporaries(QFileInfo(path).absolutePath());
  }
}

void FileDesk::resumed() {
  watch_.follow(document_.filePath());
  takeHold(document_.filePath());
}

bool FileDesk::save() {
  return document_.filePath().isEmpty() ? saveAs() : saveTo(document_.filePath());
}

bool FileDesk::saveAs() {
  QString path = talk_.askSaveFile(window_, tr("Save the plan"), suggestion(".sump"),
                                   tr("Sumpwright plans (*.sump)"));
  if (path.isEmpty()) return false;
  if (QFileInfo(path).suffix().isEmpty()) path += ".sump";
  return saveTo(path);
}

bool FileDesk::mayWrite(const QString& path) {
  if (isWriteProtected(path)) {
    talk_.tellProblem(window_, tr("The plan is not saved"),
                      tr("%1 is write-protected. The plan is still here: save it under another "
                         "name, or take the protection off and save again.")
                          .arg(QDir::toNativeSeparators(path)));
    return false;
  }
  if (path == document_.filePath()) return !watch_.differs() || fileWasChanged();
  FileHold other;
  const std::optional<QString> holder = hold_.holds(path) ? std::nullopt : other.take(path);
  if (!holder) return true;
  talk_.tellProblem(window_, tr("The plan is not saved"),
                    tr("%1 is open in %2. The plan is still here: save it under another name.")
                        .arg(QDir::toNativeSeparators(path), *holder));
  return false;
}

bool FileDesk::saveTo(const QString& path) {
  if (!mayWrite(path)) return false;
  const Revision before = document_.committedRevision();
  document_.commit(tr("Follow the site pictures"),
                   withPicturesFrom(document_.plan(), document_.filePath(), path));
  try {
    document_.save(path);
  } catch (const std::exception& e) {
    if (document_.committedRevision() != before) document_.undo();
    talk_.tellProblem(window_, tr("The plan is not saved"),
                      tr("%1\n\nThe plan is still here, with every change.").arg(errorWords(e)));
    return false;
  }
  watch_.follow(path);
  takeHold(path);
  remember(path);
  emit told(tr("Saved %1").arg(QDir::toNativeSeparators(path)));
  return true;
}

void FileDesk::changedOutside() {
  if (document_.isPreviewing()) { // not in the middle of a drag
    constexpr int kAgainMs = 300;
    QTimer::singleShot(kAgainMs, this, &FileDesk::changedOutside);
    return;
  }
  if (watch_.differs()) fileWasChanged();
}

/// True when the plan on the screen may take the file's place.
bool FileDesk::fileWasChanged() {
  const QString path = document_.filePath();
  const bool gone = !QFileInfo::exists(path);
  watch_.accept(); // asked once for each change
  if (gone) {
    document_.fileDiffers();
    emit told(tr("%1 is gone. The plan is still here: save it.").arg(QFileInfo(path).fileName()));
    return true;
  }
  switch (talk_.askChanged(window_, QFileInfo(path).fileName(), document_.isModified())) {
  case ChangedAnswer::Reload:
    load(path, false);
    return false;
  case ChangedAnswer::SaveAs:
    document_.fileDiffers();
    saveAs();
    return false;
  case ChangedAnswer::KeepMine:
    break;
  }
  document_.fileDiffers();
  return true;
}

void FileDesk::exportAs(ExportKind kind) {
  const ExportFacts f = exportFacts(kind);
  QString path = talk_.askSaveFile(window_, tr(f.title), suggestion(f.suffix), tr(f.filter));
  if (path.isEmpty()) return;
  if (QFileInfo(path).suffix().isEmpty()) path += f.suffix;
  QDate start;
  if (kind == ExportKind::Calendar) {
    start = talk_.askDay(window_, tr("Day of start-up"), tr("The upkeep calendar begins on:"));
    if (!start.isValid()) return;
  }
  try {
    const ReviewedPtr reviewed = document_.freshReview();
    write(kind, reviewed->review, start, path);
    emit told(tr("Wrote %1").arg(QDir::toNativeSeparators(path)));
  } catch (const std::exception& e) {
    talk_.tellProblem(window_, tr("Nothing is written"), errorWords(e));
  }
}

QString FileDesk::suggestion(const QString& suffix) const {
  const QFileInfo info(document_.filePath());
  if (document_.filePath().isEmpty()) return QDir::home().filePath(tr("New plan") + suffix);
  return info.dir().filePath(info.completeBaseName() + suffix);
}

QStringList FileDesk::recentFiles() const {
  return QSettings().value(kRecentKey).toStringList();
}

void FileDesk::remember(const QString& path) {
  const QString full = QFileInfo(path).absoluteFilePath();
  QStringList recent = recentFiles();
  recent.removeAll(full);
  recent.prepend(full);
  while (recent.size() > kMostRecent)
    recent.removeLast();
  QSettings().setValue(kRecentKey, recent);
  emit recentChanged();
}

} // namespace sump
