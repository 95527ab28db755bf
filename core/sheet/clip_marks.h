#pragma once
// Cutting marks, still in the metres that they were drawn in, at the edge of a box. Private to
// core/sheet.

#include "core/sheet/clip.h"
#include "core/sheet/marks.h"

#include <vector>

namespace sump {

/// Adds what of the mark lies in the box: a circle by its centre, whole or not at all; a ring cut
/// along the edge; a line in as many parts as it has inside.
void keepInside(Mark mark, const PaperBox& box, std::vector<Mark>& kept);

/// As keepInside, but no line is drawn along the edge: what goes on beyond it stays open.
void keepOpenInside(const Mark& mark, const PaperBox& box, std::vector<Mark>& kept);

} // namespace sump
