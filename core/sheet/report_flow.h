#pragma once
// Text that flows from page to page. What belongs together is kept together: a page is turned
// before a piece, and in it only where it is longer than a page. Private to core/sheet.

#include "core/sheet/block.h"

#include <functional>
#include <vector>

namespace sump {

/// What stands together.
struct FlowPiece {
  std::vector<PaperStrip> lead; ///< once, before the block: a section's heading
  Block block;
  std::vector<PaperStrip> again; ///< the block's head where it goes on on another page
  double gap = 0;                ///< mm after it
};

class ReportFlow {
public:
  /// Adds an empty page and returns where text may stand on it.
  using Turn = std::function<PaperBox(std::vector<Page>&)>;

  explicit ReportFlow(Turn turn) : turn_(std::move(turn)) {}
  /// Returns the index of the page on which the piece starts. Throws std::invalid_argument when
  /// not even one strip of it fits on an empty page.
  std::size_t add(FlowPiece piece);
  std::vector<Page> take() { return std::move(pages_); }

private:
  void turn();

  Turn turn_;
  std::vector<Page> pages_;
  PaperBox space_;
  double y_ = 0;
  bool fresh_ = true; ///< nothing stands on the page yet
};

} // namespace sump
