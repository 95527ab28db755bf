#pragma once
// 'What is wrong': findings of the newest review, errors first.

#include "app/panels/tables.h"
#include "app/window/reviewer.h"

#include <QWidget>

#include <optional>

class QStackedLayout;

namespace sump {

class FindingsPanel : public QWidget {
  Q_OBJECT

public:
  explicit FindingsPanel(QWidget* parent = nullptr);
  void show(const ReviewedPtr& reviewed);
  void setDark(bool dark);
  ObjectTable& table() { return *table_; }
  /// `2 errors, 1 warning, 5 notes`.
  static QString summary(const Review& review);

signals:
  void chosen(const std::set<sump::Id>& objects, std::optional<sump::Point2> place);

private:
  void fillIcons();
  void showDetail();

  ReviewedPtr reviewed_;
  bool dark_ = false;
  QStackedLayout* stack_ = nullptr;
  ObjectTable* table_ = nullptr;
  QLabel* detail_ = nullptr;
};

} // namespace sump
