#include "geometry/passage/flood.h"

#include <algorithm>
#include <bit>
#include <optional>
#include <queue>

#include "geometry/passage/cells.h"
#include "geometry/passage/certify.h"
#include "geometry/passage/region_bound.h"

namespace geometry::passage {
namespace {

// From a cell that the ball has reached into one that it has not, through (part of) the side they share.
struct Door {
  // Its rank: doors are tried from the widest down. Once it has been looked at: no ball of larger radius fits
  // through. Before: the level or more, so that no door that still counts is ranked below one that is
  // narrower.
  double most;
  CellIndex from, to;  // to < 0: outside, through side -1 - to of the cell
  // Which part of the shared side: 0, not looked at yet; 1, all of it; then two bits for each halving, first
  // whether along u, then which half.
  std::uint64_t part;
  bool along_u;  // the way to halve it next
  float u, v;    // where on it the most room may be
};

struct Narrower {
  bool operator()(const Door& a, const Door& b) const {
    if (a.most != b.most) return a.most < b.most;
    if (a.from != b.from) return a.from < b.from;
    if (a.to != b.to) return a.to < b.to;
    return a.part < b.part;
  }
};

// A point of the ball's ways: where it came into a cell, from where, and how much room there is.
struct Step {
  Vec3 point;
  std::int32_t before;
  double room;
};

class Flood {
 public:
  Flood(const Scene& scene, const FloodQuestion& question)
      : scene_(scene),
        question_(question),
        cells_(scene, question.within, question.cap),
        level_(question.cap) {}

  FloodResult run();

 private:
  [[nodiscard]] double slack() const { return std::max(question_.slack, question_.relative_slack * level_); }
  // The ball that is led on may be smaller than the level by half the slack where it goes from cell to cell,
  // and by all of it in between; so in cells of the slack's size no straight line fails.
  [[nodiscard]] double wanted_at_door() const { return level_ - 0.5 * slack(); }
  [[nodiscard]] double wanted_between() const { return level_ - slack(); }
  [[nodiscard]] std::int64_t work() const { return cells_.count() + halvings_; }
  [[nodiscard]] bool reached(CellIndex cell) const { return entry_[cell] >= 0; }
  [[nodiscard]] bool counts(const Door& door) const;
  [[nodiscard]] const Step& entry(CellIndex cell) const {
    return steps_[static_cast<std::size_t>(entry_[cell])];
  }
  [[nodiscard]] double room_in(CellIndex cell, Vec3 place) const;
  [[nodiscard]] Rectangle side(CellIndex cell, int side) const;
  [[nodiscard]] Rectangle rectangle(const Door& door) const;

  void look_round(CellIndex cell);
  [[nodiscard]] std::optional<Obstruction> obstructed_corner(CellIndex cell) const;
  void look_at(const Door& door);
  void rank(Door door);
  void try_door(const Door& door);
  [[nodiscard]] std::optional<Obstruction> pass(const Door& door, Vec3 place);
  void split(CellIndex cell, Vec3 across);
  [[nodiscard]] std::vector<Vec3> path() const;

  const Scene& scene_;
  const FloodQuestion& question_;
  Cells cells_;
  double level_;       // proven: no ball of larger radius gets out
  double dammed_ = 0;  // the widest of the doors that were left out as too narrow
  std::int64_t halvings_ = 0;
  bool outside_ = false;                 // the last step is there
  std::vector<std::int32_t> entry_{-1};  // of each cell: its first step, or -1
  std::vector<char> looked_{0};          // of each cell: whether its doors are in the queue
  std::vector<Step> steps_;
  std::priority_queue<std::pair<double, CellIndex>> arrivals_;  // reached and not looked round in, by room
  std::priority_queue<Door, std::vector<Door>, Narrower> doors_;
  std::vector<CellIndex> neighbours_;  // scratch
};

// Doors of cells that have been split since are replaced by their children's.
bool Flood::counts(const Door& door) const {
  return cells_.is_leaf(door.from) && (door.to < 0 || (cells_.is_leaf(door.to) && !reached(door.to)));
}

double Flood::room_in(CellIndex cell, Vec3 place) const {
  double room = INFINITY;
  for (const std::uint32_t b : cells_.barriers(cell)) room = std::min(room, scene_.value(b, place, room));
  return room;
}

Rectangle Flood::side(CellIndex cell, int side) const {
  const Box& box = cells_.box(cell);
  const int axis = side / 2, u = (axis + 1) % 3, v = (axis + 2) % 3;
  return {axis,
          component(side % 2 == 1 ? box.high : box.low, axis),
          component(box.low, u),
          component(box.high, u),
          component(box.low, v),
          component(box.high, v)};
}

Rectangle Flood::rectangle(const Door& door) const {
  Rectangle r;
  if (door.to < 0) {
    r = side(door.from, -1 - door.to);
  } else {
    const Box &a = cells_.box(door.from), &b = cells_.box(door.to);
    for (int axis = 0; axis < 3; ++axis) {
      const bool above = component(a.high, axis) == component(b.low, axis);
      if (!above && component(a.low, axis) != component(b.high, axis)) continue;
      r = side(door.from, 2 * axis + (above ? 1 : 0));
      const Rectangle other = side(door.to, 2 * axis + (above ? 0 : 1));
      r.low_u = std::max(r.low_u, other.low_u);
      r.high_u = std::min(r.high_u, other.high_u);
      r.low_v = std::max(r.low_v, other.low_v);
      r.high_v = std::min(r.high_v, other.high_v);
      if (r.low_u < r.high_u && r.low_v < r.high_v) break;  // else they only touch at an edge along this axis
    }
  }
  for (int bit = std::bit_width(door.part) - 3; bit >= 0; bit -= 2) {
    const bool along_u = (door.part >> (bit + 1) & 1) != 0, upper = (door.part >> bit & 1) != 0;
    double &low = along_u ? r.low_u : r.low_v, &high = along_u ? r.high_u : r.high_v;
    (upper ? low : high) = 0.5 * (low + high);
  }
  return r;
}

// A corner with room for the ball that no straight line leads to: a sure sign of a cell that has several
// rooms in it, and is too large to work with.
std::optional<Obstruction> Flood::obstructed_corner(CellIndex cell) const {
  const Box& box = cells_.box(cell);
  for (int c = 0; c < 8; ++c) {
    const Vec3 corner{c & 1 ? box.low.x : box.high.x, c & 2 ? box.low.y : box.high.y,
                      c & 4 ? box.low.z : box.high.z};
    if (room_in(cell, corner) < level_) continue;
    if (auto between =
            obstruction(scene_, cells_.barriers(cell), entry(cell).point, corner, wanted_between()))
      return between;
  }
  return std::nullopt;
}

void Flood::look_round(CellIndex cell) {
  if (const auto between = obstructed_corner(cell)) {
    split(cell, between->across);
    return;
  }
  looked_[cell] = 1;
  const double rank = std::max(level_, entry(cell).room);
  for (int s = 0; s < 6; ++s) {
    cells_.neighbours(cell, s, neighbours_);
    if (neighbours_.empty()) doors_.push({rank, cell, -1 - s, 0, true, 0, 0});
    for (const CellIndex other : neighbours_)
      if (!reached(other)) doors_.push({rank, cell, other, 0, true, 0, 0});
  }
}

// Goes straight on through the door's middle if there is room, else ranks it to come back to.
void Flood::look_at(const Door& door) {
  const Door whole{INFINITY, door.from, door.to, 1, true, 0, 0};
  const Vec3 middle = rectangle(whole).middle();
  const double room = room_in(door.from, middle);
  if (room >= wanted_at_door()) {
    const auto between = pass(whole, middle);
    if (!between) return;
    if (room >= level_) {
      split(door.from, between->across);
      return;
    }
  }
  rank(whole);
}

void Flood::rank(Door door) {
  const Rectangle r = rectangle(door);
  // Either cell's barriers will do: the door is part of both.
  auto barriers = cells_.barriers(door.from);
  if (door.to >= 0 && cells_.barriers(door.to).size() < barriers.size()) barriers = cells_.barriers(door.to);
  const Bound bound = bound_room(scene_, barriers, r, level_, question_.threshold);
  door.most = std::min(door.most, bound.most);
  if (door.most < question_.threshold) {
    dammed_ = std::max(dammed_, door.most);
    return;
  }
  door.along_u = bound.along_u;
  door.u = static_cast<float>(component(bound.place, (r.axis + 1) % 3));
  door.v = static_cast<float>(component(bound.place, (r.axis + 2) % 3));
  doors_.push(door);
}

void Flood::try_door(const Door& door) {
  const Rectangle r = rectangle(door);
  Vec3 place =
      r.at(std::clamp<double>(door.u, r.low_u, r.high_u), std::clamp<double>(door.v, r.low_v, r.high_v));
  if (climb(scene_, cells_.barriers(door.from), r, wanted_at_door(), place) >= wanted_at_door()) {
    if (const auto between = pass(door, place)) split(door.from, between->across);
    return;
  }
  constexpr int most_bits = 61;
  if (std::bit_width(door.part) > most_bits) {  // smaller cells start afresh
    Vec3 across;
    component(across, (r.axis + (r.high_u - r.low_u >= r.high_v - r.low_v ? 1 : 2)) % 3) = 1;
    split(door.from, across);
    return;
  }
  ++halvings_;
  for (const std::uint64_t half : {0, 1})
    rank({door.most, door.from, door.to, door.part << 2 | (door.along_u ? 2u : 0u) | half, true, 0, 0});
}

// Leads the ball to `place` on the door, if that can be proven; else says what may be in the way.
std::optional<Obstruction> Flood::pass(const Door& door, Vec3 place) {
  if (auto between =
          obstruction(scene_, cells_.barriers(door.from), entry(door.from).point, place, wanted_between()))
    return between;
  const auto step = static_cast<std::int32_t>(steps_.size());
  steps_.push_back({place, entry_[door.from], INFINITY});
  if (door.to < 0) {
    outside_ = true;
  } else {
    entry_[door.to] = step;
    steps_.back().room = room_in(door.to, place);
    arrivals_.push({steps_.back().room, door.to});
  }
  return std::nullopt;
}

// The ball's ways through the cell stay; only the child that holds the entry counts as reached.
void Flood::split(CellIndex cell, Vec3 across) {
  const CellIndex low = cells_.split(cell, level_, across);
  entry_.resize(static_cast<std::size_t>(cells_.count()), -1);
  looked_.resize(static_cast<std::size_t>(cells_.count()), 0);
  const Box &low_box = cells_.box(low), &high_box = cells_.box(low + 1);
  int axis = 0;
  while (component(low_box.high, axis) != component(high_box.low, axis)) ++axis;
  const bool in_low = component(entry(cell).point, axis) <= component(low_box.high, axis);
  const CellIndex inner = in_low ? low : low + 1, outer = in_low ? low + 1 : low;
  entry_[inner] = entry_[cell];
  arrivals_.push({entry(inner).room, inner});
  // Cells round the other child that have been looked round in have no door to it yet.
  for (int s = 0; s < 6; ++s) {
    cells_.neighbours(outer, s, neighbours_);
    for (const CellIndex other : neighbours_)
      if (looked_[other] != 0)
        doors_.push({std::max(level_, entry(other).room), other, outer, 0, true, 0, 0});
  }
}

std::vector<Vec3> Flood::path() const {
  std::vector<Vec3> points;
  for (auto s = static_cast<std::int32_t>(steps_.size()) - 1; s >= 0;
       s = steps_[static_cast<std::size_t>(s)].before)
    points.push_back(steps_[static_cast<std::size_t>(s)].point);
  std::reverse(points.begin(), points.end());
  return points;
}

FloodResult Flood::run() {
  steps_.push_back({question_.start, -1, level_});
  entry_[0] = 0;
  arrivals_.push({level_, 0});
  while (!outside_) {
    if (work() >= question_.work_limit) return {FloodResult::End::out_of_work, level_, {}, work()};
    if (!arrivals_.empty()) {
      const CellIndex cell = arrivals_.top().second;
      arrivals_.pop();
      if (cells_.is_leaf(cell)) look_round(cell);
    } else if (!doors_.empty()) {
      const Door door = doors_.top();
      doors_.pop();
      if (!counts(door)) continue;
      // Every way out goes through one of the doors that count, and none of them lets a larger ball pass.
      level_ = std::min(level_, door.most);
      if (door.part == 0)
        look_at(door);
      else
        try_door(door);
    } else {
      return {FloodResult::End::dammed, std::min(dammed_, level_), {}, work()};
    }
  }
  return {FloodResult::End::outside, level_, path(), work()};
}

}  // namespace

FloodResult flood(const Scene& scene, const FloodQuestion& question) { return Flood(scene, question).run(); }

}  // namespace geometry::passage
