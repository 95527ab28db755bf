#include "core/sheet/report_flow.h"

#include <stdexcept>

namespace sump {

void ReportFlow::turn() {
  space_ = turn_(pages_);
  y_ = space_.low.y;
  fresh_ = true;
}

std::size_t ReportFlow::add(FlowPiece piece) {
  if (pages_.empty()) turn();
  Block lead{piece.block.width, {}, std::move(piece.lead)};
  // A piece of several pages starts where at least half a page is left.
  const double whole = lead.height() + piece.block.height();
  const double wanted = std::min(whole, space_.height() / 2 + lead.height());
  const double left = space_.high.y - y_;
  const bool fits = whole <= left || (whole > space_.height() && wanted <= left);
  if (!fits && !fresh_) turn();
  const std::size_t first = pages_.size() - 1;
  y_ = place(lead, {space_.low.x, y_}, space_.high.y, pages_.back());
  while (true) {
    const double below = place(piece.block, {space_.low.x, y_}, space_.high.y, pages_.back());
    if (below == y_ && fresh_) {
      throw std::invalid_argument("The report does not fit on this paper. Choose a larger one.");
    }
    y_ = below;
    fresh_ = false;
    if (piece.block.body.empty()) break;
    piece.block.head = piece.again;
    turn();
  }
  y_ += piece.gap;
  return first;
}

} // namespace sump
