#pragma once
// One row of 'What is this': what it shows and how a typed text becomes a changed plan. Knows no
// widget, so that each kind of object is a short list of fields.

#include "app/core_text.h"
#include "core/plan/consistency.h"
#include "core/plan/keys.h"
#include "core/plan/plan.h"
#include "core/rules/review.h"
#include "core/units/expression.h"
#include "core/units/print.h"

#include <QCoreApplication>
#include <QString>
#include <QStringList>

#include <functional>
#include <optional>
#include <set>
#include <vector>

namespace sump {

/// A changed plan, or why there is none.
struct FieldResult {
  std::optional<Plan> plan;
  QString error;
};

enum class FieldKind {
  Heading, ///< begins a group
  Fact,    ///< worked out, for reading
  Text,
  Choice, ///< write() gets the item's index
  Toggle, ///< write() gets `1` or `0`
  Button, ///< write() gets nothing
};

struct Field {
  FieldKind kind = FieldKind::Text;
  QString label;
  QString text; ///< shown; `1` or `0` for a toggle
  QString tip;
  QStringList choices;
  int current = -1;
  std::function<FieldResult(const Plan&, const QString&)> write;
  bool mixed = false; ///< several objects whose values differ; text and current are then empty
};

inline QString fieldText(const char* text) {
  return QCoreApplication::translate("Fields", text);
}
inline QString shown(const std::string& text) {
  return QString::fromStdString(text);
}

/// What may be typed and how it is written back. Quantities take simple sums (units/expression.h).
template <class V> struct Writing {
  std::function<QString(const V&)> print;
  std::function<Parsed<V>(const QString&)> parse;
};
Writing<Length> lengthWriting(UnitSystem units);
Writing<Length> elevationWriting(UnitSystem units);
Writing<Mass> massWriting(UnitSystem units);
Writing<double> coordinateWriting(UnitSystem units);
Writing<Angle> angleWriting();
Writing<std::string> textWriting();
/// Whole numbers from 1 up.
Writing<int> countWriting();
/// Whole numbers shown from 1 but kept from 0.
Writing<int> ordinalWriting();
/// A fraction as per cent.
Writing<double> percentWriting();
/// Empty text is no value.
template <class V> Writing<std::optional<V>> optionalWriting(Writing<V> inner) {
  return {[inner](const std::optional<V>& v) { return v ? inner.print(*v) : QString(); },
          [inner](const QString& text) -> Parsed<std::optional<V>> {
            if (text.trimmed().isEmpty()) return {std::optional<V>(), {}};
            Parsed<V> parsed = inner.parse(text);
            if (!parsed) return {std::nullopt, parsed.error};
            return {std::optional<V>(*parsed.value), {}};
          }};
}

/// Where a value of the plan is kept: an object of a list, the project, the site.
template <class T> struct Place {
  std::function<T(const Plan&)> get;
  std::function<Plan(const Plan&, T)> put;
};
template <class T> Place<T> placeIn(Items<T> Plan::*list, const Id& id) {
  return {[list, id](const Plan& plan) { return *(plan.*list).find(id); },
          [list](const Plan& plan, T value) {
            Plan next = plan;
            (next.*list).put(std::move(value));
            return next;
          }};
}

/// Appends fields for the object at one place.
template <class T> class FieldMaker {
public:
  template <class V> using Access = std::function<V&(T&)>;

  FieldMaker(const Plan& plan, Place<T> place, std::vector<Field>& out)
      : place_(std::move(place)), value_(place_.get(plan)), out_(out) {}

  T& value() { return value_; }

  void heading(const QString& label) {
    out_.push_back({FieldKind::Heading, label, {}, {}, {}, -1, {}});
  }

  template <class V>
  void typed(const QString& label, Access<V> access, Writing<V> writing, const QString& tip = {}) {
    Field field{FieldKind::Text, label, writing.print(access(value_)), tip, {}, -1, {}};
    field.write = [place = place_, access, writing](const Plan& plan,
                                                    const QString& text) -> FieldResult {
      const Parsed<V> parsed = writing.parse(text);
      if (!parsed) return {std::nullopt, typedProblem(parsed.error, text)};
      T changed = place.get(plan);
      access(changed) = *parsed.value;
      return {place.put(plan, std::move(changed)), {}};
    };
    out_.push_back(std::move(field));
  }

  void toggle(const QString& label, Access<bool> access, const QString& tip = {}) {
    Field field{FieldKind::Toggle, label, access(value_) ? "1" : "0", tip, {}, -1, {}};
    field.write = [place = place_, access](const Plan& plan, const QString& text) -> FieldResult {
      T changed = place.get(plan);
      access(changed) = text == "1";
      return {place.put(plan, std::move(changed)), {}};
    };
    out_.push_back(std::move(field));
  }

  /// One of `values`, shown as `names`. A value that is not among them is shown as none chosen.
  template <class V>
  void choice(const QString& label, Access<V> access, std::vector<V> values, QStringList names,
              const QString& tip = {}) {
    Field field{FieldKind::Choice, label, {}, tip, std::move(names), -1, {}};
    for (std::size_t i = 0; i < values.size(); ++i) {
      if (values[i] == access(value_)) field.current = static_cast<int>(i);
    }
    field.write = [place = place_, access, values](const Plan& plan,
                                                   const QString& index) -> FieldResult {
      T changed = place.get(plan);
      access(changed) = values.at(index.toULongLong());
      return {place.put(plan, std::move(changed)), {}};
    };
    out_.push_back(std::move(field));
  }

  template <class F, class E, std::size_t N>
  void keyed(const QString& label, F access, const KeyTable<E, N>& table, const QString& tip = {}) {
    std::vector<E> values;
    QStringList names;
    for (const auto& [value, word] : table) {
      values.push_back(value);
      names << coreWord(word);
    }
    choice<E>(label, access, std::move(values), std::move(names), tip);
  }

  /// A button that changes the object.
  void button(const QString& label, std::function<void(const Plan&, T&)> change,
              const QString& tip = {}) {
    Field field{FieldKind::Button, label, {}, tip, {}, -1, {}};
    field.write = [place = place_, change](const Plan& plan, const QString&) -> FieldResult {
      T changed = place.get(plan);
      change(plan, changed);
      return {place.put(plan, std::move(changed)), {}};
    };
    out_.push_back(std::move(field));
  }

  void fact(const QString& label, const QString& text, const QString& tip = {}) {
    out_.push_back({FieldKind::Fact, label, text, tip, {}, -1, {}});
  }

private:
  Place<T> place_;
  T value_;
  std::vector<Field>& out_;
};

/// A button for an edit of the whole plan.
Field planButton(const QString& label, std::function<Plan(const Plan&)> edit,
                 const QString& tip = {});

/// What the field lists read besides the plan. `review` may be null or of an earlier state.
struct FieldContext {
  const Plan& plan;
  const Catalog& catalog;
  const Review* review = nullptr;
  UnitSystem units() const { return plan.project.units; }
};

/// Fields of the object that can be selected under this id; none for an unknown id.
std::vector<Field> fieldsOf(const FieldContext& context, const Id& id);
/// Fields that all of the objects have under the same heading; writing one writes to all of them.
std::vector<Field> commonFields(const FieldContext& context, const std::set<Id>& ids);
/// What is wrong and where, in words: `Line LK-1, to at: lies outside ...`.
QString problemText(const Plan& plan, const Problem& problem);
/// Title block, units, site and limits: shown when nothing is selected.
std::vector<Field> projectFields(const FieldContext& context);
/// `Vault · V1`: what the object is called in headings and lists.
QString objectTitle(const Plan& plan, const Id& id);

void buildingFields(const FieldContext& context, const Id& id, std::vector<Field>& out);
void pavementFields(const FieldContext& context, const Id& id, std::vector<Field>& out);
void utilityFields(const FieldContext& context, const Id& id, std::vector<Field>& out);
void spotFields(const FieldContext& context, const Id& id, std::vector<Field>& out);
void wellFields(const FieldContext& context, const Id& id, std::vector<Field>& out);
void basinFields(const FieldContext& context, const Id& id, std::vector<Field>& out);
void sewerFields(const FieldContext& context, const Id& id, std::vector<Field>& out);
void washFields(const FieldContext& context, const Id& id, std::vector<Field>& out);
void roomFields(const FieldContext& context, const Id& id, std::vector<Field>& out);
void vaultFields(const FieldContext& context, const Id& id, std::vector<Field>& out);
void runFields(const FieldContext& context, const Id& id, std::vector<Field>& out);
void noteFields(const FieldContext& context, const Id& id, std::vector<Field>& out);
void underlayFields(const FieldContext& context, const Id& id, std::vector<Field>& out);

} // namespace sump
