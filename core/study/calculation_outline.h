#pragma once
// The calculations in their sections, each with the number by which others refer to it.

#include "core/study/calculation.h"

#include <string>
#include <vector>

namespace sump {

struct NumberedCalculation {
  std::string number; ///< `4.2`: the second of the fourth section
  Calculation calculation;
};

struct CalculationSection {
  std::string number; ///< `4`
  std::string title;
  std::vector<NumberedCalculation> entries;
};

/// Sections in the order in which they first come, calculations in their own order.
class CalculationOutline {
public:
  explicit CalculationOutline(std::vector<Calculation> all);
  const std::vector<CalculationSection>& sections() const { return sections_; }
  std::size_t size() const;
  std::size_t undecided() const;
  /// The calculation that an input of `of` comes from: of the same object, else of none, else the
  /// only one of that id. Null when `from` names none (`plan`, `catalogue`).
  const NumberedCalculation* origin(const Calculation& of, const CalculationInput& input) const;

private:
  std::vector<CalculationSection> sections_;
};

/// `4.2` where the input is the result of another calculation, else the words it came with.
std::string originText(const CalculationOutline& outline, const Calculation& of,
                       const CalculationInput& input);

} // namespace sump
