// What is seen of a scene from far away: which stretches of each part's edges no part hides. A parallel
// projection along any direction. Exact for plane-faced parts: each edge is held against each convex piece as a
// whole, nothing is sampled; arcs are as fine as DrawnBody has them. Where parts reach into each other, the line
// in which their surfaces meet is not drawn.
#pragma once

#include <vector>

#include "geometry/drawn_body.h"

namespace geometry {

// The picture's axes in the scene: x right, y up, z towards the viewer, who stands in the direction
// `towards_viewer` (any length but 0). Up in the picture is up in the scene; seen from straight above or below,
// it is the scene's y.
[[nodiscard]] Placement view_from(Vec3 towards_viewer);

struct ViewedPart {
  const DrawnBody* body = nullptr;
  Placement placement;  // from the body's coordinates to the scene's
  bool hides = true;    // false: what is behind it is seen through it, as through wire mesh
};

// In the picture's x and y, millimetres of the thing itself.
struct PictureLine {
  Vec2 a, b;
  std::size_t part = 0;  // whose edge it is: index into the parts
};

struct PictureLines {
  std::vector<PictureLine> visible, hidden;
};
// In the order of the parts and their edges. Lines of several parts may lie on one another. An edge between
// faces of two parts that lie flush is seen.
[[nodiscard]] PictureLines picture_lines(const std::vector<ViewedPart>& parts, const Placement& view);

// The same with every line drawn once: collinear stretches are joined, and where lines of several parts lie on
// one another the part with the lowest rank has it (and of those the first); `ranks` has one for each part. A
// hidden line gives way to a visible one. Parallel lines nearer to each other than `apart` count as one.
[[nodiscard]] PictureLines drawn_once(const PictureLines& lines, const std::vector<int>& ranks,
                                      double apart = 0);

}  // namespace geometry
