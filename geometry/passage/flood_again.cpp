// What a flood keeps when it is gone on with. Upper bounds hold however the question is sharpened and whatever
// more is closed; of the ways that lead to the cells, those are given up that are not proven for the ball that
// is now to be led on.
#include <algorithm>

#include "geometry/passage/flood.h"

namespace geometry::passage {

// Every step must be proven for a ball of this radius, or goes with all that came by way of it.
void Flood::keep_to(double room) {
  std::vector<std::int32_t> renumbered(steps_.size(), -1);
  std::size_t kept = 0;
  const std::size_t inside = steps_.size() - (way_out_ ? 1 : 0);
  for (std::size_t s = 0; s < inside; ++s) {
    Step step = steps_[s];
    if (step.before >= 0) {
      step.before = renumbered[static_cast<std::size_t>(step.before)];
      if (step.before < 0 || step.proven < room) continue;
    }
    renumbered[s] = static_cast<std::int32_t>(kept);
    steps_[kept++] = step;
  }
  if (kept == steps_.size()) return;
  steps_.resize(kept);

  std::vector<char> lost(entry_.size(), 0);
  for (std::size_t cell = 0; cell < entry_.size(); ++cell) {
    if (entry_[cell] < 0) continue;
    entry_[cell] = renumbered[static_cast<std::size_t>(entry_[cell])];
    if (entry_[cell] >= 0) continue;
    lost[cell] = 1;
    looked_[cell] = 0;
  }
  // Doors that led to what is lost have gone in part; they are looked at anew.
  std::erase_if(doors_, [&](const Door& door) {
    return !counts(door) || (door.to >= 0 && lost[static_cast<std::size_t>(door.to)] != 0);
  });
  std::make_heap(doors_.begin(), doors_.end(), Narrower());
  for (std::size_t cell = 0; cell < lost.size(); ++cell)
    if (lost[cell] != 0 && cells_.is_leaf(static_cast<CellIndex>(cell)))
      add_unseen_doors_to(static_cast<CellIndex>(cell));
  if (way_out_) {
    const Door out = unseen_door(level_, way_out_->from, way_out_->to);
    way_out_.reset();
    if (counts(out) && looked_[out.from] != 0) push(out);
  }
}

void Flood::close(std::span<const std::uint32_t> barriers) {
  cells_.add(barriers, level_);
  std::vector<Box> reaches;
  for (const std::uint32_t b : barriers) reaches.push_back(scene_.reach(b, level_));
  Box any;
  for (const Box& reach : reaches) any.add(reach);
  std::vector<std::uint32_t> near_it;
  for (Step& step : steps_) {
    if (step.before < 0) continue;
    const Step& before = steps_[static_cast<std::size_t>(step.before)];
    step.proven = std::min(step.proven, before.proven);
    Box segment;
    segment.add(before.point);
    segment.add(step.point);
    if (!near(segment, any, 0)) continue;
    near_it.clear();
    for (std::size_t i = 0; i < barriers.size(); ++i)
      if (near(segment, reaches[i], 0)) near_it.push_back(barriers[i]);
    if (!near_it.empty())
      step.proven = least_room(scene_, near_it, before.point, step.point, step.proven, 1e-3);
  }
}

}  // namespace geometry::passage
