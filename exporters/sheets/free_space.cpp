#include "exporters/sheets/free_space.h"

#include <algorithm>

namespace exporters {
namespace {

bool holds(const Space& outer, const Space& inner) {
  return outer.low.x <= inner.low.x && outer.low.y <= inner.low.y && outer.high.x >= inner.high.x &&
         outer.high.y >= inner.high.y;
}

}  // namespace

void FreeSpace::take(const Space& taken) {
  std::vector<Space> left;
  for (const Space& s : free_) {
    const bool apart = taken.high.x <= s.low.x || taken.low.x >= s.high.x || taken.high.y <= s.low.y ||
                       taken.low.y >= s.high.y;
    if (apart) {
      left.push_back(s);
      continue;
    }
    if (taken.low.x > s.low.x) left.push_back({s.low, {taken.low.x, s.high.y}});
    if (taken.high.x < s.high.x) left.push_back({{taken.high.x, s.low.y}, s.high});
    if (taken.low.y > s.low.y) left.push_back({s.low, {s.high.x, taken.low.y}});
    if (taken.high.y < s.high.y) left.push_back({{s.low.x, taken.high.y}, s.high});
  }
  free_.clear();
  for (std::size_t i = 0; i < left.size(); ++i) {
    bool within = false;
    for (std::size_t k = 0; k < left.size(); ++k)
      within = within || (k != i && holds(left[k], left[i]) && (!holds(left[i], left[k]) || k < i));
    if (!within) free_.push_back(left[i]);
  }
}

std::optional<Vec2> FreeSpace::place(double width, double height) {
  std::optional<Vec2> best;
  for (const Space& s : free_) {
    if (s.width() < width || s.height() < height) continue;
    if (!best || s.low.y < best->y || (s.low.y == best->y && s.low.x < best->x)) best = s.low;
  }
  if (best) take({*best, *best + Vec2{width, height}});
  return best;
}

}  // namespace exporters
