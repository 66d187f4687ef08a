// Bodies that are almost the same piece of wood, and how narrow a piece gets.
#pragma once

#include <optional>

#include "geometry/body.h"

namespace geometry {

// How far apart the two are as pieces to be cut, turned over or end for end as fits best: the greatest distance between
// corners, sizes or cuts that answer each other. Nothing when it is more than `most`, or when one has a cut, a hole or a
// corner more than the other.
[[nodiscard]] std::optional<Length> unlikeness(const Body& a, const Body& b, Length most);

// The narrowest place of an outline between two edges that run side by side with wood between them (within 15 degrees of
// parallel) for at least as long as they are apart there.
struct Narrow {
  Length width;
  Vec2 place;  // in its middle
};
[[nodiscard]] std::optional<Narrow> narrowest(const Outline& outline);

}  // namespace geometry
