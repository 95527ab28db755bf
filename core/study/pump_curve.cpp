// The pump's points, straight between them and nothing beyond.

#include "core/study/hydraulics_parts.h"

namespace sump {

namespace {

/// The point before `flow` and the share of the way to the next.
std::optional<std::pair<std::size_t, double>> placeOn(const std::vector<PumpPoint>& curve,
                                                      Flow flow) {
  for (std::size_t i = 1; i < curve.size(); ++i) {
    if (flow < curve[i - 1].flow || flow > curve[i].flow) continue;
    const Flow span = curve[i].flow - curve[i - 1].flow;
    if (!(span.value() > 0)) continue;
    return std::pair(i - 1, ((flow - curve[i - 1].flow) / span).value());
  }
  return std::nullopt;
}

} // namespace

std::optional<Length> headAt(const std::vector<PumpPoint>& curve, Flow flow) {
  const auto place = placeOn(curve, flow);
  if (!place) return std::nullopt;
  const Length a = curve[place->first].head, b = curve[place->first + 1].head;
  return a + (b - a) * place->second;
}

std::optional<Length> npshRequiredAt(const std::vector<PumpPoint>& curve, Flow flow) {
  const auto place = placeOn(curve, flow);
  if (!place) return std::nullopt;
  const auto a = curve[place->first].npshRequired, b = curve[place->first + 1].npshRequired;
  if (!a || !b) return std::nullopt;
  return *a + (*b - *a) * place->second;
}

} // namespace sump
