#include "core/sheet/style.h"

#include <gtest/gtest.h>

namespace sump {
namespace {

TEST(Style, NoTwoServicesShareALineInBlackAndWhite) {
  for (const ServiceFacts& a : serviceTable()) {
    for (const ServiceFacts& b : serviceTable()) {
      if (a.service >= b.service) continue;
      LineStyle first = serviceLine(a.service), second = serviceLine(b.service);
      first.ink = second.ink = Ink::Black;
      EXPECT_NE(first, second) << a.name << " and " << b.name;
      EXPECT_NE(a.code, b.code);
    }
  }
}

TEST(Style, ServiceLinesHaveTheirUtilityColor) {
  for (const ServiceFacts& f : serviceTable()) {
    EXPECT_EQ(serviceLine(f.service).ink, ink(f.color)) << f.name;
  }
}

} // namespace
} // namespace sump
