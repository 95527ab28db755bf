#pragma once
// Reviews plans on a thread of its own. One plan in, the latest wins: a plan that is replaced
// before its turn is never reviewed. Results carry the revision that they belong to.

#include "app/panels/table_row.h"
#include "core/rules/review.h"
#include "core/sheet/marks.h"

#include <QObject>

#include <condition_variable>
#include <cstdint>
#include <memory>
#include <mutex>
#include <thread>
#include <vector>

namespace sump {

/// Names one state of the plan; 0 is none.
using Revision = std::uint64_t;

/// Counts what was asked of a reviewer; 0 is nothing.
using Ticket = std::uint64_t;

/// A review and what goes with it on the screen. Immutable once made.
struct Reviewed {
  Revision revision = 0;
  Ticket ticket = 0; ///< by which it was asked for
  Review review;
  std::vector<Mark> marks;
  std::vector<TableRow> findingRows; ///< one a finding
};
using ReviewedPtr = std::shared_ptr<const Reviewed>;

/// The work itself, also for callers that want the answer at once.
ReviewedPtr reviewNow(const Plan& plan, Revision revision, const Catalog& catalog,
                      Ticket ticket = 0);

class Reviewer : public QObject {
  Q_OBJECT

public:
  /// `catalog` must outlive the reviewer.
  explicit Reviewer(const Catalog& catalog, QObject* parent = nullptr);
  ~Reviewer() override;
  Reviewer(const Reviewer&) = delete;
  Reviewer& operator=(const Reviewer&) = delete;

  /// Tickets rise by one.
  Ticket ask(std::shared_ptr<const Plan> plan, Revision revision);
  /// Lets a review go on the other thread: that of a large plan takes longer than a frame.
  void letGo(ReviewedPtr reviewed);

signals:
  void done(sump::ReviewedPtr reviewed);
  /// A fault of the program, told rather than hidden.
  void failed(const QString& reason, sump::Ticket ticket);

private:
  void work();
  void reviewOne(const Plan& plan, Revision revision, Ticket ticket);

  const Catalog& catalog_;
  std::mutex mutex_;
  std::condition_variable wake_;
  std::shared_ptr<const Plan> waiting_;
  Revision waitingRevision_ = 0;
  Ticket lastTicket_ = 0; ///< of what waits, or waited last
  std::vector<ReviewedPtr> gone_;
  bool stopping_ = false;
  std::thread thread_; // last: it uses everything above
};

} // namespace sump
