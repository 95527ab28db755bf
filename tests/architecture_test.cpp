// Guards the shape of the code: core has no Qt, the arrows between its rooms run one way, and no
// file grows past one sitting's reading. The checker is a pure function over a file's path and
// text, so that it is itself tested on made-up bad input.

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "tests/support/places.h"

namespace {

constexpr int kMostLines = 399;

/// What each room of core may include besides itself: everything that the arrows of DEVELOPERS.md
/// lead to (units <- geometry <- catalog, plan <- study <- rules, routing <- sheet, exchange).
const std::map<std::string, std::set<std::string>, std::less<>>& allowedRooms() {
  static const std::map<std::string, std::set<std::string>, std::less<>> table = {
      {"units", {}},
      {"geometry", {"units"}},
      {"catalog", {"units", "geometry"}},
      {"plan", {"units", "geometry"}},
      {"study", {"units", "geometry", "catalog", "plan"}},
      {"rules", {"units", "geometry", "catalog", "plan", "study"}},
      {"routing", {"units", "geometry", "catalog", "plan", "study"}},
      {"sheet", {"units", "geometry", "catalog", "plan", "study", "rules", "routing"}},
      {"exchange", {"units", "geometry", "catalog", "plan", "study", "rules", "routing"}},
  };
  return table;
}

/// The room of `core/units/print.h`: `units`. Empty when the path is not of core.
std::string roomOf(std::string_view path) {
  if (!path.starts_with("core/")) return {};
  path.remove_prefix(5);
  return std::string(path.substr(0, path.find('/')));
}

/// The header named by an include line, with its `<` or `"` in front; empty for other lines.
std::string includedBy(std::string_view line) {
  const auto skipBlanks = [&] {
    while (!line.empty() && (line.front() == ' ' || line.front() == '\t'))
      line.remove_prefix(1);
  };
  skipBlanks();
  if (!line.starts_with('#')) return {};
  line.remove_prefix(1);
  skipBlanks();
  if (!line.starts_with("include")) return {};
  line.remove_prefix(7);
  skipBlanks();
  if (line.empty() || (line.front() != '<' && line.front() != '"')) return {};
  const char close = line.front() == '<' ? '>' : '"';
  return std::string(line.substr(0, line.find(close, 1)));
}

/// What is wrong with one included header in a file of core; empty when nothing is.
std::string faultOf(const std::string& path, const std::string& header) {
  const std::string name = header.substr(1);
  if (name.starts_with("Q") || name.starts_with("app/")) return "core must not use Qt or app";
  if (name.starts_with("boost/geometry") && path != "core/geometry/boost_types.h" &&
      !(path.starts_with("core/geometry/") && path.ends_with(".cpp"))) {
    return "Boost.Geometry stays inside core/geometry";
  }
  if (name == "core/geometry/boost_types.h" && !path.ends_with(".cpp")) {
    return "boost_types.h is for .cpp files only";
  }
  if (header.front() == '"' && !name.starts_with("core/")) return "include core files by full path";
  const std::string from = roomOf(path), to = roomOf(name);
  if (to.empty() || to == from) return {};
  const auto allowed = allowedRooms().find(from);
  if (allowed == allowedRooms().end()) return "room '" + from + "' is not in the table of arrows";
  if (!allowed->second.contains(to)) return from + " must not know " + to;
  return {};
}

/// Every fault of one file of core, as `path:line: what (header)`.
std::vector<std::string> faultsIn(const std::string& path, const std::string& text) {
  std::vector<std::string> faults;
  std::istringstream lines(text);
  std::string line;
  int number = 0;
  while (std::getline(lines, line)) {
    ++number;
    const std::string header = includedBy(line);
    if (header.empty()) continue;
    const std::string fault = faultOf(path, header);
    if (fault.empty()) continue;
    faults.push_back(path + ":" + std::to_string(number) + ": " + fault + " (" + header + ")");
  }
  if (number > kMostLines) faults.push_back(path + ": has " + std::to_string(number) + " lines");
  return faults;
}

std::string textOf(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

/// Paths of all sources under a folder of the project, from its root, sorted.
std::vector<std::string> filesUnder(const char* folder) {
  const std::filesystem::path root = sump::sourceFolder();
  std::vector<std::string> files;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(root / folder)) {
    const auto ending = entry.path().extension();
    if (ending != ".h" && ending != ".cpp") continue;
    files.push_back(std::filesystem::relative(entry.path(), root).generic_string());
  }
  std::ranges::sort(files);
  return files;
}

std::vector<std::string> coreFiles() {
  return filesUnder("core");
}

/// Names of the types that a header defines at the outermost level.
std::vector<std::string> typesIn(std::string_view text) {
  static const std::regex definition("^(?:struct|class|enum class) (\\w+)[^;]*\\{");
  std::vector<std::string> names;
  std::istringstream lines{std::string(text)};
  for (std::string line; std::getline(lines, line);) {
    std::smatch match;
    if (std::regex_search(line, match, definition)) names.push_back(match[1]);
  }
  return names;
}

TEST(Architecture, TypesInAHeaderAreFound) {
  EXPECT_EQ(typesIn("struct A {\nclass B final : public C {\nenum class D { X };\n"
                    "struct E;\n  struct Inner {\n"),
            (std::vector<std::string>{"A", "B", "D"}));
}

// One namespace holds all rooms: two types of one name in it break the one-definition rule, and the
// linker says nothing.
TEST(Architecture, NoTwoHeadersDefineATypeOfOneName) {
  std::map<std::string, std::string> homes;
  for (const char* folder : {"core", "app"}) {
    for (const std::string& path : filesUnder(folder)) {
      if (!path.ends_with(".h")) continue;
      for (const std::string& name : typesIn(textOf(sump::sourceFolder() + "/" + path))) {
        const auto [home, isNew] = homes.try_emplace(name, path);
        EXPECT_TRUE(isNew) << name << " stands in " << home->second << " and " << path;
      }
    }
  }
  EXPECT_GT(homes.size(), 100U) << "the scan must see the headers";
}

TEST(Architecture, CoreKeepsItsArrowsAndItsSize) {
  const auto files = coreFiles();
  ASSERT_GT(files.size(), 40U) << "the scan must see the sources";
  for (const std::string& path : files) {
    for (const std::string& fault : faultsIn(path, textOf(sump::sourceFolder() + "/" + path))) {
      ADD_FAILURE() << fault;
    }
  }
}

TEST(Architecture, EveryRoomOfCoreIsInTheTableOfArrows) {
  for (const std::string& path : coreFiles()) {
    EXPECT_TRUE(allowedRooms().contains(roomOf(path))) << path;
  }
}

TEST(Architecture, TableOfArrowsHasNoWayBack) {
  for (const auto& [room, allowed] : allowedRooms()) {
    EXPECT_FALSE(allowed.contains(room)) << room;
    for (const std::string& other : allowed) {
      ASSERT_TRUE(allowedRooms().contains(other)) << other;
      EXPECT_FALSE(allowedRooms().at(other).contains(room)) << room << " <-> " << other;
      EXPECT_TRUE(std::ranges::includes(allowed, allowedRooms().at(other)))
          << room << " may use " << other << " but not all that " << other << " stands on";
    }
  }
}

struct BadInclude {
  const char* path;
  const char* line;
};

class ArchitectureFault : public ::testing::TestWithParam<BadInclude> {};

TEST_P(ArchitectureFault, IsFoundAtItsLine) {
  const auto [path, line] = GetParam();
  const auto faults = faultsIn(path, "#pragma once\n" + std::string(line) + "\nint x;\n");
  ASSERT_EQ(faults.size(), 1U) << line;
  EXPECT_TRUE(faults.front().starts_with(std::string(path) + ":2: ")) << faults.front();
}

INSTANTIATE_TEST_SUITE_P(
    MadeUp, ArchitectureFault,
    ::testing::Values(BadInclude{"core/units/x.h", "#include <QString>"},
                      BadInclude{"core/sheet/x.cpp", "#include <QtCore/QString>"},
                      BadInclude{"core/sheet/x.cpp", "#include \"QString\""},
                      BadInclude{"core/exchange/x.cpp", "#include \"app/main.h\""},
                      BadInclude{"core/units/x.cpp", "#include \"core/geometry/point.h\""},
                      BadInclude{"core/plan/x.h", "#include \"core/study/study.h\""},
                      BadInclude{"core/plan/x.h", "#include \"core/catalog/catalog.h\""},
                      BadInclude{"core/study/x.cpp", "  #  include\t\"core/rules/rule.h\""},
                      BadInclude{"core/sheet/x.cpp", "#include \"core/exchange/csv.h\""},
                      BadInclude{"core/exchange/x.cpp", "#include \"core/sheet/page.h\""},
                      BadInclude{"core/attic/x.cpp", "#include \"core/units/print.h\""},
                      BadInclude{"core/units/x.cpp", "#include \"print.h\""},
                      BadInclude{"core/geometry/x.h", "#include <boost/geometry.hpp>"},
                      BadInclude{"core/geometry/x.h", "#include \"core/geometry/boost_types.h\""},
                      BadInclude{"core/study/x.cpp", "#include <boost/geometry.hpp>"}));

TEST(Architecture, GoodIncludesPass) {
  const std::string text = "#include \"core/study/context.h\"\n"
                           "#include \"core/plan/plan.h\"\n"
                           "#include <queue>\n"
                           "// #include <QString>\n";
  EXPECT_TRUE(faultsIn("core/study/x.cpp", text).empty());
}

TEST(Architecture, LongFilesAreFound) {
  std::string text;
  for (int i = 0; i < kMostLines; ++i)
    text += "\n";
  EXPECT_TRUE(faultsIn("core/units/x.cpp", text).empty());
  EXPECT_EQ(faultsIn("core/units/x.cpp", text + "\n").size(), 1U);
}

} // namespace
