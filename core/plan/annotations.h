#pragma once
// What people add to a plan besides things to build: dimension notes, pictures to draw over,
// accepted findings and the revision block. Plain values, part of the Plan.

#include "core/geometry/point.h"
#include "core/plan/items.h"
#include "core/units/quantity.h"

#include <string>

namespace sump {

/// An end of a dimension note. On an object, `at` is in its local frame (of a run or an outline:
/// the site) and follows it; with no object it is a site point.
struct NoteEnd {
  Id object;
  Point2 at;
  bool operator==(const NoteEnd&) const = default;
};

/// A dimension between two places, or with equal ends a lettered note. It follows its objects.
struct DimensionNote {
  Id id;
  NoteEnd from;
  NoteEnd to;
  Length offset;    ///< of the dimension line to the left of from-to
  std::string text; ///< in place of the measured length; empty: the length
  bool operator==(const DimensionNote&) const = default;
};

/// Bytes as base64 (RFC 4648); may be megabytes long.
struct Base64 {
  std::string text;
  bool operator==(const Base64&) const = default;
};

/// A picture of the site to draw over. Its top left corner is at `at`, its upper edge along local
/// x.
struct Underlay {
  Id id;
  std::string name;
  std::string file;  ///< beside the plan file, relative; or
  std::string media; ///< media type of `data`: image/png, image/jpeg, image/svg+xml
  Base64 data;       ///< the picture itself; empty when it is kept beside
  Point2 at;
  Angle angle;
  Length width;          ///< on the site
  Length height;         ///< on the site
  double strength = 0.5; ///< 0 unseen to 1 full
  bool shown = true;
  bool locked = true;
  bool operator==(const Underlay&) const = default;
};

/// A finding that someone answers for.
struct Acceptance {
  std::string finding; ///< Finding::key() of rules/finding.h
  std::string reason;
  std::string by;
  std::string date; ///< ISO 8601
  bool operator==(const Acceptance&) const = default;
};

/// One line of the revision block.
struct RevisionEntry {
  std::string index;
  std::string date; ///< ISO 8601
  std::string text;
  std::string by;
  bool operator==(const RevisionEntry&) const = default;
};

} // namespace sump
