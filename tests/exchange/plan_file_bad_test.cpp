// Every bad file gives one clear error. The files and what is expected of each stand in
// tests/exchange/bad/; those that would be large are made here.

#include "core/exchange/json_document.h"
#include "core/exchange/plan_file.h"
#include "tests/support/places.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <random>
#include <set>
#include <sstream>

namespace sump {
namespace {

using ::testing::HasSubstr;

const std::filesystem::path kFolder = std::filesystem::path(sourceFolder()) / "tests/exchange/bad";

struct BadFile {
  std::string file;
  std::string pointer;
  int line = 0;
  std::string phrase;
};

std::vector<BadFile> badFiles() {
  std::vector<BadFile> rows;
  std::ifstream table(kFolder / "expected.tsv");
  for (std::string text; std::getline(table, text);) {
    if (text.starts_with('#')) continue;
    std::istringstream cells(text);
    BadFile row;
    std::string line;
    std::getline(cells, row.file, '\t');
    std::getline(cells, row.pointer, '\t');
    std::getline(cells, line, '\t');
    std::getline(cells, row.phrase, '\t');
    row.line = std::stoi(line);
    rows.push_back(row);
  }
  return rows;
}

/// The error that reading gives; fails the test when there is none.
template <class Read> InputError errorOf(Read read) {
  try {
    read();
  } catch (const InputError& e) {
    return e;
  }
  ADD_FAILURE() << "was read without an error";
  return {"", "", 0, "", ""};
}

InputError errorIn(const std::string& text) {
  return errorOf([&] { readPlanText(text, "bad.sump"); });
}

void expectOneClearLine(const InputError& e) {
  const std::string text = e.what();
  EXPECT_EQ(text.find('\n'), std::string::npos) << text;
  EXPECT_LT(text.size(), 500U) << text;
  EXPECT_FALSE(e.problem.empty());
  EXPECT_FALSE(e.mend.empty()) << text;
}

TEST(BadPlanFiles, AreManyAndAllListed) {
  std::set<std::string> listed, there;
  for (const BadFile& row : badFiles())
    listed.insert(row.file);
  for (const auto& entry : std::filesystem::directory_iterator(kFolder)) {
    if (entry.path().extension() == ".sump") there.insert(entry.path().filename());
  }
  EXPECT_EQ(listed, there);
  EXPECT_GE(listed.size(), 40U);
}

TEST(BadPlanFiles, EachGivesItsOneError) {
  for (const BadFile& bad : badFiles()) {
    SCOPED_TRACE(bad.file);
    const std::filesystem::path file = kFolder / bad.file;
    const InputError e = errorOf([&] { readPlanFile(file); });
    EXPECT_EQ(e.file, file.string());
    EXPECT_EQ(e.pointer, bad.pointer) << e.what();
    EXPECT_EQ(e.line, bad.line) << e.what();
    EXPECT_THAT(std::string(e.what()), HasSubstr(bad.phrase));
    expectOneClearLine(e);
  }
}

TEST(BadPlanFiles, MessageReadsAsOneSentenceWithItsPlace) {
  const InputError e = errorOf([] { readPlanFile(kFolder / "negative-width.sump"); });
  EXPECT_EQ(std::string(e.what()),
            (kFolder / "negative-width.sump").string() +
                ":10: /vaults/0/width: is -2, must be more than 0; give the outside width in "
                "metres");
}

TEST(BadPlanFiles, NewerVersionIsNamedAndLeftAlone) {
  const std::filesystem::path file = kFolder / "version-newer.sump";
  const auto before = std::filesystem::last_write_time(file);
  const InputError e = errorOf([&] { readPlanFile(file); });
  EXPECT_THAT(std::string(e.what()), HasSubstr("newer Sumpwright"));
  EXPECT_EQ(std::filesystem::last_write_time(file), before);
}

TEST(BadPlanFiles, AMillionVertices) {
  std::string text = R"({"format":"sumpwright-plan","version":1,"site":{"boundary":[[0,0])";
  for (int i = 1; i < 1'000'000; ++i)
    text += ",[" + std::to_string(i) + ",1]";
  const InputError e = errorIn(text + "]}}");
  EXPECT_EQ(e.pointer, "/site/boundary/20000");
  EXPECT_THAT(e.problem, HasSubstr("more than 20000 members"));
  expectOneClearLine(e);
}

TEST(BadPlanFiles, AHundredThousandDeep) {
  for (const char open : {'[', '{'}) {
    std::string text = R"({"format":"sumpwright-plan","version":1,"site":)";
    for (int i = 0; i < 100'000; ++i)
      text += open == '[' ? "[" : "{\"a\":";
    const InputError e = errorIn(text);
    EXPECT_THAT(e.problem, HasSubstr("nested more than 64 deep"));
    expectOneClearLine(e);
  }
}

TEST(BadPlanFiles, TooManyKeysOrValuesOrBytes) {
  std::string keys = R"({"format":"sumpwright-plan","version":1)";
  for (int i = 0; i < 2'000; ++i)
    keys += ",\"k" + std::to_string(i) + "\":0";
  EXPECT_THAT(errorIn(keys + "}").problem, HasSubstr("one key too many"));

  JsonBounds few;
  few.values = 6;
  EXPECT_EQ(parseJson("[1, [2, 3], 4]", "few.json", few).items.size(), 3U);
  EXPECT_THAT(errorOf([&] { parseJson("[1, [2, 3], 4, 5]", "many.json", few); }).problem,
              HasSubstr("more than 6 values"));

  EXPECT_THAT(errorIn(std::string((std::size_t{64} << 20) + 1, ' ')).problem,
              HasSubstr("larger than 64 MiB"));
}

TEST(BadPlanFiles, VeryLongTokensAreCutInTheMessage) {
  const std::string head = R"({"format":"sumpwright-plan","version":1,)";
  expectOneClearLine(errorIn(head + "\"" + std::string(100'000, 'k') + "\":0}"));
  expectOneClearLine(errorIn(head + "\"site\":{\"datum\":\"" + std::string(100'000, 'd') + "\"}}"));
  expectOneClearLine(
      errorIn(head + "\"project\":{\"units\":\"" + std::string(9'000, 'u') + "\"}}"));
  expectOneClearLine(errorIn(head + "\"version\":" + std::string(100'000, '9') + "}"));
  expectOneClearLine(errorIn(std::string(100'000, 'x')));
}

TEST(BadPlanFiles, TextOfTheFileCannotBreakTheMessage) {
  const std::string head = R"({"format":"sumpwright-plan","version":1,)";
  for (const std::string& odd :
       {std::string("V\\n9"), std::string(5'000, 'v'), std::string("\xC3\xA9") + "\\t"}) {
    expectOneClearLine(errorIn(head + R"("runs":[{"id":"R","from":{"at":[0,0]},"to":{"at":[1,0],)" +
                               R"("kind":"sewer","target":")" + odd + "\"}}]}"));
    expectOneClearLine(errorIn(head + "\"limits\":{\"" + odd + "\":1}}"));
    expectOneClearLine(errorIn(head + "\"" + odd + "\":1,\"" + odd + "\":2}"));
    expectOneClearLine(errorIn(head + "\"" + odd + "\":1}"));
  }
}

std::string sampleText() {
  const std::filesystem::path sample =
      std::filesystem::path(sourceFolder()) / "samples/transit-depot.sump";
  std::ifstream in(sample, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

/// Bytes changed, dropped, doubled at random: a plan or one clear error, nothing else.
TEST(BadPlanFiles, TheSampleGarbledAtRandom) {
  const std::string sample = sampleText();
  std::mt19937 rng(11);
  const auto below = [&rng](std::size_t n) {
    return std::uniform_int_distribution<std::size_t>(0, n - 1)(rng);
  };
  int refused = 0;
  for (int i = 0; i < 400; ++i) {
    std::string text = sample;
    for (std::size_t k = 1 + below(3); k > 0; --k) {
      const std::size_t at = below(text.size());
      const std::size_t kind = below(3);
      if (kind == 0) text[at] = static_cast<char>(below(256));
      if (kind == 1) text.erase(at, 1 + below(40));
      if (kind == 2) text.insert(at, text.substr(below(text.size()), 1 + below(40)));
    }
    try {
      readPlanText(text, "garbled.sump");
    } catch (const InputError& e) {
      ++refused;
      expectOneClearLine(e);
    }
  }
  EXPECT_GT(refused, 200);
}

TEST(BadPlanFiles, EveryWayToCutTheSampleShort) {
  const std::string text = sampleText();
  ASSERT_GT(text.size(), 1000U);
  const std::size_t end = text.find_last_of('}');
  for (std::size_t cut = 0; cut <= end; cut += 1 + cut / 50) {
    SCOPED_TRACE(cut);
    expectOneClearLine(errorIn(text.substr(0, cut)));
  }
}

TEST(BadPlanFiles, WhatIsNoFileAtAll) {
  const InputError folder = errorOf([] { readPlanFile(kFolder); });
  EXPECT_THAT(folder.problem, HasSubstr("is a folder"));
  const InputError missing = errorOf([] { readPlanFile(kFolder / "no-such.sump"); });
  EXPECT_THAT(missing.problem, HasSubstr("No such file"));
  const InputError zeros = errorOf([] { readPlanFile("/dev/zero"); });
  EXPECT_THAT(zeros.problem, HasSubstr("larger than 64 MiB"));
  const InputError nothing = errorOf([] { readPlanFile("/dev/null"); });
  EXPECT_THAT(nothing.problem, HasSubstr("is empty"));
}

} // namespace
} // namespace sump
