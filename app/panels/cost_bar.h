#pragma once
// Under the list of what to buy: a price list of the user's own, what it makes of the newest review
// by trade and in all, and how many items it has no price for.

#include "app/panels/in_front.h"
#include "app/window/document.h"
#include "core/exchange/prices.h"

#include <QWidget>

#include <optional>

class QLabel;
class QPushButton;

namespace sump {

class Talk;

class CostBar : public QWidget, public Fronted {
  Q_OBJECT

public:
  /// Takes up the price list of the last time. Both must outlive the bar.
  CostBar(Document& document, Talk& talk, QWidget* parent = nullptr);
  void askPrices();
  /// Empty: no price list any more.
  void usePrices(const QString& path);
  void cameToFront() override { bringUpToDate(); }

protected:
  void showEvent(QShowEvent* event) override;

private:
  void refresh();
  void bringUpToDate();
  void take(const ReviewedPtr& of, const QString& text, const QString& tip);
  bool read(const QString& path, QString& problem);
  void say(const QString& text, const QString& tip);

  Document& document_;
  Talk& talk_;
  QString path_;
  std::optional<PriceList> prices_;
  ReviewedPtr asked_; ///< whose sum is being worked out, or shown
  QPushButton* choose_ = nullptr;
  QPushButton* drop_ = nullptr;
  QLabel* sum_ = nullptr;
};

/// The list with the bar under it, for the dock.
QWidget* listWithCosts(QWidget* list, Document& document, Talk& talk, QWidget* parent);

} // namespace sump
