#pragma once
// GEOS as a second opinion on our geometry, through its C interface.

#include "core/geometry/point.h"

#include <geos_c.h>

#include <memory>
#include <vector>

namespace sump::oracle {

struct Deleter {
  GEOSContextHandle_t context;
  void operator()(GEOSGeometry* shape) const { GEOSGeom_destroy_r(context, shape); }
};
using Shape = std::unique_ptr<GEOSGeometry, Deleter>;

/// One GEOS context and the questions we put to it.
class Geos {
public:
  Geos() : context_(GEOS_init_r()) {}
  ~Geos() { GEOS_finish_r(context_); }
  Geos(const Geos&) = delete;
  Geos& operator=(const Geos&) = delete;

  Shape point(Point2 p) const { return own(GEOSGeom_createPointFromXY_r(context_, p.x, p.y)); }
  Shape line(const Polyline& points) const {
    return own(GEOSGeom_createLineString_r(context_, sequence(points)));
  }
  Shape edge(const Ring& ring) const { return line(closed(ring)); }
  Shape polygon(const Ring& ring) const {
    GEOSGeometry* shell = GEOSGeom_createLinearRing_r(context_, sequence(closed(ring)));
    return own(GEOSGeom_createPolygon_r(context_, shell, nullptr, 0));
  }
  Shape delaunay(const std::vector<Point2>& points) const {
    const Shape cloud = own(GEOSGeom_createLineString_r(context_, sequence(points)));
    return own(GEOSDelaunayTriangulation_r(context_, cloud.get(), 0, 0));
  }

  Shape convexHull(const std::vector<Point2>& points) const {
    return own(GEOSConvexHull_r(context_, line(points).get()));
  }

  double area(const Shape& a) const { return number(GEOSArea_r, a); }
  double length(const Shape& a) const { return number(GEOSLength_r, a); }
  Point2 centroid(const Shape& a) const {
    const Shape centre = own(GEOSGetCentroid_r(context_, a.get()));
    return {number(GEOSGeomGetX_r, centre), number(GEOSGeomGetY_r, centre)};
  }
  std::vector<Point2> centroidsOfParts(const Shape& a) const {
    std::vector<Point2> centres;
    for (int i = 0; i < parts(a); ++i)
      centres.push_back(
          centroid(own(GEOSGeom_clone_r(context_, GEOSGetGeometryN_r(context_, a.get(), i)))));
    return centres;
  }
  double distance(const Shape& a, const Shape& b) const {
    double value = -1;
    GEOSDistance_r(context_, a.get(), b.get(), &value);
    return value;
  }
  bool touchesOrCovers(const Shape& a, const Shape& b) const {
    return GEOSIntersects_r(context_, a.get(), b.get()) == 1;
  }
  bool isValid(const Shape& a) const { return GEOSisValid_r(context_, a.get()) == 1; }
  /// Interiors meet.
  bool interiorsMeet(const Shape& a, const Shape& b) const {
    return GEOSRelatePattern_r(context_, a.get(), b.get(), "T********") == 1;
  }
  Shape intersection(const Shape& a, const Shape& b) const {
    return own(GEOSIntersection_r(context_, a.get(), b.get()));
  }
  Shape difference(const Shape& a, const Shape& b) const {
    return own(GEOSDifference_r(context_, a.get(), b.get()));
  }
  /// What just one of the two covers.
  Shape symmetricDifference(const Shape& a, const Shape& b) const {
    return own(GEOSSymDifference_r(context_, a.get(), b.get()));
  }
  /// All of them together; there must be one at least.
  Shape unite(const std::vector<Shape>& shapes) const {
    Shape all = own(GEOSGeom_clone_r(context_, shapes.front().get()));
    for (std::size_t i = 1; i < shapes.size(); ++i)
      all = own(GEOSUnion_r(context_, all.get(), shapes[i].get()));
    return all;
  }
  /// Grown by so much, with square corners and flat ends.
  Shape buffer(const Shape& a, double by) const {
    return own(
        GEOSBufferWithStyle_r(context_, a.get(), by, 8, GEOSBUF_CAP_FLAT, GEOSBUF_JOIN_MITRE, 5));
  }
  bool covers(const Shape& a, const Shape& b) const {
    return GEOSCovers_r(context_, a.get(), b.get()) == 1;
  }
  /// The outer boundary of the largest part, holes filled.
  Shape largestOutline(const Shape& a) const {
    Shape best;
    for (int i = 0; i < parts(a); ++i) {
      const GEOSGeometry* part = GEOSGetGeometryN_r(context_, a.get(), i);
      const GEOSGeometry* shell = GEOSGetExteriorRing_r(context_, part);
      Shape whole =
          own(GEOSGeom_createPolygon_r(context_, GEOSGeom_clone_r(context_, shell), nullptr, 0));
      if (!best || area(whole) > area(best)) best = std::move(whole);
    }
    return best;
  }
  int parts(const Shape& a) const { return GEOSGetNumGeometries_r(context_, a.get()); }
  /// The points of a shape made of points alone, in GEOS's order.
  std::vector<Point2> points(const Shape& a) const {
    std::vector<Point2> result;
    if (GEOSisEmpty_r(context_, a.get()) == 1) return result;
    for (int i = 0; i < parts(a); ++i) {
      const GEOSGeometry* part = GEOSGetGeometryN_r(context_, a.get(), i);
      Point2 p;
      GEOSGeomGetX_r(context_, part, &p.x);
      GEOSGeomGetY_r(context_, part, &p.y);
      result.push_back(p);
    }
    return result;
  }

private:
  using Measure = int (*)(GEOSContextHandle_t, const GEOSGeometry*, double*);

  Shape own(GEOSGeometry* shape) const { return {shape, Deleter{context_}}; }
  double number(Measure measure, const Shape& a) const {
    double value = -1;
    measure(context_, a.get(), &value);
    return value;
  }
  static Polyline closed(Ring ring) {
    if (!ring.empty()) ring.push_back(ring.front());
    return ring;
  }
  GEOSCoordSequence* sequence(const Polyline& points) const {
    GEOSCoordSequence* sequence =
        GEOSCoordSeq_create_r(context_, static_cast<unsigned>(points.size()), 2);
    for (unsigned i = 0; i < points.size(); ++i)
      GEOSCoordSeq_setXY_r(context_, sequence, i, points[i].x, points[i].y);
    return sequence;
  }

  GEOSContextHandle_t context_;
};

} // namespace sump::oracle
