#pragma once
// Short ways to write the groups of the basis form. Private to app/panels/basis_*.cpp.

#include "app/panels/basis_fields.h"
#include "app/panels/basis_writing.h"

namespace sump {

inline Place<Basis> basisPlace() {
  return {[](const Plan& plan) { return plan.basis; },
          [](const Plan& plan, Basis value) {
            Plan next = plan;
            next.basis = std::move(value);
            return next;
          }};
}

inline Place<Site> sitePlace() {
  return {[](const Plan& plan) { return plan.site; },
          [](const Plan& plan, Site value) {
            Plan next = plan;
            next.site = std::move(value);
            return next;
          }};
}

/// Adds single figures to a group.
template <class T> class FigureMaker {
public:
  FigureMaker(const FieldContext& context, Place<T> place, BasisGroup& group)
      : maker_(context.plan, std::move(place), fields_), group_(group) {}

  /// Empty is unknown.
  template <class V>
  void figure(const char* key, const char* label, std::function<std::optional<V>&(T&)> access,
              Writing<V> writing, const char* need, const char* tip = "") {
    maker_.template typed<std::optional<V>>(fieldText(label), access,
                                            optionalWriting(std::move(writing)), fieldText(tip));
    keep(key, need, !fields_.back().text.isEmpty());
  }
  /// One of `values`, or not known.
  template <class V>
  void choice(const char* key, const char* label, std::function<std::optional<V>&(T&)> access,
              std::vector<V> values, QStringList names, const char* need, const char* tip = "") {
    std::vector<std::optional<V>> all = {std::nullopt};
    all.insert(all.end(), values.begin(), values.end());
    names.prepend(fieldText("Not known"));
    maker_.template choice<std::optional<V>>(fieldText(label), access, std::move(all),
                                             std::move(names), fieldText(tip));
    keep(key, need, fields_.back().current > 0);
  }
  template <class V>
  void text(const char* key, const char* label, std::function<V&(T&)> access, Writing<V> writing,
            const char* need = "", const char* tip = "") {
    maker_.template typed<V>(fieldText(label), access, std::move(writing), fieldText(tip));
    keep(key, need, !fields_.back().text.isEmpty());
  }
  void toggle(const char* key, const char* label, std::function<bool&(T&)> access,
              const char* tip = "") {
    maker_.toggle(fieldText(label), access, fieldText(tip));
    keep(key, "", true);
  }

private:
  void keep(const char* key, const char* need, bool known) {
    group_.items.push_back(
        {key, std::move(fields_.back()), *need == '\0' ? QString() : fieldText(need), known});
    fields_.clear();
  }

  std::vector<Field> fields_;
  FieldMaker<T> maker_;
  BasisGroup& group_;
};

/// Builds one table over a list of the basis.
template <class Row> class TableMaker {
public:
  using List = std::function<std::vector<Row>&(Basis&)>;

  TableMaker(const char* key, const char* title, const char* noun, const char* need, List list)
      : list_(std::move(list)) {
    table_.key = key;
    table_.title = fieldText(title);
    table_.noun = fieldText(noun);
    table_.need = *need == '\0' ? QString() : fieldText(need);
  }

  template <class V>
  void column(const char* heading, std::function<V&(Row&)> access, Writing<V> writing,
              bool required = false, const char* tip = "") {
    start(heading, required);
    columns_.push_back([list = list_, access, writing, tip = fieldText(tip)](
                           FieldMaker<Basis>& make, const QString& label, std::size_t i) {
      make.template typed<V>(
          label, [list, access, i](Basis& b) -> V& { return access(list(b)[i]); }, writing, tip);
    });
  }
  template <class V>
  void choice(const char* heading, std::function<V&(Row&)> access, std::vector<V> values,
              QStringList names, bool required = false) {
    start(heading, required);
    columns_.push_back([list = list_, access, values, names](FieldMaker<Basis>& make,
                                                             const QString& label, std::size_t i) {
      make.template choice<V>(
          label, [list, access, i](Basis& b) -> V& { return access(list(b)[i]); }, values, names);
    });
  }
  void toggle(const char* heading, std::function<bool&(Row&)> access) {
    start(heading, false);
    columns_.push_back(
        [list = list_, access](FieldMaker<Basis>& make, const QString& label, std::size_t i) {
          make.toggle(label, [list, access, i](Basis& b) -> bool& { return access(list(b)[i]); });
        });
  }

  /// `fresh` makes a new row for a plan (with an id of its own, where rows have ids).
  BasisTable finish(const Plan& plan, std::function<Row(const Plan&)> fresh) {
    table_.add = [list = list_, fresh](const Plan& before) {
      Plan next = before;
      list(next.basis).push_back(fresh(before));
      return next;
    };
    table_.remove = [list = list_](const Plan& before, std::size_t i) {
      Plan next = before;
      std::vector<Row>& rows = list(next.basis);
      if (i < rows.size()) rows.erase(rows.begin() + static_cast<std::ptrdiff_t>(i));
      return next;
    };
    Basis basis = plan.basis;
    const std::size_t count = list_(basis).size();
    for (std::size_t i = 0; i < count; ++i)
      table_.rows.push_back(cells(plan, i));
    table_.draft = cells(table_.add(plan), count);
    for (std::size_t c = 0; c < table_.draft.size(); ++c)
      clear(table_.draft[c]);
    return std::move(table_);
  }

private:
  using Column = std::function<void(FieldMaker<Basis>&, const QString&, std::size_t)>;

  void start(const char* heading, bool required) {
    if (required) table_.required.push_back(static_cast<int>(columns_.size()));
    table_.headings << fieldText(heading);
  }
  /// `Flow of wash device 2`.
  std::vector<Field> cells(const Plan& plan, std::size_t row) const {
    std::vector<Field> fields;
    FieldMaker<Basis> make(plan, basisPlace(), fields);
    for (std::size_t c = 0; c < columns_.size(); ++c) {
      const QString label = fieldText("%1 of %2 %3")
                                .arg(table_.headings[static_cast<qsizetype>(c)], table_.noun)
                                .arg(row + 1);
      columns_[c](make, label, row);
    }
    return fields;
  }
  static void clear(Field& field) {
    if (field.kind == FieldKind::Text) field.text.clear();
    if (field.kind == FieldKind::Choice) field.current = -1;
  }

  List list_;
  std::vector<Column> columns_;
  BasisTable table_;
};

} // namespace sump
