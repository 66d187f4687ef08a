// The table of checks: each a rule that the building is held against.
#pragma once

#include <string_view>
#include <vector>

#include "models/building.h"
#include "models/finding.h"
#include "models/scene.h"

namespace models {

// What a check looks at.
struct Subject {
  const Design& design;
  const Building& building;
  const Scene& scene;
};

// One row. `find` fills in everything of a finding but its rule, and its source where it differs from the row's.
struct Check {
  std::string_view rule;
  std::string_view asks;
  std::string_view source;
  std::vector<Finding> (*find)(const Subject& subject);
};
[[nodiscard]] const std::vector<Check>& checks();

// Every check's findings, in the order of the table.
[[nodiscard]] std::vector<Finding> check(const Design& design, const Building& building);

// The checks' own functions.
[[nodiscard]] std::vector<Finding> find_overlaps(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_narrow_reveals(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_blocked_swings(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_blocked_slides(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_sliders_off_wall(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_obstructed_openings(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_unsupported(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_gaps(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_slivers(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_near_twins(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_out_of_reach(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_eggs_inside(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_stuck_boxes(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_low_headroom(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_roosts_out_of_order(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_low_sills(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_leaves_that_rack(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_ways_in(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_crowded_floor(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_crowded_run(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_short_nests(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_short_roosts(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_stale_air(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_small_bird_doors(const Subject& subject);
[[nodiscard]] std::vector<Finding> find_thin_litter(const Subject& subject);

// "post F3": how findings speak of a part.
[[nodiscard]] std::string called(const Building& building, std::size_t part);
// A length as the design's reader wants it.
[[nodiscard]] std::string printed(const Design& design, Length length);
// Square metres to a hundredth or square feet to a tenth.
[[nodiscard]] std::string printed(const Design& design, geometry::Area area);
// Cubic centimetres to a tenth or cubic inches to a hundredth.
[[nodiscard]] std::string printed(const Design& design, geometry::Volume volume);
// A small gap or depth, finer than carpentry's sixteenths: millimetres to a tenth, or inches to a hundredth.
[[nodiscard]] std::string printed_fine(const Design& design, Length length);

}  // namespace models
