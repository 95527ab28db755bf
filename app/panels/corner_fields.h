#pragma once
// Fields for the corners of outlines and paths.

#include "app/panels/field.h"

namespace sump {

/// Corner by corner; `least` of them stay: 3 for an outline, 2 for a path.
template <class T>
void cornerFieldsOf(FieldMaker<T>& make, std::vector<Point2> T::*points, UnitSystem units,
                    std::size_t least) {
  const std::size_t count = (make.value().*points).size();
  make.heading(fieldText("Corners"));
  for (std::size_t i = 0; i < count; ++i) {
    make.template typed<double>(
        fieldText("%1 east").arg(i + 1), [points, i](T& t) -> double& { return (t.*points)[i].x; },
        coordinateWriting(units));
    make.template typed<double>(
        fieldText("%1 north").arg(i + 1), [points, i](T& t) -> double& { return (t.*points)[i].y; },
        coordinateWriting(units));
  }
  make.button(fieldText("Add a corner"), [points, least](const Plan&, T& t) {
    std::vector<Point2>& list = t.*points;
    // Between the last two of a path, or the last and the first of an outline.
    const Point2 next = least >= 3 ? list.front() : list[list.size() - 2];
    const Point2 middle = lerp(list.back(), next, 0.5);
    list.insert(least >= 3 ? list.end() : list.end() - 1, middle);
  });
  if (count > least) {
    make.button(fieldText("Remove the last corner"),
                [points](const Plan&, T& t) { (t.*points).pop_back(); });
  }
}

} // namespace sump
