#include "core/sheet/placer.h"

#include "core/geometry/polygon.h"
#include "core/units/quantity.h"

#include <algorithm>
#include <limits>

namespace sump {

namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();
constexpr double kLeaderCrossing = 400; // dislike of a leader crossing another, mm of distance
constexpr double kLeaderOnDot = 180;    // of one running through the dot of another

bool sameAnchor(const LabelCandidate& a, const LabelCandidate& b) {
  return a.leaderTo && b.leaderTo && distance(*a.leaderTo, *b.leaderTo) < 0.01;
}

bool leaderCuts(const LabelCandidate& label, const PaperBox& box) {
  return label.leaderTo && cutsBox(leaderStart(label), *label.leaderTo, box);
}

/// `onDot` for a leader that runs over another's dot. One that ends close by cannot keep so far
/// off.
double dotCost(Point2 from, Point2 to, Point2 dot, double onDot) {
  if (runsOverDot(from, to, dot)) return onDot;
  const bool endsClose = distance(to, dot) <= kSameEnd;
  return endsClose && nearestOnSegment(dot, from, to).distance < kDotAir / 2 ? kLeaderOnDot : 0;
}

/// Two labels that are farther apart cost each other nothing.
PaperBox airAbout(const LabelCandidate& a) {
  return reachOf(a).grown(std::max(kLabelGap, kDotAir));
}

/// What two labels at these places cost each other; a leader over the other's dot, `onDot`.
double together(const LabelCandidate& a, const LabelCandidate& b, double onDot) {
  const PaperBox wideA = a.box.grown(kLabelGap), wideB = b.box.grown(kLabelGap);
  if (wideA.meets(b.box) || leaderCuts(a, wideB) || leaderCuts(b, wideA)) return kNever;
  if (!a.leaderTo || !b.leaderTo) return 0;
  const Point2 fromA = leaderStart(a), fromB = leaderStart(b);
  if (sameAnchor(a, b)) return kLeaderOnDot;
  double cost = crossSegments(fromA, *a.leaderTo, fromB, *b.leaderTo) ? kLeaderCrossing : 0;
  cost += dotCost(fromA, *a.leaderTo, *b.leaderTo, onDot);
  cost += dotCost(fromB, *b.leaderTo, *a.leaderTo, onDot);
  return cost;
}

} // namespace

Point2 leaderStart(const PaperBox& box, Point2 to) {
  const double x = std::clamp(to.x, box.low.x, box.high.x);
  const double middle = box.centre().y;
  if (to.x < box.low.x || to.x > box.high.x) return {x, middle};
  return {x, to.y < middle ? box.low.y : box.high.y};
}

Point2 leaderStart(const LabelCandidate& place) {
  const Point2 to = *place.leaderTo, middle = place.box.centre();
  if (!place.round) return leaderStart(place.box, to);
  return middle + (to - middle) * (place.box.width() / 2 / std::max(distance(middle, to), 1e-9));
}

double LabelPlacer::onDot() const {
  return refuseOverDots_ ? kNever : kLeaderOnDot;
}

bool LabelPlacer::allows(const LabelCandidate& place) const {
  return obstacles_.allows(place) && !(refuseOverDots_ && obstacles_.leaderOverDot(place));
}

/// What a place costs against the obstacles; where that is no less than `bound`, it may be more.
double LabelPlacer::ownCost(Label& label, std::size_t place, double bound) {
  Cost& cost = label.costs[place];
  if (cost.isWhole || cost.atLeast >= bound) return cost.atLeast;
  const LabelCandidate& candidate = label.places[place];
  if (!allows(candidate)) {
    cost = {kNever, true};
  } else {
    cost.atLeast = obstacles_.cost(candidate, bound);
    cost.isWhole = cost.atLeast <= bound; // else it was not counted to the end
  }
  return cost.atLeast;
}

void LabelPlacer::Label::choose(std::size_t place) {
  chosen = place;
  reach = airAbout(places[place]);
}

double LabelPlacer::withOthers(std::size_t self, const LabelCandidate& place, double bound) const {
  const PaperBox reach = airAbout(place);
  double cost = 0;
  for (std::size_t i = 0; i < labels_.size() && cost <= bound; ++i) {
    const Label& other = labels_[i];
    if (i != self && !other.aside && other.reach.meets(reach))
      cost += together(place, other.chosenPlace(), onDot());
  }
  return cost;
}

/// The cheapest place that costs less than `bound`.
std::optional<LabelPlacer::Choice> LabelPlacer::best(std::size_t index, double bound) {
  Label& label = labels_[index];
  std::optional<Choice> found;
  for (std::size_t i = 0; i < label.places.size(); ++i) {
    if (label.places[i].cost >= bound) break; // sorted: none of the rest can be cheaper
    double cost = ownCost(label, i, bound);
    if (cost >= bound) continue;
    cost += withOthers(index, label.places[i], bound - cost);
    if (cost >= bound) continue;
    bound = cost;
    found = Choice{i, cost};
  }
  return found;
}

std::optional<std::size_t> LabelPlacer::add(std::vector<LabelCandidate> candidates, bool mayMove) {
  std::stable_sort(
      candidates.begin(), candidates.end(),
      [](const LabelCandidate& a, const LabelCandidate& b) { return a.cost < b.cost; });
  Label label;
  label.costs.resize(candidates.size());
  label.places = std::move(candidates);
  label.mayMove = mayMove;
  labels_.push_back(std::move(label));
  const std::size_t index = labels_.size() - 1;
  const auto choice = best(index, kNever);
  if (!choice) {
    labels_.pop_back();
    return std::nullopt;
  }
  labels_[index].choose(choice->place);
  return index;
}

std::optional<LabelCandidate> LabelPlacer::place(std::vector<LabelCandidate> candidates) {
  const auto label = add(std::move(candidates), false);
  return label ? std::optional(at(*label)) : std::nullopt;
}

double LabelPlacer::costOf(const LabelCandidate& place) const {
  if (!allows(place)) return kNever;
  return obstacles_.cost(place, kNever) + withOthers(labels_.size(), place, kNever);
}

double LabelPlacer::costNow(std::size_t index) {
  Label& label = labels_[index];
  const double own = ownCost(label, label.chosen, kNever);
  return own + withOthers(index, label.chosenPlace(), kNever);
}

constexpr double kWorth = 1e-6; // mm; a smaller gain is no reason to move

bool LabelPlacer::improve(std::size_t index) {
  const auto better = best(index, costNow(index) - kWorth);
  if (better) labels_[index].choose(better->place);
  return better.has_value();
}

/// Neither has a better place while the other stays: looks for the two places that together cost
/// least, and less than `bound`.
bool LabelPlacer::moveBoth(std::size_t first, std::size_t second, double bound) {
  Label &a = labels_[first], &b = labels_[second];
  const std::size_t oldA = a.chosen, oldB = b.chosen;
  std::pair<std::size_t, std::size_t> chosen{oldA, oldB};
  for (std::size_t i = 0; i < a.places.size() && a.places[i].cost < bound; ++i) {
    b.aside = true;
    double cost = ownCost(a, i, bound);
    if (cost < bound) cost += withOthers(first, a.places[i], bound - cost);
    b.aside = false;
    if (cost >= bound) continue;
    a.choose(i);
    if (const auto choiceB = best(second, bound - cost)) {
      chosen = {i, choiceB->place};
      bound = cost + choiceB->cost;
    }
  }
  a.choose(chosen.first);
  b.choose(chosen.second);
  return chosen.first != oldA || chosen.second != oldB;
}

/// `first` chooses as if `second` were not there, then `second` what is left.
bool LabelPlacer::exchange(std::size_t first, std::size_t second) {
  Label &a = labels_[first], &b = labels_[second];
  const std::size_t oldA = a.chosen;
  const double before =
      costNow(first) + costNow(second) - together(a.chosenPlace(), b.chosenPlace(), onDot());
  b.aside = true;
  const auto choiceA = best(first, before);
  b.aside = false;
  if (!choiceA) return false;
  if (choiceA->place == oldA) return moveBoth(first, second, before - kWorth);
  a.choose(choiceA->place);
  const double withoutB = choiceA->cost;
  const auto choiceB = best(second, before - withoutB - kWorth);
  if (choiceB) {
    b.choose(choiceB->place);
    return true;
  }
  a.choose(oldA);
  return moveBoth(first, second, before - kWorth);
}

/// Labels but for which it would have a better place.
std::vector<std::size_t> LabelPlacer::inTheWayOf(std::size_t index) {
  Label& label = labels_[index];
  const double now = costNow(index);
  std::vector<bool> found(labels_.size(), false);
  for (std::size_t i = 0; i < label.places.size() && label.places[i].cost < now; ++i) {
    const double own = ownCost(label, i, now);
    if (own >= now) continue;
    if (const auto other = onlyOneInTheWay(index, label.places[i], now - own)) found[*other] = true;
  }
  std::vector<std::size_t> others;
  for (std::size_t k = 0; k < found.size(); ++k) {
    if (found[k]) others.push_back(k);
  }
  return others;
}

/// The label without which the others would cost the place less than `bound`.
std::optional<std::size_t>
LabelPlacer::onlyOneInTheWay(std::size_t self, const LabelCandidate& place, double bound) const {
  const PaperBox reach = airAbout(place);
  double most = 0, rest = 0;
  std::optional<std::size_t> worst;
  for (std::size_t i = 0; i < labels_.size() && rest < bound; ++i) {
    if (i == self || !labels_[i].reach.meets(reach)) continue;
    const double cost = together(place, labels_[i].chosenPlace(), onDot());
    rest += std::min(cost, most);
    if (cost <= most) continue;
    most = cost;
    worst = i;
  }
  return rest < bound ? worst : std::nullopt;
}

bool LabelPlacer::exchangeAny() {
  constexpr double kPoor = 30; // mm; a label that stands better than this needs no help
  bool changed = false;
  for (std::size_t i = 0; i < labels_.size(); ++i) {
    if (!labels_[i].mayMove || costNow(i) < kPoor) continue;
    for (std::size_t k : inTheWayOf(i))
      changed = (labels_[k].mayMove && exchange(i, k)) || changed;
  }
  return changed;
}

void LabelPlacer::settle() {
  // What was drawn since a label came counts now too.
  for (Label& label : labels_)
    std::ranges::fill(label.costs, Cost{});
  constexpr int kRounds = 6;
  for (int round = 0; round < kRounds; ++round) {
    bool changed = false;
    for (std::size_t i = 0; i < labels_.size(); ++i)
      changed = (labels_[i].mayMove && improve(i)) || changed;
    if (!changed && !exchangeAny()) return;
  }
}

std::vector<LabelCandidate> aroundPoint(Point2 anchor, double width, double height, double nearest,
                                        double farthest, double extraCost) {
  std::vector<LabelCandidate> found;
  constexpr int kDirections = 24;
  constexpr double kGrowth = 1.25;
  for (double r = nearest; r <= farthest; r *= kGrowth) {
    for (int i = 0; i < kDirections; ++i) {
      const double a = 2 * kPi * i / kDirections;
      const Point2 u{std::cos(a), std::sin(a)};
      // The box stands beyond r: its nearest edge or corner about r away.
      const Point2 middle = anchor + Point2{u.x * (r + width / 2), u.y * (r + height / 2)};
      const PaperBox box{{middle.x - width / 2, middle.y - height / 2},
                         {middle.x + width / 2, middle.y + height / 2}};
      found.push_back({box, anchor, extraCost + r * 0.25, false});
    }
  }
  return found;
}

} // namespace sump
