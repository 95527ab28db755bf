#pragma once
// The cutting list: every pipe cut to length, and which cuts come out of which bought stick. Worked
// out on demand from Plan and Study, since the least sticks take a search (study/packing.h).
//
// Cuts are rounded to what a tape reads (1/16 in, or the millimetre in metric plans); each saw cut
// takes the kerf. A stick that is cut keeps an allowance for squaring its ends (the trim); one that
// goes in whole, or nearly so, keeps the ends that it came with. A cut longer than a stick is whole
// sticks and a rest, joined by couplings or by the sticks' own bells, as the take-off counts them.

#include "core/study/study.h"

#include <string>
#include <vector>

namespace sump {

/// One length to saw, or a whole stick.
struct StickCut {
  Id run;
  int piece = 0; ///< of the run, from 1, from its start to its end
  int part = 1;  ///< of so many `parts` that are joined to the piece
  int parts = 1;
  Length length;
};

/// A stick to buy and what is sawn from it, the longest first.
struct CutStick {
  std::vector<std::size_t> cuts; ///< indices into the group's cuts
  Length offcut;                 ///< left over after the last cut, the trim with it
};

/// All cuts of one pipe and size, whichever runs they are for.
struct CuttingGroup {
  std::string pipe; ///< catalogue key
  std::string name; ///< `PVC Sch 80`
  std::string size; ///< nominal
  Length stick;
  std::vector<StickCut> cuts; ///< in the plan's order
  std::vector<CutStick> sticks;
  /// No way to pack these cuts takes fewer sticks.
  int leastPossible = 0;
  Length net;    ///< all cuts
  Length offcut; ///< all that is left over
  bool proven() const { return static_cast<int>(sticks.size()) == leastPossible; }
};

struct CuttingList {
  Length kerf, trim;
  std::vector<CuttingGroup> groups; ///< in the order of the catalogue, by rising size
  const CuttingGroup* group(std::string_view pipe, std::string_view size) const;
};

/// The limit that holds the width of the saw's cut.
inline constexpr const char* kKerfLimit = "cutting.kerf";
/// The limit that holds what a cut stick keeps for squaring its ends.
inline constexpr const char* kTrimLimit = "cutting.trim";

CuttingList cuttingList(const Plan& plan, const Study& study, const Catalog& catalog, Length kerf,
                        Length trim = {});

/// The limit that holds how long a left end is at least that a piece can still be cut from.
inline constexpr const char* kSpareLimit = "cutting.spare";
/// What is left of the group's sticks, as long as that at least, the longest first.
std::vector<Length> spareEnds(const CuttingGroup& group, Length least);

/// `OF-1.3`, with `/2` for the second part of a piece that is joined from several.
std::string cutMark(const StickCut& cut);
/// Of a piece that is cut in one, by its place among the run's pieces.
std::string pieceMark(const Id& run, std::size_t piece);
/// `least (proven)` or `at least 11 are needed; fewer than these 12 is not ruled out`.
std::string provenText(const CuttingGroup& group);

} // namespace sump
