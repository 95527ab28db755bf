#include "app/window/sheet_preview.h"

#include "app/core_text.h"
#include "app/paint/paint.h"
#include "app/plain_text.h"
#include "app/window/talk.h"
#include "core/sheet/compose.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QListWidget>
#include <QPainter>
#include <QPrintDialog>
#include <QPrinter>
#include <QPushButton>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>

namespace sump {

/// One page in pixels, painted once for each zoom.
class PaperCanvas : public QWidget {
public:
  void look(const Page* page, double pixelsPerMm, const QString& instead) {
    page_ = page;
    scale_ = pixelsPerMm;
    instead_ = instead;
    picture_ = {};
    const QSize size = page == nullptr
                           ? QSize(400, 200)
                           : QSize(qRound(page->width * scale_), qRound(page->height * scale_));
    setFixedSize(size);
    update();
  }
  double scale() const { return scale_; }

protected:
  void paintEvent(QPaintEvent*) override {
    QPainter painter(this);
    if (page_ == nullptr) {
      painter.drawText(rect(), Qt::AlignCenter | Qt::TextWordWrap, instead_);
      return;
    }
    if (picture_.isNull()) {
      const qreal ratio = devicePixelRatioF();
      picture_ = QPixmap(size() * ratio);
      picture_.setDevicePixelRatio(ratio);
      picture_.fill(Qt::white); // paper, whatever the theme
      QPainter paper(&picture_);
      paper.scale(scale_, scale_);
      paintPage(paper, *page_);
    }
    painter.drawPixmap(0, 0, picture_);
  }

private:
  const Page* page_ = nullptr;
  double scale_ = 1;
  QString instead_;
  QPixmap picture_;
};

SheetPreview::SheetPreview(ReviewedPtr reviewed, QWidget* parent)
    : QDialog(parent), reviewed_(std::move(reviewed)) {
  setWindowTitle(tr("Sheet set"));
  setWindowFlag(Qt::WindowMaximizeButtonHint);
  papers_ = new QComboBox;
  papers_->setAccessibleName(tr("Paper size"));
  list_ = new QListWidget;
  list_->setAccessibleName(tr("Sheets"));
  list_->setWordWrap(true);
  list_->setProperty("plan-text", true); // sheets are in English, whatever the window's language
  list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  canvas_ = new PaperCanvas;
  scroll_ = new QScrollArea;
  scroll_->setWidget(canvas_);
  scroll_->setAlignment(Qt::AlignCenter);
  scroll_->setBackgroundRole(QPalette::Mid);
  scroll_->setProperty("drawing", true); // looked at in parts
  auto* left = new QWidget;
  auto* column = new QVBoxLayout(left);
  column->addWidget(papers_);
  column->addWidget(list_);
  auto* split = new QSplitter;
  split->addWidget(left);
  split->addWidget(scroll_);
  split->setStretchFactor(1, 1);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close);
  const auto button = [&](const QString& text, auto work) {
    connect(buttons->addButton(text, QDialogButtonBox::ActionRole), &QPushButton::clicked, this,
            work);
  };
  button(tr("&Larger"), [this] { zoom(1.4); });
  button(tr("S&maller"), [this] { zoom(1 / 1.4); });
  button(tr("Save as P&DF..."), [this] { savePdf(); });
  button(tr("&Print..."), [this] { print(); });
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::close);
  auto* all = new QVBoxLayout(this);
  all->addWidget(split, 1);
  all->addWidget(buttons);
  resize(1200, 800);
  connect(list_, &QListWidget::currentRowChanged, this, &SheetPreview::showPage);
  fillPapers();
}

void SheetPreview::fillPapers() {
  for (const PaperSize& size : paperSizes()) {
    papers_->addItem(QString::fromUtf8(size.name.data(), static_cast<qsizetype>(size.name.size())),
                     QString::fromUtf8(size.key.data(), static_cast<qsizetype>(size.key.size())));
  }
  const bool metric = reviewed_->review.plan.project.units == UnitSystem::Metric;
  papers_->setCurrentIndex(papers_->findData(metric ? "a1" : "arch-d"));
  connect(papers_, &QComboBox::currentIndexChanged, this,
          [this] { setPaper(papers_->currentData().toString()); });
  setPaper(papers_->currentData().toString());
}

void SheetPreview::setPaper(const QString& key) {
  const int row = std::max(0, list_->currentRow());
  const QSignalBlocker quiet(list_);
  list_->clear();
  canvas_->look(nullptr, 1, {});
  try {
    pages_ = composeSheets(reviewed_->review, {key.toStdString(), 0, &builtinCatalog()});
  } catch (const std::exception& e) {
    pages_.clear();
    canvas_->look(nullptr, 1, errorWords(e));
    return;
  }
  for (const Page& page : pages_) {
    auto* item = new QListWidgetItem(QString::fromStdString(page.number + "  " + page.title));
    item->setFlags(item->flags() | Qt::ItemIsUserCheckable);
    item->setCheckState(Qt::Checked);
    list_->addItem(item);
  }
  constexpr int kMostWide = 340;
  list_->setMinimumWidth(std::min(kMostWide, list_->sizeHintForColumn(0) + 24));
  const int shown = std::min(row, list_->count() - 1);
  list_->setCurrentRow(shown);
  showPage(shown);
}

void SheetPreview::showPage(int row) {
  if (row < 0 || row >= static_cast<int>(pages_.size())) return;
  const Page& page = pages_[static_cast<std::size_t>(row)];
  const QSize room = scroll_->viewport()->size();
  const double fits = std::min((room.width() - 8) / page.width, (room.height() - 8) / page.height);
  canvas_->look(&page, std::max(fits, 0.4), {});
}

/// Only now is it known how much room a sheet has.
void SheetPreview::showEvent(QShowEvent* event) {
  QDialog::showEvent(event);
  layout()->activate();
  showPage(list_->currentRow());
}

void SheetPreview::zoom(double factor) {
  const int row = list_->currentRow();
  if (row < 0 || row >= static_cast<int>(pages_.size())) return;
  constexpr double kLeast = 0.3, kMost = 12; // pixels for a millimetre
  canvas_->look(&pages_[static_cast<std::size_t>(row)],
                std::clamp(canvas_->scale() * factor, kLeast, kMost), {});
}

std::vector<Page> SheetPreview::ticked() const {
  std::vector<Page> chosen;
  for (int i = 0; i < list_->count(); ++i) {
    if (list_->item(i)->checkState() == Qt::Checked)
      chosen.push_back(pages_[static_cast<std::size_t>(i)]);
  }
  return chosen;
}

bool SheetPreview::printTo(QPrinter& printer) const {
  const std::vector<Page> chosen = ticked();
  printer.setFullPage(true);
  QPainter painter;
  for (std::size_t i = 0; i < chosen.size(); ++i) {
    const Page& page = chosen[i];
    printer.setPageSize(QPageSize(QSizeF(page.width, page.height), QPageSize::Millimeter, QString(),
                                  QPageSize::ExactMatch));
    printer.setPageOrientation(QPageLayout::Portrait);
    if (i == 0 ? !painter.begin(&printer) : !printer.newPage()) return false;
    painter.resetTransform();
    painter.scale(printer.resolution() / 25.4, printer.resolution() / 25.4);
    paintPage(painter, page);
  }
  return !chosen.empty() && painter.end();
}

void SheetPreview::print() {
  QPrinter printer(QPrinter::HighResolution);
  QPrintDialog dialog(&printer, this);
  if (dialog.exec() != QDialog::Accepted) return;
  if (!printTo(printer)) {
    Talk().tellProblem(this, windowTitle(),
                       tr("Nothing was printed: tick a sheet at least, and "
                          "see that the printer takes this paper."));
  }
}

void SheetPreview::savePdf() {
  const QString path =
      Talk().askSaveFile(this, tr("Save the sheets"), tr("sheets.pdf"), tr("PDF (*.pdf)"));
  if (path.isEmpty()) return;
  try {
    writePdf(ticked(), pathOf(path), reviewed_->review.plan.project);
  } catch (const std::exception& e) {
    Talk().tellProblem(this, windowTitle(), errorWords(e));
  }
}

} // namespace sump
