// A frame as one sees it: its edges projected into the frame's plane, and which of them nearer members hide.
// See
// geometry/hidden_lines.h for what is exact.
#pragma once

#include <optional>
#include <vector>

#include "geometry/hidden_lines.h"
#include "models/building.h"

namespace exporters {

using geometry::Vec2;
using geometry::Vec3;

struct Line {
  Vec2 a, b;
};

// A part as it stands in the view: x right, y up, z towards the viewer, in millimetres of the thing itself.
struct SceneMember {
  std::size_t part = 0;                       // index into Building::parts
  geometry::Placement placement;              // from the mark's coordinates to the view's
  geometry::DrawnBody body;                   // in the mark's coordinates
  std::vector<geometry::ConvexPiece> pieces;  // of the body, in the view
  geometry::Box box;
};
using Scene = std::vector<SceneMember>;

[[nodiscard]] Scene scene(const models::Building& building, const models::FrameView& frame);

// Straight lines, each drawn once: collinear ones that overlap are joined, and a hidden line stops where it
// runs behind a visible one.
struct Linework {
  std::vector<Line> visible, hidden;
};
[[nodiscard]] Linework linework(const Scene& scene);

// The member (index into the scene) that is nearest to the viewer at a point of the plane.
[[nodiscard]] std::optional<std::size_t> front_member(const Scene& scene, Vec2 point);

}  // namespace exporters
