#pragma once
// The plan view as marks in site metres, each tagged with the object it shows. The sheet maps them
// to paper, the canvas to the screen; neither decides again what a vault looks like.

#include "core/sheet/style.h"
#include "core/study/study.h"

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

struct Mark {
  Id object;
  Layer layer = Layer::Run;
  std::vector<Point2> points; ///< site metres; two or more
  bool closed = false;
  bool round = false; ///< a circle: points[0] centre, points[1] on the rim
  std::optional<LineStyle> line;
  std::optional<FillStyle> fill;
};

/// In drawing order.
std::vector<Mark> planMarks(const Plan& plan, const Study& study);

} // namespace sump
