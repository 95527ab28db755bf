#include "app/canvas/tools/entry.h"

#include "app/canvas/tools/tool.h"
#include "core/units/expression.h"

namespace sump {

namespace {

Parsed<double> bare(const Parsed<Length>& parsed) {
  if (!parsed) return {std::nullopt, parsed.error};
  return {inMetres(*parsed.value), {}};
}

Parsed<double> parseShare(const QString& text) {
  QString digits = text.trimmed();
  if (digits.endsWith('%')) digits.chop(1);
  bool good = false;
  const double v = digits.trimmed().replace(',', '.').toDouble(&good) / 100;
  if (!good || v < 0 || v > 1) {
    return {std::nullopt, toolText("Type a number from 0 to 100 %.").toStdString()};
  }
  return {v, {}};
}

} // namespace

Parsed<double> parseEntry(EntryUnit unit, const QString& text, UnitSystem units) {
  const std::string raw = text.trimmed().toStdString();
  switch (unit) {
  case EntryUnit::Length:
  case EntryUnit::Elevation:
    return bare(evaluateLength(raw, units));
  case EntryUnit::Bearing:
    return parseBearing(raw);
  case EntryUnit::Angle: {
    const Parsed<Angle> angle = parseAngle(raw);
    if (!angle) return {std::nullopt, angle.error};
    return {inRadians(*angle.value), {}};
  }
  case EntryUnit::Share:
    break;
  }
  return parseShare(text);
}

std::vector<EntryField> placeFields(bool hasLast) {
  std::vector<EntryField> fields;
  if (hasLast) {
    fields.push_back({EntryKey::Length, EntryUnit::Length, toolText("Length"),
                      toolText("From the last corner")});
    fields.push_back({EntryKey::Bearing, EntryUnit::Bearing, toolText("Bearing"),
                      toolText("Degrees clockwise from true north, which the north arrow "
                               "shows, or like N 45 E; left empty, the pointer gives it")});
  }
  fields.push_back({EntryKey::East, EntryUnit::Length, toolText("East"),
                    toolText("Site coordinate; left empty, the pointer gives it")});
  fields.push_back({EntryKey::North, EntryUnit::Length, toolText("North"),
                    toolText("Site coordinate; left empty, the pointer gives it")});
  return fields;
}

std::optional<double> typedValue(const Entry& entry, EntryKey key) {
  const auto it = entry.find(key);
  return it == entry.end() ? std::nullopt : std::optional(it->second);
}

TypedPoint typedPoint(const Entry& entry, Angle trueNorth) {
  std::optional<double> bearing = typedValue(entry, EntryKey::Bearing);
  if (bearing) bearing = fromPlanNorth(*bearing, trueNorth);
  return {typedValue(entry, EntryKey::Length), bearing, typedValue(entry, EntryKey::East),
          typedValue(entry, EntryKey::North)};
}

} // namespace sump
