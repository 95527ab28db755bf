#pragma once
// Long sections for the sheets: the drawing to a true scale with its levels, and the level table
// under it.

#include "core/sheet/block.h"
#include "core/sheet/section_labels.h"
#include "core/sheet/section_table.h"
#include "core/study/profile.h"

#include <optional>
#include <string>
#include <vector>

namespace sump {

struct SectionSheet {
  Block block;        ///< the drawing with the table under it; cut only between table rows
  double scale = 0;   ///< denominator along the line
  double stretch = 1; ///< heights are drawn to scale / stretch
  /// Texts that found no room on the drawing. Their levels stand in the table all the same.
  std::vector<std::string> unplaced;
};

/// What stands over a run's section.
struct SectionTitle {
  std::string title;              ///< `WW-1  Wash-water inlet`
  std::vector<std::string> facts; ///< `6" PVC SDR 35, 68.2 ft`
  std::string anchor{};           ///< by which other sheets refer to the section
  std::string key{};              ///< of words and lines in it, behind its scale
};

double titleHeight(const SectionTitle& title);

/// The denominator along the line, and heights that many times as large as to that scale.
struct SectionScale {
  double along = 0;
  double stretch = 1;
};
/// The title alone, where each sheet of a section repeats it.
PaperStrip titleStrip(const SectionTitle& title, const SectionScale& scale, UnitSystem units);
/// The largest standard scale at which this fits into a drawing of so many mm with its texts;
/// heights stretched 1, 2, 5 or 10 times.
SectionScale sectionScale(double length, Length rise, UnitSystem units, double width,
                          double height);
/// The width of a drawing with its texts, and the least height of its frame, mm.
double sectionWidth(double length, const SectionScale& scale);
double sectionHeight(Length rise, const SectionScale& scale);

/// How a section is set.
struct SectionSet {
  double width = 0; ///< most of the block, mm
  double leastWidth = 120;
  SectionScale scale{};
  double air = 0;                        ///< mm above and below, beyond what texts need at least
  std::optional<SectionExtent> levels{}; ///< shown in place of its own: frames of one datum
  std::string before{}, after{};         ///< where it is cut: what it goes on at
  std::size_t keys = 0; ///< of texts without room that the frames before have taken
};
struct DrawnSection {
  SectionView view;
  std::vector<std::string> unplaced; ///< texts that found no room
  std::size_t keys = 0;              ///< that stand for such texts, with those of frames before
};
/// The drawing with its title, from the page's upper left corner.
DrawnSection drawSection(const RunProfile& profile, const SectionTitle& title, UnitSystem units,
                         const SectionSet& set, Page& page);
/// The rows at their points on the drawing.
std::vector<LevelColumn> levelColumns(const std::vector<LevelRow>& rows, const SectionView& view);
/// Under a section's block what found no room on it; nothing where all did.
void tellBelow(Block& block, const std::vector<std::string>& unplaced);
/// What was drawn on the page, as a strip.
PaperStrip sectionStrip(Page page);

/// Most width of the block and most height of the drawing, mm; 120 x 40 at least. The largest
/// standard scale that fits, the levels in a band under the drawing.
SectionSheet longSectionBlock(const RunProfile& profile, const SectionTitle& title,
                              UnitSystem units, double width, double height,
                              double leastWidth = 120);
/// The drawing alone, as wide as it needs, at most `width`.
SectionSheet longSectionBlock(const TrainProfile& profile, UnitSystem units, double width,
                              double height);
/// Its levels: of the vaults, and the inverts of the runs.
std::vector<Block> trainTables(const TrainProfile& profile, UnitSystem units, double width);

} // namespace sump
