#include "core/sheet/wall_pipes.h"

#include "core/geometry/polygon.h"
#include "core/sheet/figure.h"
#include "core/sheet/mark_pen.h"
#include "core/sheet/tags.h"

#include <algorithm>
#include <cmath>

namespace sump {

namespace {

constexpr double kBelow = 0.12;       // m under the floor
constexpr double kSameHeight = 0.005; // m

double radiusOf(const std::string& size) {
  return nominalInches(size).value_or(1) * kMetresPerInch / 2;
}

/// The part of a stretch between the values where `from` and `to` reach `low` and `high`.
void clipBy(double from, double to, double low, double high, double& t0, double& t1) {
  if (std::abs(to - from) < 1e-9) {
    if (from < low || from > high) t1 = -1;
    return;
  }
  const double a = (low - from) / (to - from), b = (high - from) / (to - from);
  t0 = std::max(t0, std::min(a, b));
  t1 = std::min(t1, std::max(a, b));
}

/// Stretches of one run, joined where they go on at the same distance off the wall.
class Stretches {
public:
  Stretches(const EquipmentRoom& room, const WallView& wall, WallPipe pipe)
      : room_(room), wall_(wall), pipe_(std::move(pipe)) {}

  void add(Point3 a, Point3 b) {
    constexpr double kAny = 1e9, kWall = 0.02;
    const Point2 p = room_.frame().toLocal(flat(a)), q = room_.frame().toLocal(flat(b));
    const double floor = inMetres(room_.floor);
    double t0 = 0, t1 = 1;
    clipBy(p.x, q.x, -kWall, inMetres(room_.length) + kWall, t0, t1);
    clipBy(p.y, q.y, -kWall, inMetres(room_.width) + kWall, t0, t1);
    clipBy(a.z - floor, b.z - floor, -kBelow, kAny, t0, t1);
    if (t1 <= t0) return;
    const auto place = [&](double t) {
      const Point2 local = lerp(p, q, t);
      return std::pair(Point2{wall_.right(room_, local), a.z + (b.z - a.z) * t - floor},
                       wall_.off(room_, local));
    };
    put(place(t0), place(t1), std::max(a.z, b.z) - pipe_.radius < floor + kSameHeight);
  }
  std::vector<WallPipe> take() { return std::move(made_); }

private:
  using Place = std::pair<Point2, double>;

  void put(const Place& a, const Place& b, bool buried) {
    if (buried) return;
    const double off = std::max(a.second, b.second);
    const bool endOn = distance(a.first, b.first) < kSameHeight;
    const bool goesOn = !made_.empty() && !endOn && !made_.back().endOn() &&
                        std::abs(made_.back().off - off) < kSameHeight &&
                        distance(made_.back().line.back(), a.first) < kSameHeight;
    if (goesOn) {
      made_.back().line.push_back(b.first);
      return;
    }
    pipe_.off = off;
    pipe_.line = endOn ? Polyline{a.first} : Polyline{a.first, b.first};
    made_.push_back(pipe_);
  }

  const EquipmentRoom& room_;
  const WallView& wall_;
  WallPipe pipe_;
  std::vector<WallPipe> made_;
};

/// Levels of bends are inverts, of an upright end that of its opening.
std::vector<Point3> centreline(const RunStudy& run, double radius) {
  std::vector<Point3> points;
  for (const RunPoint& point : run.points)
    points.push_back(point.at + Point3{0, 0, radius});
  if (run.legs.empty()) return points;
  if (run.legs.front().vertical) points.front().z -= radius;
  if (run.legs.back().vertical) points.back().z -= radius;
  return points;
}

void drawPipe(const WallPipe& pipe, double gap, std::vector<Mark>& marks) {
  MarkPen pen(marks, pipe.run, Layer::Part);
  const LineStyle line{ink(facts(pipe.service).color), 0.35, {}};
  const double r = pipe.radius;
  if (pipe.endOn()) {
    pen.circle(pipe.line[0], r + gap, std::nullopt, FillStyle{Ink::White});
    pen.circle(pipe.line[0], r, line, FillStyle{Ink::White});
    return;
  }
  pen.ring(pipeOutline(pipe.line, 2 * (r + gap)), std::nullopt, FillStyle{Ink::White});
  std::vector<double> heights;
  for (Point2 p : pipe.line)
    heights.push_back(p.y);
  for (const auto& [part, under] : stretchesByFloor(pipe.line, heights))
    pen.ring(pipeOutline(part, 2 * r), under ? hiddenLine(pipe.service) : line,
             FillStyle{Ink::White});
}

} // namespace

std::vector<FloorStretch> stretchesByFloor(const Polyline& line,
                                           const std::vector<double>& overFloor) {
  std::vector<FloorStretch> parts;
  const auto add = [&](Point2 a, Point2 b, bool under) {
    if (distance(a, b) < 1e-6) return;
    if (parts.empty() || parts.back().under != under) {
      parts.push_back({{a, b}, under});
    } else {
      parts.back().line.push_back(b);
    }
  };
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const Point2 a = line[i], b = line[i + 1];
    const double low = overFloor[i], high = overFloor[i + 1];
    const Point2 through = (low < 0) == (high < 0) ? b : lerp(a, b, -low / (high - low));
    add(a, through, low < 0);
    add(through, b, high < 0);
  }
  return parts;
}

LineStyle hiddenLine(Service service) {
  return {ink(facts(service).color), 0.25, {1.5, 0.9}};
}

bool WallPipe::covers(Point2 p) const {
  if (endOn()) return distance(line[0], p) < radius;
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    if (nearestOnSegment(p, line[i], line[i + 1]).distance < radius) return true;
  }
  return false;
}

std::vector<WallPipe> wallPipes(const SheetJob& job, const EquipmentRoom& room,
                                const WallView& wall) {
  const auto tags = runTags(job.plan());
  std::vector<WallPipe> all;
  for (const RunStudy& run : job.study().runs) {
    const Run& given = *job.plan().runs.find(run.id);
    Stretches stretches(room, wall,
                        {run.id, tags.at(run.id), given.service, {}, radiusOf(given.size), 0});
    std::vector<Point3> centres = centreline(run, radiusOf(given.size));
    for (std::size_t i = 0; i + 1 < centres.size(); ++i)
      stretches.add(centres[i], centres[i + 1]);
    for (WallPipe& pipe : stretches.take())
      all.push_back(std::move(pipe));
  }
  std::ranges::stable_sort(all, {}, &WallPipe::off);
  return all;
}

std::vector<WallPort> wallPorts(const SheetJob& job, const EquipmentRoom& room,
                                const WallView& wall) {
  std::vector<WallPort> ports;
  for (const Port& port : room.ports) {
    const double r = radiusOf(port.size);
    const bool upright = endsUpright(job, port.id);
    ports.push_back({&port,
                     upright,
                     {wall.right(room, port.at), inMetres(port.height) + (upright ? 0 : r)},
                     r,
                     wall.off(room, port.at)});
  }
  std::ranges::stable_sort(ports, {}, &WallPort::off);
  return ports;
}

std::string standsBefore(const std::vector<WallPipe>& pipes, const std::string& run, Point2 at,
                         double off) {
  std::vector<std::string> tags;
  for (const WallPipe& pipe : pipes) {
    const bool known = pipe.tag == run || std::ranges::find(tags, pipe.tag) != tags.end();
    if (!known && pipe.off > off + kSameHeight && pipe.covers(at)) tags.push_back(pipe.tag);
  }
  std::string text;
  for (const std::string& tag : tags)
    text += (text.empty() ? "" : ", ") + tag;
  return text;
}

void drawWallPipes(const std::vector<WallPipe>& pipes, const std::vector<WallPort>& ports,
                   std::vector<Mark>& marks) {
  constexpr double kGap = 0.012; // m
  auto port = ports.begin();
  const auto drawPorts = [&](double below) {
    for (; port != ports.end() && port->off < below - kSameHeight; ++port) {
      if (port->upright) continue; // drawn with its pipe
      MarkPen pen(marks, port->port->id, Layer::Part);
      pen.circle(port->centre, port->radius,
                 LineStyle{ink(facts(port->port->service).color), 0.35, {}}, FillStyle{Ink::White});
    }
  };
  for (const WallPipe& pipe : pipes) {
    drawPorts(pipe.off);
    drawPipe(pipe, kGap, marks);
  }
  drawPorts(1e9);
}

} // namespace sump
