#pragma once
// The levels of a run at its points, for a long section: in a band under the drawing, each point
// in a column below it, or in a list whose points are lettered on the drawing. Private to
// core/sheet.

#include "core/sheet/block.h"
#include "core/study/profile.h"

#include <string>
#include <vector>

namespace sump {

/// A point of the run, or the place of its least cover.
struct LevelRow {
  double station = 0;
  std::vector<std::string> cells; ///< as `levelHeadings`
};

const std::vector<std::string>& levelHeadings();
/// With the flow, as the stations go.
std::vector<LevelRow> levelRows(const RunProfile& profile, UnitSystem units);

/// A point on the drawing's foot and its row.
struct LevelColumn {
  double x = 0;
  const LevelRow* row = nullptr;
};

/// Height that the band takes under the drawing.
double levelBandHeight(const std::vector<LevelRow>& rows);
void drawLevelBand(const std::vector<LevelColumn>& columns, const PaperBox& frame, Page& page);

/// Height that the letters take under the drawing.
inline constexpr double kLetterRoom = 10;
/// `A`, `B` ... of the row of this index.
std::string pointLetter(std::size_t row);
/// The letters of points under the drawing's foot.
void drawPointLetters(const std::vector<std::pair<double, std::string>>& places,
                      const PaperBox& frame, Page& page);

/// The list in so many parts side by side.
class LevelList {
public:
  LevelList(const std::vector<LevelRow>& rows, std::size_t parts);
  double width() const;
  double height() const;
  void draw(Point2 at, Page& page) const;

private:
  std::vector<Block> parts_;
};

} // namespace sump
