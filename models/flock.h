// What a flock asks of its house and run, and what a building gives it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "models/building.h"
#include "models/scene.h"

namespace models {

// Two figures for one thing: the published minimum, and what is advised beyond it.
struct Yardstick {
  double least = 0;  // mm2, mm or a count, as the place that it stands in says
  std::string_view source;
  double better = 0;
  std::string_view better_source;
};

struct FlockNeeds {
  // For each bird.
  Yardstick floor;  // mm2
  Yardstick run;    // mm2
  Yardstick roost;  // mm of bar
  Yardstick air;    // mm2 of free opening; its `better` is a share of the floor: air_of_floor
  // For all.
  Yardstick birds_to_a_nest;   // at most
  Yardstick nest_side;         // mm, of a box's width and depth
  Yardstick nest_height;       // mm
  Yardstick bar_spacing;       // mm, centre to centre
  Yardstick bar_to_wall;       // mm, from a bar's centre to the inside of the frame
  Yardstick bird_door_width;   // mm
  Yardstick bird_door_height;  // mm
  Yardstick litter;            // mm; advice alone
};
// Figures that are published in inches are taken at 25 mm to the inch for a design in millimetres, as its boards are.
[[nodiscard]] FlockNeeds flock_needs(BodySize size, Climate climate, Units units);
[[nodiscard]] FlockNeeds flock_needs(const Design& design);

// Free opening for each unit of floor: a tenth; common practice.
inline constexpr double air_of_floor = 0.1;

[[nodiscard]] inline int all_birds(const Flock& flock) { return flock.birds + flock.planned; }

// How many boxes that many birds ask for, by one of the two figures.
[[nodiscard]] int boxes_for(int birds, double birds_to_a_nest);

// What is there, measured from the bodies. The design has a house.

// Between the walls' frames, less what leaves a bird less than 45 cm of headroom (Council Directive 1999/74/EC, Art. 2).
[[nodiscard]] geometry::Area floor_given(const Building& building, const Scene& scene);
// Inside the run's posts, with the area of the run that it joins.
[[nodiscard]] geometry::Area run_given(const Design& design, const Building& building, const Scene& scene);

struct NestsGiven {
  int boxes = 0;
  Length width, depth, height;  // clear, of the narrowest box
};
[[nodiscard]] NestsGiven nests_given(const Building& building, const Scene& scene, const Design& design);

struct RoostsGiven {
  int bars = 0;
  Length length;                  // of all bars together
  std::optional<Length> spacing;  // least, level, centre to centre; none with one bar
  Length to_wall;                 // least
};
[[nodiscard]] RoostsGiven roosts_given(const Building& building, const Scene& scene, const Design& design);

struct AirGiven {
  geometry::Area mesh;  // openings behind mesh, times the share of the mesh that is not wire
  geometry::Area gaps;  // between the boards of the walls
  [[nodiscard]] double mm2() const { return mesh.mm2 + gaps.mm2; }
};
[[nodiscard]] AirGiven air_given(const Design& design, const Building& building, const Scene& scene);
// The share of a mesh that is not wire.
[[nodiscard]] double free_share(Length opening, Length wire);

// The birds' own doors, or where there are none the keeper's: the one least wide or least high for a bird.
struct BirdDoorGiven {
  const Opening* opening = nullptr;  // of the design
  Side wall = Side::front;
};
[[nodiscard]] std::vector<BirdDoorGiven> bird_doors_given(const Design& design);

// One thing that the whole flock asks for, and what it gets.
struct FlockLine {
  enum class Unit { area, length, count };  // mm2, mm, pieces
  std::string_view rule;                    // of the check that speaks of it
  std::string_view what;                    // "floor"
  Unit unit = Unit::area;
  double least = 0, better = 0, given = 0;
  std::string_view source, better_source;
};
// Nothing for a design without house or birds.
[[nodiscard]] std::vector<FlockLine> flock_lines(const Design& design, const Building& building,
                                                 const Scene& scene);

}  // namespace models
