#include "models/door_places.h"

#include <algorithm>
#include <cmath>

#include "models/roof_shape.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::mm;

constexpr double step = 5;        // mm: finer than anyone sets out a door
constexpr double fineness = 0.5;  // mm: of an interval's ends

// The leaf among what stays where it is, tried at other places.
class Trial {
 public:
  Trial(const Subject& s, const Mover& mover, double limit)
      : leaf_(pieces_of(s.scene, mover.parts)), motion_(motion_of(mover)), limit_(limit) {
    std::vector<std::size_t> staying;
    for (const std::size_t part : others(s.building, mover))
      if (!is_surround(s.building, mover, part)) staying.push_back(part);
    fixed_ = pieces_of(s.scene, staying);
  }
  [[nodiscard]] bool clear(Vec3 by) const {
    const Placement moved = geometry::shift(by);
    std::vector<geometry::ConvexPiece> pieces;
    for (const geometry::ConvexPiece& piece : leaf_.pieces) pieces.push_back(geometry::placed(piece, moved));
    geometry::Motion motion = motion_;
    if (auto* turn = std::get_if<geometry::Turn>(&motion)) turn->axis.point = moved.point(turn->axis.point);
    return geometry::free_travel(pieces, fixed_.pieces, motion, limit_).until >= 1;
  }

 private:
  Pieces leaf_, fixed_;
  geometry::Motion motion_;
  double limit_;
};

// Whether the wall has room for the opening with its left edge at x: posts on both sides, no other opening there.
bool has_room(const Design& design, const Mover& mover, const Opening& opening, double x) {
  const Extent extent = frame_extent(design.house, mover.wall);
  const double post = design.house.framing.width.mm(), right = x + opening.width.mm();
  if (x < extent.from.mm() + post || right > extent.to.mm() - post) return false;
  for (const Opening& other : design.walls[static_cast<std::size_t>(mover.wall)].openings)
    if (other.name != opening.name && x < (other.left + other.width).mm() + post &&
        other.left.mm() - post < right)
      return false;
  return true;
}

// Between a value where `good` holds and one where it doesn't: the last good one, to the fineness.
template <class Good>
double edge(double inside, double outside, const Good& good) {
  while (std::abs(outside - inside) > fineness) {
    const double middle = (inside + outside) / 2;
    (good(middle) ? inside : outside) = middle;
  }
  return inside;
}

}  // namespace

geometry::Motion motion_of(const Mover& mover) {
  if (mover.kind == DoorKind::hinged) return geometry::Turn{mover.axis, mover.opens};
  return geometry::Slide{mover.travel};
}

std::vector<std::size_t> others(const Building& building, const Mover& mover) {
  std::vector<std::size_t> rest;
  for (std::size_t i = 0; i < building.parts.size(); ++i)
    if (std::find(mover.parts.begin(), mover.parts.end(), i) == mover.parts.end() &&
        std::find(mover.ignored.begin(), mover.ignored.end(), i) == mover.ignored.end())
      rest.push_back(i);
  return rest;
}

bool is_surround(const Building& building, const Mover& mover, std::size_t part) {
  const Part& p = building.parts[part];
  if (p.wall != mover.wall) return false;
  return p.group == Group::frame || p.group == Group::cladding || p.group == Group::door ||
         p.group == Group::hardware;
}

std::vector<Interval> clear_places(const Subject& s, const Mover& mover, const Opening& opening,
                                   double limit) {
  const Trial trial(s, mover, limit);
  const Vec3 along = wall_plane(s.design.house, mover.wall).x;
  const auto good = [&](double x) {
    return has_room(s.design, mover, opening, x) && trial.clear(along * (x - opening.left.mm()));
  };
  const double end = wall_length(s.design.house, mover.wall).mm();
  std::vector<Interval> intervals;
  double from = 0;
  bool inside = false;
  for (double x = 0; x <= end + step; x += step) {
    const bool here = x <= end && good(x);
    if (here && !inside) from = edge(x, x - step, good);
    if (!here && inside) intervals.push_back({mm(from), mm(edge(x - step, x, good))});
    inside = here;
  }
  return intervals;
}

std::optional<Length> clear_drop(const Subject& s, const Mover& mover, const Opening& opening, double limit) {
  const Trial trial(s, mover, limit);
  const auto good = [&](double down) { return trial.clear({0, 0, -down}); };
  const double most = (opening.bottom - s.design.house.framing.width).mm();
  for (double down = step; down <= most; down += step)
    if (good(down)) return mm(edge(down, down - step, good));
  return std::nullopt;
}

}  // namespace models
