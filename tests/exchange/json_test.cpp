#include "core/exchange/json_document.h"
#include "core/exchange/json_text.h"

#include <nlohmann/json.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace sump {
namespace {

TEST(JsonNumbers, AreRoundedToANanometreAndShort) {
  EXPECT_EQ(numberText(0), "0");
  EXPECT_EQ(numberText(-0.0), "0");
  EXPECT_EQ(numberText(-1e-12), "0");
  EXPECT_EQ(numberText(3.6576), "3.6576");
  EXPECT_EQ(numberText(0.1 + 0.2), "0.3");
  EXPECT_EQ(numberText(12 * 0.3048), "3.6576");
  EXPECT_EQ(numberText(-2), "-2");
  EXPECT_EQ(numberText(1e7), "10000000");
  EXPECT_EQ(numberText(1.0 / 3), "0.333333333");
  EXPECT_EQ(numberText(-4e-9), "-0.000000004");
}

/// Written, read and written again gives the same text, at every size a plan may have.
TEST(JsonNumbers, SettleAfterOneRounding) {
  std::mt19937 rng(7);
  std::uniform_real_distribution<double> exponent(-10, 7), sign(-1, 1);
  for (int i = 0; i < 200'000; ++i) {
    const double v = std::copysign(std::pow(10, exponent(rng)), sign(rng));
    const std::string text = numberText(v);
    const double read = std::stod(text);
    ASSERT_LE(std::abs(read - v), 1e-9) << text;
    ASSERT_EQ(numberText(read), text);
  }
}

TEST(JsonTexts, AreEscapedAsAnotherLibraryReadsThem) {
  std::string all = "\xC3\xA9 \xF0\x9F\x92\xA7 \"\\/";
  for (char c = 1; c < 0x20; ++c)
    all += c;
  all += '\x7f';
  EXPECT_EQ(nlohmann::json::parse(inQuotes(all)).get<std::string>(), all);
}

TEST(JsonTexts, Utf8IsTold) {
  EXPECT_TRUE(isUtf8("plain"));
  EXPECT_TRUE(isUtf8("\xC3\xA9\xE6\xB1\xA1\xF0\x9F\x92\xA7"));
  for (const char* wrong : {"\x80", "\xC3", "\xC0\x80", "\xE0\x80\x80", "\xED\xA0\x80",
                            "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "a\xFF"}) {
    EXPECT_FALSE(isUtf8(wrong));
  }
}

TEST(JsonDocument, RemembersTheLineOfEveryValue) {
  const JsonNode root =
      parseJson("{\n\"a\": [1,\n  2\n\n,\n{\"b\": true}\n],\r\n\"c/~\": null}", "lines.json");
  EXPECT_EQ(lineAt(root, ""), 1);
  EXPECT_EQ(lineAt(root, "/a"), 2);
  EXPECT_EQ(lineAt(root, "/a/0"), 2);
  EXPECT_EQ(lineAt(root, "/a/1"), 3);
  EXPECT_EQ(lineAt(root, "/a/2/b"), 6);
  EXPECT_EQ(lineAt(root, "/c~1~0"), 8);
  EXPECT_EQ(lineAt(root, "/a/2/missing/x"), 6) << "the nearest ancestor that exists";
  EXPECT_EQ(lineAt(root, "/a/9"), 2);
}

TEST(JsonLayout, KeepsPointsTogetherAndObjectsApart) {
  const std::string text = R"({
  "at": [1, 2],
  "small": {"x": 1, "list": []},
  "objects": [
    {"id": "A"},
    {"id": "B", "path": [[0, 0], [1, 1]]}
  ],
  "long": [
    [1000000.5, 1000000.5],
    [2000000.5, 2000000.5],
    [3000000.5, 3000000.5],
    [4000000.5, 4000000.5],
    [5000000.5, 5000000.5]
  ]
}
)";
  EXPECT_EQ(jsonText(parseJson(text, "layout.json")), text);
}

} // namespace
} // namespace sump
