#include "core/catalog/limits.h"

#include <stdexcept>

namespace sump {

namespace {

const Limit& ofKind(const Limit& limit, std::initializer_list<LimitKind> kinds) {
  for (LimitKind kind : kinds) {
    if (limit.kind == kind) return limit;
  }
  throw std::logic_error("limit '" + limit.id + "' is of another kind");
}

} // namespace

Limits::Limits(std::vector<Limit> table) : table_(std::move(table)) {
  for (std::size_t i = 0; i < table_.size(); ++i)
    index_.emplace(table_[i].id, i);
}

const Limit& Limits::at(std::string_view id) const {
  const auto found = index_.find(id);
  if (found == index_.end()) throw std::logic_error("there is no limit '" + std::string(id) + "'");
  return table_[found->second];
}

bool Limits::has(std::string_view id) const {
  return index_.contains(id);
}

Length Limits::length(std::string_view id) const {
  return metres(ofKind(at(id), {LimitKind::Length}).value);
}

Volume Limits::volume(std::string_view id) const {
  return cubicMetres(ofKind(at(id), {LimitKind::Volume}).value);
}

Angle Limits::angle(std::string_view id) const {
  return radians(ofKind(at(id), {LimitKind::Angle}).value);
}

double Limits::number(std::string_view id) const {
  return ofKind(at(id), {LimitKind::Slope, LimitKind::Number, LimitKind::Count}).value;
}

Limits Limits::with(const std::map<std::string, double>& own) const {
  Limits copy = *this;
  for (const auto& [id, value] : own) {
    const auto found = copy.index_.find(id);
    if (found == copy.index_.end()) continue;
    Limit& limit = copy.table_[found->second];
    limit.value = value;
    limit.edition.clear();
    limit.citation = "this project's own value";
    limit.confidence = Confidence::ProjectsOwn;
  }
  return copy;
}

Limits Limits::withRows(const std::vector<Limit>& rows) const {
  Limits copy = *this;
  for (const Limit& row : rows) {
    const auto found = copy.index_.find(row.id);
    if (found != copy.index_.end()) copy.table_[found->second] = row;
  }
  return copy;
}

std::string Limit::source() const {
  return edition.empty() ? citation : citation + ", edition " + edition;
}

std::string_view words(Confidence confidence) {
  switch (confidence) {
  case Confidence::Seen:
    return "seen in print";
  case Confidence::SeenSecondHand:
    return "seen quoted";
  case Confidence::FromMemory:
    return "from memory";
  case Confidence::CommonPractice:
    return "common practice";
  case Confidence::ProjectsOwn:
    return "decided by this project";
  }
  return {};
}

bool isFirm(Confidence confidence) {
  return confidence != Confidence::FromMemory && confidence != Confidence::CommonPractice;
}

} // namespace sump
