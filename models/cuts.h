// What a saw and a drill do to a rectangular blank to make a body of it: the numbers that templates, sheets
// and cut lists state. Pure geometry; nothing here knows what the part is for.
//
// Coordinates are the blank's: its lower left corner is the origin, x runs along the grain, y across. `near`
// is the long edge at y = 0, `far` the one at y = width. On the page the near edge lies at the bottom and the
// face at z = thickness looks at the reader.
#pragma once

#include <vector>

#include "geometry/body.h"

namespace models {

using geometry::Angle;
using geometry::Body;
using geometry::Length;
using geometry::Vec2;

enum class LongEdge { near, far };

// A straight stretch of the outline that is not part of a long edge of the blank.
struct CutEdge {
  Vec2 from, to;  // in the outline's order: counter-clockwise, the wood to the left
  Length length;
  Angle to_edge;  // between it and the long edges: 0 to 90 degrees
  // 90 degrees less to_edge: what a mitre saw's scale shows.
  [[nodiscard]] Angle from_square() const { return geometry::degrees(90) - to_edge; }
};

// A cut straight through the wood at an end.
struct SawCut {
  Angle mitre;  // on the face, out of square to the long edges; positive: the far edge is left longer
  Angle bevel;  // of the blade, out of square to the face; positive: the face at z = thickness is left longer
  Vec2 from, to;  // where it meets the face, in the outline's order; the blade's line across the blank when
                  // it comes from a bevel
};

struct End {
  std::vector<CutEdge>
      edges;  // of the outline, from one long edge to the other; empty where they meet in a point
  std::vector<SawCut> saw_cuts;  // in the outline's order; edges that no straight cut makes are left out
  bool notched = false;          // some edges are left out of saw_cuts: the end has a notch of its own
  [[nodiscard]] bool square() const;
};

// An opening from one of the long edges.
struct Notch {
  LongEdge edge = LongEdge::near;
  Length left, right;  // where it opens, along the edge from the blank's left end
  Length depth;        // deepest point, square to the edge
  std::vector<CutEdge> edges;
  // Where two of the edges meet: along the edge from the left end (x) and square to the edge (y).
  [[nodiscard]] std::vector<Vec2> corners(Length width) const;
};

// A long edge sawn out of square to the face along the grain.
struct Rip {
  LongEdge edge = LongEdge::near;
  Angle bevel;  // positive: the face at z = thickness is left wider
};

struct Cuts {
  Length length, width, thickness;  // of the blank; the length is to the long points
  Length near_edge, far_edge;  // from end to end along each long edge of the outline, notches included; 0
                               // when the outline only touches it
  Length short_point;          // the shortest of the four long arrises, after the bevels
  End left, right;
  std::vector<Notch> notches;  // near edge first, each from left to right
  std::vector<Rip> rips;
  std::vector<geometry::Polygon> cutouts;  // holes of the outline
  std::vector<geometry::Bore> bores;
  bool rounded = false;

  // A rectangle that two square cuts make: it needs no template.
  [[nodiscard]] bool plain() const;
};

[[nodiscard]] Cuts cuts(const Body& body);

}  // namespace models
