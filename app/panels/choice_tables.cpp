#include "app/panels/choice_tables.h"

#include "app/core_text.h"

#include "app/plain_text.h"
#include "core/study/calculation_print.h"
#include "core/units/print.h"

#include <QCoreApplication>

namespace sump {

namespace {

using Kind = QuantityKind;

constexpr int kFigures = 3; ///< enough to compare by

QString choiceText(const char* source) {
  return QCoreApplication::translate("ChoiceTables", source);
}

template <class T> QString cell(const Decided<T>& value, Kind kind, UnitSystem units) {
  return value ? coreFilled(printQuantity(value->value(), kind, units, kFigures))
               : choiceText("not known");
}

/// With its sign: what the choice adds or saves.
QString change(const Decided<Length>& value, const Decided<Length>& drawn, UnitSystem units) {
  if (!value || !drawn) return {};
  const Length more = *value - *drawn;
  const QString figures =
      coreFilled(printQuantity(more.value(), Kind::HeadOfWater, units, kFigures));
  return more > metres(0) ? "+" + figures : figures;
}

QString choiceName(SuctionCase which) {
  switch (which) {
  case SuctionCase::AsDrawn:
    return choiceText("As drawn");
  case SuctionCase::Straight:
    return choiceText("Straight, without bends");
  case SuctionCase::OneSizeUp:
    return choiceText("One size up");
  case SuctionCase::OneMoreElbow:
    return choiceText("One more elbow");
  case SuctionCase::OneMoreFoot:
    break;
  }
  return choiceText("One more foot of pipe");
}

QString stepName(int steps) {
  if (steps == 0) return choiceText("As drawn");
  return steps == 1 ? choiceText("One size up") : choiceText("Two sizes up");
}

QString verdictName(SizeVerdict verdict) {
  switch (verdict) {
  case SizeVerdict::TooFast:
    return choiceText("too fast");
  case SizeVerdict::Suits:
    return choiceText("suits");
  case SizeVerdict::Generous:
    break;
  }
  return choiceText("generous");
}

} // namespace

ChoiceTable suctionChoices(const SuctionStudy& suction, UnitSystem units) {
  ChoiceTable table{choiceText("What another suction would mean"),
                    {choiceText("Choice"), choiceText(">Head lost"), choiceText(">Change"),
                     choiceText(">NPSH available")},
                    {}};
  for (const SuctionVariant& variant : suction.variants) {
    const bool drawn = variant.which == SuctionCase::AsDrawn;
    table.rows.push_back(
        {choiceName(variant.which), cell(variant.loss, Kind::HeadOfWater, units),
         drawn ? QString() : change(variant.loss, suction.variants.front().loss, units),
         cell(variant.npshAvailable, Kind::HeadOfWater, units)});
  }
  return table;
}

ChoiceTable sizeChoices(const PressureRun& run, UnitSystem units) {
  ChoiceTable table{
      choiceText("What another size would mean, up to %1")
          .arg(q(printQuantity(run.ceiling.value(), Kind::Velocity, units, kFigures))),
      {choiceText("Size"), choiceText(">Inches"), choiceText(">Velocity"), choiceText(">Head lost"),
       choiceText("Velocity is")},
      {}};
  if (!run.sizes) return table;
  for (const SizeChoice& choice : *run.sizes) {
    table.rows.push_back(
        {stepName(choice.steps), q(choice.size),
         q(printQuantity(choice.fastest.value(), Kind::Velocity, units, kFigures)),
         coreFilled(printQuantity(choice.loss.value(), Kind::HeadOfWater, units, kFigures)),
         verdictName(choice.verdict)});
  }
  return table;
}

ChoiceTable chamberLevels(const Review& review, const Id& vault) {
  const UnitSystem units = review.plan.project.units;
  const TrainStudy& train = review.study.train;
  ChoiceTable table{choiceText("Water levels"),
                    {choiceText(">Chamber"), choiceText(">At rest"),
                     choiceText(">Peak, pump stopped"), choiceText(">Peak, pump running"),
                     choiceText(">Air under the lid then")},
                    {}};
  const VaultStudy* study = review.study.vault(vault);
  if (study == nullptr) return table;
  const auto level = [&](const Decided<TrainLevels>& levels, int chamber) {
    const ChamberLevel* at = levels ? levels->chamber(vault, chamber) : nullptr;
    return at == nullptr ? choiceText("not known") : q(printElevation(at->level, units));
  };
  for (const ChamberStudy& chamber : study->chambers) {
    const ChamberLevel* peak =
        train.pumpStopped ? train.pumpStopped->chamber(vault, chamber.number) : nullptr;
    table.rows.push_back(
        {QString::number(chamber.number),
         study->waterLevel ? q(printElevation(*study->waterLevel, units)) : choiceText("not known"),
         level(train.pumpStopped, chamber.number), level(train.pumpRunning, chamber.number),
         peak == nullptr ? choiceText("not known") : q(printShort(peak->airspace, units))});
  }
  return table;
}

ChoiceTable chamberDuties(const Review& review, const Id& vault) {
  const UnitSystem units = review.plan.project.units;
  ChoiceTable table{choiceText("What each chamber keeps back"),
                    {choiceText(">Chamber"), choiceText(">Detention"), choiceText(">Overflow rate"),
                     choiceText(">Smallest grit"), choiceText(">Smallest oil droplet"),
                     choiceText(">Grit kept so far")},
                    {}};
  for (const ChamberDuty& duty : review.study.train.chambers) {
    if (duty.vault != vault) continue;
    table.rows.push_back({QString::number(duty.chamber), cell(duty.detention, Kind::Time, units),
                          cell(duty.overflowRate, Kind::Velocity, units),
                          cell(duty.particle, Kind::SmallLength, units),
                          cell(duty.droplet, Kind::SmallLength, units),
                          cell(duty.particleSoFar, Kind::SmallLength, units)});
  }
  return table;
}

std::vector<ChoiceTable> choiceTables(const Review& review, const Id& object) {
  const UnitSystem units = review.plan.project.units;
  std::vector<ChoiceTable> tables;
  if (const SuctionStudy* suction = review.study.hydraulics.suction(object))
    tables.push_back(suctionChoices(*suction, units));
  if (const PressureRun* run = review.study.hydraulics.run(object))
    tables.push_back(sizeChoices(*run, units));
  if (review.study.vault(object) != nullptr) {
    tables.push_back(chamberLevels(review, object));
    tables.push_back(chamberDuties(review, object));
  }
  std::erase_if(tables, [](const ChoiceTable& table) { return table.rows.empty(); });
  return tables;
}

} // namespace sump
