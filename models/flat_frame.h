// A flat frame of sticks: rails at foot and head, posts between, and what openings need.
#pragma once

#include <string>
#include <vector>

#include "models/assembler.h"

namespace models {

// A stick of the frame before it is cut: a rectangle in the frame's plane.
struct Member {
  std::string name;
  bool upright = true;
  geometry::Vec2 low, high;
};

// A hole in the frame, clear size, in the frame's plane (mm).
struct FrameHole {
  geometry::Vec2 low, high;
};

// What a frame is made to, in its plane: x to the right, y up, the frame standing from y = 0 to y = top (mm).
struct FrameSpec {
  double from = 0, to = 0, top = 0;
  double width = 0;                 // of the sticks, in the plane
  double spacing = 0;               // greatest, of posts, centre to centre
  std::vector<FrameHole> holes;     // by their left edges, apart by a stick's width or more
  std::vector<double> extra_posts;  // left edges
  std::vector<double> extra_rails;  // lower edges; each runs between the posts that it meets
  double longest = 1e9;             // of a stick: longer rails are joined in the middle of posts
};

// The members, rails first, then posts from left to right, then what the holes need. Posts stand at both ends,
// beside every hole, and between, so that no two are farther apart than the spacing, centre to centre. The edge
// of a hole that lies on a rail or an end post needs no member of its own.
[[nodiscard]] std::vector<Member> frame_members(const FrameSpec& spec);

// Adds the members as parts of `lumber`, its width in the plane, outer faces at z = 0 of `plane`. Returns indices.
std::vector<std::size_t> add_members(Assembler& assembler, const std::vector<Member>& members,
                                     const Lumber& lumber, Group group, const Placement& plane,
                                     std::optional<Side> wall, const std::vector<std::string>& path);

}  // namespace models
