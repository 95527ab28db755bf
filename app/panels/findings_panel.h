#pragma once
// 'What is wrong': findings of the newest review, errors first.

#include "app/panels/in_front.h"
#include "app/panels/tables.h"
#include "app/window/reviewer.h"

#include <QWidget>

#include <optional>

class QPushButton;
class QStackedLayout;
class QVBoxLayout;

namespace sump {

class FindingFilter;

class FindingsPanel : public QWidget, public Fronted {
  Q_OBJECT

public:
  explicit FindingsPanel(QWidget* parent = nullptr);
  /// At once if it can be seen, else when it comes to the front.
  void show(const ReviewedPtr& reviewed);
  void cameToFront() override;
  void setDark(bool dark);
  /// The finding of a row as listed; null where there is none.
  const Finding* findingAt(int row) const;
  ObjectTable& table() { return *table_; }
  /// `2 errors, 1 warning, 5 notes`.
  static QString summary(const Review& review);

signals:
  /// The user answers for a finding, or no longer does.
  void acceptWanted(const sump::Finding& finding);
  void takeBackWanted(const sump::Finding& finding);
  void chosen(const std::set<sump::Id>& objects, std::optional<sump::Point2> place);

protected:
  void showEvent(QShowEvent* event) override;

private:
  void makeTop(QWidget* parent, QVBoxLayout& column);
  void list();
  void fillIcons();
  void showDetail();

  ReviewedPtr newest_;
  ReviewedPtr reviewed_;            ///< the one that is listed
  std::vector<std::size_t> listed_; ///< findings of the review, by row
  bool dark_ = false;
  FindingFilter* filter_ = nullptr;
  QPushButton* accept_ = nullptr;
  QPushButton* takeBack_ = nullptr;
  QStackedLayout* stack_ = nullptr;
  ObjectTable* table_ = nullptr;
  QLabel* detail_ = nullptr;
};

} // namespace sump
