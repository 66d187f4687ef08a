// What the makers of a leaf, its guides and its hardware share.
#pragma once

#include <string>
#include <vector>

#include "models/leaf.h"

namespace models {

struct LeafContext {
  Assembler& assembler;
  const Design& design;
  const Wall& wall;
  const Opening& opening;
  Placement plane;                // of the wall
  LeafSize leaf;                  // closed
  std::vector<std::string> path;  // of the leaf's assembly

  // z in wall coordinates, mm: of the wall's cladding, and of the leaf's outer face.
  [[nodiscard]] double cladding_face() const { return wall.cladding.thickness().mm(); }
  [[nodiscard]] double outer_face() const;
};

[[nodiscard]] double leaf_thickness(const Door& door);

// A stick in the wall's plane, as deep through the wall as `depth`, its outer face at z = face.
std::size_t add_leaf_stick(const LeafContext& c, const std::string& name, const Lumber& lumber,
                           geometry::Vec2 low, geometry::Vec2 high, double depth, double face, Group group,
                           const std::vector<std::string>& path);

// What a sliding leaf runs between. Returns the part that it stands on.
std::size_t add_guides(const LeafContext& c);

// Hinge plates of a hinged leaf, its pin along `axis`, and the bolt at its free edge. What is screwed to the leaf goes to
// `mover.parts`; what is screwed to the wall beside, to `mover.ignored`.
void add_hardware(const LeafContext& c, Mover& mover);

// The plank that birds walk up to their door.
void add_ramp(const LeafContext& c);

}  // namespace models
