#include "app/window/file_desk.h"

#include "app/window/exports.h"

#include "core/exchange/plan_file.h"

#include <QDir>
#include <QFileInfo>
#include <QSettings>
#include <QWidget>

#include <exception>

namespace sump {

namespace {

constexpr int kMostRecent = 8;
constexpr const char* kRecentKey = "recentFiles";

QString reason(const std::exception& e) {
  return QString::fromUtf8(e.what());
}

struct ExportFacts {
  const char* suffix;
  const char* title;
  const char* filter;
};

ExportFacts exportFacts(ExportKind kind) {
  switch (kind) {
  case ExportKind::Pdf:
    return {".pdf", QT_TRANSLATE_NOOP("sump::FileDesk", "Write the plan sheet as PDF"),
            "PDF (*.pdf)"};
  case ExportKind::Svg:
    return {".svg", QT_TRANSLATE_NOOP("sump::FileDesk", "Write the plan sheet as SVG"),
            "SVG (*.svg)"};
  case ExportKind::Bill:
    break;
  }
  return {".csv", QT_TRANSLATE_NOOP("sump::FileDesk", "Write the bill of materials"),
          "CSV (*.csv)"};
}

} // namespace

FileDesk::FileDesk(Document& document, Talk& talk, QWidget* window)
    : QObject(window), document_(document), talk_(talk), window_(window) {}

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
  if (!mayLeave()) return;
  Plan plan;
  plan.project.units = document_.plan().project.units; // those that the user works in
  document_.startNew(std::move(plan));
}

void FileDesk::askOpen() {
  const QString folder = QFileInfo(document_.filePath()).absolutePath();
  const QString path = talk_.askOpenFile(window_, folder);
  if (!path.isEmpty()) open(path);
}

bool FileDesk::open(const QString& path) {
  if (!mayLeave()) return false;
  try {
    document_.open(path);
  } catch (const std::exception& e) {
    talk_.tellProblem(window_, tr("The plan cannot be opened"), reason(e));
    return false;
  }
  remember(path);
  return true;
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

bool FileDesk::saveTo(const QString& path) {
  try {
    document_.save(path);
  } catch (const std::exception& e) {
    talk_.tellProblem(window_, tr("The plan is not saved"), reason(e));
    return false;
  }
  remember(path);
  emit told(tr("Saved %1").arg(QDir::toNativeSeparators(path)));
  return true;
}

void FileDesk::exportAs(ExportKind kind) {
  const ExportFacts f = exportFacts(kind);
  QString path = talk_.askSaveFile(window_, tr(f.title), suggestion(f.suffix), f.filter);
  if (path.isEmpty()) return;
  if (QFileInfo(path).suffix().isEmpty()) path += f.suffix;
  try {
    const ReviewedPtr reviewed = document_.freshReview();
    switch (kind) {
    case ExportKind::Pdf:
      exportPdf(reviewed->review, path);
      break;
    case ExportKind::Svg:
      exportSvg(reviewed->review, path);
      break;
    case ExportKind::Bill:
      exportBill(reviewed->review, path);
      break;
    }
    emit told(tr("Wrote %1").arg(QDir::toNativeSeparators(path)));
  } catch (const std::exception& e) {
    talk_.tellProblem(window_, tr("Nothing is written"), reason(e));
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
