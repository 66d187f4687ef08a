// Where parts lie against each other, and the joints between them.
#pragma once

#include <vector>

#include "geometry/contact.h"
#include "models/building.h"
#include "models/scene.h"

namespace models {

// Two parts that face each other over a flat area, touching or with a narrow gap between.
struct Contact {
  std::size_t a = 0, b = 0;  // indices into Building::parts, a < b
  Length gap;                // no more than the tolerance of contact when they touch
  // On a's face, z towards b. The origin is the middle of the area's bounding rectangle of least size, x along its
  // longer side.
  Placement plane;
  Length length, width;     // of that rectangle
  geometry::Region region;  // the area itself, in the plane's x and y; all of its pieces
  geometry::Area area;
};

// All that two parts have to do with each other: what fasteners between them go through.
struct Joint {
  std::size_t a = 0, b = 0;  // a < b
  std::vector<Contact> contacts;
  geometry::Area area;  // of all of them
};

// Every pair of faces of different parts that face each other with at most `most_gap` mm between, by parts; within a
// pair, in a fixed order. The work grows as the number of parts.
[[nodiscard]] std::vector<Contact> contacts(const Building& building, const Scene& scene, double most_gap);

// Every pair of parts that touch over an area, in order. Closed leaves touch what they rest against.
[[nodiscard]] std::vector<Joint> joints(const Building& building, const Scene& scene);

// The flat faces of every part where it stands, by part index.
[[nodiscard]] std::vector<std::vector<geometry::FlatFace>> standing_faces(const Building& building);

}  // namespace models
