// The largest ball that can travel from far outside to a given place among obstacles, with proven bounds:
// what a predator's body, or the gap that it can squeeze through, is compared with. docs/passage.md has the
// method and the proof.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "geometry/convex.h"

namespace geometry {

// One convex piece that a ball may not enter.
struct Obstacle {
  ConvexPiece piece;
  std::size_t part = 0;      // named in the result
  std::size_t assembly = 0;  // parts that stand together; ways are grouped by it
  // Of a sheet of wire mesh: balls up to this diameter pass through it anywhere, larger ones nowhere.
  std::optional<Length> opening;
};

struct PassageQuestion {
  Box inside;                   // the ball has to reach the roomiest place in it; a single point will do
  Box within;                   // a ball whose centre leaves this box, or a turned one round it, is outside
  Length floor = mm(6);         // ways narrower than this are of no interest
  Length tolerance = mm(0.05);  // asked width of the interval for each diameter
  int most_ways = 5;
  // The most work in any one search: cells made and sides of cells halved. A hundred bytes each.
  std::int64_t work_limit = 1'000'000;
};

enum class Certainty {
  proven,    // the interval holds the true diameter and is as narrow as asked
  found,     // the interval holds the true diameter, but the work ran out before it was as narrow as asked
  undecided  // no ball above `upper` passes; the work ran out before it was known whether a smaller one does
};

struct Way {
  Certainty certainty = Certainty::undecided;
  // The largest ball's diameter lies between these. A ball of `lower` has been led along `path` from the
  // inside to the outside; that none above `upper` passes is proven. Undecided: `lower` is 0.
  Length lower, upper;
  // The answer is limited by the room at the place inside, not by what surrounds it: a larger ball might
  // pass, but it has no place there.
  bool limited_by_start = false;
  Vec3 place;                      // where the ball is held
  std::vector<std::size_t> parts;  // by what, ascending
  std::vector<Vec3> path;          // of the ball's centre, from the inside outwards
};

enum class WaysEnd {
  none_left,   // with the ways listed closed, no ball of `remaining` or more passes: proven
  most_ways,   // as many as asked were found; there may be more
  undecided,   // the last way listed is undecided, so what else there is remains open
  unclosable,  // the last way could not be closed without burying the place inside
  no_room      // a ball of the floor's size has no room at the place inside
};

struct Passages {
  // From the widest down: each is the widest once those before it are closed. Closing a way closes with it
  // all gaps up to the same width between the same assemblies (or within the one assembly it passes through),
  // so that a reveal that runs round a door counts once; a way through mesh closes all mesh of that assembly.
  std::vector<Way> ways;
  WaysEnd end = WaysEnd::undecided;
  Length remaining;       // see none_left
  std::int64_t work = 0;  // all searches together
};

// There has to be at least one obstacle, and `inside` within `within`.
[[nodiscard]] Passages find_passages(std::span<const Obstacle> obstacles, const PassageQuestion& question);

}  // namespace geometry
