#pragma once
// Where a table's figures come from.

#include "core/catalog/limits.h"

#include <string>

namespace sump {

struct Source {
  std::string citation;
  Confidence confidence = Confidence::CommonPractice;
};

} // namespace sump
