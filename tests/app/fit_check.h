#pragma once
// Whether every text of a window fits where it stands: nothing cut or elided, nothing over its
// neighbour, nothing outside its parent. In the pseudo-language also whether every text of the
// program's own has gone through the translation.

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QCheckBox>
#include <QComboBox>
#include <QCommandLinkButton>
#include <QGroupBox>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QMenu>
#include <QPersistentModelIndex>
#include <QPointer>
#include <QPushButton>
#include <QRegularExpression>
#include <QScrollArea>
#include <QScrollBar>
#include <QSet>
#include <QStyle>
#include <QStyleOptionComboBox>
#include <QTabBar>
#include <QTableView>
#include <QTextEdit>
#include <QToolButton>
#include <QTreeView>

#include <algorithm>

namespace sump::testing {

class FitCheck {
public:
  /// What does not fit in the visible part of this tree, each with where it stands.
  /// `names`: of the plan's and of files, which belong to no language.
  static QStringList of(QWidget* top, bool pseudo = false, const QStringList& names = {}) {
    FitCheck check;
    check.pseudo_ = pseudo;
    check.names_ = names;
    std::ranges::sort(check.names_, std::ranges::greater(), &QString::size);
    check.one(top);
    // What is laid out for its check may do away with another.
    const QList<QWidget*> found = top->findChildren<QWidget*>();
    for (const QPointer<QWidget>& widget : QList<QPointer<QWidget>>(found.begin(), found.end())) {
      if (!widget.isNull() && widget->isVisibleTo(top) && !widget->size().isEmpty() &&
          !isBehind(widget, top))
        check.one(widget);
    }
    return check.problems_;
  }

private:
  /// In a dock behind another tab: it waits outside the window and has not been laid out.
  static bool isBehind(const QWidget* widget, const QWidget* top) {
    for (; widget != nullptr && widget != top; widget = widget->parentWidget()) {
      if (widget->inherits("QDockWidget") && widget->geometry().right() < 0) return true;
    }
    return false;
  }
  static QString nameOf(const QWidget* widget) {
    QString name = widget->metaObject()->className();
    for (const QString& more : {widget->objectName(), widget->accessibleName()}) {
      if (!more.isEmpty()) name += " " + more;
    }
    return name;
  }
  void tell(const QWidget* widget, const QString& what, int needs, int has) {
    problems_ << QString("%1 in %2: %3: needs %4, has %5")
                     .arg(nameOf(widget),
                          widget->parentWidget() ? nameOf(widget->parentWidget()) : QString("-"),
                          what)
                     .arg(needs)
                     .arg(has);
  }

  void one(QWidget* widget) {
    if (auto* label = qobject_cast<QLabel*>(widget)) checkLabel(label);
    if (auto* button = qobject_cast<QAbstractButton*>(widget)) checkButton(button);
    if (auto* box = qobject_cast<QGroupBox*>(widget)) {
      if (box->minimumSizeHint().width() > box->width())
        tell(box, box->title(), box->minimumSizeHint().width(), box->width());
    }
    if (auto* combo = qobject_cast<QComboBox*>(widget)) checkCombo(combo);
    if (auto* tabs = qobject_cast<QTabBar*>(widget)) checkTabs(tabs);
    if (auto* header = qobject_cast<QHeaderView*>(widget)) checkHeader(header);
    if (auto* area = qobject_cast<QScrollArea*>(widget)) checkArea(area);
    if (auto* line = qobject_cast<QLineEdit*>(widget)) checkLine(line);
    if (auto* view = qobject_cast<QAbstractItemView*>(widget)) checkItems(view);
    if (auto* text = qobject_cast<QTextEdit*>(widget)) checkDocument(text);
    if (auto* area = qobject_cast<QAbstractScrollArea*>(widget)) checkSideways(area);
    if (auto* menu = qobject_cast<QMenu*>(widget)) {
      for (const QAction* action : menu->actions())
        checkTranslated(menu, action->text());
    }
    checkChildren(widget);
  }

  /// Words of English where there should be accents: every vowel bears one. What the plan holds,
  /// what was typed and paths belong to no language.
  void checkTranslated(const QWidget* widget, const QString& text) {
    static const QRegularExpression word("[\\p{L}\\d_'.-]+"), plain("^[A-Za-z]{4,}$"),
        vowel("[aeiouyAEIOUY]"), apart("<[^>]*>|&[a-z]+;|'[^']*'|\"[^\"]*\"|\\S*[/\\\\]\\S*");
    if (!pseudo_ || widget->property("plan-text").toBool()) return;
    QString rest = text;
    rest.remove('&').remove(apart);
    for (const QString& name : names_)
      rest.remove(name);
    for (auto it = word.globalMatch(rest); it.hasNext();) {
      QString one = it.next().captured();
      while (one.endsWith('.') || one.endsWith('\''))
        one.chop(1);
      if (!plain.match(one).hasMatch() || !one.contains(vowel) || one == "Sumpwright") continue;
      return tell(widget, text.left(160) + " (not translated: " + one + ")", 0, 0);
    }
  }

  void checkDocument(QTextEdit* edit) {
    if (edit->isReadOnly()) checkTranslated(edit, edit->toPlainText().replace('\n', ' '));
  }

  /// What scrolls sideways hides a part of itself. Drawings may.
  void checkSideways(QAbstractScrollArea* area) {
    const QScrollBar* bar = area->horizontalScrollBar();
    if (bar->isVisible() && bar->maximum() > bar->minimum() && !mayScroll(area))
      tell(area, "scrolls sideways", bar->maximum() + bar->pageStep(), bar->pageStep());
  }

  bool mayScroll(const QAbstractScrollArea* area) const {
    return area->property("drawing").toBool() || isForeign(area);
  }

  /// A text that is longer than its field can be walked through, but is not seen whole.
  void checkLine(const QLineEdit* line) {
    checkPlaceholder(line);
    if (line->text().isEmpty() || qobject_cast<QComboBox*>(line->parentWidget()) != nullptr) return;
    constexpr int kMargins = 8;
    const int needs = line->fontMetrics().horizontalAdvance(line->text());
    const bool told = line->toolTip().contains(line->text().toHtmlEscaped()) || isForeign(line);
    if (needs > line->width() - kMargins && !told)
      tell(line, line->text(), needs, line->width() - kMargins);
  }

  void checkPlaceholder(const QLineEdit* line) {
    if (!line->text().isEmpty() || line->placeholderText().isEmpty()) return;
    checkTranslated(line, line->placeholderText());
    const int needs = line->fontMetrics().horizontalAdvance(line->placeholderText());
    if (needs > line->width() - 8)
      tell(line, line->placeholderText() + " (placeholder)", needs, line->width() - 8);
  }

  /// Cells in sight whose text is cut.
  void checkItems(QAbstractItemView* view) {
    if (view->model() == nullptr || view->inherits("QComboBoxListView") ||
        view->inherits("QHeaderView") || view->inherits("QCalendarView"))
      return;
    for (int y = 2; y < view->viewport()->height(); y += 6) {
      for (int x = 2; x < view->viewport()->width(); x += 24) {
        const QModelIndex index = view->indexAt({x, y});
        if (index.isValid()) checkItem(view, index);
      }
    }
  }
  void checkItem(QAbstractItemView* view, const QModelIndex& index) {
    if (seen_.contains(index)) return;
    seen_.insert(index);
    const QString text = index.data().toString();
    if (text.isEmpty()) return;
    if (isForeign(view)) return;
    checkTranslated(view, text);
    const QSize has = view->visualRect(index).size();
    const QSize needs = needsOf(view, index, text, has.width());
    if (needs.width() > has.width())
      tell(view, text + " (cell)", needs.width(), has.width());
    else if (needs.height() > has.height())
      tell(view, text + " (height of cell)", needs.height(), has.height());
  }
  /// Of a cell this wide, in further lines where the view wraps.
  static QSize needsOf(QAbstractItemView* view, const QModelIndex& index, const QString& text,
                       int width) {
    QFont font = view->font();
    if (index.data(Qt::FontRole).isValid()) font = index.data(Qt::FontRole).value<QFont>();
    const QFontMetrics metrics(font);
    int beside = 2 * (view->style()->pixelMetric(QStyle::PM_FocusFrameHMargin, nullptr, view) + 1);
    if (index.data(Qt::DecorationRole).isValid())
      beside += view->style()->pixelMetric(QStyle::PM_SmallIconSize, nullptr, view);
    if (index.data(Qt::CheckStateRole).isValid())
      beside += view->style()->pixelMetric(QStyle::PM_IndicatorWidth, nullptr, view);
    const QRect room(0, 0, wraps(view) ? width - beside : QWIDGETSIZE_MAX, QWIDGETSIZE_MAX);
    const QRect lines = metrics.boundingRect(room, wraps(view) ? Qt::TextWordWrap : 0, text);
    return {lines.width() + beside, lines.height()};
  }
  static bool wraps(const QAbstractItemView* view) {
    if (const auto* table = qobject_cast<const QTableView*>(view)) return table->wordWrap();
    if (const auto* tree = qobject_cast<const QTreeView*>(view)) return tree->wordWrap();
    const auto* list = qobject_cast<const QListView*>(view);
    return list != nullptr && list->wordWrap();
  }

  void checkLabel(QLabel* label) {
    if (label->text().isEmpty()) return;
    checkTranslated(label, label->text());
    const QSize hint = label->minimumSizeHint();
    if (hint.width() > label->width()) tell(label, label->text(), hint.width(), label->width());
    const int tall =
        label->wordWrap() ? label->heightForWidth(label->width()) : label->sizeHint().height();
    if (tall > label->height()) tell(label, label->text() + " (height)", tall, label->height());
  }

  void checkButton(QAbstractButton* button) {
    if (button->text().isEmpty()) return;
    checkTranslated(button, button->text());
    if (auto* tool = qobject_cast<QToolButton*>(button);
        tool != nullptr && tool->toolButtonStyle() == Qt::ToolButtonIconOnly)
      return;
    if (auto* link = qobject_cast<QCommandLinkButton*>(button)) {
      if (link->heightForWidth(link->width()) > link->height())
        tell(link, link->text(), link->heightForWidth(link->width()), link->height());
    }
    const QSize hint = button->minimumSizeHint();
    if (hint.width() > button->width()) tell(button, button->text(), hint.width(), button->width());
    if (hint.height() > button->height() && qobject_cast<QCheckBox*>(button) == nullptr)
      tell(button, button->text() + " (height)", hint.height(), button->height());
  }

  void checkCombo(QComboBox* combo) {
    QStyleOptionComboBox option;
    option.initFrom(combo);
    option.currentText = combo->currentText();
    const QRect field = combo->style()->subControlRect(QStyle::CC_ComboBox, &option,
                                                       QStyle::SC_ComboBoxEditField, combo);
    constexpr int kBeside = 4; // as the window's style paints it
    const int needs = combo->fontMetrics().horizontalAdvance(combo->currentText()) + kBeside;
    // A chosen item that is longer than its field is told by the tooltip.
    if (needs > field.width() && !combo->toolTip().contains(combo->currentText()))
      tell(combo, combo->currentText(), needs, field.width());
  }

  void checkTabs(QTabBar* tabs) {
    for (int i = 0; i < tabs->count(); ++i) {
      if (!tabs->isTabVisible(i)) continue;
      checkTranslated(tabs, tabs->tabText(i));
      const int needs = tabs->fontMetrics().size(Qt::TextShowMnemonic, tabs->tabText(i)).width();
      const int space = tabs->style()->pixelMetric(QStyle::PM_TabBarTabHSpace, nullptr, tabs) / 2;
      if (needs + space > tabs->tabRect(i).width())
        tell(tabs, tabs->tabText(i), needs + space, tabs->tabRect(i).width());
      if (!tabs->rect().contains(tabs->tabRect(i)))
        tell(tabs, tabs->tabText(i) + " (out of sight)", tabs->tabRect(i).right(), tabs->width());
    }
  }

  /// Of the toolkit's own dialogs, which a desktop replaces by its own.
  static bool isForeign(const QWidget* widget) {
    return widget->window()->inherits("QFileDialog") || widget->window()->inherits("QPrintDialog");
  }

  void checkHeader(QHeaderView* header) {
    if (isForeign(header) || header->orientation() != Qt::Horizontal || header->model() == nullptr)
      return;
    const int margin = header->style()->pixelMetric(QStyle::PM_HeaderMargin, nullptr, header);
    for (int i = 0; i < header->count(); ++i) {
      const QString text = header->model()->headerData(i, Qt::Horizontal).toString();
      const int needs = header->fontMetrics().size(0, text).width() + 2 * margin;
      checkTranslated(header, text);
      if (!header->isSectionHidden(i) && needs > header->sectionSize(i))
        tell(header, text, needs, header->sectionSize(i));
    }
  }

  void checkArea(QScrollArea* area) {
    if (area->widget() == nullptr || area->horizontalScrollBarPolicy() != Qt::ScrollBarAlwaysOff)
      return;
    const int needs = area->widget()->minimumSizeHint().width();
    if (needs > area->viewport()->width())
      tell(area, "its content", needs, area->viewport()->width());
  }

  /// Some children lie over others by design: frames that float, grips, what Qt lays on top.
  static bool floats(const QWidget* child) {
    static const QSet<QString> kinds = {"QRubberBand", "QSizeGrip", "QFocusFrame",
                                        "QSplitterHandle", "QToolBarExtension"};
    // Docks behind another tab wait outside the window.
    const bool behind = child->inherits("QDockWidget") && child->geometry().right() < 0;
    return child->isWindow() || behind || kinds.contains(child->metaObject()->className()) ||
           child->objectName() == "entry-box";
  }

  void checkChildren(QWidget* parent) {
    if (parent->inherits("QAbstractScrollArea") || parent->inherits("QLineEdit") ||
        parent->inherits("QTabBar") || parent->inherits("QAbstractSpinBox"))
      return;
    const bool scrolled = parent->parentWidget() != nullptr &&
                          parent->parentWidget()->inherits("QAbstractScrollArea");
    QList<QWidget*> seen;
    for (QObject* object : parent->children()) {
      auto* child = qobject_cast<QWidget*>(object);
      if (child == nullptr || !child->isVisibleTo(parent) || floats(child)) continue;
      if (!scrolled && !parent->rect().contains(child->geometry()) && !child->size().isEmpty())
        problems_ << QString("%1 reaches out of %2: %3 x %4 at %5, %6 in %7 x %8")
                         .arg(nameOf(child), nameOf(parent))
                         .arg(child->width())
                         .arg(child->height())
                         .arg(child->x())
                         .arg(child->y())
                         .arg(parent->width())
                         .arg(parent->height());
      for (QWidget* other : seen) {
        if (other->geometry().intersects(child->geometry()))
          problems_ << QString("%1 lies over %2").arg(nameOf(child), nameOf(other));
      }
      seen << child;
    }
  }

  bool pseudo_ = false;
  QStringList names_;
  QStringList problems_;
  QSet<QPersistentModelIndex> seen_;
};

} // namespace sump::testing
