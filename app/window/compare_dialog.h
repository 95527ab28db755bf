#pragma once
// What changed since an earlier plan, beside the drawing: a click on a row selects the object
// there.

#include "app/window/reviewer.h"
#include "core/plan/items.h"
#include "core/study/plan_changes.h"

#include <QDialog>

#include <set>

namespace sump {

class Document;
class ObjectTable;
class Talk;

class CompareDialog : public QDialog {
  Q_OBJECT

public:
  /// Keeps the review: what is listed is what is written. `talk` must outlive it.
  CompareDialog(ReviewedPtr reviewed, PlanComparison comparison, Talk& talk, QWidget* parent);
  const PlanComparison& comparison() const { return comparison_; }
  ObjectTable& changes() { return *changes_; }
  ObjectTable& bill() { return *bill_; }
  void saveList();
  void saveSheets();

signals:
  void chosen(const std::set<sump::Id>& objects);

private:
  void fill();
  /// Asks for a file and writes it; tells why it cannot.
  template <class Write>
  void save(const QString& title, const QString& suffix, const QString& filter, Write write);

  ReviewedPtr reviewed_;
  PlanComparison comparison_;
  Talk& talk_;
  ObjectTable* changes_ = nullptr;
  ObjectTable* bill_ = nullptr;
};

/// Asks for the earlier plan's file and compares the document with it; the caller shows the
/// dialog, which deletes itself. Null when the user gives up or the file cannot be used, which is
/// told.
CompareDialog* askComparison(Document& document, Talk& talk, QWidget* parent);

} // namespace sump
