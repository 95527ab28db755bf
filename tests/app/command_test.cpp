// The command line as a person or a program calls it.

#include "app/command/command.h"
#include "tests/support/own_folder.h"
#include "tests/support/places.h"

#include <QProcess>
#include <QTemporaryDir>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <sstream>

namespace sump {
namespace {

const QString kSamples = QString::fromStdString(sourceFolder() + "/samples/");

struct Ran {
  int status = -1;
  std::string out;
  std::string err;
};

Ran run(const QStringList& arguments) {
  std::ostringstream out, err;
  const int status = runCommand(arguments, {out, err});
  return {status, out.str(), err.str()};
}

TEST(Command, ChecksAGoodPlanWithStatusZero) {
  const Ran ran = run({"check", kSamples + "transit-depot.sump"});
  EXPECT_EQ(ran.status, kClean) << ran.out << ran.err;
  EXPECT_NE(ran.out.find("0 errors, 0 warnings"), std::string::npos) << ran.out;
  EXPECT_NE(ran.out.find("authority having jurisdiction"), std::string::npos);
  EXPECT_TRUE(ran.err.empty()) << ran.err;
}

TEST(Command, ChecksAFaultyPlanWithStatusOneAndSaysHowToMendIt) {
  const Ran ran = run({"check", kSamples + "faulty/suction-rise.sump"});
  EXPECT_EQ(ran.status, kFindings);
  EXPECT_NE(ran.out.find("error  suction-rise  SU-1"), std::string::npos) << ran.out;
  EXPECT_NE(ran.out.find("to mend: "), std::string::npos);
  EXPECT_NE(ran.out.find("source: "), std::string::npos);
}

TEST(Command, WritesJsonThatProgramsCanRead) {
  const Ran ran = run({"check", "--json", kSamples + "faulty/suction-rise.sump"});
  const auto json = nlohmann::json::parse(ran.out);
  EXPECT_EQ(ran.status, kFindings);
  EXPECT_GE(json.at("errors"), 1);
  EXPECT_EQ(json.at("findings").at(0).at("severity"), "error");
  EXPECT_EQ(json.at("findings").at(0).at("objects").at(0), "SU-1");
}

TEST(Command, ShowsHowNumbersCameAbout) {
  const Ran text = run({"calculate", kSamples + "transit-depot.sump"});
  EXPECT_EQ(text.status, kClean) << text.err;
  const Ran json = run({"calculate", "--json", kSamples + "transit-depot.sump"});
  const auto all = nlohmann::json::parse(json.out).at("calculations");
  ASSERT_GT(all.size(), 20U);
  for (const auto& one : all) {
    EXPECT_NE(text.out.find(one.at("title").get<std::string>()), std::string::npos) << one;
    EXPECT_NE(one.contains("result"), one.contains("needs")) << one;
    EXPECT_FALSE(one.at("source").get<std::string>().empty()) << one;
    EXPECT_FALSE(one.at("formula").get<std::string>().empty()) << one;
  }
}

TEST(Command, ListsLevelsAndQuantities) {
  const Ran levels = run({"levels", kSamples + "transit-depot.sump"});
  EXPECT_EQ(levels.status, kClean);
  EXPECT_NE(levels.out.find("97.25"), std::string::npos) << levels.out; // the overflow invert
  const Ran json = run({"levels", "--json", kSamples + "transit-depot.sump"});
  EXPECT_NEAR(nlohmann::json::parse(json.out).at("vaults").at(1).at("overflowInvert").get<double>(),
              97.25 * 0.3048, 1e-9);
  const Ran csv = run({"takeoff", "--csv", kSamples + "transit-depot.sump"});
  EXPECT_EQ(csv.out.rfind("Item,Trade,Category,", 0), 0u) << csv.out;
  EXPECT_NE(csv.out.find("Foot valve with strainer"), std::string::npos);
}

TEST(Command, ListsCutsPricesAndStakeOutPoints) {
  const QString plan = kSamples + "transit-depot.sump";
  const Ran cuts = run({"takeoff", "--cuts", plan});
  EXPECT_NE(cuts.out.find("(least, proven)"), std::string::npos) << cuts.out;
  EXPECT_NE(cuts.out, run({"takeoff", "--cuts", "--kerf", "1 in", plan}).out);
  const Ran stakes = run({"stakeout", plan});
  EXPECT_EQ(stakes.out.rfind("P (point),", 0), 0u) << stakes.out;
  const QTemporaryDir folder;
  const QString prices = folder.filePath("own.csv"), book = folder.filePath("bill.xlsx");
  std::ofstream(prices.toStdString())
      << "item,size,unit,price,currency\nfoot-valve,2,each,10,USD\n";
  const Ran priced = run({"takeoff", "--prices", prices, plan});
  EXPECT_NE(priced.out.find("Total of what has a price: USD 20.00"), std::string::npos)
      << priced.out;
  EXPECT_NE(priced.out.find("Without a price or an amount"), std::string::npos);
  EXPECT_EQ(run({"takeoff", "--prices", prices, "--xlsx", book, plan}).status, kClean);
  EXPECT_GT(std::filesystem::file_size(book.toStdString()), 5000u);
  std::ofstream(prices.toStdString(), std::ios::app) << "foot-valve,3,dozen,10,USD\n";
  const Ran bad = run({"takeoff", "--prices", prices, plan});
  EXPECT_EQ(bad.status, kBadInput);
  EXPECT_NE(bad.err.find("own.csv:3: the unit 'dozen' is not known"), std::string::npos) << bad.err;
}

TEST(Command, TellsAndWritesUpkeep) {
  const QString plan = kSamples + "transit-depot.sump";
  const Ran text = run({"upkeep", plan});
  EXPECT_EQ(text.status, kClean) << text.err;
  EXPECT_NE(text.out.find("Suction and strainer filled: "), std::string::npos) << text.out;
  EXPECT_NE(text.out.find("each week  Flush the underflow"), std::string::npos) << text.out;
  const QTemporaryDir folder;
  const QString file = folder.filePath("upkeep.ics");
  const Ran ran = run({"upkeep", "--ics", file, "--start", "2026-12-01", plan});
  EXPECT_EQ(ran.status, kClean) << ran.err;
  std::ifstream in(file.toStdString(), std::ios::binary);
  std::ostringstream calendar;
  calendar << in.rdbuf();
  EXPECT_EQ(calendar.str().rfind("BEGIN:VCALENDAR\r\nVERSION:2.0\r\n", 0), 0u);
  EXPECT_NE(calendar.str().find("DTSTART;VALUE=DATE:20261208\r\nRRULE:FREQ=WEEKLY\r\n"),
            std::string::npos);
}

TEST(Command, BadInputIsOneLineAndStatusTwo) {
  const std::vector<QStringList> calls = {
      {"check"},
      {"check", "no-such-file.sump"},
      {"check", "--colour", "x.sump"},
      {"levels", "a.sump", "b.sump"},
      {"frobnicate"},
      {"export", kSamples + "transit-depot.sump", "--paper", "a17"},
      {"calculate", kSamples + "transit-depot.sump", "--pdf", "x.pdf", "--paper", "a17"},
      {"upkeep", kSamples + "transit-depot.sump", "--ics", "x.ics"},
      {"upkeep", kSamples + "transit-depot.sump", "--ics", "x.ics", "--start", "2026-02-30"},
      {"check", "--catalog", "/no/such/folder", kSamples + "transit-depot.sump"}};
  for (const QStringList& call : calls) {
    const Ran ran = run(call);
    EXPECT_EQ(ran.status, kBadInput) << call.join(' ').toStdString();
    EXPECT_TRUE(ran.out.empty()) << ran.out;
    EXPECT_EQ(std::count(ran.err.begin(), ran.err.end(), '\n'), 1) << ran.err;
    EXPECT_EQ(ran.err.rfind("sumpwright", 0), 0u) << ran.err;
  }
}

TEST(Command, HelpListsEveryCommandWithExamples) {
  const Ran all = run({"--help"});
  EXPECT_EQ(all.status, kClean);
  for (const Command& command : commands()) {
    EXPECT_NE(all.out.find(std::string("  ") + command.name + " "), std::string::npos);
    const Ran one = run({command.name, "--help"});
    EXPECT_EQ(one.status, kClean);
    EXPECT_NE(one.out.find("Examples:\n  sumpwright " + std::string(command.name)),
              std::string::npos)
        << one.out;
    EXPECT_EQ(one.out, run({"help", command.name}).out);
  }
}

TEST(Command, ExportsSheetsAndBillOfMaterials) {
  const testing::OwnFolder folder;
  const Ran ran = run({"export", kSamples + "transit-depot.sump", "--out",
                       QString::fromStdString(folder.path().string()), "--paper", "arch-d,a1",
                       "--start", "2026-12-01"});
  ASSERT_EQ(ran.status, kClean) << ran.err;
  for (const char* name :
       {"transit-depot-arch-d.pdf", "transit-depot-a1.pdf", "transit-depot-arch-d-P-101.svg",
        "transit-depot-bill-of-materials.csv", "transit-depot-bill-of-materials.xlsx",
        "transit-depot-cutting-list.csv", "transit-depot-cutting-list.pdf",
        "transit-depot-stake-out.csv", "transit-depot-calculations.pdf", "transit-depot-upkeep.pdf",
        "transit-depot-upkeep.ics"}) {
    EXPECT_TRUE(std::filesystem::exists(folder / name)) << name;
    EXPECT_GT(std::filesystem::file_size(folder / name), 1000u) << name;
  }
}

// The program itself, since only it decides whether there are fonts to write pages with.
TEST(Command, WritesTheCalculationReportWithoutADisplay) {
  const testing::OwnFolder folder;
  const QString pdf = QString::fromStdString((folder / "how.pdf").string());
  const QString pages = QString::fromStdString((folder / "pages").string());
  QProcess program;
  program.start(QString::fromStdString(builtProgram()),
                {"calculate", kSamples + "transit-depot.sump", "--pdf", pdf, "--svg", pages,
                 "--paper", "a4"});
  ASSERT_TRUE(program.waitForFinished(60000));
  EXPECT_EQ(program.exitCode(), kClean) << program.readAllStandardError().toStdString();
  EXPECT_GT(std::filesystem::file_size(folder / "how.pdf"), 10000u);
  EXPECT_TRUE(std::filesystem::exists(folder / "pages/transit-depot-calculations-CR-001.svg"));
  EXPECT_TRUE(program.readAllStandardOutput().startsWith(pdf.toUtf8()));
}

} // namespace
} // namespace sump
