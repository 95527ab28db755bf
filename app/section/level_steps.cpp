#include "app/section/level_steps.h"

#include "app/plain_text.h"
#include "core/units/print.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kLeastPixels = 3, kCatchPixels = 6;

QString words(const char* text) {
  return QCoreApplication::translate("Section", text);
}
const ProfilePoint* pointOf(const RunProfile& run, int vertex) {
  const auto found = std::ranges::find(run.points, vertex, &ProfilePoint::vertex);
  return found == run.points.end() ? nullptr : &*found;
}

/// The next point in a direction whose level does not follow from its neighbours.
const ProfilePoint* fixedBeyond(const RunProfile& run, std::size_t index, int direction) {
  const auto last = static_cast<int>(run.points.size()) - 1;
  for (int i = static_cast<int>(index) + direction; i >= 0 && i <= last; i += direction) {
    const ProfilePoint& p = run.points[static_cast<std::size_t>(i)];
    if (p.typed || i == 0 || i == last) return &p;
  }
  return nullptr;
}

} // namespace

Length nudgeStep(UnitSystem units) {
  return units == UnitSystem::Metric ? millimetres(5) : feet(0.01);
}

Length levelStep(double pixelsPerMetre, UnitSystem units) {
  const Length finest = nudgeStep(units);
  for (double k : {1.0, 2.0, 5.0, 10.0, 20.0, 50.0}) {
    if (inMetres(k * finest) * pixelsPerMetre >= kLeastPixels) return k * finest;
  }
  return 100.0 * finest;
}

Length neatLevel(Length level, double pixelsPerMetre, UnitSystem units,
                 const std::vector<Length>& catches) {
  const auto away = [&](Length other) { return std::abs(inMetres(other - level)); };
  const auto nearest = std::ranges::min_element(catches, {}, away);
  if (nearest != catches.end() && away(*nearest) * pixelsPerMetre <= kCatchPixels) return *nearest;
  const Length step = levelStep(pixelsPerMetre, units);
  return std::round(inMetres(level) / inMetres(step)) * step;
}

std::vector<Length> catchLevels(const SectionDrawing& drawing, const SectionHandle& dragged) {
  std::vector<Length> levels;
  for (const SectionHandle& h : drawing.handles) {
    // A graded corner of the same run moves along: it cannot be met.
    if (!h.same(dragged) && (h.run != dragged.run || h.typed || h.held)) levels.push_back(h.invert);
  }
  const auto water = [&](const std::vector<ProfileVault>& vaults) {
    for (const ProfileVault& v : vaults) {
      for (const ProfileChamber& c : v.chambers) {
        if (c.rest) levels.push_back(*c.rest);
      }
    }
  };
  if (drawing.line) water(drawing.line->vaults);
  if (drawing.train) water(drawing.train->vaults);
  return levels;
}

SlopesAt slopesAt(const RunProfile& run, int vertex, Length level) {
  SlopesAt slopes;
  const ProfilePoint* here = pointOf(run, vertex);
  if (here == nullptr) return slopes;
  const auto index = static_cast<std::size_t>(here - run.points.data());
  const auto fall = [&](const ProfilePoint* other, bool before) -> std::optional<double> {
    const double length = other == nullptr ? 0 : std::abs(other->station - here->station);
    if (length < 1e-6) return std::nullopt;
    const double drop = inMetres(other->invert - level);
    return (before ? drop : -drop) / length;
  };
  slopes.before = fall(fixedBeyond(run, index, -1), true);
  slopes.after = fall(fixedBeyond(run, index, 1), false);
  return slopes;
}

QString levelReadOut(const RunProfile* run, int vertex, Length level, UnitSystem units) {
  QStringList parts{words("INV %1").arg(q(printElevation(level, units)))};
  const auto slope = [&](const QString& text, std::optional<double> value) {
    if (!value) return;
    const QString way = *value < 0 ? words("rising %1") : words("falling %1");
    parts << text.arg(way.arg(q(printSlope(std::abs(*value), units))));
  };
  if (run != nullptr) {
    const SlopesAt slopes = slopesAt(*run, vertex, level);
    slope(words("before: %1"), slopes.before);
    slope(words("after: %1"), slopes.after);
    const ProfilePoint* here = pointOf(*run, vertex);
    if (here != nullptr && here->ground && here->cover)
      parts << words("cover %1").arg(q(printShort(*here->cover + here->invert - level, units)));
  }
  return parts.join("    ");
}

} // namespace sump
