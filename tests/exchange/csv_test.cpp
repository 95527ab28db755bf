// CSV after RFC 4180, read back by a small parser of the test's own, and formula guarding.

#include "core/exchange/csv.h"

#include "tests/support/csv_reader.h"

#include <gtest/gtest.h>

#include <random>

namespace sump {
namespace {

using test::readCsv;

TEST(Csv, QuotesWhatRfc4180Demands) {
  EXPECT_EQ(
      csvLine({textCell("plain"), textCell("a,b"), textCell("6\" pipe"), textCell("two\nlines")}),
      "plain,\"a,b\",\"6\"\" pipe\",\"two\nlines\"\r\n");
}

TEST(Csv, GuardsTextThatASpreadsheetWouldRun) {
  // OWASP ASVS 1.2.10: leading = + - @ TAB CR and NUL.
  const std::string nul("\0x", 2);
  for (const std::string& hostile :
       {std::string("=1+1"), std::string("+cmd"), std::string("-2"), std::string("@SUM(A1)"),
        std::string("\tx"), std::string("\rx"), nul}) {
    const auto rows = readCsv(csvLine({textCell(hostile)}));
    ASSERT_EQ(rows.size(), 1u);
    EXPECT_EQ(rows[0][0], "'" + hostile);
  }
  EXPECT_EQ(csvLine({textCell("a=b"), textCell("")}), "a=b,\r\n");
}

TEST(Csv, LeavesNumbersAlone) {
  EXPECT_EQ(csvLine({numberCell("-1.5"), numberCell("")}), "-1.5,\r\n");
}

TEST(Csv, RoundTripsTenThousandRandomCells) {
  std::mt19937 random(20261125);
  const std::string alphabet = "ab,\"\r\n =+-@'\xC2\xB0;x1";
  std::uniform_int_distribution<std::size_t> letter(0, alphabet.size() - 1), length(0, 12);
  for (int line = 0; line < 1000; ++line) {
    std::vector<Cell> cells;
    std::vector<std::string> expected;
    for (int i = 0; i < 10; ++i) {
      std::string text;
      for (std::size_t n = length(random); n > 0; --n)
        text += alphabet[letter(random)];
      cells.push_back(textCell(text));
      const bool guard =
          !text.empty() && std::string("=+-@\t\r").find(text[0]) != std::string::npos;
      expected.push_back(guard ? "'" + text : text);
    }
    const auto rows = readCsv(csvLine(cells));
    ASSERT_EQ(rows.size(), 1u);
    EXPECT_EQ(rows[0], expected);
  }
}

} // namespace
} // namespace sump
