#include "app/window/start_page.h"

#include "app/window/appearance.h"
#include "app/window/window_style.h"

#include <QCommandLinkButton>
#include <QDir>
#include <QEvent>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QScrollArea>
#include <QStyleOptionButton>
#include <QStylePainter>
#include <QVBoxLayout>

namespace sump {

namespace {

QLabel* heading(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  QFont font = label->font();
  font.setBold(true);
  font.setPointSizeF(font.pointSizeF() * 1.2);
  label->setFont(font);
  return label;
}

constexpr const char* kIcon = "icon-name";
constexpr int kWayWidth = 300; // most descriptions on one line
constexpr int kRowSpacing = 4; // a column would take the spacing of the columns

/// Title and description close together: the toolkit's own button leaves as much room again round
/// them as they take.
class Way : public QCommandLinkButton {
public:
  using QCommandLinkButton::QCommandLinkButton;

  int heightForWidth(int width) const override {
    const QRect lines = fontMetrics().boundingRect(QRect(0, 0, textWidth(width), QWIDGETSIZE_MAX),
                                                   Qt::TextWordWrap, description());
    return 2 * kMargin + QFontMetrics(titleFont()).height() + lines.height();
  }
  QSize sizeHint() const override {
    const int title = QFontMetrics(titleFont()).size(Qt::TextShowMnemonic, text()).width();
    const int wide = std::max(kWayWidth, title + iconSize().width() + 3 * kMargin);
    return {wide, heightForWidth(wide)};
  }
  QSize minimumSizeHint() const override { return sizeHint(); }

protected:
  void paintEvent(QPaintEvent*) override {
    QStylePainter painter(this);
    QStyleOptionButton option;
    initStyleOption(&option);
    const bool near = option.state.testFlag(QStyle::State_MouseOver) || isDown();
    if (near) painter.fillRect(rect(), palette().color(QPalette::Midlight));
    if (hasFocus()) {
      painter.setPen(focusColor(palette()));
      painter.drawRect(rect().adjusted(0, 0, -1, -1));
    }
    const QIcon::Mode mode = isEnabled() ? QIcon::Normal : QIcon::Disabled;
    icon().paint(&painter, QRect(QPoint(kMargin, kMargin), iconSize()), Qt::AlignCenter, mode);
    painter.setPen(palette().color(QPalette::WindowText));
    painter.setFont(titleFont());
    QRect place(iconSize().width() + 2 * kMargin, kMargin, textWidth(width()),
                painter.fontMetrics().height());
    painter.drawText(place, Qt::TextShowMnemonic, text());
    painter.setFont(font());
    place.setTop(place.bottom() + 1);
    place.setBottom(height());
    painter.drawText(place, Qt::TextWordWrap, description());
  }

private:
  static constexpr int kMargin = 6;
  QFont titleFont() const {
    QFont bold = font();
    bold.setBold(true);
    return bold;
  }
  int textWidth(int width) const { return width - iconSize().width() - 3 * kMargin; }
};

QCommandLinkButton* way(const QString& text, const QString& what, const char* name,
                        const char* icon) {
  auto* button = new Way(QString(text).replace('&', "&&"), what);
  button->setObjectName(name);
  button->setProperty(kIcon, icon);
  button->setIconSize({20, 20});
  button->setFixedHeight(button->heightForWidth(kWayWidth));
  return button;
}

} // namespace

StartPage::StartPage(QWidget* parent) : QWidget(parent) {
  auto* body = new QWidget;
  auto* columns = new QHBoxLayout(body);
  columns->setContentsMargins(32, 32, 32, 32);
  columns->setSpacing(40);
  auto* begin = new QVBoxLayout;
  begin->setSpacing(kRowSpacing);
  begin->addWidget(heading(tr("Begin"), body));
  auto* guided = way(tr("In six answers"), tr("Site, levels, flow: every answer may wait"),
                     "start-guided", "boundary");
  auto* empty = way(tr("Empty plan"), tr("Draw from nothing"), "start-empty", "new");
  auto* open = way(tr("Open a plan"), tr("From its file"), "start-open", "open");
  for (QCommandLinkButton* button : {guided, empty, open})
    begin->addWidget(button);
  begin->addSpacing(16);
  begin->addWidget(heading(tr("Samples"), body));
  const std::pair<const char*, QString> samples[] = {{"transit-depot.sump", tr("Transit depot")},
                                                     {"boatyard-pad.sump", tr("Boatyard pad")},
                                                     {"ferry-quay.sump", tr("Ferry quay")}};
  for (const auto& [file, title] : samples) {
    auto* button = way(title, tr("Opens as a copy"), file, "sheet");
    const QString resource = QString(":/samples/") + file;
    connect(button, &QCommandLinkButton::clicked, this,
            [this, resource] { emit sampleWanted(resource); });
    begin->addWidget(button);
  }
  begin->addStretch(1);
  columns->addLayout(begin);
  recent_ = new QVBoxLayout;
  recent_->setSpacing(kRowSpacing);
  columns->addLayout(recent_, 1);
  auto* scroll = new QScrollArea(this);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setWidget(body);
  auto* whole = new QVBoxLayout(this);
  whole->setContentsMargins(0, 0, 0, 0);
  whole->addWidget(scroll);
  connect(guided, &QCommandLinkButton::clicked, this, &StartPage::guidedWanted);
  connect(empty, &QCommandLinkButton::clicked, this, &StartPage::emptyWanted);
  connect(open, &QCommandLinkButton::clicked, this, &StartPage::openWanted);
}

void StartPage::setRecent(const QStringList& files) {
  while (QLayoutItem* item = recent_->takeAt(0)) {
    delete item->widget();
    delete item;
  }
  recent_->addWidget(heading(tr("Recent plans"), this));
  for (const QString& file : files) {
    const QFileInfo info(file);
    QCommandLinkButton* button =
        way(info.fileName(), QDir::toNativeSeparators(info.absolutePath()), "start-recent", "open");
    button->setEnabled(info.exists());
    button->setProperty("plan-text", true); // a name that the user gave, in no language
    connect(button, &QCommandLinkButton::clicked, this, [this, file] { emit recentWanted(file); });
    recent_->addWidget(button);
  }
  if (files.isEmpty()) recent_->addWidget(new QLabel(tr("None yet"), this));
  recent_->addStretch(1);
  drawIcons();
}

void StartPage::drawIcons() {
  for (auto* button : findChildren<QCommandLinkButton*>())
    button->setIcon(themedIcon(button->property(kIcon).toString(), palette()));
}

void StartPage::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) drawIcons();
}

} // namespace sump
