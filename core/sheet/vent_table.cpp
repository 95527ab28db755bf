// Where vents end in the open air, and how high over the roofs beside them.

#include "core/sheet/set_tables.h"
#include "core/sheet/tags.h"
#include "core/study/vent_ends.h"
#include "core/units/print_levels.h"

namespace sump {

namespace {

using VentRow = std::vector<std::string>;

/// A blank where the plan has no roof, so that whoever finds it can write it in.
constexpr const char* kUnknownRoof = "______";

void addRoof(const SheetJob& job, const VentEnd& vent, const NearRoof& near, VentRow& row) {
  const UnitSystem units = job.units();
  row.push_back(objectName(near.building, job.plan()));
  row.push_back(near.away > metres(0) ? printLength(near.away, units) : "over it");
  row.push_back(near.roof ? printElevation(*near.roof, units) : kUnknownRoof);
  row.push_back(!near.roof                ? kUnknownRoof
                : vent.level < *near.roof ? printHeight(vent.level, *near.roof, units) + " below"
                                          : printHeight(*near.roof, vent.level, units));
}

std::vector<VentRow> ventRows(const SheetJob& job) {
  std::vector<VentRow> rows;
  const auto tags = runTags(job.plan());
  const auto level = [&](double v) { return printElevation(metres(v), job.units()); };
  for (const VentEnd& vent : ventEnds(job.plan(), job.study(), job.review.limits)) {
    VentRow end = {tags.at(vent.run), level(vent.at.y), level(vent.at.x),
                   printElevation(vent.level, job.units())};
    for (const NearRoof& near : vent.roofs) {
      VentRow row = end;
      addRoof(job, vent, near, row);
      rows.push_back(std::move(row));
    }
    if (!vent.roofs.empty()) continue;
    end.insert(end.end(), {"none", "-", "-", "-"});
    rows.push_back(std::move(end));
  }
  return rows;
}

} // namespace

Block ventTable(const SheetJob& job, double width) {
  const auto print = [&](const char* limit) {
    return printLength(job.review.limits.length(limit), job.units());
  };
  const std::string reach = print("vent.roof-reach");
  const std::vector<VentRow> rows = ventRows(job);
  Block block = table("OPEN ENDS OF VENTS AND ROOFS BESIDE THEM",
                      {{"Vent"},
                       {"North", Align::Right},
                       {"East", Align::Right},
                       {"Open end", Align::Right},
                       {"Building within " + reach},
                       {"Away", Align::Right},
                       {"Top of|its roof", Align::Right},
                       {"End over|the roof", Align::Right}},
                      rows, width);
  if (rows.empty()) return block;
  addNote(block, "Top of a roof: its highest point, ridge or parapet. Measure it before the riser "
                 "is cut: the end stands " +
                     print("vent.over-roof") +
                     " over it at least (UPC 906.1). Doors, windows and air intakes are not in "
                     "the plan: look for them, also of other buildings; an end within " +
                     reach + " of one stands " + print("vent.over-opening") +
                     " over it at least (UPC 906.2).");
  return block;
}

} // namespace sump
