#pragma once
// The ground that a trench takes up, its bends with it.

#include "core/study/earth.h"

namespace sump {

/// At a bend the sides of both pieces go on until they meet; without this outer corner the outline
/// of the pieces has a notch there. Empty where the line goes straight on.
Ring trenchCorner(const TrenchPoint& before, const TrenchPoint& bend, const TrenchPoint& after);
/// Of a stretch: its pieces and its corners.
std::vector<Ring> trenchOutlines(const TrenchStretch& stretch);

} // namespace sump
