#pragma once
// Under the list of what to buy: a price list of the user's own, what it makes of the newest review
// by trade and in all, and how many items it has no price for.

#include "app/window/document.h"
#include "core/exchange/prices.h"

#include <QTimer>
#include <QWidget>

#include <optional>

class QLabel;
class QPushButton;

namespace sump {

class Talk;

class CostBar : public QWidget {
  Q_OBJECT

public:
  /// Takes up the price list of the last time. Both must outlive the bar.
  CostBar(Document& document, Talk& talk, QWidget* parent = nullptr);
  void askPrices();
  /// Empty: no price list any more.
  void usePrices(const QString& path);

protected:
  void showEvent(QShowEvent* event) override;

private:
  void refresh();
  bool read(const QString& path, QString& problem);
  void say(const QString& text, const QString& tip);

  Document& document_;
  Talk& talk_;
  QString path_;
  std::optional<PriceList> prices_;
  QTimer settle_; ///< a drag sends many reviews: the sum waits for the last
  QPushButton* choose_ = nullptr;
  QPushButton* drop_ = nullptr;
  QLabel* sum_ = nullptr;
};

/// The list with the bar under it, for the dock.
QWidget* listWithCosts(QWidget* list, Document& document, Talk& talk, QWidget* parent);

} // namespace sump
