// A wall's frame: rails top and bottom, posts between them, and what each opening needs.
#pragma once

#include <vector>

#include "models/assembler.h"

namespace models {

// A stick of the frame before it is cut: a rectangle in the wall's plane.
struct Member {
  std::string name;
  bool upright = true;
  geometry::Vec2 low, high;
};

// The frame's members in wall coordinates (see wall_plane()), rails first, then posts from left to right.
// Posts stand at both ends, beside every opening, and between, so that no two are farther apart than the
// house's post spacing, centre to centre. An opening edge that lies on a rail or an end post needs no member
// of its own.
[[nodiscard]] std::vector<Member> frame_members(const Design& design, const Wall& wall);

// Adds the frame's parts and its view. Returns the parts' indices.
std::vector<std::size_t> add_wall_frame(Assembler& assembler, const Design& design, const Wall& wall);

}  // namespace models
