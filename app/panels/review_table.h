#pragma once
// A list of the newest review that takes longer to make than a frame: made aside while it can be
// seen, shown as old until then.

#include "app/panels/in_front.h"
#include "app/panels/tables.h"
#include "app/window/document.h"

#include <QTimer>

#include <functional>

namespace sump {

class ReviewTable : public ObjectTable, public Fronted {
  Q_OBJECT

public:
  /// Runs aside, so it may use the review only.
  using Rows = std::function<std::vector<TableRow>(const Review&)>;

  /// `document` must outlive the table. `wide`: as for ObjectTable::fill.
  ReviewTable(Document& document, const QStringList& headings, const QString& accessibleName,
              Rows makeRows, int wide, QWidget* parent = nullptr);
  void cameToFront() override { bringUpToDate(); }
  /// Of the state that the rows belong to; 0 before the first.
  Revision shownRevision() const { return shownRevision_; }

protected:
  void showEvent(QShowEvent* event) override;

private:
  void bringUpToDate();
  void take(const ReviewedPtr& of, const std::vector<TableRow>& rows);
  void planChanged();
  bool isBehind() const { return shownRevision_ != document_.revision(); }

  Document& document_;
  Rows makeRows_;
  int wideColumn_;
  ReviewedPtr asked_;
  Revision shownRevision_ = 0;
  QTimer tellOld_;
};

} // namespace sump
