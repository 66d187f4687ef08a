// A frame as one sees it: its edges projected into the frame's plane, and which of them nearer members hide.
// Exact for plane-faced parts; bores and rounded edges are left out.
#pragma once

#include <optional>
#include <vector>

#include "models/building.h"

namespace exporters {

using geometry::Vec2;
using geometry::Vec3;

struct Line {
  Vec2 a, b;
};

// A convex piece as something that hides what lies behind it.
struct Screen {
  geometry::Polygon shadow;                        // in the view's plane, counter-clockwise
  std::vector<geometry::ConvexPiece::Face> front;  // the faces that look at the viewer
  geometry::Box box;
};

// A part as it stands in the view: x right, y up, z towards the viewer, in millimetres of the thing itself.
struct SceneMember {
  std::size_t part = 0;           // index into Building::parts
  geometry::Placement placement;  // from the mark's coordinates to the view's
  std::vector<geometry::ConvexPiece> pieces;
  std::vector<Screen> screens;  // of the pieces
  std::vector<std::pair<Vec3, Vec3>> edges;
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

// The edges of a body, in its own coordinates: of its outline on both faces, across the thickness at its
// corners, and where bevels cut it.
[[nodiscard]] std::vector<std::pair<Vec3, Vec3>> edges(const geometry::Body& body,
                                                       const std::vector<geometry::ConvexPiece>& pieces);

}  // namespace exporters
