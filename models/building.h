// The building: every part with its body, mark and place, the assembly tree, and what moves.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/body.h"
#include "geometry/convex.h"
#include "geometry/solid.h"
#include "models/design.h"

namespace models {

using geometry::Body;
using geometry::Placement;
using geometry::Vec3;

enum class Group { frame, roof, cover, cladding, door, nest, roost, hardware, mesh, floor, run, extra };
[[nodiscard]] std::string_view name(Group group);

// What a part is cut from: lumber or a sheet of the design's stock. The part's own section is its body's:
// where it is less than the stock's, the part is ripped.
struct Material {
  enum class Form { stick, sheet, mesh, other };
  std::string stock;  // "2x2", "1/2 plywood"
  Form form = Form::stick;
  Length opening = {};  // mesh: clear between wires
  // As it is sold: a stick's section; a whole sheet, its length along the grain; a roll.
  Length thickness = {}, width = {}, length = {};
  bool operator==(const Material&) const = default;
};

[[nodiscard]] std::string_view name(Material::Form form);

// One shape of part. All parts with this mark are congruent and share its body and solid.
struct Mark {
  std::string label;  // short, unique: "F3"
  Material material;
  Group group = Group::frame;  // of its first part
  std::string name;            // of its first part
  Body body;              // local: x along the grain from 0, y across from 0, z through the thickness from 0
  geometry::Solid solid;  // of body
  std::vector<geometry::ConvexPiece> pieces;  // of body
  int count = 0;                              // how many parts carry it
};

struct Part {
  std::size_t mark = 0;  // index into Building::marks
  std::string name;      // "top rail"
  Group group = Group::frame;
  std::optional<Side> wall;
  Placement placement;  // from the mark's coordinates to the house's
};

// A node of the tree house / wall / part. Names are unique among siblings.
struct Assembly {
  std::string name;
  std::vector<Assembly> assemblies;
  std::vector<std::size_t> parts;  // indices into Building::parts
};

// A leaf that moves: closed as its parts are placed.
struct Mover {
  std::string name;  // the opening's: "front door"
  DoorKind kind = DoorKind::hinged;
  OpeningKind closes = OpeningKind::door;
  Side wall = Side::front;
  int line = 0;                    // of the opening, in the design file
  std::vector<std::size_t> parts;  // of the leaf
  std::vector<std::size_t>
      ignored;          // parts that touch the leaf by design (guides), left out of its clearance
  geometry::Axis axis;  // hinged: turns from 0 to `opens`, right-handed about this
  Angle opens;
  Vec3 travel;    // sliding: moves by up to this
  Length reveal;  // asked
};

// A nest box that stands on its ledges by its weight alone.
struct LooseBox {
  int number = 0;  // from the wall's left, from 1
  std::vector<std::size_t> parts;
};

// A flat frame that gets a sheet of its own: a wall, the truss, a leaf. `plane` takes sheet coordinates (x
// right, y up as one faces it from outside, z towards the viewer) to the house's; its origin is the frame's
// lower left.
struct FrameView {
  std::string name;  // "front wall frame"
  std::string kind;  // "wall", "truss", "leaf"
  Placement plane;
  Length width, height;            // overall
  std::vector<std::size_t> parts;  // members, in marking order
  struct Hole {
    std::string name;
    geometry::Vec2 low, high;  // clear opening, in the plane
  };
  std::vector<Hole> openings;
};

struct Building {
  std::vector<Mark> marks;
  std::vector<Part> parts;
  Assembly tree;  // root: the whole
  std::vector<Mover> movers;
  std::vector<LooseBox> loose_boxes;
  std::vector<FrameView> frames;
  double ground = 0;  // z of the ground, mm: below 0 when the house stands clear of it

  [[nodiscard]] const Mark& mark_of(std::size_t part) const { return marks[parts[part].mark]; }
};

// Builds every part. The design must have come from read_design() without problems.
[[nodiscard]] Building build(const Design& design);

}  // namespace models
