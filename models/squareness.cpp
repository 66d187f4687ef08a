#include "models/squareness.h"

#include <cmath>

namespace models {
namespace {

using geometry::mm;

Length diagonal(Length a, Length b) { return mm(std::hypot(a.mm(), b.mm())); }

}  // namespace

std::vector<Squared> squared(const Building& building) {
  std::vector<Squared> all;
  for (const FrameView& frame : building.frames) {
    if (frame.kind == "truss") continue;
    all.push_back({frame.name, frame.width, frame.height, diagonal(frame.width, frame.height)});
    for (const FrameView::Hole& hole : frame.openings) {
      const geometry::Vec2 size = hole.high - hole.low;
      all.push_back({hole.name, mm(size.x), mm(size.y), mm(norm(size))});
    }
  }
  return all;
}

Length allowed_racking(Length hinged_side, Length other_side, Length reveal) {
  return reveal * (2 * (hinged_side / diagonal(hinged_side, other_side)));
}

Length reveal_for_racking(Length hinged_side, Length other_side, Length racking) {
  return racking * (diagonal(hinged_side, other_side) / hinged_side / 2);
}

}  // namespace models
