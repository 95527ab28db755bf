// Comparing with an earlier plan: from the command line and in the window.

#include "app/command/command.h"
#include "app/panels/tables.h"
#include "app/window/compare_dialog.h"
#include "core/exchange/plan_file.h"
#include "core/plan/edits_objects.h"
#include "tests/app/window_fixture.h"

#include <QFile>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <sstream>

namespace sump {
namespace {

class CompareTest : public testing::WindowTest {
protected:
  /// The depot with its first vault a foot to the east; returns the file.
  QString earlier() {
    const Plan depot = readPlanFile(testing::samplePath("transit-depot.sump").toStdString());
    const QString file = folder.filePath("issued.sump");
    savePlanFile(moveObjects(depot, {depot.vaults.front().id}, {0.3048, 0}), file.toStdString());
    return file;
  }
  static std::pair<int, std::string> compare(const QStringList& arguments) {
    std::ostringstream out, err;
    const int status = runCommand(QStringList{"compare"} + arguments, {out, err});
    return {status, out.str() + err.str()};
  }
};

TEST_F(CompareTest, TheCommandTellsWhatChangedByItsStatus) {
  const QString now = testing::samplePath("transit-depot.sump");
  EXPECT_EQ(compare({now, now}).first, 0);
  const auto [status, text] = compare({earlier(), now});
  EXPECT_EQ(status, 1);
  EXPECT_NE(text.find("moved"), std::string::npos) << text;
  EXPECT_NE(text.find("1'-0\" toward W"), std::string::npos) << text;
  EXPECT_EQ(compare({now}).first, 2);
  EXPECT_EQ(compare({now, folder.filePath("none.sump")}).first, 2);
}

TEST_F(CompareTest, TheCommandWritesJsonCsvAndCloudedSheets) {
  const QString csv = folder.filePath("changes.csv"), pdf = folder.filePath("clouded.pdf");
  const auto [status, text] = compare(
      {"--json", "--csv", csv, "--pdf", pdf, earlier(), testing::samplePath("transit-depot.sump")});
  EXPECT_EQ(status, 1);
  const auto json = nlohmann::json::parse(text);
  EXPECT_EQ(json.at("earlier"), "issued.sump");
  ASSERT_FALSE(json.at("changes").empty());
  EXPECT_EQ(json.at("changes").at(0).at("kind"), "moved");
  QFile list(csv), sheets(pdf);
  ASSERT_TRUE(list.open(QIODevice::ReadOnly));
  EXPECT_TRUE(list.readAll().startsWith("Kind,Object,Id,"));
  ASSERT_TRUE(sheets.open(QIODevice::ReadOnly));
  EXPECT_TRUE(sheets.readAll().startsWith("%PDF-"));
}

TEST_F(CompareTest, TheWindowListsChangesAndGoesToThem) {
  open(testing::samplePath("transit-depot.sump"));
  talk.openFile = earlier();
  window->action(ActionId::ComparePlan)->trigger();
  auto* dialog = window->findChild<CompareDialog*>();
  ASSERT_NE(dialog, nullptr) << talk.told.join("\n").toStdString();
  ASSERT_FALSE(dialog->comparison().changes.empty());
  EXPECT_EQ(dialog->changes().rowCount(), static_cast<int>(dialog->comparison().changes.size()));
  emit dialog->changes().chosen(0);
  EXPECT_EQ(canvas().selection(), std::set<Id>{plan().vaults.front().id});
  talk.saveFile = folder.filePath("list");
  dialog->saveList();
  EXPECT_TRUE(QFile::exists(folder.filePath("list.csv")));
  talk.saveFile = folder.filePath("clouded.pdf");
  dialog->saveSheets();
  EXPECT_TRUE(QFile::exists(talk.saveFile));
  EXPECT_TRUE(talk.told.isEmpty()) << talk.told.join("\n").toStdString();
}

TEST_F(CompareTest, WhatIsOfTheProjectIsNotCalledSoTwice) {
  open(testing::samplePath("transit-depot.sump"));
  Plan other = plan();
  other.project.legalOwner = "Harbour authority";
  other.basis.water.altitude = metres(120);
  sump::Run line = *other.runs.find("OF-1");
  line.name = "Overflow to the sewer";
  other.runs.put(line);
  const QString file = folder.filePath("other.sump");
  savePlanFile(other, file.toStdString());
  talk.openFile = file;
  window->action(ActionId::ComparePlan)->trigger();
  auto* dialog = window->findChild<CompareDialog*>();
  ASSERT_NE(dialog, nullptr);
  QStringList told;
  for (int r = 0; r < dialog->changes().rowCount(); ++r) {
    told << dialog->changes().item(r, 0)->text() + " | " + dialog->changes().item(r, 1)->text();
  }
  EXPECT_TRUE(told.contains("Project | Legal owner")) << told.join("\n").toStdString();
  EXPECT_TRUE(told.contains("What we know | Water: altitude")) << told.join("\n").toStdString();
  const auto ofLine = [](const QString& row) { return row.startsWith("Renamed | Line "); };
  EXPECT_TRUE(std::ranges::any_of(told, ofLine)) << told.join("\n").toStdString();
}

TEST_F(CompareTest, AFileThatIsNoPlanIsTold) {
  open(testing::samplePath("transit-depot.sump"));
  talk.openFile = folder.filePath("none.sump");
  window->action(ActionId::ComparePlan)->trigger();
  EXPECT_EQ(window->findChild<CompareDialog*>(), nullptr);
  EXPECT_EQ(talk.told.size(), 1);
}

} // namespace
} // namespace sump
