#include "core/sheet/section_labels.h"

#include "core/geometry/polygon.h"
#include "core/sheet/label_board.h"
#include "core/sheet/section_places.h"
#include "core/sheet/section_things.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kCare = 3; // covering a line here is so many times as bad as on a plan

class SectionLabels {
public:
  SectionLabels(const std::vector<SectionNote>& notes, const SectionView& section,
                const std::vector<Mark>& marks, Page& page)
      : notes_(notes), section_(section), board_(section.view, marks, page, kCare),
        things_(section.view, marks) {
    board_.refuseLeadersOverDots();
    board_.pointIntoSymbols();
    for (const SectionNote& note : notes) {
      if (isPoint(note)) board_.keepClear(siteOf(note));
    }
    for (const Mark& mark : marks)
      if (isSign(mark)) board_.forbid(onPaper(mark.points));
  }

  /// Nothing is drawn before `finish`.
  void finish() { board_.finish(); }
  /// The first that found no room even for its key; null: none.
  const SectionNote* lost() const { return lost_; }
  /// The first `keyed` of the notes get their keys only.
  std::vector<std::string> place(std::size_t keyed, std::size_t& keys) {
    std::vector<std::string> unplaced;
    for (std::size_t i = 0; i < keyed; ++i)
      tellBelow(notes_[i], keys, unplaced);
    std::vector<const SectionNote*> late;
    for (std::size_t i = keyed; i < notes_.size(); ++i) {
      if (!placeOne(notes_[i])) late.push_back(&notes_[i]);
    }
    if (!late.empty()) board_.settle(); // what stood in their way may have moved off
    for (const SectionNote* note : late) {
      if (!placeOne(*note) && !placeBeside(*note) && !note->inside && !note->isListed)
        tellBelow(*note, keys, unplaced);
    }
    return unplaced;
  }

private:
  static bool isPoint(const SectionNote& note) {
    return note.lines.empty() && !note.inside && note.side != NoteSide::Centre;
  }
  /// The triangle on a water level.
  static bool isSign(const Mark& mark) {
    return mark.layer == Layer::Symbol && mark.closed && mark.points.size() == 3 && !mark.fill;
  }
  PaperBox onPaper(Ring points) const {
    for (Point2& p : points)
      p = section_.view.toPaper(p);
    return around(points);
  }
  Point2 siteOf(const SectionNote& note) const {
    return note.side == NoteSide::Centre ? Point2{note.station, section_.view.site().low.y}
                                         : section_.plane.at(note.station, note.level);
  }

  void tellBelow(const SectionNote& note, std::size_t& keys, std::vector<std::string>& unplaced) {
    const std::string key = keyName(keys);
    std::string text = note.text;
    if (placeKey(note, key)) {
      text = key + " " + text;
      ++keys;
    } else if (lost_ == nullptr) {
      lost_ = &note;
    }
    unplaced.push_back(text + (note.where.empty() ? "" : " (" + note.where + ")"));
  }
  bool placeOne(const SectionNote& note) {
    constexpr double kNear = 1.5;
    const SheetLabel label{{note.text}, false, false, note.ink};
    if (note.inside) return board_.atOneOf(label, insidePlaces(*note.inside, board_.size(label)));
    if (!note.lines.empty())
      return board_.atOneOf(label,
                            things_.roundPipes(linePlaces(note, board_.size(label)), note.object));
    if (note.inOrder) return placeInOrder(note, label);
    if (note.pointed) return placeLed(note, label, kNear);
    return placeAbout(note, label, kNear);
  }
  /// One that had better be pointed at, where no leader finds a way.
  bool placeBeside(const SectionNote& note) {
    constexpr double kNear = 1.5;
    const SheetLabel label{{note.text}, false, false, note.ink};
    return note.pointed && note.lines.empty() && placeAbout(note, label, kNear);
  }
  bool placeKey(const SectionNote& note, const std::string& key) {
    constexpr double kNear = 0.8;
    return placeAbout(note, {{key}, false, false, note.ink}, kNear);
  }
  bool placeAt(const SectionNote& note, const SheetLabel& label,
               std::vector<LabelCandidate> places) {
    const Point2 at = section_.view.toPaper(siteOf(note));
    return board_.atOneOf(
        label,
        outOfOtherVaults(things_.roundPipes(std::move(places), note.object), at, note.isListed));
  }
  bool placeLed(const SectionNote& note, const SheetLabel& label, double near) {
    const Point2 at = section_.view.toPaper(siteOf(note)), size = board_.size(label);
    return placeAt(note, label, aroundPoint(at, size.x, size.y, near, kSectionReach, 0));
  }
  bool placeAbout(const SectionNote& note, const SheetLabel& label, double near) {
    if ((note.pointed || isCrowded(note)) && placeLed(note, label, near)) return true;
    return placeAt(note, label, board_.placesAbout(label, siteOf(note), near, kSectionReach));
  }
  /// Beside other things a text without a leader could be taken for theirs.
  bool isCrowded(const SectionNote& note) const {
    constexpr double kCrowd = 12; // mm
    const Point2 own = section_.view.toPaper(siteOf(note));
    return std::ranges::any_of(notes_, [&](const SectionNote& other) {
      const bool another = other.object != note.object || other.station != note.station;
      return another && isPoint(other) && other.span == 0 &&
             distance(section_.view.toPaper(siteOf(other)), own) < kCrowd;
    });
  }

  std::vector<LabelCandidate> outOfOtherVaults(std::vector<LabelCandidate> places, Point2 at,
                                               bool never) const;
  bool placeInOrder(const SectionNote& note, const SheetLabel& label);
  PaperSpan ownSpan(const SectionNote& note) const;
  std::vector<LabelCandidate> linePlaces(const SectionNote& note, Point2 size) const;
  void offOwnLines(const SectionNote& note, std::vector<LabelCandidate>& places) const;
  std::vector<PaperBox> otherChambers(const SectionNote& note) const;
  std::vector<LabelCandidate> insidePlaces(const SectionArea& area, Point2 size) const;
  PaperSpan orderSpan(const SectionNote& note) const;

  const std::vector<SectionNote>& notes_;
  const SectionView& section_;
  LabelBoard board_;
  const SectionNote* lost_ = nullptr;
  SectionThings things_;
  /// Those in order that are placed, with the labels' middles.
  std::vector<std::pair<const SectionNote*, double>> placed_;
};

/// Where the middle of a label may stand among those of its object: right of what is placed before
/// it, left of what is placed behind it, and on the side of its point that a close neighbour leaves
/// it.
PaperSpan SectionLabels::orderSpan(const SectionNote& note) const {
  PaperSpan span;
  constexpr double kClose = 16, kSlack = 1; // mm
  const auto place = [&](const SectionNote& n) { return section_.toPaper(n.station, n.level).x; };
  const double own = place(note);
  for (const SectionNote& other : notes_) {
    if (!other.inOrder || other.object != note.object) continue;
    const double off = place(other) - own;
    if (off > 1e-3 && off < kClose) span.right = own + kSlack;
    if (off < -1e-3 && off > -kClose) span.left = own - kSlack;
  }
  for (const auto& [other, x] : placed_) {
    if (other->object != note.object) continue;
    if (other->station < note.station - 1e-6) span.left = std::max(span.left, x);
    if (other->station > note.station + 1e-6) span.right = std::min(span.right, x);
  }
  return span;
}

/// What stands in a vault is not told in the next one: `never`, or only where nothing else is left.
std::vector<LabelCandidate> SectionLabels::outOfOtherVaults(std::vector<LabelCandidate> places,
                                                            Point2 at, bool never) const {
  constexpr double kOthers = 300;       // mm that such a place is disliked
  constexpr double kThroughFloor = 120; // as much for one that a leader reaches through the floor
  const SectionNote* own = nullptr;
  std::vector<std::pair<const SectionNote*, PaperBox>> chambers;
  for (const SectionNote& note : notes_) {
    if (!note.inside) continue;
    const SectionArea& area = *note.inside;
    const PaperBox box =
        around({section_.toPaper(area.from, area.low), section_.toPaper(area.to, area.high)});
    chambers.emplace_back(&note, box);
    if (box.holds(at)) own = &note;
  }
  if (own == nullptr) return places;
  const auto isInOther = [&](const LabelCandidate& place) {
    return std::ranges::any_of(chambers, [&](const auto& chamber) {
      return chamber.first->object != own->object && chamber.second.meets(place.box);
    });
  };
  if (never) std::erase_if(places, isInOther);
  const double floor = section_.toPaper(own->station, own->level).y;
  for (LabelCandidate& place : places) {
    if (isInOther(place)) place.cost += kOthers;
    if (place.leaderTo && place.box.low.y > floor) place.cost += kThroughFloor;
  }
  return places;
}

/// As far as the middle of a label may stand off so that it keeps its order wherever its neighbours
/// stand in theirs: half way to them, and hardly past its point where one is close.
PaperSpan SectionLabels::ownSpan(const SectionNote& note) const {
  PaperSpan span;
  constexpr double kClose = 16, kSlack = 1; // mm
  const double own = section_.toPaper(note.station, note.level).x;
  for (const SectionNote& other : notes_) {
    if (!other.inOrder || other.object != note.object) continue;
    const double off = section_.toPaper(other.station, other.level).x - own;
    if (std::abs(off) < 1e-3) continue;
    const double most = std::abs(off) / 2;
    const double far = std::abs(off) < kClose ? std::min(kSlack, most) : most;
    if (off > 0) span.right = std::min(span.right, own + far);
    if (off < 0) span.left = std::max(span.left, own - far);
  }
  return span;
}

/// Where it may be moved for others' sake, if there is room there.
bool SectionLabels::placeInOrder(const SectionNote& note, const SheetLabel& label) {
  const Point2 at = section_.toPaper(note.station, note.level);
  const std::vector<LabelCandidate> all = outOfOtherVaults(
      things_.roundPipes(invertPlaces(at, board_.size(label)), note.object), at, false);
  std::vector<LabelCandidate> own = all;
  std::erase_if(own, [span = ownSpan(note)](const LabelCandidate& place) {
    const double x = place.box.centre().x;
    return x <= span.left || x >= span.right;
  });
  if (board_.atOneOf(label, own)) return true;
  const auto x = board_.atOneOfWithin(label, all, orderSpan(note));
  if (x) placed_.emplace_back(&note, *x);
  return x.has_value();
}

std::vector<LabelCandidate> SectionLabels::linePlaces(const SectionNote& note, Point2 size) const {
  constexpr double kNextLine = 1.5, kLeader = 9;
  std::vector<LabelCandidate> places;
  double cost = 0;
  for (const SectionArea& line : note.lines) {
    const PaperBox& frame = section_.view.frame;
    Point2 a = section_.toPaper(line.from, line.low), b = section_.toPaper(line.to, line.low);
    a.x = std::max(a.x, frame.low.x);
    b.x = std::min(b.x, frame.high.x);
    const double own = section_.toPaper(note.station, note.level).x;
    const double wished = own >= a.x && own <= b.x ? own : (a.x + b.x) / 2;
    addLinePlaces(a, b, wished, size, note.side == NoteSide::Below, cost, places);
    for (double along : {0.5, 0.3, 0.7, 0.4, 0.6, 0.2, 0.8, 0.12, 0.88}) {
      const Point2 target = lerp(a, b, along);
      if (things_.isUnderBaffle(target) || things_.isOnOther(target)) continue;
      for (LabelCandidate place :
           aroundPoint(target, size.x, size.y, 3, kSectionReach, cost + kLeader)) {
        place.cost += fromWrongSide(note, place, target);
        places.push_back(std::move(place));
      }
    }
    cost += kNextLine;
  }
  if (note.side == NoteSide::Above && note.ink == Ink::Black) offOwnLines(note, places);
  constexpr double kOthers = 100; // mm that a place is disliked where it would tell of another's
  for (const PaperBox& other : otherChambers(note)) {
    for (LabelCandidate& place : places)
      place.cost += other.meets(place.box) ? kOthers : 0;
  }
  return places;
}

/// Beside its lid or floor, between two of them, a name could be either's.
void SectionLabels::offOwnLines(const SectionNote& note,
                                std::vector<LabelCandidate>& places) const {
  constexpr double kBeside = 120; // mm that such a place is disliked
  std::vector<Point2> ends;
  for (const SectionArea& line : note.lines) {
    ends.push_back(section_.toPaper(line.from, line.low));
    ends.push_back(section_.toPaper(line.to, line.low));
  }
  const PaperBox own = around(ends);
  for (LabelCandidate& place : places) {
    if (place.box.low.x < own.low.x || place.box.high.x > own.high.x) place.cost += kBeside;
  }
}

/// Of a level's vault, in which it is not that.
std::vector<PaperBox> SectionLabels::otherChambers(const SectionNote& note) const {
  std::vector<PaperBox> others;
  for (const SectionNote& chamber : notes_) {
    if (!chamber.inside || chamber.object != note.object) continue;
    const SectionArea& area = *chamber.inside;
    const auto isIn = [&](const SectionArea& line) {
      return line.from < area.to && line.to > area.from;
    };
    if (std::ranges::none_of(note.lines, isIn))
      others.push_back(
          around({section_.toPaper(area.from, area.low), section_.toPaper(area.to, area.high)}));
  }
  return others;
}

/// Low and in the middle where that is free.
std::vector<LabelCandidate> SectionLabels::insidePlaces(const SectionArea& area,
                                                        Point2 size) const {
  std::vector<LabelCandidate> places;
  const PaperBox room =
      around({section_.toPaper(area.from, area.low), section_.toPaper(area.to, area.high)})
          .grown(-0.3);
  const Point2 low = room.low + size * 0.5, high = room.high - size * 0.5;
  constexpr int kSteps = 12;
  if (high.x < low.x || high.y < low.y) return places;
  const Point2 wished{room.centre().x, high.y};
  for (int i = 0; i <= kSteps; ++i) {
    for (int k = 0; k <= kSteps; ++k) {
      const Point2 at{low.x + (high.x - low.x) * i / kSteps, low.y + (high.y - low.y) * k / kSteps};
      places.push_back({boxAbout(at, size), {}, 0.2 * distance(at, wished), false});
    }
  }
  return places;
}

} // namespace

std::vector<std::string> labelSection(const std::vector<SectionNote>& notes,
                                      const SectionView& section, const std::vector<Mark>& marks,
                                      std::size_t& keys, Page& page) {
  // The key of what would be told below the section without one goes first in another try.
  std::vector<SectionNote> order = notes;
  constexpr std::size_t kTries = 6;
  for (std::size_t i = 0;; ++i) {
    std::size_t taken = keys;
    SectionLabels labels(order, section, marks, page);
    std::vector<std::string> unplaced = labels.place(i, taken);
    const std::size_t lost = labels.lost() == nullptr
                                 ? order.size()
                                 : static_cast<std::size_t>(labels.lost() - order.data());
    if (lost == order.size() || lost < i || i == kTries) { // or nothing helps it
      labels.finish();
      keys = taken;
      return unplaced;
    }
    const auto at = order.begin() + static_cast<std::ptrdiff_t>(lost);
    std::rotate(order.begin(), at, at + 1);
  }
}

} // namespace sump
