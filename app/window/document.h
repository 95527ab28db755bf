#pragma once
// The plan that a window works on: its states for undo and redo, the file it belongs to, and the
// newest review of it. Knows no widget.

#include "app/window/reviewer.h"
#include "app/window/side_work.h"
#include "core/plan/consistency.h"

#include <QObject>
#include <QString>

#include <functional>
#include <memory>
#include <optional>
#include <vector>

namespace sump {

using PlanPtr = std::shared_ptr<const Plan>;

class Document : public QObject {
  Q_OBJECT

public:
  explicit Document(const Catalog& catalog, QObject* parent = nullptr);

  const Catalog& catalog() const { return catalog_; }
  /// The committed plan.
  const Plan& plan() const { return *states_[current_].plan; }
  PlanPtr shared() const { return states_[current_].plan; }
  /// What is to be seen: the preview while a gesture runs, else the committed plan.
  const Plan& shown() const { return preview_ ? *preview_ : plan(); }
  /// Of what is shown. Every committed state keeps its number for good, also through undo and redo.
  Revision revision() const { return preview_ ? previewRevision_ : states_[current_].revision; }

  Revision committedRevision() const { return states_[current_].revision; }
  bool isPreviewing() const { return preview_ != nullptr; }

  /// Makes `next` the current state, as one step of undo. A plan that equals the current one is no
  /// step. A plan that is none (plan/consistency.h) is refused: its first problem is returned.
  std::optional<Problem> commit(const QString& step, Plan next);
  /// Shows `plan` without making it a step; nothing ends the preview.
  void preview(std::optional<Plan> plan);

  bool canUndo() const { return current_ > 0; }
  bool canRedo() const { return current_ + 1 < states_.size(); }
  QString undoStep() const; ///< what undo would take back
  QString redoStep() const;
  void undo();
  void redo();

  QString filePath() const { return filePath_; }
  /// File name for titles; `New plan` when there is none.
  QString displayName() const;
  bool isModified() const { return states_[current_].revision != savedRevision_; }

  void startNew(Plan plan);
  /// Throws InputError and changes nothing when the file cannot be used.
  void open(const QString& path);
  /// A plan that a crash cut short: it counts as modified.
  void resume(Plan plan, const QString& path);
  /// The file is no longer what was saved or read.
  void fileDiffers();
  /// Throws InputError; the plan then still counts as modified.
  void save(const QString& path);

  /// The newest review, maybe of an earlier revision; null before the first.
  ReviewedPtr reviewed() const { return reviewed_; }
  bool isReviewStale() const { return !reviewed_ || reviewed_->revision != revision(); }
  /// A review that was under way when undo, redo or another file left its plan: not to be shown.
  bool isOfLeftPlan(const Reviewed& reviewed) const { return reviewed.ticket < oldestTicket_; }
  /// For what takes too long to be worked out of a review between two frames.
  SideWork& sideWork() { return sideWork_; }
  /// Nothing is being worked out: all that can be seen is of the newest state.
  bool isSettled() const { return !isReviewStale() && !sideWork_.isBusy(); }
  /// Reviews the committed plan now if the newest review is not of it; for export.
  ReviewedPtr freshReview();

signals:
  /// The shown plan, the steps, the file or the modified state changed.
  void changed();
  /// Another file or a new plan: views should fit and forget the selection.
  void replaced();
  void reviewArrived();
  void reviewFailed(const QString& reason);

private:
  struct State {
    Revision revision = 0;
    PlanPtr plan;
    QString step; ///< how it came about
  };
  void become(Plan plan, const QString& path);
  void step(std::size_t to);
  void announce();
  void take(const ReviewedPtr& reviewed);
  void replaceReview(ReviewedPtr reviewed);
  void forgetEarlier();

  const Catalog& catalog_;
  Reviewer reviewer_;
  SideWork sideWork_;
  std::vector<State> states_;
  std::size_t current_ = 0;
  Revision lastRevision_ = 0;
  Revision savedRevision_ = 0;
  PlanPtr preview_;
  Revision previewRevision_ = 0;
  QString filePath_;
  ReviewedPtr reviewed_;
  Ticket lastTicket_ = 0;   ///< of the newest question
  Ticket oldestTicket_ = 0; ///< reviews asked for before are of plans that were left
};

} // namespace sump
