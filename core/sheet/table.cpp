#include "core/sheet/block.h"

#include <algorithm>
#include <sstream>

namespace sump {

namespace {

constexpr double kPad = 1.2; // mm either side of a cell's text

std::vector<std::string> headingLines(const std::string& heading) {
  std::vector<std::string> lines(1);
  for (char c : heading) {
    if (c == '|') {
      lines.emplace_back();
    } else {
      lines.back() += c;
    }
  }
  return lines;
}

double longestWord(const std::string& text) {
  std::istringstream in(text);
  double widest = 0;
  for (std::string word; in >> word;)
    widest = std::max(widest, textWidth(word, kTextHeight, false));
  return widest;
}

/// What the longest word of a column asks for, but no more than a word that may be broken.
std::vector<double> leastWidths(const std::vector<Column>& columns,
                                const std::vector<std::vector<std::string>>& rows) {
  constexpr double kBreakable = 22;
  std::vector<double> widths;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    double heading = 0, word = 0;
    for (const std::string& line : headingLines(columns[c].heading))
      heading = std::max(heading, textWidth(line, kTextHeight, true));
    for (const auto& row : rows) {
      word = std::max(word, longestWord(row[c]));
    }
    widths.push_back(std::max(heading, std::min(word, kBreakable)) + 2 * kPad);
  }
  return widths;
}

/// Takes `excess` off the columns: off the last one first, since it holds the words; then off
/// whichever column stands farthest over its least width.
void narrow(std::vector<double>& widths, const std::vector<double>& least, double excess) {
  constexpr double kWordy = 45, kStep = 1;
  const double first = std::clamp(widths.back() - std::max(least.back(), kWordy), 0.0, excess);
  widths.back() -= first;
  excess -= first;
  while (excess > 1e-9) {
    std::size_t best = 0;
    for (std::size_t c = 1; c < widths.size(); ++c) {
      if (widths[c] - least[c] > widths[best] - least[best]) best = c;
    }
    const double room = widths[best] - least[best];
    if (room <= 1e-9) return;
    const double step = std::min({kStep, room, excess});
    widths[best] -= step;
    excess -= step;
  }
}

std::vector<double> columnWidths(const std::vector<Column>& columns,
                                 const std::vector<std::vector<std::string>>& rows, double width) {
  std::vector<double> widths;
  double sum = 0;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    double w = 0;
    for (const std::string& line : headingLines(columns[c].heading)) {
      w = std::max(w, textWidth(line, kTextHeight, true));
    }
    for (const auto& row : rows)
      w = std::max(w, textWidth(row[c], kTextHeight, false));
    widths.push_back(w + 2 * kPad);
    sum += widths.back();
  }
  const double spare = (width - sum) / static_cast<double>(columns.size());
  if (spare > 0) {
    for (double& w : widths)
      w += std::min(spare, 4.0);
  } else {
    narrow(widths, leastWidths(columns, rows), sum - width);
  }
  return widths;
}

double textX(double left, double width, Align align) {
  return align == Align::Left    ? left + kPad
         : align == Align::Right ? left + width - kPad
                                 : left + width / 2;
}

/// The uprights of one strip.
void addUprights(PaperStrip& strip, const std::vector<double>& widths) {
  double x = 0;
  strip.items.push_back(rule({0, 0}, {0, strip.height}, 0.25));
  for (double w : widths) {
    x += w;
    strip.items.push_back(rule({x, 0}, {x, strip.height}, 0.25));
  }
}

PaperStrip headingStrip(const std::vector<Column>& columns, const std::vector<double>& widths,
                        double total) {
  std::size_t most = 1;
  for (const Column& c : columns)
    most = std::max(most, headingLines(c.heading).size());
  PaperStrip strip{static_cast<double>(most) * kLinePitch + 1.6, {}};
  const Ring edge = PaperBox{{0, 0}, {total, strip.height}}.ring();
  strip.items.push_back(PageShape{edge, true, false, LineStyle{Ink::Black, 0.35, {}},
                                  FillStyle{Ink::Building, Hatch::None}});
  double x = 0;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    double y = 3.8;
    for (const std::string& line : headingLines(columns[c].heading)) {
      strip.items.push_back(words({textX(x, widths[c], columns[c].align), y}, line, kTextHeight,
                                  true, columns[c].align));
      y += kLinePitch;
    }
    x += widths[c];
  }
  addUprights(strip, widths);
  return strip;
}

PaperStrip rowStrip(const std::vector<Column>& columns, const std::vector<std::string>& row,
                    const std::vector<double>& widths, double total) {
  std::vector<std::vector<std::string>> cells;
  std::size_t most = 1;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    // A hair more, or a cell that just made its column's width would be broken.
    cells.push_back(wrapped(row[c], widths[c] - 2 * kPad + 1e-6, kTextHeight, false));
    most = std::max(most, cells.back().size());
  }
  PaperStrip strip{static_cast<double>(most) * kLinePitch + 1.0, {}};
  double x = 0;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    const double at = textX(x, widths[c], columns[c].align);
    for (std::size_t k = 0; k < cells[c].size(); ++k) {
      strip.items.push_back(words({at, 3.6 + static_cast<double>(k) * kLinePitch}, cells[c][k],
                                  kTextHeight, false, columns[c].align));
    }
    x += widths[c];
  }
  strip.items.push_back(rule({0, strip.height}, {total, strip.height}, 0.18));
  addUprights(strip, widths);
  return strip;
}

} // namespace

Block table(const std::string& title, const std::vector<Column>& columns,
            const std::vector<std::vector<std::string>>& rows, double width) {
  const std::vector<double> widths = columnWidths(columns, rows, width);
  double total = 0;
  for (double w : widths)
    total += w;
  Block block{std::max(total, textWidth(title, 3.5, true)), {}, {}};
  block.head.push_back({7, {words({0, 4.4}, title, 3.5, true)}});
  block.head.push_back(headingStrip(columns, widths, total));
  for (const auto& row : rows)
    block.body.push_back(rowStrip(columns, row, widths, total));
  return block;
}

} // namespace sump
