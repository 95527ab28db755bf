#include "app/panels/basis_writing.h"

#include "app/panels/typed.h"

#include "core/units/temperature.h"

#include <cmath>

namespace sump {

namespace {

/// Up to three decimals, without trailing noughts.
QString plainNumber(double v) {
  QString text = shown(fixed(v, 3));
  while (text.endsWith('0'))
    text.chop(1);
  if (text.endsWith('.')) text.chop(1);
  return text;
}

/// A number with decimal point or comma; the unit behind it, if any, must be `unit`.
Parsed<double> plain(const QString& typed, const QString& unit) {
  QString text = typed.trimmed();
  if (!unit.isEmpty() && text.endsWith(unit, Qt::CaseInsensitive)) text.chop(unit.size());
  bool good = false;
  const double v = text.trimmed().replace(',', '.').toDouble(&good);
  if (!good || !std::isfinite(v) || v < 0) return unparsed<double>("Type a number from 0 up.");
  return {v, {}};
}

} // namespace

Writing<Flow> flowWriting(UnitSystem units) {
  return {[units](const Flow& v) { return shown(printFlow(v, units)); },
          [units](const QString& text) { return parseFlow(typedText(text), units); }};
}

Writing<Pressure> pressureWriting(UnitSystem units) {
  return {[units](const Pressure& v) { return shown(printPressure(v, units)); },
          [units](const QString& text) { return parsePressure(typedText(text), units); }};
}

Writing<Volume> volumeWriting(UnitSystem units) {
  // Sediment and strainers hold less than a gallon or a hundredth of a cubic metre: printed finer.
  return {[units](const Volume& v) {
            if (units == UnitSystem::Metric) {
              return v.value() < 1 ? plainNumber(v.value() * 1000) + " L"
                                   : shown(printVolume(v, units));
            }
            return inGallons(v) < 100 ? plainNumber(inGallons(v)) + " gal"
                                      : shown(printVolume(v, units));
          },
          [units](const QString& text) { return parseVolume(typedText(text), units); }};
}

Writing<Temperature> temperatureWriting(UnitSystem units) {
  return {[units](const Temperature& v) { return shown(printTemperature(v, units)); },
          [units](const QString& text) { return parseTemperature(typedText(text), units); }};
}

Writing<Length> headWriting(UnitSystem units) {
  return {[units](const Length& v) {
            return units == UnitSystem::Metric ? plainNumber(inMetres(v)) + " m"
                                               : plainNumber(inFeet(v)) + " ft";
          },
          [units](const QString& text) { return parseLength(typedText(text), units); }};
}

Writing<double> numberWriting() {
  return {[](const double& v) { return plainNumber(v); },
          [](const QString& text) { return plain(text, {}); }};
}

Writing<double> concentrationWriting() {
  return {[](const double& v) { return plainNumber(v * 1000) + " mg/L"; },
          [](const QString& text) -> Parsed<double> {
            const Parsed<double> parsed = plain(text, "mg/L");
            if (!parsed) return unparsed<double>("Type milligrams a litre, as 500 or 500 mg/L.");
            return {*parsed.value / 1000, {}};
          }};
}

Writing<int> countWriting(const QString& unit) {
  return {[unit](const int& v) { return QString::number(v) + unit; },
          [unit](const QString& typed) -> Parsed<int> {
            QString text = typed.trimmed();
            const QString bare = unit.trimmed();
            if (!bare.isEmpty() && text.endsWith(bare, Qt::CaseInsensitive)) text.chop(bare.size());
            bool good = false;
            const int v = text.trimmed().toInt(&good);
            if (!good || v < 1) return unparsed<int>("Type a whole number from 1 up.");
            return {v, {}};
          }};
}

Writing<Point2> placeWriting(UnitSystem units) {
  const Writing<double> along = coordinateWriting(units);
  return {[along](const Point2& p) { return along.print(p.x) + ", " + along.print(p.y); },
          [along](const QString& text) -> Parsed<Point2> {
            const QStringList both = text.trimmed().split(", ");
            if (both.size() != 2) {
              return unparsed<Point2>(
                  "Type east, then a comma and a space, then north: 12'-6\", 30'-0\".");
            }
            const Parsed<double> x = along.parse(both[0]), y = along.parse(both[1]);
            if (!x) return {std::nullopt, x.error};
            if (!y) return {std::nullopt, y.error};
            return {Point2{*x.value, *y.value}, {}};
          }};
}

Writing<std::vector<Point2>> placesWriting(UnitSystem units) {
  const Writing<Point2> one = placeWriting(units);
  return {[one](const std::vector<Point2>& places) {
            QStringList all;
            for (Point2 p : places)
              all << one.print(p);
            return all.join("; ");
          },
          [one](const QString& text) -> Parsed<std::vector<Point2>> {
            std::vector<Point2> places;
            for (const QString& part : text.split(';', Qt::SkipEmptyParts)) {
              if (part.trimmed().isEmpty()) continue;
              const Parsed<Point2> parsed = one.parse(part);
              if (!parsed) return {std::nullopt, parsed.error};
              places.push_back(*parsed.value);
            }
            return {std::move(places), {}};
          }};
}

} // namespace sump
