#include "core/study/calculation_outline.h"

#include <algorithm>

namespace sump {

CalculationOutline::CalculationOutline(std::vector<Calculation> all) {
  for (Calculation& c : all) {
    auto section = std::ranges::find(sections_, c.section, &CalculationSection::title);
    if (section == sections_.end()) {
      sections_.push_back({std::to_string(sections_.size() + 1), c.section, {}});
      section = std::prev(sections_.end());
    }
    section->entries.push_back(
        {section->number + "." + std::to_string(section->entries.size() + 1), std::move(c)});
  }
}

std::size_t CalculationOutline::size() const {
  std::size_t sum = 0;
  for (const CalculationSection& section : sections_)
    sum += section.entries.size();
  return sum;
}

std::size_t CalculationOutline::undecided() const {
  std::size_t sum = 0;
  for (const CalculationSection& section : sections_) {
    sum += static_cast<std::size_t>(std::ranges::count_if(
        section.entries, [](const NumberedCalculation& e) { return !e.calculation.decided; }));
  }
  return sum;
}

const NumberedCalculation* CalculationOutline::origin(const Calculation& of,
                                                      const CalculationInput& input) const {
  const NumberedCalculation* general = nullptr;
  const NumberedCalculation* other = nullptr;
  int others = 0;
  for (const CalculationSection& section : sections_) {
    for (const NumberedCalculation& entry : section.entries) {
      if (entry.calculation.id != input.from) continue;
      if (entry.calculation.object == of.object) return &entry;
      if (entry.calculation.object.empty()) general = &entry;
      other = &entry;
      ++others;
    }
  }
  if (general != nullptr) return general;
  return others == 1 ? other : nullptr;
}

std::string originText(const CalculationOutline& outline, const Calculation& of,
                       const CalculationInput& input) {
  const NumberedCalculation* origin = outline.origin(of, input);
  return origin != nullptr ? origin->number : input.from;
}

} // namespace sump
