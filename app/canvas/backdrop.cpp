#include "app/canvas/backdrop.h"

#include "app/canvas/mark_painter.h"

#include <algorithm>

namespace sump {

namespace {

/// Lines reach past their points by half their width, mitred corners by as much as their width.
constexpr double kPastPoints = 8; // pixels
/// More parts than this cost more than what lies between them.
constexpr int kMostParts = 60;
/// As many marks as an object or two may gain or lose in a layer at one step of a drag.
constexpr std::size_t kLookAhead = 24;
/// With more changes than this everything is painted.
constexpr std::size_t kMostBoxes = 2000;

bool same(const Mark& a, const Mark& b) {
  return a.object == b.object && a.layer == b.layer && a.points == b.points &&
         a.closed == b.closed && a.round == b.round && a.line == b.line && a.fill == b.fill;
}

/// How far behind `from` a mark stands in the list; 0 when it is not among the next ones.
std::size_t stepsTo(const Mark& mark, const std::vector<Mark>& list, std::size_t from) {
  const std::size_t end = std::min(list.size(), from + kLookAhead);
  for (std::size_t at = from + 1; at < end; ++at) {
    if (same(mark, list[at])) return at - from;
  }
  return 0;
}

} // namespace

// Marks that are matched keep their order, and all others are boxed: so it is enough to paint the
// boxes, however the marks were matched.
std::optional<SceneChanges> changesBetween(const Scene& before, const Scene& after) {
  const std::vector<Mark>&old = before.marks(), &now = after.marks();
  SceneChanges changes;
  const auto add = [&changes](const Scene& scene, std::size_t mark) {
    changes.boxes.push_back(markBox(scene.marks()[mark]));
    changes.objects.insert(scene.owner(mark));
  };
  std::size_t i = 0, k = 0;
  while (i < old.size() && k < now.size()) {
    if (changes.boxes.size() > kMostBoxes) return std::nullopt;
    if (same(old[i], now[k])) {
      ++i, ++k;
    } else if (const std::size_t fresh = stepsTo(old[i], now, k); fresh > 0) {
      for (const std::size_t end = k + fresh; k < end; ++k)
        add(after, k);
    } else if (const std::size_t gone = stepsTo(now[k], old, i); gone > 0) {
      for (const std::size_t end = i + gone; i < end; ++i)
        add(before, i);
    } else {
      add(before, i++); // it was moved
      add(after, k++);
    }
  }
  for (; i < old.size(); ++i)
    add(before, i);
  for (; k < now.size(); ++k)
    add(after, k);
  if (changes.boxes.size() > kMostBoxes) return std::nullopt;
  return changes;
}

void Backdrop::forget(const std::vector<Box>& boxes, const View& view) {
  if (whole_) return;
  for (const Box& box : boxes) {
    const QRectF on = QRectF(view.toScreen(box.low), view.toScreen(box.high)).normalized();
    stale_ += on.adjusted(-kPastPoints, -kPastPoints, kPastPoints, kPastPoints).toAlignedRect();
    if (stale_.rectCount() > kMostParts) stale_ = stale_.boundingRect();
  }
}

const QPixmap& Backdrop::picture(QSize size, double ratio, const Look& look, const Paint& paint) {
  // A picture that was taken away leaves its place.
  if (look.units != look_.units || look.pictures || look_.pictures) whole_ = true;
  look_ = look;
  const QSize pixels = size * ratio;
  if (picture_.size() != pixels || picture_.devicePixelRatio() != ratio) {
    picture_ = QPixmap(pixels);
    picture_.setDevicePixelRatio(ratio);
    whole_ = true;
  }
  const QRect all(QPoint(), size);
  if (whole_) stale_ = all;
  stale_ &= all;
  if (stale_.isEmpty()) return picture_;
  QPainter painter(&picture_);
  painter.setRenderHint(QPainter::Antialiasing);
  if (!whole_) painter.setClipRegion(stale_);
  paint(painter, stale_);
  whole_ = false;
  stale_ = {};
  return picture_;
}

void paintScene(QPainter& painter, const View& view, const Scene& scene, const CanvasTheme& theme,
                const QRegion& region) {
  std::vector<std::size_t> marks;
  for (const QRect& part : region) {
    const QRectF on = QRectF(part).adjusted(-kPastPoints, -kPastPoints, kPastPoints, kPastPoints);
    const Point2 a = view.toSite(on.bottomLeft()), b = view.toSite(on.topRight());
    const std::vector<std::size_t> here = scene.visible({a, b});
    marks.insert(marks.end(), here.begin(), here.end());
  }
  std::ranges::sort(marks); // in drawing order, each once
  const auto twice = std::ranges::unique(marks);
  marks.erase(twice.begin(), twice.end());
  for (std::size_t i : marks)
    paintMark(painter, view, scene.marks()[i], theme);
}

} // namespace sump
