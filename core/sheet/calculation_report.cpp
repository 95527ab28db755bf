#include "core/sheet/calculation_report.h"

#include "core/sheet/border.h"
#include "core/sheet/calculation_block.h"
#include "core/sheet/upright.h"

#include <array>
#include <cstdio>
#include <map>

namespace sump {

namespace {

constexpr double kContentsNumber = 15; ///< mm, `12.146` of a calculation in the contents
constexpr double kPageNumber = 14;

class CalculationReport {
public:
  CalculationReport(const Plan& plan, std::vector<Calculation> all, const PaperSize& paper)
      : project_(plan.project), names_(plan), outline_(std::move(all)), paper_(paper) {}
  std::vector<Page> pages();

private:
  /// What of a page is left for text: above the title block on the first, above a strip else.
  PaperBox turn(std::vector<Page>& pages, bool cover) const;
  double width() const;
  FlowPiece heading(const std::string& text) const;
  FlowPiece advice() const;
  std::vector<Page> body();
  std::vector<Page> front(std::size_t before) const;
  std::vector<PaperStrip> sectionLine(const CalculationSection& section, std::size_t page) const;
  std::vector<PaperStrip> entryLine(const NumberedCalculation& entry, std::size_t page) const;
  void finish(std::vector<Page>& pages) const;

  const Project& project_;
  ObjectNames names_;
  CalculationOutline outline_;
  const PaperSize& paper_;
  std::map<std::string, std::size_t> pageOf_; ///< of the body, by number; 0 is its first
};

PaperBox CalculationReport::turn(std::vector<Page>& pages, bool cover) const {
  return turnUpright(pages, "Calculation report", paper_, cover);
}

double CalculationReport::width() const {
  std::vector<Page> scratch;
  return turn(scratch, false).width();
}

FlowPiece CalculationReport::heading(const std::string& text) const {
  return uprightHeading(text, width());
}

FlowPiece CalculationReport::advice() const {
  const std::size_t open = outline_.undecided();
  FlowPiece piece;
  piece.block = paragraphs(
      "HOW TO READ THIS REPORT",
      {std::to_string(outline_.size()) +
           " quantities, each with its formula, inputs, steps, "
           "result and source. " +
           (open == 0 ? std::string("All of them are decided.")
                      : std::to_string(open) + " cannot be decided; each says what it needs. "
                                               "Unknown input is never taken as a pass."),
       "Formulas and steps are in SI: m, s, kg, N, Pa, K. Inputs and results are given both in "
       "the units of the project and in SI. g is 9.80665 m/s\u00B2.",
       "From: the plan, the catalogue, a limit, or the number of another calculation of this "
       "report. Results are carried on unrounded.",
       "These are screening calculations. The adopted local code and the authority having "
       "jurisdiction govern. Work is to be designed, checked and sealed by licensed people where "
       "local law asks for it; structures, shoring, lifting, electrical circuits and "
       "cross-connection control are not designed here."},
      width(), false);
  piece.gap = 4;
  return piece;
}

std::vector<Page> CalculationReport::body() {
  ReportFlow flow([this](std::vector<Page>& pages) { return turn(pages, false); });
  for (const CalculationSection& section : outline_.sections()) {
    FlowPiece title = heading(section.number + "   " + section.title);
    for (const NumberedCalculation& entry : section.entries) {
      FlowPiece piece = calculationPiece(outline_, names_, entry, project_.units, width());
      if (&entry == &section.entries.front()) {
        piece.lead = std::move(title.block.body);
        piece.lead.push_back({title.gap, {}});
      }
      pageOf_[entry.number] = flow.add(std::move(piece));
    }
  }
  return flow.take();
}

std::vector<PaperStrip> CalculationReport::sectionLine(const CalculationSection& section,
                                                       std::size_t page) const {
  const double w = width();
  std::vector<PaperStrip> strips = {{1.5, {}}};
  for (PaperStrip& strip : rowStrips(
           {{0, kContentsNumber, section.number, Align::Left, true},
            {kContentsNumber, w - kContentsNumber - kPageNumber, section.title, Align::Left, true},
            {w - kPageNumber, kPageNumber, std::to_string(page), Align::Right, true}}))
    strips.push_back(std::move(strip));
  return strips;
}

std::vector<PaperStrip> CalculationReport::entryLine(const NumberedCalculation& entry,
                                                     std::size_t page) const {
  const double w = width();
  const Calculation& c = entry.calculation;
  const std::string text = c.title + (c.object.empty() ? "" : ", " + names_.of(c.object)) +
                           (c.decided ? "" : " - cannot be decided");
  return rowStrips({{0, kContentsNumber, entry.number},
                    {kContentsNumber, w - kContentsNumber - kPageNumber, text},
                    {w - kPageNumber, kPageNumber, std::to_string(page), Align::Right}});
}

/// The pages before the calculations, if there are `before` of them.
std::vector<Page> CalculationReport::front(std::size_t before) const {
  ReportFlow flow([this](std::vector<Page>& pages) { return turn(pages, pages.empty()); });
  flow.add(heading("CALCULATION REPORT"));
  flow.add(advice());
  const auto onPage = [&](const std::string& number) { return before + pageOf_.at(number) + 1; };
  FlowPiece contents = heading("CONTENTS");
  for (const CalculationSection& section : outline_.sections()) {
    for (const NumberedCalculation& entry : section.entries) {
      FlowPiece piece;
      piece.block.width = width();
      piece.block.body = entryLine(entry, onPage(entry.number));
      if (&entry == &section.entries.front()) {
        piece.lead = std::move(contents.block.body); // only before the first
        contents.block.body.clear();
        for (PaperStrip& strip : sectionLine(section, onPage(entry.number)))
          piece.lead.push_back(std::move(strip));
      }
      flow.add(std::move(piece));
    }
  }
  return flow.take();
}

void CalculationReport::finish(std::vector<Page>& pages) const {
  const int count = static_cast<int>(pages.size());
  for (int i = 0; i < count; ++i) {
    Page& page = pages[static_cast<std::size_t>(i)];
    std::array<char, 16> number{};
    std::snprintf(number.data(), number.size(), "CR-%03d", i + 1);
    page.number = number.data();
    const SheetFacts facts{"Calculations", "None", std::string(paper_.name), i + 1, count};
    if (i == 0) {
      drawTitleBlock(project_, facts, page);
    } else {
      drawTitleStrip(project_, facts, page);
    }
  }
}

std::vector<Page> CalculationReport::pages() {
  std::vector<Page> calculations = body();
  // The contents are as long whatever numbers stand in them: their column has a width of its own.
  std::vector<Page> all = front(front(0).size());
  for (Page& page : calculations)
    all.push_back(std::move(page));
  finish(all);
  return all;
}

} // namespace

std::string_view reportPaper(UnitSystem units) {
  return units == UnitSystem::Metric ? "a4" : "letter";
}

std::vector<Page> composeCalculationReport(const Plan& plan, std::vector<Calculation> calculations,
                                           const std::string& paper) {
  return CalculationReport(plan, std::move(calculations), uprightPaper(paper, plan.project.units))
      .pages();
}

} // namespace sump
