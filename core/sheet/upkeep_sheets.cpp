#include "core/sheet/upkeep_sheets.h"

#include "core/sheet/calculation_block.h"
#include "core/sheet/upright.h"

#include <array>
#include <cstdio>

namespace sump {

namespace {

constexpr double kHead = 7;     ///< mm above the text, for the sheet's number
constexpr double kText = 13;    ///< where a step's text starts, after its box and number
constexpr double kSignOff = 34; ///< width of the line to sign
constexpr double kBox = 4;      ///< side of a box to tick

PageShape box(Point2 low, double width, double height) {
  return PageShape{PaperBox{low, {low.x + width, low.y + height}}.ring(),
                   true,
                   false,
                   LineStyle{Ink::Black, 0.25, {}},
                   {}};
}

/// As the other sheets name them: `SU-1 union SU-1-2; RC-1 union RC-1-2`.
std::string objectsText(const UpkeepStep& step, const ObjectNames& names) {
  if (step.noneDrawn) return "none drawn in this plan; look on site";
  std::string text;
  for (const UpkeepObject& object : step.objects) {
    if (!text.empty()) text += "; "; // names may hold commas
    if (object.run.empty()) {
      text += object.what.empty() ? object.id : object.what;
      continue;
    }
    text += names.of(object.run);
    if (!object.what.empty()) text += " " + object.what;
    if (object.id != object.run) text += " " + object.id;
  }
  return text;
}

/// Lines to sign side by side, with what belongs on each.
PaperStrip signatures(const std::vector<std::string>& labels, double width) {
  constexpr double kRoom = 11, kGap = 5;
  PaperStrip strip{kRoom + 5, {}};
  const double each =
      (width - kGap * static_cast<double>(labels.size() - 1)) / static_cast<double>(labels.size());
  for (std::size_t i = 0; i < labels.size(); ++i) {
    const double x = static_cast<double>(i) * (each + kGap);
    strip.items.push_back(rule({x, kRoom}, {x + each, kRoom}, 0.25));
    strip.items.push_back(words({x, kRoom + 3.6}, labels[i]));
  }
  return strip;
}

/// A row of boxes: `count` of them, numbered if `numbered`.
PaperStrip boxes(int count, double each, double height, bool numbered, const std::string& label) {
  PaperStrip strip{height + 6, {}};
  strip.items.push_back(words({kText, 3.4}, label));
  for (int i = 0; i < count; ++i) {
    const double x = kText + i * each;
    strip.items.push_back(box({x, 5}, each, height));
    if (numbered)
      strip.items.push_back(
          words({x + each / 2, 8.5}, std::to_string(i + 1), kTextHeight, false, Align::Centre));
  }
  return strip;
}

/// Where it is written down that the task was done.
PaperStrip record(const UpkeepInterval& every) {
  if (every == UpkeepInterval{1, UpkeepUnit::Day})
    return boxes(31, 5, 5, true, "Day of the month, tick. Month and year: ____________");
  if (every == UpkeepInterval{1, UpkeepUnit::Week})
    return boxes(13, 12, 9, true, "Week, initials. Quarter and year: ____________");
  return boxes(6, 26, 8, false, "Date and initials:");
}

class UpkeepSheets {
public:
  UpkeepSheets(const Plan& plan, const UpkeepPlan& upkeep, const PaperSize& paper)
      : project_(plan.project), names_(plan), upkeep_(upkeep), paper_(paper) {
    std::vector<Page> scratch;
    width_ = turnUpright(scratch, {}, paper_, false).width();
  }

  std::vector<Page> pages() {
    std::vector<Page> all = startUp();
    for (Page& page : tasks())
      all.push_back(std::move(page));
    finish(all);
    return all;
  }

private:
  ReportFlow flow(const std::string& title, bool cover) const;
  FlowPiece cautions() const;
  std::vector<PaperStrip> below(const UpkeepStep& step, double width) const;
  FlowPiece stepPiece(const UpkeepStep& step, std::size_t number) const;
  FlowPiece taskPiece(const UpkeepTask& task, std::size_t number) const;
  FlowPiece figures() const;
  FlowPiece signOff() const;
  std::vector<Page> startUp() const;
  std::vector<Page> tasks() const;
  void finish(std::vector<Page>& pages) const;

  const Project& project_;
  ObjectNames names_;
  const UpkeepPlan& upkeep_;
  const PaperSize& paper_;
  double width_ = 0;
};

ReportFlow UpkeepSheets::flow(const std::string& title, bool cover) const {
  return ReportFlow([this, title, cover](std::vector<Page>& pages) {
    PaperBox space = turnUpright(pages, title, paper_, cover && pages.empty());
    space.low.y += kHead;
    return space;
  });
}

FlowPiece UpkeepSheets::cautions() const {
  FlowPiece piece;
  piece.block = paragraphs("CAUTIONS", upkeep_.cautions, width_, false);
  piece.gap = 4;
  return piece;
}

/// What stands under a step's title.
std::vector<PaperStrip> UpkeepSheets::below(const UpkeepStep& step, double width) const {
  std::vector<PaperStrip> strips = rowStrips({{kText, width, step.text}});
  if (!step.caution.empty())
    appendStrips(strips,
                 rowStrips({{kText, width, "CAUTION: " + step.caution, Align::Left, true}}));
  const std::string objects = objectsText(step, names_);
  if (!objects.empty()) appendStrips(strips, rowStrips({{kText, width, "At: " + objects}}));
  return strips;
}

FlowPiece UpkeepSheets::stepPiece(const UpkeepStep& step, std::size_t number) const {
  const double width = width_ - kText - kSignOff - 4;
  FlowPiece piece;
  piece.block.width = width_;
  piece.block.body = rowStrips({{6, 5.5, std::to_string(number), Align::Right, true},
                                {kText, width, step.title, Align::Left, true}});
  PaperStrip& first = piece.block.body.front();
  first.items.push_back(box({0.2, 0.2}, kBox, kBox));
  // The line to sign hangs beside the text, which always has one line at least.
  const double left = width_ - kSignOff;
  first.items.push_back(rule({left, 6}, {width_, 6}, 0.25));
  first.items.push_back(words({left, 9.4}, "date, initials"));
  appendStrips(piece.block.body, below(step, width));
  piece.gap = 2;
  return piece;
}

FlowPiece UpkeepSheets::taskPiece(const UpkeepTask& task, std::size_t number) const {
  constexpr double kEvery = 40;
  const double width = width_ - kText;
  FlowPiece piece;
  piece.block.width = width_;
  piece.block.body =
      rowStrips({{0, 9, std::to_string(number), Align::Right, true},
                 {kText, width - kEvery, task.step.title, Align::Left, true},
                 {width_ - kEvery, kEvery, recurring(task.every), Align::Right, true}},
                3);
  piece.block.body.front().items.push_back(rule({0, 0}, {width_, 0}, 0.35));
  appendStrips(piece.block.body, below(task.step, width));
  appendStrips(piece.block.body, rowStrips({{kText, width, "Interval: " + task.basis + "."}}));
  piece.block.body.push_back(record(task.every));
  piece.gap = 3;
  return piece;
}

FlowPiece UpkeepSheets::figures() const {
  std::vector<std::vector<std::string>> rows;
  for (const UpkeepFigure& figure : upkeep_.figures) {
    rows.push_back(
        {figure.title, "",
         figure.text ? *figure.text : "cannot be decided: needs " + needsText(figure.text.needs)});
  }
  FlowPiece piece;
  piece.block = table("FIGURES", {{"What"}, {"Found on site"}, {"By the plan"}}, rows, width_);
  piece.again = piece.block.head;
  piece.gap = 4;
  return piece;
}

FlowPiece UpkeepSheets::signOff() const {
  FlowPiece piece;
  piece.block.width = width_;
  piece.block.body = rowStrips({{0, width_, "SIGNATURES", Align::Left, true}}, 3.5);
  for (const char* who : {"Started up by", "Licensed electrician", "Taken over by"})
    piece.block.body.push_back(
        signatures({std::string(who) + ", name", "Company, licence", "Date, signature"}, width_));
  appendStrips(piece.block.body,
               rowStrips({{0, width_,
                           "Texts and usual values: " + upkeep_.source +
                               ". Figures: of this plan, worked out as the calculation report "
                               "says. Local codes and the makers' instructions govern."}}));
  return piece;
}

std::vector<Page> UpkeepSheets::startUp() const {
  ReportFlow pages = flow("Start-up", true);
  pages.add(uprightHeading("START-UP", width_));
  pages.add(cautions());
  for (std::size_t i = 0; i < upkeep_.startUp.size(); ++i)
    pages.add(stepPiece(upkeep_.startUp[i], i + 1));
  // Each where there is room: both together would leave most of the page before them empty.
  pages.add(figures());
  pages.add(signOff());
  return pages.take();
}

std::vector<Page> UpkeepSheets::tasks() const {
  ReportFlow pages = flow("Upkeep", false);
  pages.add(uprightHeading("UPKEEP", width_));
  for (std::size_t i = 0; i < upkeep_.tasks.size(); ++i)
    pages.add(taskPiece(upkeep_.tasks[i], i + 1));
  pages.add(cautions());
  return pages.take();
}

void UpkeepSheets::finish(std::vector<Page>& pages) const {
  const int count = static_cast<int>(pages.size());
  for (int i = 0; i < count; ++i) {
    Page& page = pages[static_cast<std::size_t>(i)];
    std::array<char, 16> number{};
    std::snprintf(number.data(), number.size(), "O-%03d", i + 1);
    page.number = number.data();
    const PaperBox space = drawingSpace(page);
    page.items.push_back(words({space.high.x - 4, space.low.y + 6.5},
                               page.title + "   " + page.number, 3, true, Align::Right));
    const SheetFacts facts{"Operations", "None", std::string(paper_.name), i + 1, count};
    if (i == 0) {
      drawTitleBlock(project_, facts, page);
    } else {
      drawTitleStrip(project_, facts, page);
    }
  }
}

} // namespace

std::vector<Page> composeUpkeepSheets(const Plan& plan, const UpkeepPlan& upkeep,
                                      const std::string& paper) {
  return UpkeepSheets(plan, upkeep, uprightPaper(paper, plan.project.units)).pages();
}

} // namespace sump
