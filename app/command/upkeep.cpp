// `upkeep`: what is done before start-up and how often the system is looked after.

#include "core/study/upkeep.h"
#include "app/command/open_plan.h"
#include "app/paint/upkeep_files.h"
#include "core/exchange/plan_file.h"

#include <ostream>
#include <stdexcept>

namespace sump {

namespace {

void writeStep(const UpkeepStep& step, std::ostream& out) {
  out << step.text << "\n";
  if (!step.caution.empty()) out << "     CAUTION: " << step.caution << "\n";
}

std::vector<Id> objectIds(const UpkeepStep& step) {
  std::vector<Id> ids;
  for (const UpkeepObject& object : step.objects)
    ids.push_back(object.id);
  return ids;
}

void writeText(const UpkeepPlan& upkeep, std::ostream& out) {
  out << "Before start-up\n";
  int number = 0;
  for (const UpkeepStep& step : upkeep.startUp) {
    ++number;
    out << (number < 10 ? "  " : " ") << number << "  " << step.title << ": ";
    writeStep(step, out);
    if (!step.objects.empty()) out << "     at: " << joined(objectIds(step), " ") << "\n";
  }
  out << "\nUpkeep\n";
  for (const UpkeepTask& task : upkeep.tasks) {
    out << "  " << recurring(task.every) << "  " << task.step.title << ": ";
    writeStep(task.step, out);
    out << "     interval: " << task.basis << "\n";
  }
  out << "\nCautions\n";
  for (const std::string& caution : upkeep.cautions)
    out << "  " << caution << "\n";
}

int run(const QCommandLineParser& parsed, Streams streams) {
  if (parsed.isSet("write-table")) {
    writeFileAtomically(parsed.value("write-table").toStdString(), builtinUpkeepText());
    streams.out << parsed.value("write-table").toStdString() << "\n";
  }
  std::optional<Date> start;
  if (parsed.isSet("start") || parsed.isSet("ics")) start = startDate(parsed);
  const OpenedPlan opened = openPlan(parsed);
  const UpkeepTable table = upkeepOf(parsed);
  const bool pdf = parsed.isSet("pdf"), ics = parsed.isSet("ics");
  if (pdf) {
    const std::string file = parsed.value("pdf").toStdString();
    writeUpkeepPdf(opened.review, table, file, parsed.value("paper").toLower().toStdString());
    streams.out << file << "\n";
  }
  if (ics) {
    const std::string file = parsed.value("ics").toStdString();
    writeUpkeepCalendar(opened.review, table, *start, file);
    streams.out << file << "\n";
  }
  if (!pdf && !ics) writeText(upkeep(opened.review.plan, opened.review.study, table), streams.out);
  return opened.status();
}

QList<QCommandLineOption> options() {
  return {{"pdf", "Write the sheets to tick off and sign as PDF to this file.", "FILE"},
          {"paper", "Paper of these sheets, letter or a4; default by the plan's units.", "SIZE"},
          {"ics", "Write the calendar (RFC 5545) to this file; needs --start.", "FILE"},
          startOption(),
          upkeepTableOption(),
          {"write-table", "Write the built-in table to this file, to change it.", "FILE"},
          catalogOption(),
          profileOption()};
}

} // namespace

Command upkeepCommand() {
  return {"upkeep",
          "Start-up and upkeep with this plan's figures, as text, sheets and calendar.",
          "PLAN [options]",
          "  sumpwright upkeep samples/transit-depot.sump\n"
          "  sumpwright upkeep --pdf upkeep.pdf samples/transit-depot.sump\n"
          "  sumpwright upkeep --write-table upkeep.json samples/transit-depot.sump\n"
          "  sumpwright upkeep --upkeep-table upkeep.json samples/transit-depot.sump\n"
          "  sumpwright upkeep --ics upkeep.ics --start 2026-12-01 samples/transit-depot.sump\n",
          options,
          run};
}

} // namespace sump
