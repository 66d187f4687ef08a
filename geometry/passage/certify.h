// Proof that a ball can be led along a straight line.
#pragma once

#include <cstdint>
#include <optional>
#include <span>

#include "geometry/passage/barrier.h"

namespace geometry::passage {

struct Obstruction {
  std::uint32_t barrier;
  Vec3 across;  // its gradient where the segment comes too near
};
// The first barrier found that is not known to leave at least `room` at every point of the segment; none when
// all do. It also gives up, and names a barrier, when the proof would need steps of under a micrometre.
[[nodiscard]] std::optional<Obstruction> obstruction(const Scene& scene,
                                                     std::span<const std::uint32_t> barriers, Vec3 from,
                                                     Vec3 to, double room);

// A lower bound for the room along the segment, at most `accuracy` below its true least; `cap` when that is
// less.
[[nodiscard]] double least_room(const Scene& scene, std::span<const std::uint32_t> barriers, Vec3 from,
                                Vec3 to, double cap, double accuracy);

}  // namespace geometry::passage
