#include "app/window/picture_desk.h"

#include "app/core_text.h"

#include "app/canvas/underlay_tool.h"
#include "app/window/talk.h"

#include "core/plan/edits.h"
#include "core/plan/edits_objects.h"
#include "core/units/expression.h"
#include "core/units/print.h"

#include <QDir>
#include <QFileInfo>
#include <QInputDialog>

#include <memory>

namespace sump {

QInputDialog* distanceDialog(QWidget* parent, const QString& now, const QString& error) {
  const QString question = PictureDesk::tr("How far apart are the two places on the site?");
  auto* dialog = new QInputDialog(parent);
  dialog->setWindowTitle(PictureDesk::tr("Scale the site picture"));
  dialog->setLabelText(error.isEmpty() ? question : error + "\n\n" + question);
  dialog->setTextValue(now);
  return dialog;
}

PictureDesk::PictureDesk(Document& document, Canvas& canvas)
    : QObject(&canvas), document_(document), canvas_(canvas) {
  askFile = [this] {
    return Talk().askTable(canvas_.window(), tr("Site picture"),
                           QFileInfo(document_.filePath()).absolutePath(),
                           tr("Pictures (*.png *.jpg *.jpeg *.svg);;All files (*)"));
  };
  askDistance = [this](const QString& now, const QString& error) {
    const std::unique_ptr<QInputDialog> dialog(distanceDialog(canvas_.window(), now, error));
    return dialog->exec() == QDialog::Accepted ? dialog->textValue() : QString();
  };
}

void PictureDesk::place(KeepPicture keep) {
  if (keep == KeepPicture::BesidePlan && document_.filePath().isEmpty()) {
    emit told(tr("Save the plan first: a picture beside it is found from where the plan lies."));
    return;
  }
  const QString path = askFile();
  if (!path.isEmpty()) add(path, keep);
}

std::optional<QString> PictureDesk::besideName(const QString& path) {
  const QDir folder(QFileInfo(document_.filePath()).absolutePath());
  const QString name = folder.relativeFilePath(QFileInfo(path).absoluteFilePath());
  if (!document_.filePath().isEmpty() && QDir::isRelativePath(name)) return name;
  emit told(tr("%1 cannot be named from where the plan lies. Copy it into the plan's folder.")
                .arg(QDir::toNativeSeparators(path)));
  return std::nullopt;
}

bool PictureDesk::add(const QString& path, KeepPicture keep) {
  const PictureFile file = readPicture(path);
  if (file.media.isEmpty()) {
    emit told(file.error);
    return false;
  }
  Underlay picture;
  picture.id = freshId(document_.plan(), "SP");
  picture.name = QFileInfo(path).completeBaseName().toStdString();
  if (keep == KeepPicture::InPlan) {
    picture.media = file.media.toStdString();
    picture.data.text = file.bytes.toBase64().toStdString();
  } else {
    const std::optional<QString> name = besideName(path);
    if (!name) return false;
    picture.file = name->toStdString();
  }
  // Most of the view, until it is scaled.
  const Box view = canvas_.view().visible();
  const Point2 span = view.high - view.low;
  const double fit = 0.8 * std::min(span.x / file.shape.width(), span.y / file.shape.height());
  picture.width = metres(fit * file.shape.width());
  picture.height = metres(fit * file.shape.height());
  picture.at = lerp(view.low, view.high, 0.5) +
               Point2{-inMetres(picture.width) / 2, inMetres(picture.height) / 2};
  picture.locked = false;
  const auto problem =
      document_.commit(tr("Place site picture"), withObject(document_.plan(), picture));
  if (problem) {
    emit told(problemWords(*problem));
    return false;
  }
  canvas_.select({picture.id});
  scale();
  return true;
}

std::optional<Length> PictureDesk::distance(Length now) {
  const UnitSystem units = document_.plan().project.units;
  QString text = QString::fromStdString(printLength(now, units)), error;
  while (true) {
    text = askDistance(text, error);
    if (text.trimmed().isEmpty()) return std::nullopt;
    const Parsed<Length> typed = evaluateLength(text.toStdString(), units);
    if (typed && inMetres(*typed.value) > 0) return typed.value;
    error = typed ? tr("The distance must be more than 0.") : typedProblem(typed.error, text);
  }
}

void PictureDesk::scale() {
  const Plan& plan = document_.plan();
  Id picture;
  for (const Id& id : canvas_.selection()) {
    if (plan.underlays.find(id) != nullptr) picture = id;
  }
  if (picture.empty() && plan.underlays.size() == 1) picture = plan.underlays[0].id;
  if (picture.empty()) {
    emit told(tr("Select the site picture that is to be scaled."));
    return;
  }
  useTool(std::make_unique<UnderlayTool>(canvas_, picture,
                                         [this](Length now) { return distance(now); }));
}

} // namespace sump
