// Fields of several objects at once, and problems in words.

#include "app/panels/field.h"

#include "app/core_text.h"

#include "core/plan/ends.h"

#include <map>

namespace sump {

namespace {

/// Heading and label, and how often they came before: the second corner's `East` is another field.
using FieldName = std::tuple<QString, QString, int>;

std::map<FieldName, Field> named(const std::vector<Field>& fields, std::vector<FieldName>* order) {
  std::map<FieldName, Field> result;
  QString heading;
  for (const Field& field : fields) {
    if (field.kind == FieldKind::Heading) heading = field.label;
    if (field.kind != FieldKind::Text && field.kind != FieldKind::Choice &&
        field.kind != FieldKind::Toggle)
      continue;
    FieldName name{heading, field.label, 0};
    while (result.contains(name))
      ++std::get<2>(name);
    if (order != nullptr) order->push_back(name);
    result[name] = field;
  }
  return result;
}

bool alike(const Field& a, const Field& b) {
  return a.kind == b.kind && a.choices == b.choices;
}

void addValue(Field& all, const Field& one) {
  if (all.mixed || (all.text == one.text && all.current == one.current)) return;
  all.mixed = true;
  all.text.clear();
  all.current = -1;
}

using WriteField = std::function<FieldResult(const Plan&, const QString&)>;

WriteField inTurn(std::vector<WriteField> writes) {
  return [writes = std::move(writes)](const Plan& plan, const QString& text) -> FieldResult {
    FieldResult result{plan, {}};
    for (const WriteField& write : writes) {
      result = write(*result.plan, text);
      if (!result.plan) return result;
    }
    return result;
  };
}

} // namespace

std::vector<Field> commonFields(const FieldContext& context, const std::set<Id>& ids) {
  std::vector<FieldName> order;
  std::vector<std::map<FieldName, Field>> each;
  for (const Id& id : ids)
    each.push_back(named(fieldsOf(context, id), each.empty() ? &order : nullptr));
  std::vector<Field> fields;
  QString heading;
  for (const FieldName& name : order) {
    Field all = each.front().at(name);
    std::vector<WriteField> writes;
    for (const auto& fieldsOfOne : each) {
      const auto found = fieldsOfOne.find(name);
      if (found == fieldsOfOne.end() || !alike(found->second, all)) break;
      addValue(all, found->second);
      writes.push_back(found->second.write);
    }
    if (writes.size() < each.size()) continue;
    if (std::get<0>(name) != heading) {
      heading = std::get<0>(name);
      Field title;
      title.kind = FieldKind::Heading;
      title.label = heading;
      fields.push_back(std::move(title));
    }
    all.write = inTurn(std::move(writes));
    fields.push_back(std::move(all));
  }
  return fields;
}

QString problemText(const Plan& plan, const Problem& problem) {
  QStringList place = shown(problem.pointer).split('/', Qt::SkipEmptyParts);
  const std::map<QString, std::function<Id(std::size_t)>> lists = {
      {"buildings", [&](std::size_t i) { return plan.buildings[i].id; }},
      {"pavements", [&](std::size_t i) { return plan.pavements[i].id; }},
      {"utilities", [&](std::size_t i) { return plan.utilities[i].id; }},
      {"spots", [&](std::size_t i) { return plan.spots[i].id; }},
      {"wells", [&](std::size_t i) { return plan.wells[i].id; }},
      {"basins", [&](std::size_t i) { return plan.basins[i].id; }},
      {"sewers", [&](std::size_t i) { return plan.sewers[i].id; }},
      {"washes", [&](std::size_t i) { return plan.washes[i].id; }},
      {"rooms", [&](std::size_t i) { return plan.rooms[i].id; }},
      {"vaults", [&](std::size_t i) { return plan.vaults[i].id; }},
      {"runs", [&](std::size_t i) { return plan.runs[i].id; }},
      {"notes", [&](std::size_t i) { return plan.notes[i].id; }},
      {"underlays", [&](std::size_t i) { return plan.underlays[i].id; }},
  };
  const auto list = place.isEmpty() ? lists.end() : lists.find(place.first());
  QString where = place.join(' ');
  if (list != lists.end() && place.size() >= 2) {
    where = objectTitle(plan, list->second(place[1].toULongLong()));
    place = place.mid(2);
    if (!place.isEmpty()) where += ", " + place.join(' ');
  }
  return QString("%1 %2: %3.").arg(where, coreText(problem.what), coreText(problem.mend));
}

} // namespace sump
