#include "core/sheet/fitted_symbols.h"

#include <algorithm>
#include <map>
#include <set>

namespace sump {

namespace {

constexpr double kSameSymbol = 0.01; // m
constexpr double kLeastHalf = 1.0;   // mm on the paper; smaller could not be read
constexpr double kLeastRing = 0.5;   // of a plain circle

struct Symbol {
  Point2 at;
  double half = 0, factor = 1;
  std::size_t shapes = 0;
  bool ring = true; ///< nothing but circles
  PaperBox extent;  ///< as given
  Ink ink = Ink::Black;
  PaperBox now() const { return {lerp(at, extent.low, factor), lerp(at, extent.high, factor)}; }
};

using Symbols = std::map<std::uint32_t, Symbol>;

PaperBox extentOf(const Mark& mark) {
  if (!mark.round) return around(mark.points);
  return PaperBox{mark.points[0], mark.points[0]}.grown(distance(mark.points[0], mark.points[1]));
}

PaperBox joined(const PaperBox& a, const PaperBox& b) {
  return around({a.low, a.high, b.low, b.high});
}

Symbols symbolsOf(const std::vector<Mark>& marks) {
  Symbols found;
  for (const Mark& mark : marks) {
    if (mark.symbol.number == 0) continue;
    const auto [entry, isNew] = found.try_emplace(mark.symbol.number);
    Symbol& symbol = entry->second;
    symbol.extent = isNew ? extentOf(mark) : joined(symbol.extent, extentOf(mark));
    symbol.at = mark.symbol.at;
    symbol.half = mark.symbol.half;
    symbol.ring = symbol.ring && mark.round;
    ++symbol.shapes;
    if (mark.line) symbol.ink = mark.line->ink;
  }
  return found;
}

/// A valve in a riser stands where the riser's circle does: the valve says more.
std::set<std::uint32_t> doubled(const Symbols& symbols) {
  std::set<std::uint32_t> dropped;
  for (auto a = symbols.begin(); a != symbols.end(); ++a) {
    for (auto b = std::next(a); b != symbols.end(); ++b) {
      if (a->second.ink != b->second.ink || dropped.contains(a->first)) continue;
      if (distance(a->second.at, b->second.at) > kSameSymbol) continue;
      dropped.insert(a->second.shapes >= b->second.shapes ? b->first : a->first);
    }
  }
  return dropped;
}

/// Neighbours that touch shrink until they do not, down to what can be read; of those that would
/// still touch the one that says more stays.
void partNeighbours(Symbols& symbols, double paperMm) {
  constexpr double kStep = 0.9;
  const auto canShrink = [&](const Symbol& s) {
    return s.half * s.factor * kStep > (s.ring ? kLeastRing : kLeastHalf) * paperMm;
  };
  std::set<std::uint32_t> dropped;
  for (auto a = symbols.begin(); a != symbols.end(); ++a) {
    for (auto b = std::next(a); b != symbols.end() && !dropped.contains(a->first); ++b) {
      if (dropped.contains(b->first)) continue;
      Symbol &p = a->second, &q = b->second;
      while (p.now().meets(q.now()) && (canShrink(p) || canShrink(q))) {
        for (Symbol* symbol : {&p, &q})
          symbol->factor *= canShrink(*symbol) ? kStep : 1;
      }
      if (p.now().meets(q.now())) dropped.insert(p.shapes >= q.shapes ? b->first : a->first);
    }
  }
  for (const std::uint32_t number : dropped)
    symbols.erase(number);
}

/// The least move that brings the extent into the box.
Point2 moveInto(const PaperBox& box, const PaperBox& extent) {
  const auto axis = [](double low, double high, double from, double to) {
    return from < low ? low - from : to > high ? high - to : 0.0;
  };
  return {axis(box.low.x, box.high.x, extent.low.x, extent.high.x),
          axis(box.low.y, box.high.y, extent.low.y, extent.high.y)};
}

/// The least move that takes the extent off the box.
Point2 moveOff(const PaperBox& box, const PaperBox& extent) {
  if (!box.meets(extent)) return {};
  const Point2 moves[] = {{box.high.x - extent.low.x, 0},
                          {box.low.x - extent.high.x, 0},
                          {0, box.high.y - extent.low.y},
                          {0, box.low.y - extent.high.y}};
  return *std::ranges::min_element(moves, {}, [](Point2 move) { return norm(move); });
}

} // namespace

std::vector<Mark> fittedSymbols(std::vector<Mark> marks, double scale) {
  const double paperMm = scale / 1000; // of the site, m
  Symbols symbols = symbolsOf(marks);
  for (const std::uint32_t number : doubled(symbols))
    symbols.erase(number);
  for (auto& [number, symbol] : symbols) {
    if (symbol.half > 0) symbol.factor = std::min(1.0, kSymbolHalf * paperMm / symbol.half);
  }
  partNeighbours(symbols, paperMm);
  std::erase_if(marks, [&](const Mark& mark) {
    return mark.symbol.number != 0 && !symbols.contains(mark.symbol.number);
  });
  for (Mark& mark : marks) {
    if (mark.symbol.number == 0) continue;
    const double factor = symbols.at(mark.symbol.number).factor;
    for (Point2& p : mark.points)
      p = lerp(mark.symbol.at, p, factor);
    mark.symbol.half *= factor;
  }
  return marks;
}

std::vector<Mark> wholeSymbols(std::vector<Mark> marks, const PaperBox& box,
                               const std::optional<PaperBox>& hidden) {
  std::map<std::uint32_t, PaperBox> extents;
  std::map<std::uint32_t, Point2> moves;
  std::set<std::uint32_t> dropped;
  for (const Mark& mark : marks) {
    if (mark.symbol.number == 0) continue;
    const PaperBox part = extentOf(mark);
    const auto [known, isNew] = extents.emplace(mark.symbol.number, part);
    if (!isNew) known->second = joined(known->second, part);
    if (!box.holds(mark.symbol.at) || (hidden && hidden->holds(mark.symbol.at)))
      dropped.insert(mark.symbol.number);
  }
  for (const auto& [number, extent] : extents) {
    moves[number] = moveInto(box, extent);
    if (hidden) moves[number] = moves[number] + moveOff(*hidden, extent);
  }
  std::erase_if(marks, [&](const Mark& mark) { return dropped.contains(mark.symbol.number); });
  for (Mark& mark : marks) {
    if (mark.symbol.number == 0) continue;
    for (Point2& p : mark.points)
      p = p + moves.at(mark.symbol.number);
    mark.symbol.at = mark.symbol.at + moves.at(mark.symbol.number);
  }
  return marks;
}

void addSymbols(std::vector<Mark> added, std::vector<Mark>& marks) {
  std::uint32_t last = 0;
  for (const Mark& mark : marks)
    last = std::max(last, mark.symbol.number);
  for (Mark& mark : added) {
    if (mark.symbol.number != 0) mark.symbol.number += last;
    marks.push_back(std::move(mark));
  }
}

} // namespace sump
