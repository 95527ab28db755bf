#pragma once
// What the long section shows of one review: the vault train or one line, its marks and texts, and
// the points whose level can be changed. Knows no widget.

#include "core/rules/review.h"
#include "core/sheet/section_marks.h"

#include <QString>

#include <optional>
#include <vector>

namespace sump {

enum class SectionKind { Train, Line };

/// A point of a run whose level can be dragged or typed.
struct SectionHandle {
  Id run;
  int vertex = kNoVertex; ///< as RunPoint::vertex
  double station = 0;
  Length invert;
  bool typed = false; ///< the plan states the level; else it is graded
  /// The level is that of the drain, port, sewer, wash or line that the end hangs on: it can be
  /// typed, not dragged.
  bool held = false;
  bool same(const SectionHandle& other) const { return run == other.run && vertex == other.vertex; }
};

struct SectionDrawing {
  SectionKind kind = SectionKind::Train;
  Id run; ///< of a line
  UnitSystem units = UnitSystem::UsCustomary;
  std::optional<RunProfile> line;
  std::optional<TrainProfile> train;
  SectionExtent extent;
  std::vector<SectionNote> notes;
  std::vector<SectionHandle> handles; ///< in order of station, upper before lower
  bool empty() const { return !line && !train; }
  std::vector<Mark> marks(const SectionPlane& plane) const;
  /// Grade at a station; nothing where it is not known.
  std::optional<Length> groundAt(double station) const;
};

/// `run` is of no meaning for the train. Empty where there is nothing to show.
SectionDrawing sectionDrawing(const Review& review, const Catalog& catalog, SectionKind kind,
                              const Id& run);

/// `WW-1, corner 2` or `WW-1, start`.
QString handleName(const Plan& plan, const SectionHandle& handle);

} // namespace sump
