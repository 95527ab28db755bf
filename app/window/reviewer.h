#pragma once
// Reviews plans on a thread of its own. One plan in, the latest wins: a plan that is replaced
// before its turn is never reviewed. Results carry the revision that they belong to.

#include "core/rules/review.h"
#include "core/sheet/marks.h"

#include <QObject>

#include <condition_variable>
#include <cstdint>
#include <memory>
#include <mutex>
#include <thread>

namespace sump {

/// Names one state of the plan; 0 is none.
using Revision = std::uint64_t;

/// A review and the drawing that goes with it. Immutable once made.
struct Reviewed {
  Revision revision = 0;
  Review review;
  std::vector<Mark> marks;
};
using ReviewedPtr = std::shared_ptr<const Reviewed>;

/// The work itself, also for callers that want the answer at once.
ReviewedPtr reviewNow(const Plan& plan, Revision revision, const Catalog& catalog);

class Reviewer : public QObject {
  Q_OBJECT

public:
  /// `catalog` must outlive the reviewer.
  explicit Reviewer(const Catalog& catalog, QObject* parent = nullptr);
  ~Reviewer() override;
  Reviewer(const Reviewer&) = delete;
  Reviewer& operator=(const Reviewer&) = delete;

  void ask(std::shared_ptr<const Plan> plan, Revision revision);

signals:
  void done(sump::ReviewedPtr reviewed);
  /// A fault of the program, told rather than hidden.
  void failed(const QString& reason);

private:
  void work();
  void reviewOne(const Plan& plan, Revision revision);

  const Catalog& catalog_;
  std::mutex mutex_;
  std::condition_variable wake_;
  std::shared_ptr<const Plan> waiting_;
  Revision waitingRevision_ = 0;
  bool stopping_ = false;
  std::thread thread_; // last: it uses everything above
};

} // namespace sump
