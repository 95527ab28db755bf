#include "core/sheet/calculation_block.h"

#include "core/sheet/tags.h"
#include "core/study/calculation_print.h"
#include "core/study/object_names.h"

#include <algorithm>

namespace sump {

namespace {

constexpr double kLabel = 20;  ///< mm, the column of `Formula`, `Inputs`, `Steps`
constexpr double kNumber = 17; ///< for `12.146`, bold
constexpr double kBetween = 2;
constexpr double kAfter = 5; ///< mm between calculations
constexpr double kTitleText = 3;

/// A shaded bar with the number, the title and the object.
std::vector<PaperStrip> titleStrips(const NumberedCalculation& entry, const std::string& object,
                                    bool again, double width) {
  const double most = width / 2;
  const double right = std::min(most, textWidth(object, kTitleText, true) + 2 * kBetween);
  // The object before the title, so that all of the title's lines follow each other.
  std::vector<PaperStrip> strips =
      rowStrips({{1, kNumber, entry.number, Align::Left, true},
                 {width - right, right - 1, object, Align::Right, true},
                 {1 + kNumber, width - 1 - kNumber - right,
                  entry.calculation.title + (again ? " (continued)" : ""), Align::Left, true}},
                kTitleText);
  for (PaperStrip& strip : strips) {
    const Ring bar = PaperBox{{0, 0}, {width, strip.height}}.ring();
    strip.items.insert(strip.items.begin(),
                       PageShape{bar, true, false, {}, FillStyle{Ink::Building, Hatch::None}});
  }
  strips.front().items.push_back(rule({0, 0}, {width, 0}, 0.35));
  return strips;
}

std::vector<PaperStrip> labelled(const std::string& label, const std::string& text, double width,
                                 bool bold = false, Ink ink = Ink::Black) {
  return rowStrips({{1, kLabel - 1, label, Align::Left, false, Ink::Grey},
                    {kLabel, width - kLabel, text, Align::Left, bold, ink}});
}

/// Symbol, name, value in the project's units, value in SI, where it comes from.
class InputColumns {
public:
  explicit InputColumns(double width) {
    double x = kLabel;
    for (double w : {17.0, width - kLabel - 17 - 33 - 33 - 27, 33.0, 33.0, 27.0}) {
      left_.push_back(x);
      width_.push_back(w);
      x += w;
    }
  }
  std::vector<PaperStrip> row(const std::string& label, const std::vector<std::string>& texts,
                              Ink ink) const {
    std::vector<RowCell> cells = {{1, kLabel - 1, label, Align::Left, false, Ink::Grey}};
    for (std::size_t i = 0; i < texts.size(); ++i) {
      const bool figure = i == 2 || i == 3;
      cells.push_back({left_[i], width_[i] - kBetween, texts[i],
                       figure ? Align::Right : Align::Left, false, ink});
    }
    return rowStrips(cells);
  }

private:
  std::vector<double> left_, width_;
};

std::vector<PaperStrip> inputStrips(const CalculationOutline& outline, const Calculation& c,
                                    UnitSystem units, double width) {
  const InputColumns columns(width);
  std::vector<PaperStrip> strips =
      columns.row("Inputs", {"Symbol", "Quantity", "Value", "in SI", "From"}, Ink::Grey);
  strips.back().items.push_back(
      rule({kLabel, strips.back().height}, {width, strips.back().height}, 0.18));
  for (const CalculationInput& in : c.inputs) {
    appendStrips(strips, columns.row("",
                                     {in.symbol, in.name, printInput(in, units),
                                      printSi(in.value, in.kind), originText(outline, c, in)},
                                     Ink::Black));
  }
  return strips;
}

std::string resultLine(const Calculation& c, UnitSystem units) {
  if (!c.decided) return "Cannot be decided: needs " + c.needs + ".";
  const std::string text = printResult(c, units), si = printSi(c.result, c.kind);
  return text == si ? text : text + "   (" + si + ")";
}

} // namespace

void appendStrips(std::vector<PaperStrip>& to, std::vector<PaperStrip> more) {
  to.insert(to.end(), std::make_move_iterator(more.begin()), std::make_move_iterator(more.end()));
}

std::vector<PaperStrip> rowStrips(const std::vector<RowCell>& cells, double height) {
  const double pitch = 1.7 * height;
  std::vector<std::vector<std::string>> lines;
  std::size_t most = 1;
  for (const RowCell& cell : cells) {
    lines.push_back(wrapped(cell.text, cell.width, height, cell.bold));
    most = std::max(most, lines.back().size());
  }
  std::vector<PaperStrip> strips;
  for (std::size_t k = 0; k < most; ++k) {
    PaperStrip strip{pitch + (k + 1 == most ? 0.8 : 0), {}};
    for (std::size_t i = 0; i < cells.size(); ++i) {
      if (k >= lines[i].size() || lines[i][k].empty()) continue;
      const RowCell& cell = cells[i];
      const double x = cell.align == Align::Right ? cell.left + cell.width : cell.left;
      PageText text = words({x, 0.5 + 1.3 * height}, lines[i][k], height, cell.bold, cell.align);
      text.ink = cell.ink;
      strip.items.push_back(std::move(text));
    }
    strips.push_back(std::move(strip));
  }
  return strips;
}

ObjectNames::ObjectNames(const Plan& plan) : plan_(plan), names_(runTags(plan)) {
  for (const Vault& vault : plan.vaults)
    names_[vault.id] = called(vault);
}

std::string ObjectNames::of(const Id& id) const {
  const auto found = names_.find(id);
  if (found == names_.end()) return spokenName(plan_, id);
  if (found->second == id) return id;
  return found->second + " (" + id + ")";
}

FlowPiece calculationPiece(const CalculationOutline& outline, const ObjectNames& names,
                           const NumberedCalculation& entry, UnitSystem units, double width) {
  const Calculation& c = entry.calculation;
  FlowPiece piece;
  piece.block.width = width;
  piece.block.head = titleStrips(entry, names.of(c.object), false, width);
  piece.again = titleStrips(entry, names.of(c.object), true, width);
  piece.gap = kAfter;
  std::vector<PaperStrip>& body = piece.block.body;
  appendStrips(body, labelled("Formula", c.formula, width));
  if (!c.inputs.empty()) appendStrips(body, inputStrips(outline, c, units, width));
  for (std::size_t i = 0; i < c.steps.size(); ++i)
    appendStrips(body, labelled(i == 0 ? "Steps" : "", c.steps[i], width));
  appendStrips(body, labelled("Result", resultLine(c, units), width, true,
                              c.decided ? Ink::Black : Ink::ServiceRed));
  appendStrips(body, labelled("Source", c.source, width, false, Ink::Grey));
  return piece;
}

} // namespace sump
