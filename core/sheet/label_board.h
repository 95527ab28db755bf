#pragma once
// Draws placed labels on one view. Private to core/sheet.

#include "core/sheet/placer.h"
#include "core/sheet/view.h"

#include <string>
#include <vector>

namespace sump {

struct SheetLabel {
  std::vector<std::string> lines;
  bool framed = false;
  bool boldFirst = false;
  Ink ink = Ink::Black;
  bool bubble = false; ///< its lines are a view's number and that of its sheet
  Point2 sight{};      ///< on the paper; a bubble of an elevation points there
};

/// `K1`: stands on a drawing for a text that found no room there and is told below it.
std::string keyName(std::size_t index);

/// Of the paper's width, mm.
struct PaperSpan {
  double left = -1e9, right = 1e9;
};

/// All labels of a view are told to one board; `finish` finds the best places for them together
/// and draws them.
class LabelBoard {
public:
  /// Takes the view's marks as things that labels had better not cover; lines other than walls
  /// `care` times as bad as on a crowded plan, and all of them as bad to cross with a leader.
  LabelBoard(const SheetView& view, const std::vector<Mark>& marks, Page& page, double care = 1);
  /// Lets the labels placed so far find better places.
  void settle() { placer_.settle(); }
  /// Once, when every label is there.
  void finish();

  Point2 size(const SheetLabel& label) const;
  /// Keeps labels off a part of the paper.
  void forbid(const PaperBox& box) { placer_.forbid(box); }
  /// Rather leaves a label out than run its leader through what others point at.
  void refuseLeadersOverDots() { placer_.refuseLeadersOverDots(); }
  /// Leaders end at their places even in symbols: where a level is told, its height counts.
  void pointIntoSymbols() { symbols_.clear(); }
  /// What another label is about: leaders go round it.
  void keepClear(Point2 site) { placer_.obstacles().addDot(view_.toPaper(site)); }
  /// A line on the paper that labels had better not cover, as bad as so many mm of distance.
  void avoid(Point2 a, Point2 b, double cost) {
    placer_.obstacles().addLine(a, b, cost, cost * kLeaderShare);
  }
  /// As avoid, but leaders may cross it for so much.
  void keepOff(Point2 a, Point2 b, double cost, double leader) {
    placer_.obstacles().addLine(a, b, cost, leader);
  }
  /// Draws a line of a dimension on the paper, as far as the view shows it; labels keep off it, as
  /// far as covering it costs.
  void measureLine(Point2 a, Point2 b, const LineStyle& line, double cost = 25);
  /// Keeps room of this size on the paper near one of the anchors, for the caller to draw in; with
  /// a leader to its anchor. Nothing when there is none.
  std::optional<LabelCandidate> reserve(Point2 size, const std::vector<Point2>& anchors);
  /// Draws a text on the line through `site` along `along`, a little above it. No later label
  /// covers it.
  void onLine(const std::string& text, Point2 site, Point2 along);
  /// Beside or around a point, without a leader while `near`, then with one up to `reach` mm.
  bool atPoint(const SheetLabel& label, Point2 site, double near, double reach);
  /// As atPoint, but outside all of these outlines where that can be.
  bool atPointOutside(const SheetLabel& label, Point2 site, double near, double reach,
                      const std::vector<Ring>& outlines);
  /// Around a point, always with a leader.
  bool withLeader(const SheetLabel& label, Point2 site, double near, double reach);
  /// What a place would cost now.
  double costOf(const LabelCandidate& place) { return placer_.costOf(place); }
  /// At one of these places of the caller's own, on the paper.
  bool atOneOf(const SheetLabel& label, const std::vector<LabelCandidate>& places) {
    return add(label, places);
  }
  /// As atOneOf, its middle in this span where there is room in it; returns the middle. It stays
  /// where it is put.
  std::optional<double> atOneOfWithin(const SheetLabel& label,
                                      const std::vector<LabelCandidate>& places,
                                      const PaperSpan& span);
  /// Inside an outline where it covers least and stands on nothing in it, else beside it with a
  /// leader.
  bool inOutline(const SheetLabel& label, const Ring& site);
  /// Beside a point, and with a leader up to `reach` mm.
  std::vector<LabelCandidate> placesAbout(const SheetLabel& label, Point2 site, double near,
                                          double reach) const;
  /// In an outline on the paper.
  std::vector<LabelCandidate> placesIn(const SheetLabel& label, const Ring& paper) const;
  /// At one of these places that covers little, else not at all.
  bool whereFree(const SheetLabel& label, std::vector<LabelCandidate> places);
  /// Outside an outline, with a leader to the middle of its nearest side
  /// that crosses none of `others` where that can be.
  bool besideOutline(const SheetLabel& label, const Ring& site,
                     const std::vector<Ring>& others = {});
  /// Along a line's longer legs, else beside it with a leader.
  bool alongLine(const SheetLabel& label, const Polyline& site, double reach);

private:
  static constexpr double kLeaderShare = 0.12; ///< of a line's cost, for a leader that crosses it

  struct Waiting {
    SheetLabel label;
    std::size_t place; ///< the placer's
  };
  bool add(const SheetLabel& label, std::vector<LabelCandidate> candidates);
  void drawLeader(const LabelCandidate& where);
  void drawPlate(const SheetLabel& label, const LabelCandidate& where);
  void avoidMarks(const std::vector<Mark>& marks, double care);
  void avoidSymbols(const std::vector<Mark>& marks);
  double onOtherThing(const LabelCandidate& place, const Ring& own, double whole) const;
  /// Does a thing smaller than `whole`, mm2, stand there?
  bool onSmaller(Point2 p, double whole) const;
  Point2 leaderTarget(const Ring& own, double whole);
  void addLegPlaces(const SheetLabel& label, Point2 a, Point2 b,
                    std::vector<LabelCandidate>& out) const;

  const SheetView& view_;
  Page& page_;
  LabelPlacer placer_;
  std::vector<Waiting> waiting_;
  std::vector<Ring> things_;    ///< on the paper
  std::vector<Polyline> runs_;  ///< on the paper
  std::vector<Point2> targets_; ///< of leaders out of outlines, on the paper
  std::vector<PaperBox> symbols_;
};

} // namespace sump
