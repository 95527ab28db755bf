#include "app/canvas/entry_box.h"

#include "app/canvas/drawn_lines.h"
#include "app/canvas/label_places.h"

#include "app/core_text.h"
#include "app/window/field_note.h"
#include "app/window/glossary.h"

#include <QApplication>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>

namespace sump {

namespace {

constexpr int kRim = 4;         ///< of the parent that stays free, pixels
constexpr int kPadding = 6;     ///< round the fields
constexpr double kLedFrom = 40; ///< from what is being typed, pixels; farther off it gets a leader

} // namespace

EntryBox::EntryBox(QWidget* parent) : QFrame(parent) {
  setObjectName("entry-box");
  setAccessibleName(tr("Typed values"));
  setFrameShape(QFrame::StyledPanel);
  setAutoFillBackground(true);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(kPadding, 4, kPadding, 4);
  column->setSpacing(2);
  body_ = new QWidget(this);
  column->addWidget(body_);
  problem_ = new FieldNote(this);
  column->addWidget(problem_);
  hide();
}

void EntryBox::open(std::vector<EntryField> fields, UnitSystem units, const QString& text,
                    EntryPlaceNow place, std::size_t first) {
  fields_ = std::move(fields);
  units_ = units;
  current_ = first;
  placeNow_ = std::move(place);
  editors_.clear();
  auto* body = new QWidget(this);
  arrange(body);
  delete layout()->replaceWidget(body_, body);
  body_->hide();
  body_->deleteLater();
  body_ = body;
  body_->show();
  problem_->hide();
  this->place();
  show();
  raise();
  editors_[first]->setFocus();
  editors_[first]->setText(text);
}

/// The fields side by side, in as many rows as the parent's width asks for.
void EntryBox::arrange(QWidget* body) {
  constexpr int kBetween = 6;
  auto* grid = new QGridLayout(body);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setHorizontalSpacing(kBetween);
  grid->setVerticalSpacing(0);
  std::vector<QLabel*> labels;
  int widest = 1;
  for (const EntryField& field : fields_) {
    auto* editor = new QLineEdit(body);
    editor->setFixedWidth(editor->fontMetrics().horizontalAdvance("100'-11 15/16\""));
    editor->setToolTip(tipWithTerms(field.label, field.tip));
    editor->setAccessibleName(field.label);
    editor->setAccessibleDescription(field.tip);
    editor->installEventFilter(this);
    auto* label = new QLabel(field.label, body);
    label->setToolTip(editor->toolTip());
    label->setBuddy(editor);
    connect(editor, &QLineEdit::textChanged, this, &EntryBox::edited);
    editors_.push_back(editor);
    labels.push_back(label);
    widest = std::max({widest, editor->maximumWidth(), label->sizeHint().width()});
  }
  const int room = parentWidget()->width() - 2 * (kRim + kPadding);
  const int columns = std::max(1, (room + kBetween) / (widest + kBetween));
  for (int i = 0; i < static_cast<int>(editors_.size()); ++i) {
    const auto field = static_cast<std::size_t>(i);
    grid->addWidget(labels[field], i / columns * 2, i % columns);
    grid->addWidget(editors_[field], i / columns * 2 + 1, i % columns);
  }
}

/// How much of what must stay in sight the box would cover.
double EntryBox::covered(const QRectF& box) const {
  constexpr double kCorner = 14,
                   kLineRoom = 6; // round what is being typed and beside lines, pixels
  const QRectF corner(wanted_.at - QPointF(kCorner, kCorner), QSizeF(2 * kCorner, 2 * kCorner));
  double sum = box.intersects(corner) ? 1000 : 0;
  for (const QRectF& other : wanted_.boxes)
    sum += box.intersects(other) ? 500 : 0;
  const QPolygonF wide(box.adjusted(-kLineRoom, -kLineRoom, kLineRoom, kLineRoom));
  for (const QLineF& line : wanted_.lines)
    sum += convexOverlap(wide, QPolygonF({line.p1(), line.p2()})) ? 100 : 0;
  return sum;
}

/// How far it goes, in pixels, rather than hide what the box would: across the window for a text,
/// some way for each line of the drawing.
double EntryBox::hidden(const QRectF& box) const {
  constexpr double kText = 1000, kMark = 250, kTextOnTheWay = 100;
  const QPolygonF shape(box);
  const QLineF way = shortestBetween(box, {wanted_.at, QSizeF(0, 0)});
  double sum = 0;
  for (const QPolygonF& name : wanted_.names) {
    if (name.boundingRect().intersects(box) && convexOverlap(shape, name)) sum += kText;
    if (way.length() > kLedFrom && convexOverlap(QPolygonF({way.p1(), way.p2()}), name))
      sum += kTextOnTheWay;
  }
  if (wanted_.drawn != nullptr) {
    DrawnLines::But but;
    but.paving = true;
    sum += kMark * wanted_.drawn->count(box, but);
  }
  return sum;
}

/// Wholly in view, as near to what is being typed as can be on free ground: over neither that, the
/// lines that lead there and the pointer, nor names and the drawing as long as there is such a
/// place.
void EntryBox::place() {
  wanted_ = placeNow_();
  layout()->activate();
  adjustSize();
  const QRectF room = QRectF(parentWidget()->rect()).adjusted(kRim, kRim, -kRim, -kRim);
  const double across = std::max(0.0, room.width() - width());
  const double down = std::max(0.0, room.height() - height());
  constexpr int kSteps = 40;
  std::vector<std::pair<double, QPointF>> corners; // by how far off the box then stands
  for (int i = 0; i <= kSteps; ++i) {
    for (int k = 0; k <= kSteps; ++k) {
      const QPointF corner = room.topLeft() + QPointF(across * i / kSteps, down * k / kSteps);
      const QRectF box(corner, QSizeF(size()));
      const double away = shortestBetween(box, {wanted_.at, QSizeF(0, 0)}).length();
      // Of equally near places the one right of and below it, as a reader looks for it.
      corners.emplace_back(away + QLineF(corner, wanted_.at).length() * 0.02, corner);
    }
  }
  std::ranges::sort(corners, {}, &std::pair<double, QPointF>::first);
  QPointF best = room.topLeft();
  double least = 1e300;
  for (const auto& [away, corner] : corners) {
    if (away >= least) break;
    const QRectF box(corner, QSizeF(size()));
    double cost = away + covered(box) * 1000;
    if (cost < least) cost += hidden(box);
    if (cost >= least) continue;
    least = cost;
    best = corner;
  }
  wanted_.drawn = nullptr; // of this moment only
  move(best.toPoint());
}

void EntryBox::giveWay() {
  if (!isVisible()) return;
  const EntryPlace now = placeNow_();
  wanted_.at = now.at;
  wanted_.lines = now.lines;
  wanted_.boxes = now.boxes;
  const QPolygonF box{QRectF(geometry())};
  const auto hides = [&](const QPolygonF& name) { return convexOverlap(box, name); };
  if (covered(QRectF(geometry())) > 0 || std::ranges::any_of(now.names, hides)) place();
}

std::optional<QLineF> EntryBox::leader() const {
  const QLineF way = shortestBetween(QRectF(geometry()), {wanted_.at, QSizeF(0, 0)});
  return !isHidden() && way.length() > kLedFrom ? std::optional(way) : std::nullopt;
}

void EntryBox::shut() {
  hide();
  fields_.clear();
  editors_.clear();
}

Entry EntryBox::values() const {
  Entry entry;
  for (std::size_t i = 0; i < editors_.size(); ++i) {
    const QString text = editors_[i]->text();
    if (text.trimmed().isEmpty()) continue;
    const Parsed<double> parsed = parseEntry(fields_[i].unit, text, units_);
    if (parsed) entry[fields_[i].key] = *parsed.value;
  }
  return entry;
}

void EntryBox::complain(const QString& why) {
  problem_->complain(why);
  place(); // it is larger now
}

bool EntryBox::allReadable() {
  for (std::size_t i = 0; i < editors_.size(); ++i) {
    if (editors_[i]->text().trimmed().isEmpty()) continue;
    const Parsed<double> parsed = parseEntry(fields_[i].unit, editors_[i]->text(), units_);
    if (parsed) continue;
    current_ = i;
    editors_[i]->setFocus();
    complain(fields_[i].label + ": " + typedProblem(parsed.error, editors_[i]->text()));
    return false;
  }
  return true;
}

void EntryBox::step(int by) {
  const int count = static_cast<int>(editors_.size());
  current_ = static_cast<std::size_t>((static_cast<int>(current_) + by + count) % count);
  editors_[current_]->setFocus();
  editors_[current_]->selectAll();
}

bool EntryBox::key(QKeyEvent* event) {
  switch (event->key()) {
  case Qt::Key_Tab:
    step(1);
    return true;
  case Qt::Key_Backtab:
    step(-1);
    return true;
  case Qt::Key_Escape:
    emit givenUp();
    return true;
  case Qt::Key_Return:
  case Qt::Key_Enter:
    if (allReadable()) emit entered(event->modifiers());
    return true;
  default:
    return false;
  }
}

void EntryBox::take(QKeyEvent* event) {
  if (key(event) || editors_.empty()) return;
  QApplication::sendEvent(editors_[current_], event);
}

/// A key that no editor has a use for ends here: the drawing would hand it back, without end.
void EntryBox::keyPressEvent(QKeyEvent* event) {
  event->accept();
}

bool EntryBox::eventFilter(QObject* watched, QEvent* event) {
  const auto editor = std::ranges::find(editors_, watched);
  if (editor == editors_.end()) return QFrame::eventFilter(watched, event);
  if (event->type() == QEvent::FocusIn) {
    current_ = static_cast<std::size_t>(editor - editors_.begin());
  } else if (event->type() == QEvent::KeyPress) {
    if (key(static_cast<QKeyEvent*>(event))) return true;
  } else if (event->type() == QEvent::ShortcutOverride) {
    // Escape and Enter are the entry's own, whatever menus they stand in.
    const int pressed = static_cast<QKeyEvent*>(event)->key();
    if (pressed == Qt::Key_Escape || pressed == Qt::Key_Return || pressed == Qt::Key_Enter) {
      event->accept();
      return true;
    }
  }
  return QFrame::eventFilter(watched, event);
}

} // namespace sump
