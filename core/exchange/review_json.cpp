#include "core/exchange/review_json.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

using Json = nlohmann::ordered_json;

/// Nanometre rounding, so that 3.6576000000000004 is not printed.
Json number(double v) {
  return std::round(v * 1e9) / 1e9;
}

Json number(const std::optional<Length>& v) {
  return v ? number(inMetres(*v)) : Json(nullptr);
}

Json text(const std::optional<std::string>& v) {
  return v ? Json(*v) : Json(nullptr);
}

Json place(const std::optional<Point2>& p) {
  return p ? Json::array({number(p->x), number(p->y)}) : Json(nullptr);
}

std::string written(const Json& json) {
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

Json acceptedJson(const std::optional<Acceptance>& accepted) {
  if (!accepted) return nullptr;
  return {{"reason", accepted->reason}, {"by", accepted->by}, {"date", accepted->date}};
}

Json serviceKeys(const std::vector<Service>& services) {
  Json keys = Json::array();
  for (Service service : services)
    keys.push_back(facts(service).key);
  return keys;
}

Json findingJson(const Finding& finding) {
  return {{"rule", finding.rule},
          {"severity", name(finding.severity)},
          {"objects", finding.objects},
          {"what", render(finding.what)},
          {"mend", render(finding.mend)},
          {"measured", text(finding.measured)},
          {"required", text(finding.required)},
          {"place", place(finding.place)},
          {"citation", finding.source.empty() ? Json(nullptr) : Json(finding.source)},
          {"confidence", words(finding.confidence)},
          {"decided", finding.decided},
          {"trade", name(finding.trade)},
          {"services", serviceKeys(finding.services)},
          {"accepted", acceptedJson(finding.accepted)},
          {"key", finding.key()}};
}

Json chamberJson(const ChamberStudy& chamber) {
  return {{"number", chamber.number},
          {"area", number(chamber.area.value())},
          {"waterDepth", number(inMetres(chamber.waterDepth))},
          {"volume", number(chamber.volume.value())}};
}

Json vaultJson(const VaultStudy& vault) {
  Json chambers = Json::array();
  for (const ChamberStudy& chamber : vault.chambers)
    chambers.push_back(chamberJson(chamber));
  return {{"id", vault.id},
          {"position", vault.position},
          {"grade", number(vault.gradeCentre)},
          {"lidTop", number(inMetres(vault.lidTop))},
          {"waterLevel", number(vault.waterLevel)},
          {"overflowInvert", number(vault.overflowInvert)},
          {"overflowRun", vault.overflowRun},
          {"floor", number(inMetres(vault.floor))},
          {"underside", number(inMetres(vault.underside))},
          {"cover", number(vault.cover)},
          {"workingVolume", number(vault.workingVolume.value())},
          {"chambers", std::move(chambers)}};
}

Json runJson(const RunStudy& run) {
  Json json = {{"id", run.id}, {"service", facts(run.service).key}, {"resolved", run.resolved}};
  if (!run.resolved) {
    json["problem"] = run.problem;
    return json;
  }
  json["startInvert"] = number(inMetres(run.startInvert));
  json["endInvert"] = number(inMetres(run.endInvert));
  json["planLength"] = number(inMetres(run.plan));
  json["developedLength"] = number(inMetres(run.developed));
  json["slope"] = number(run.slope);
  json["bends"] = run.bends.size();
  json["leastCover"] = run.leastCover ? number(inMetres(run.leastCover->cover)) : Json(nullptr);
  return json;
}

Json amount(const Decided<double>& value) {
  return value ? number(*value) : Json(nullptr);
}

const char* siUnit(BillUnit unit) {
  switch (unit) {
  case BillUnit::Length:
    return "m";
  case BillUnit::Area:
    return "m2";
  case BillUnit::Volume:
  case BillUnit::Liquid:
    return "m3";
  case BillUnit::Each:
    break;
  }
  return "each";
}

Json lineJson(const BillLine& line) {
  Json from = Json::array();
  for (const BillShare& share : line.shares)
    from.push_back({{"id", share.from}, {"amount", number(share.amount)}});
  Json json = {{"trade", line.trade},
               {"category", line.category},
               {"item", line.key},
               {"description", line.description},
               {"size", line.size},
               {"material", line.material},
               {"unit", siUnit(line.unit)},
               {"inPlace", amount(line.net)},
               {"waste", number(line.waste)},
               {"toBuy", amount(line.order)},
               {"from", std::move(from)}};
  if (line.category == "pipe") json["sticks"] = line.sticks;
  if (!line.net) json["needs"] = line.net.needs;
  return json;
}

} // namespace

std::string findingsJson(const Review& review) {
  Json list = Json::array();
  for (const Finding& finding : review.findings)
    list.push_back(findingJson(finding));
  const auto count = [&](Severity severity) {
    return std::ranges::count_if(review.findings, [severity](const Finding& f) {
      return f.severity == severity && !f.accepted;
    });
  };
  const std::string& profile = review.plan.project.profile;
  return written(
      {{"findings", std::move(list)},
       {"errors", count(Severity::Error)},
       {"warnings", count(Severity::Warning)},
       {"notes", count(Severity::Note)},
       {"accepted", std::ranges::count_if(review.findings,
                                          [](const Finding& f) { return f.accepted.has_value(); })},
       {"profile", profile.empty() ? std::string(kGenericProfile) : profile},
       {"governs", "The adopted local code and the authority having jurisdiction "
                   "govern."}});
}

std::string levelsJson(const Review& review) {
  Json vaults = Json::array(), runs = Json::array();
  for (const VaultStudy& vault : review.study.vaults)
    vaults.push_back(vaultJson(vault));
  for (const RunStudy& run : review.study.runs)
    runs.push_back(runJson(run));
  return written({{"vaults", std::move(vaults)},
                  {"runs", std::move(runs)},
                  {"workingVolume", number(review.study.workingVolume.value())}});
}

std::string takeOffJson(const BuyList& buy) {
  Json lines = Json::array();
  for (const BillLine& line : buy.bill.lines)
    lines.push_back(lineJson(line));
  return written({{"lines", std::move(lines)}, {"notes", buy.bill.notes}});
}

} // namespace sump
