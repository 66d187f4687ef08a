#include "models/splices.h"

#include <algorithm>

#include "geometry/tolerance.h"
#include "models/furniture.h"
#include "models/stock.h"

namespace models {

using geometry::same_place;

Length longest_board(const Design& design, const Lumber& lumber) {
  Length longest;
  const auto take = [&](const Lumber& sold, Length length) {
    const bool same = sold.name == lumber.name;
    const bool rips = design.shop.saw.rips &&
                      geometry::abs(sold.thickness - lumber.thickness).mm() < same_place &&
                      sold.width > lumber.width;
    if (same || rips) longest = std::max(longest, length);
  };
  for (const SoldLumber& sold : design.shop.lumber) take(sold.lumber, sold.length);
  if (longest <= Length()) longest = usual_lengths(design.units).back();
  return longest - design.shop.saw.end_trim * 2;
}

std::vector<std::pair<double, double>> pieces_between(double from, double to, double most,
                                                      const std::vector<double>& places, bool staggered) {
  std::vector<std::pair<double, double>> pieces;
  double start = from;
  while (to - start > most + same_place) {
    std::vector<double> within;
    double next = to;  // the nearest place beyond reach
    for (const double place : places) {
      if (place <= start + same_place || place >= to - same_place) continue;
      if (place - start <= most + same_place)
        within.push_back(place);
      else
        next = std::min(next, place);
    }
    double end = within.empty() ? next : within.back();
    // One place short of the first joint of the rows on either side, where the rest can still be reached.
    if (staggered && pieces.empty() && within.size() > 1) end = within[within.size() - 2];
    pieces.emplace_back(start, end);
    start = end;
  }
  if (to - start > same_place) pieces.emplace_back(start, to);
  return pieces;
}

BoardJoints::BoardJoints(const Design& design, const Wall& wall)
    : longest_(longest_board(design, wall.cladding.slats).mm()), posts_(post_middles(design, wall.side)) {}

geometry::Region BoardJoints::pieces_of(const geometry::Outline& board) {
  const geometry::Vec2 from = low(board), to = high(board);
  if (to.x - from.x <= longest_ + same_place) return {board};
  staggered_ = !staggered_;
  geometry::Region pieces;
  for (const auto& [left, right] : pieces_between(from.x, to.x, longest_, posts_, staggered_))
    for (geometry::Outline& piece :
         geometry::intersection({board}, {geometry::rectangle({left, from.y}, {right, to.y})}))
      pieces.push_back(std::move(piece));
  return pieces;
}

}  // namespace models
