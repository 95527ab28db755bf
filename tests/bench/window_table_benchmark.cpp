// Prints how long the lists of the window take for 2,000 lines beside 200: the first filling, one
// changed line as in a drag, and sharing the columns out anew (with the rows' heights), which
// happens at rest and when the dock is made wider or narrower. Ratios within one run; nothing here
// passes or fails. Ten times the lines should take about ten times as long where all of them are
// touched, and no longer at all in a drag.

#include "app/panels/tables.h"

#include <QApplication>

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <functional>

namespace {

using namespace sump;

double threadMs() {
  timespec now{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
  return double(now.tv_sec) * 1e3 + double(now.tv_nsec) / 1e6;
}

/// The least of some, as others use the machine too.
double timed(const std::function<void()>& work) {
  double least = 1e300;
  for (int i = 0; i < 7; ++i) {
    const double before = threadMs();
    work();
    least = std::min(least, threadMs() - before);
  }
  return least;
}

std::vector<TableRow> lines(int count) {
  std::vector<TableRow> rows;
  for (int i = 0; i < count; ++i) {
    TableRow row;
    row.cells << "Plumbing" << QString("PVC Sch 80 pipe and its couplings of lot %1").arg(i / 7)
              << "1-1/2\""
              << "PVC Sch 80" << QString("%1.5 ft").arg(i * 37 % 900)
              << QString("%1.0 ft").arg(i * 41 % 900) << QString::number(i % 9) << "least, proven"
              << QString("RC-%1, MU-%2, SU-%3 and 4 more").arg(i).arg(i * 3 % 1999).arg(i / 2);
    rows.push_back(row);
  }
  return rows;
}

struct Times {
  double first, drag, spread, narrower;
};

Times measure(int count) {
  const QStringList headings{"Trade",   "Item",    "Size", "Material",  ">In place",
                             ">To buy", ">Sticks", "Note", "Comes from"};
  const std::vector<TableRow> rows = lines(count);
  Times t{};
  t.first = timed([&] {
    ObjectTable table(headings, "Lines");
    table.resize(760, 400);
    table.fill(rows, 1);
  });
  ObjectTable table(headings, "Lines");
  table.foldWhereNarrow();
  table.resize(760, 400);
  table.show();
  table.fill(rows, 1);
  std::vector<TableRow> changing = rows;
  int step = 0;
  t.drag = timed([&] {
    changing[changing.size() / 2].cells[4] = QString("%1.5 ft").arg(100 + ++step);
    table.fill(changing, 1);
  });
  t.spread = timed([&] { table.spread(); });
  bool narrow = false;
  t.narrower = timed([&] {
    narrow = !narrow;
    table.resize(narrow ? 740 : 800, 400);
    QApplication::processEvents();
  });
  return t;
}

} // namespace

int main(int argc, char** argv) {
  QApplication app(argc, argv);
  const Times some = measure(200), many = measure(2000);
  std::puts("ms of the window's thread       200 lines   2,000 lines   ratio");
  const auto row = [](const char* what, double a, double b) {
    std::printf("%-30s %10.2f %13.2f %7.1f\n", what, a, b, a > 0 ? b / a : 0);
  };
  row("first filling", some.first, many.first);
  row("a line of them in a drag", some.drag, many.drag);
  row("columns and heights at rest", some.spread, many.spread);
  row("the dock made narrower", some.narrower, many.narrower);
  return 0;
}
