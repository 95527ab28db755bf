#include "core/plan/edits_levels.h"

namespace sump {

namespace {

/// The place of a point's level in its run (Run or const Run); null for a point that is not there.
template <class AnyRun> auto invertIn(AnyRun& run, int vertex) -> decltype(&run.from.invert) {
  const int corners = static_cast<int>(run.vertices.size());
  if (vertex == -1) return &run.from.invert;
  if (vertex == corners) return &run.to.invert;
  if (vertex < 0 || vertex > corners) return nullptr;
  return &run.vertices[static_cast<std::size_t>(vertex)].invert;
}

bool targetKnowsLevel(const RunEnd& end) {
  return end.kind != EndKind::Free && end.kind != EndKind::Chamber;
}

} // namespace

std::optional<Length> statedInvert(const Run& run, int vertex) {
  const std::optional<Length>* invert = invertIn(run, vertex);
  return invert == nullptr ? std::nullopt : *invert;
}

bool mayBeGraded(const Run& run, int vertex) {
  const int corners = static_cast<int>(run.vertices.size());
  if (vertex == -1) return targetKnowsLevel(run.from);
  if (vertex == corners) return targetKnowsLevel(run.to);
  return vertex >= 0 && vertex < corners;
}

Plan setInvert(const Plan& plan, std::string_view id, int vertex, std::optional<Length> invert) {
  const Run* run = plan.runs.find(id);
  if (run == nullptr) return plan;
  Run changed = *run;
  std::optional<Length>* place = invertIn(changed, vertex);
  if (place == nullptr) return plan;
  *place = invert;
  Plan next = plan;
  next.runs.put(std::move(changed));
  return next;
}

Plan shiftInverts(const Plan& plan, std::string_view id, Length by) {
  const Run* run = plan.runs.find(id);
  if (run == nullptr) return plan;
  Run changed = *run;
  const auto shift = [by](std::optional<Length>& invert) {
    if (invert) *invert += by;
  };
  shift(changed.from.invert);
  shift(changed.to.invert);
  shift(changed.from.legEnd);
  shift(changed.to.legEnd);
  for (Vertex& vertex : changed.vertices)
    shift(vertex.invert);
  Plan next = plan;
  next.runs.put(std::move(changed));
  return next;
}

} // namespace sump
