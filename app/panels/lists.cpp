#include "app/panels/lists.h"

#include "app/core_text.h"

#include "app/plain_text.h"
#include "core/exchange/buy_list.h"
#include "core/units/print.h"

#include <QCoreApplication>

namespace sump {

namespace {

QString listText(const char* source) {
  return QCoreApplication::translate("Lists", source);
}

QString amount(const Decided<double>& v, BillUnit unit, UnitSystem units) {
  return powersRaised(q(printAmount(v, unit, units)));
}

QString level(const std::optional<Length>& v, UnitSystem units) {
  return v ? q(printElevation(*v, units)) : listText("not known");
}

/// `V1, V2, LK-1 and 4 more`.
QString sources(const std::vector<Id>& ids) {
  constexpr std::size_t kMost = 6;
  QStringList names;
  for (std::size_t i = 0; i < ids.size() && i < kMost; ++i)
    names << q(ids[i]);
  QString all = names.join(", ");
  if (ids.size() > kMost) all += listText(" and %1 more").arg(ids.size() - kMost);
  return all;
}

} // namespace

QStringList takeOffHeadings() {
  return {listText("Trade"),    listText("Item"),      listText("Size"),
          listText("Material"), listText(">In place"), listText(">To buy"),
          listText(">Sticks"),  listText("Note"),      listText("Comes from")};
}

std::vector<TableRow> takeOffRows(const Review& review) {
  const UnitSystem units = review.plan.project.units;
  const BuyList buy = buyList(review);
  std::vector<TableRow> rows;
  for (const BillLine& line : buy.bill.lines) {
    std::vector<Id> from;
    for (const BillShare& share : line.shares)
      from.push_back(share.from);
    const CuttingGroup* group = line.sticks > 0 ? buy.cutting.group(line.key, line.size) : nullptr;
    const std::string note = group != nullptr ? provenText(*group)
                             : line.net       ? line.note
                                              : "needs " + needsText(line.net.needs);
    TableRow row;
    row.cells << coreWord(line.trade) << sentenceCase(coreText(line.description))
              << (line.size.empty() || sizeHasUnit(line) ? q(line.size) : q(line.size) + "\"")
              << coreText(line.material) << amount(line.net, line.unit, units)
              << powersRaised(q(printOrder(line, units)))
              << (line.sticks > 0 ? QString::number(line.sticks) : QString()) << coreFilled(note)
              << sources(from);
    row.objects = std::set<Id>(from.begin(), from.end());
    rows.push_back(std::move(row));
  }
  return rows;
}

QStringList vaultLevelHeadings() {
  return {listText("Vault"),  listText(">Grade"),       listText(">Top of lid"),
          listText(">Cover"), listText(">Overflow at"), listText(">Water"),
          listText(">Floor"), listText(">Underside"),   listText(">Volume")};
}

std::vector<TableRow> vaultLevelRows(const Review& review) {
  const UnitSystem units = review.plan.project.units;
  std::vector<TableRow> rows;
  for (const VaultStudy& v : review.study.vaults) {
    const Vault* vault = review.plan.vaults.find(v.id);
    TableRow row;
    row.cells << (vault == nullptr || vault->name.empty() ? q(v.id) : q(vault->name))
              << level(v.gradeCentre, units) << level(v.lidTop, units)
              << (v.cover ? q(printShort(*v.cover, units)) : listText("not known"))
              << level(v.overflowInvert, units) << level(v.waterLevel, units)
              << level(v.floor, units) << level(v.underside, units)
              << q(printVolume(v.workingVolume, units));
    row.objects = {v.id};
    rows.push_back(std::move(row));
  }
  return rows;
}

QStringList runLevelHeadings() {
  return {listText("Line"),  listText("Carries"), listText(">From"),       listText(">To"),
          listText(">Fall"), listText(">Length"), listText(">Least cover")};
}

std::vector<TableRow> runLevelRows(const Review& review) {
  const UnitSystem units = review.plan.project.units;
  std::vector<TableRow> rows;
  for (const RunStudy& r : review.study.runs) {
    TableRow row;
    row.objects = {r.id};
    row.cells << q(r.id) << coreText(facts(r.service).name);
    if (r.resolved) {
      row.cells << level(r.startInvert, units) << level(r.endInvert, units)
                << (inMetres(r.plan) > 0 ? q(printSlope(r.slope, units)) : listText("upright"))
                << q(printRunLength(r.developed, units))
                << (r.leastCover ? q(printShort(r.leastCover->cover, units)) : QString());
    } else {
      row.cells << listText("not known") << listText("not known");
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

} // namespace sump
