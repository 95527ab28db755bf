#pragma once
// The plan view as marks in site metres, each tagged with the object it shows. The sheet maps them
// to paper, the canvas to the screen; neither decides again what a vault looks like.

#include "core/sheet/style.h"
#include "core/study/study.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace sump {

/// From the bottom of the drawing up.
enum class Layer {
  Paving,
  Building,
  Boundary,
  Utility,
  Ground,
  Basin,
  Room,
  Vault,
  Baffle,
  Manway,
  Run,
  Part,
  Symbol,
  Note
};

/// Which symbol a mark is part of, and where that stands.
struct SymbolPlace {
  std::uint32_t number = 0; ///< the same for all marks of one symbol; 0: none
  Point2 at;
  double half = 0; ///< half its size, m
};

struct Mark {
  Id object;
  Layer layer = Layer::Run;
  std::vector<Point2> points; ///< site metres; two or more
  bool closed = false;
  bool round = false; ///< a circle: points[0] centre, points[1] on the rim
  std::optional<LineStyle> line;
  std::optional<FillStyle> fill;
  SymbolPlace symbol{};
};

/// In drawing order.
std::vector<Mark> planMarks(const Plan& plan, const Study& study);

} // namespace sump
