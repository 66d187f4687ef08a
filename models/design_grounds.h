// What a design says of the ground under and around the house: floor, base, apron, run; and of parts placed by hand.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geometry/placement.h"
#include "geometry/units.h"
#include "models/stock_kinds.h"

namespace models {

using geometry::Angle;
using geometry::Length;

// The floor stands on joists between bearers on legs; house and floor then stand clear of the ground. Without it the
// house stands on the ground and its floor is earth.
struct RaisedFloor {
  int line = 0;
  Length clear;  // from the ground to the underside of the bearers
  Lumber bearers, joists, legs;
  Length joist_spacing;          // greatest, centre to centre
  std::optional<Lumber> boards;  // deck: boards from front to back, or
  std::optional<Sheet> sheets;   // sheets; exactly one of the two is given
};

// What lies under the bottom rails.
enum class BaseKind { stone, blocks, skids };
struct Base {
  int line = 0;
  BaseKind kind = BaseKind::stone;
  Length ring_width, ring_depth;  // stone: the ring under the walls, loose
  Length block_length,
      block_height;  // blocks: under corners and between, level with the frame outside, 100 mm wider inside
  Lumber skids;      // skids: two, the long way of the house, running past it at both ends
};

// Wire mesh laid out flat from the foot of the walls, just under the ground, against digging.
struct Apron {
  int line = 0;
  Mesh mesh;
  Length depth;  // under the ground
  Length width;  // outwards from the wall
};

// A pen of framed mesh panels that joins one wall of the house.
struct RunPen {
  int line = 0;
  Side wall = Side::right;  // of the house; the run reaches out from it
  Length length;            // outwards from the wall's frame
  Length width;             // along the wall, centred on it
  Length height;            // to the top of the top rails
  Lumber framing;           // posts and rails
  Length post_spacing;      // greatest, centre to centre
  Mesh mesh;
  bool roof_mesh = true;     // mesh over the top, on cross rails
  Length door_width;         // of the door in the end panel; 0 for none
  double existing_area = 0;  // m2 of a run that stands already and that this one is joined to
};

// A stick placed by hand. Local axes as Body's: x along the length, y across the width, z through the thickness.
struct ExtraStick {
  int line = 0;
  std::string name;
  Lumber lumber;
  Length length;  // to the long points
  // Of each end, from square: mitre on the face (positive: the far edge, y = width, is left longer), bevel of the blade
  // (positive: the face at z = thickness is left longer).
  Angle left_mitre, left_bevel, right_mitre, right_bevel;
  geometry::Placement placement;
};
// A flat panel placed by hand: any outline of a sheet, or mesh.
struct ExtraPanel {
  int line = 0;
  std::string name;
  std::optional<Sheet> sheet;  // one of
  std::optional<Mesh> mesh;    // the two
  geometry::Outline outline;
  geometry::Placement placement;
};

}  // namespace models
