// A flood from the inside point that always goes on where the most room may be, until it gets outside or is
// dammed up. It can be gone on with: more sharply, or after the way that it found has been closed.
#pragma once

#include <cstdint>
#include <optional>
#include <queue>
#include <span>
#include <vector>

#include "geometry/passage/barrier.h"
#include "geometry/passage/certify.h"
#include "geometry/passage/door.h"

namespace geometry::passage {

// All of these are radii of balls (mm).
struct FloodQuestion {
  double cap = 0;        // proven already: no larger ball gets out; at most the room at the start
  double threshold = 0;  // smaller balls are of no interest
  double slack = 0;  // how much smaller than the bound the ball may be that is led outside: at least this,
  double relative_slack = 0;  // or this part of the bound if that is more
  std::int64_t work_limit = 0;
};

struct FloodResult {
  enum class End { outside, dammed, out_of_work } end = End::out_of_work;
  // Outside, or out of work: no ball of a larger radius gets out. Dammed: nor does one of just this.
  double level = 0;
  std::vector<Vec3> path;  // outside: from the start to the region's surface, with room >= level - slack
  std::int64_t work = 0;   // cells made and sides halved
};

class Flood {
 public:
  // The scene must outlive it and may change only as `close` is told. No ball larger than `cap` has room at the
  // start, and none smaller than `floor` will ever be of interest.
  Flood(const Scene& scene, Vec3 start, const Box& within, double cap, double floor);

  // Goes on from where the last search ended.
  [[nodiscard]] FloodResult search(const FloodQuestion& question);
  // These barriers are new, or have grown.
  void close(std::span<const std::uint32_t> barriers);
  // Cells made and sides halved in all searches: what is kept in memory goes with it.
  [[nodiscard]] std::int64_t work() const { return cells_.count() + halvings_; }

 private:
  // A point of the ball's ways: where it came into a cell, from where, how much room there is, and how large
  // a ball is proven to get there from the start.
  struct Step {
    Vec3 point;
    std::int32_t before;
    double room;
    double proven;
  };

  [[nodiscard]] double slack() const { return std::max(question_.slack, question_.relative_slack * level_); }
  // The ball that is led on may be smaller than the level by half the slack where it goes from cell to cell,
  // and by all of it in between; so in cells of the slack's size no straight line fails.
  [[nodiscard]] double wanted_at_door() const { return level_ - 0.5 * slack(); }
  [[nodiscard]] double wanted_between() const { return level_ - slack(); }
  [[nodiscard]] bool reached(CellIndex cell) const { return entry_[cell] >= 0; }
  [[nodiscard]] bool counts(const Door& door) const;
  [[nodiscard]] const Step& entry(CellIndex cell) const {
    return steps_[static_cast<std::size_t>(entry_[cell])];
  }
  [[nodiscard]] double room_in(CellIndex cell, Vec3 place) const;

  void look_round(CellIndex cell);
  [[nodiscard]] std::optional<Obstruction> obstructed_corner(CellIndex cell) const;
  void look_at(const Door& door);
  void rank(Door door);
  void try_door(const Door& door);
  [[nodiscard]] std::optional<Obstruction> pass(const Door& door, Vec3 place);
  void split(CellIndex cell, Vec3 across);
  [[nodiscard]] std::vector<Vec3> path() const;
  void add_unseen_doors_to(CellIndex cell);
  void keep_to(double room);
  void push(const Door& door);
  [[nodiscard]] Door pop();

  const Scene& scene_;
  double floor_;
  FloodQuestion question_;
  Cells cells_;
  double level_;       // proven: no ball of larger radius gets out
  double dammed_ = 0;  // the widest of the doors that were left out as too narrow
  std::int64_t halvings_ = 0;
  std::optional<Door> way_out_;      // the last step went through this door to the outside
  std::vector<std::int32_t> entry_;  // of each cell: its first step, or -1
  std::vector<char> looked_;         // of each cell: whether its doors are in the queue
  std::vector<Step> steps_;          // each after the one it comes from
  std::priority_queue<std::pair<double, CellIndex>> arrivals_;  // reached and not looked round in, by room
  std::vector<Door> doors_;                                     // a heap, the widest on top
  std::vector<CellIndex> neighbours_;                           // scratch
};

}  // namespace geometry::passage
