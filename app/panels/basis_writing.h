#pragma once
// How the quantities of the basis are typed and printed, beyond those of field.h.

#include "app/panels/field.h"

namespace sump {

Writing<Flow> flowWriting(UnitSystem units);
Writing<Pressure> pressureWriting(UnitSystem units);
Writing<Volume> volumeWriting(UnitSystem units);
Writing<Temperature> temperatureWriting(UnitSystem units);
/// Head of water: a length.
Writing<Length> headWriting(UnitSystem units);
/// A plain number that is not negative.
Writing<double> numberWriting();
/// A concentration kept in kg/m3, shown in mg/L.
Writing<double> concentrationWriting();
/// A whole number from 1 up, with a unit behind it when printed (` V`, or nothing).
Writing<int> countWriting(const QString& unit);
/// `east, north` on the site: a comma with a space between them.
Writing<Point2> placeWriting(UnitSystem units);
/// Places with `;` between them; empty text is none.
Writing<std::vector<Point2>> placesWriting(UnitSystem units);

} // namespace sump
