// Prints where the time of `sumpwright export` goes: the study, the sheets and lists that are made
// of it, and writing each kind of file. Processor time of this thread, the least of several rounds;
// beside it the share of the whole and how many studies of the same plan it is worth, which says
// more than milliseconds on a busy machine. Nothing here passes or fails; the aim is a sheet set
// (study, sheets, PDF) within half a second.

#include "app/paint/lists.h"
#include "app/paint/paint.h"
#include "app/paint/upkeep_files.h"
#include "app/window/resources.h"
#include "core/exchange/buy_list.h"
#include "core/exchange/plan_file.h"
#include "core/sheet/calculation_report.h"
#include "core/sheet/compose.h"
#include "tests/support/places.h"

#include <QApplication>
#include <QTemporaryDir>

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <functional>
#include <string>
#include <vector>

namespace {

using namespace sump;

constexpr int kRounds = 3;

double threadMilliseconds() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return static_cast<double>(now.tv_sec) * 1e3 + static_cast<double>(now.tv_nsec) / 1e6;
}

struct Phase {
  std::string name;
  double least = 1e300; ///< ms
};

/// Keeps the least time of each phase over the rounds, in the order of the first.
class Phases {
public:
  void time(const std::string& name, const std::function<void()>& work) {
    const double before = threadMilliseconds();
    work();
    const double took = threadMilliseconds() - before;
    auto known = std::ranges::find(list_, name, &Phase::name);
    if (known == list_.end()) known = list_.insert(list_.end(), Phase{name});
    known->least = std::min(known->least, took);
  }
  void print() const {
    double whole = 0;
    for (const Phase& phase : list_)
      whole += phase.least;
    for (const Phase& phase : list_) {
      std::printf("  %-28s %8.1f ms  %5.1f %%  %6.1f studies\n", phase.name.c_str(), phase.least,
                  100 * phase.least / whole, phase.least / list_.front().least);
    }
    std::printf("  %-28s %8.1f ms\n", "all", whole);
  }

private:
  std::vector<Phase> list_;
};

void exportOnce(const Plan& plan, const std::filesystem::path& out, Phases& phases) {
  Review reviewed;
  phases.time("study", [&] { reviewed = review(plan, builtinCatalog()); });
  const bool metric = plan.project.units == UnitSystem::Metric;
  std::vector<Page> pages;
  phases.time("sheets composed", [&] {
    pages = composeSheets(reviewed, {metric ? "a1" : "arch-d", 0, &builtinCatalog()});
  });
  phases.time("sheets as PDF", [&] { writePdf(pages, out / "set.pdf", plan.project); });
  phases.time("sheets as SVG", [&] {
    for (const Page& page : pages)
      writeSvg(page, out / (page.number + ".svg"));
  });
  BuyList buy;
  phases.time("least sticks and bill", [&] { buy = buyList(reviewed); });
  phases.time("lists", [&] { writeLists(reviewed, buy, out, "plan"); });
  std::vector<Page> report;
  phases.time("calculation report composed",
              [&] { report = composeCalculationReport(plan, calculations(plan, reviewed.study)); });
  phases.time("calculation report as PDF",
              [&] { writePdf(report, out / "report.pdf", plan.project); });
  phases.time("upkeep sheets",
              [&] { writeUpkeepPdf(reviewed, builtinUpkeep(), out / "upkeep.pdf"); });
}

} // namespace

int main(int argc, char** argv) {
  if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QApplication app(argc, argv);
  nameApplication();
  const QTemporaryDir folder;
  const std::filesystem::path out = folder.path().toStdString();
  std::vector<std::string> files(argv + 1, argv + argc);
  if (files.empty()) files = {sump::sampleFile("transit-depot")};
  for (const std::string& file : files) {
    const Plan plan = readPlanFile(file);
    Phases phases;
    for (int round = 0; round < kRounds; ++round)
      exportOnce(plan, out, phases);
    std::printf("%s\n", std::filesystem::path(file).filename().c_str());
    phases.print();
  }
}
