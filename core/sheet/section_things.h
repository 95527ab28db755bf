#pragma once
// What is drawn on a long section that its notes must not hide or seem to be about. Private to
// core/sheet.

#include "core/sheet/marks.h"
#include "core/sheet/placer.h"
#include "core/sheet/view.h"

#include <vector>

namespace sump {

class SectionThings {
public:
  SectionThings(const SheetView& view, const std::vector<Mark>& marks);

  /// Without the places whose plates break a pipe; dearer where the plate takes away the ground's
  /// line, a baffle or a fitting, or a leader runs through another's pipe than `own`.
  std::vector<LabelCandidate> roundPipes(std::vector<LabelCandidate> places, const Id& own) const;
  /// At a baffle's foot, where a dot would not be seen.
  bool isUnderBaffle(Point2 p) const;
  /// In a pipe or a fitting: a leader to a level that ends there would tell that one's.
  bool isOnOther(Point2 target) const;

private:
  struct DrawnPipe {
    Id run;
    Ring outline;
    PaperBox extent;
  };
  bool hidesPipe(const PaperBox& plate) const;
  bool hidesSurface(const PaperBox& plate) const;
  bool isHidden(Point2 p) const;
  double onFittings(const PaperBox& plate) const;

  // All on the paper.
  std::vector<DrawnPipe> pipes_;
  std::vector<Polyline> surfaces_;
  std::vector<PaperBox> baffles_;
  std::vector<PaperBox> fittings_; ///< ends and parts
};

} // namespace sump
