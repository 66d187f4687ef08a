#include "geometry/passage/flood.h"

#include <algorithm>
#include <bit>

namespace geometry::passage {

Flood::Flood(const Scene& scene, Vec3 start, const Box& within, double cap, double floor)
    : scene_(scene),
      floor_(floor),
      cells_(scene, within, cap),
      level_(cap),
      entry_{0},
      looked_{0},
      steps_{{start, -1, cap, cap}} {
  arrivals_.push({cap, 0});
}

void Flood::push(const Door& door) {
  doors_.push_back(door);
  std::push_heap(doors_.begin(), doors_.end(), Narrower());
}

Door Flood::pop() {
  std::pop_heap(doors_.begin(), doors_.end(), Narrower());
  const Door door = doors_.back();
  doors_.pop_back();
  return door;
}

// Doors of cells that have been split since are replaced by their children's.
bool Flood::counts(const Door& door) const {
  return reached(door.from) && cells_.is_leaf(door.from) &&
         (door.to < 0 || (cells_.is_leaf(door.to) && !reached(door.to)));
}

double Flood::room_in(CellIndex cell, Vec3 place) const {
  double room = INFINITY;
  for (const std::uint32_t b : cells_.barriers(cell)) room = std::min(room, scene_.value(b, place, room));
  return room;
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
    if (neighbours_.empty()) push(unseen_door(rank, cell, -1 - s));
    for (const CellIndex other : neighbours_)
      if (!reached(other)) push(unseen_door(rank, cell, other));
  }
}

// Goes straight on through the door's middle if there is room, else ranks it to come back to.
void Flood::look_at(const Door& door) {
  const Door whole{INFINITY, door.from, door.to, 1, true, 0, 0};
  const Vec3 middle = rectangle(cells_, whole).middle();
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
  const Rectangle r = rectangle(cells_, door);
  // Either cell's barriers will do: the door is part of both.
  auto barriers = cells_.barriers(door.from);
  if (door.to >= 0 && cells_.barriers(door.to).size() < barriers.size()) barriers = cells_.barriers(door.to);
  const Bound bound = bound_room(scene_, barriers, r, level_, question_.threshold);
  door.most = std::min(door.most, bound.most);
  if (door.most < floor_) {
    dammed_ = std::max(dammed_, door.most);
    return;
  }
  door.along_u = bound.along_u;
  door.u = static_cast<float>(component(bound.place, (r.axis + 1) % 3));
  door.v = static_cast<float>(component(bound.place, (r.axis + 2) % 3));
  push(door);
}

void Flood::try_door(const Door& door) {
  const Rectangle r = rectangle(cells_, door);
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
  steps_.push_back({place, entry_[door.from], INFINITY, std::min(entry(door.from).proven, wanted_between())});
  if (door.to < 0) {
    way_out_ = door;
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
  add_unseen_doors_to(outer);
}

// From all cells round it that have been looked round in before.
void Flood::add_unseen_doors_to(CellIndex cell) {
  for (int s = 0; s < 6; ++s) {
    cells_.neighbours(cell, s, neighbours_);
    for (const CellIndex other : neighbours_)
      if (looked_[other] != 0) push(unseen_door(std::max(level_, entry(other).room), other, cell));
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

FloodResult Flood::search(const FloodQuestion& question) {
  question_ = question;
  level_ = std::min(level_, question.cap);
  keep_to(wanted_between());
  const std::int64_t before = work();
  const auto result = [&](FloodResult::End end, double level) {
    return FloodResult{end, level, {}, work() - before};
  };
  while (!way_out_) {
    if (work() - before >= question_.work_limit) return result(FloodResult::End::out_of_work, level_);
    if (!arrivals_.empty()) {
      const CellIndex cell = arrivals_.top().second;
      arrivals_.pop();
      if (cells_.is_leaf(cell) && reached(cell) && looked_[cell] == 0) look_round(cell);
      continue;
    }
    if (doors_.empty() || doors_.front().most < question_.threshold) {
      const double widest = doors_.empty() ? dammed_ : std::max(dammed_, doors_.front().most);
      return result(FloodResult::End::dammed, std::min(widest, level_));
    }
    const Door door = pop();
    if (!counts(door)) continue;
    // Every way out goes through one of the doors that count, and none of them lets a larger ball pass.
    level_ = std::min(level_, door.most);
    if (door.part == 0)
      look_at(door);
    else
      try_door(door);
  }
  FloodResult outside = result(FloodResult::End::outside, level_);
  outside.path = path();
  return outside;
}

}  // namespace geometry::passage
