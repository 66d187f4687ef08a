#include "models/checks.h"

#include <charconv>
#include <cmath>

namespace models {

const std::vector<Check>& checks() {
  static const std::vector<Check> table{
      {"fit.overlap", "no two parts take up the same space", "geometry", find_overlaps},
      {"fit.reveal", "a closed leaf keeps its reveal from everything beside it", "common practice",
       find_narrow_reveals},
      {"motion.swing", "a hinged leaf turns through its whole range with half its reveal left everywhere",
       "common practice", find_blocked_swings},
      {"motion.slide", "a sliding leaf runs its whole travel with half its reveal left everywhere",
       "common practice", find_blocked_slides},
      {"slider.on-wall", "a sliding leaf and its guides stay within their wall", "common practice",
       find_sliders_off_wall},
      {"opening.free", "nothing stands in a door's opening or just behind it", "common practice",
       find_obstructed_openings},
      {"use.reach", "every nest and every corner of the floor can be reached to clean it", "common practice",
       find_out_of_reach},
      {"use.egg", "an egg is reached without stepping in", "common practice", find_eggs_inside},
      {"use.nest-out", "a nest box that stands loose can be drawn out to be cleaned", "common practice",
       find_stuck_boxes},
      {"use.headroom", "birds on the roosts have headroom", "Council Directive 1999/74/EC, Art. 2",
       find_low_headroom},
      {"use.roost-order", "roosts are above the nests' floor and not over the nests",
       "extension advice on nests and roosts, second-hand", find_roosts_out_of_order},
      {"use.sill", "a bird door's sill is above the litter", "common practice", find_low_sills},
      {"square.diagonals", "a leaf bears the racking that a workshop leaves in its opening",
       "common practice", find_leaves_that_rack},
      {"passage.way-in", "no animal finds a way into the closed house",
       "extension advice on predators and rodents, second-hand", find_ways_in},
      {"flock.floor", "the floor is enough for the birds, now and as planned",
       "extension table of floor space by body size, second-hand", find_crowded_floor},
      {"flock.run", "and so is the run", "extension table of floor space by body size, second-hand",
       find_crowded_run},
      {"flock.nests", "there are nest boxes enough, and large enough",
       "extension advice on nests, second-hand", find_short_nests},
      {"flock.roost", "every bird has its length of roost, clear of wall and next bar",
       "Council Directive 1999/74/EC, Art. 4", find_short_roosts},
      {"flock.air", "the air has openings enough for the birds in this climate",
       "MWPS, ASABE EP270: air a pound of live weight (from memory)", find_stale_air},
      {"flock.bird-door", "the birds have a door that they can walk through", "common practice",
       find_small_bird_doors},
      {"flock.litter", "there is litter, and the sills hold it in", "several US bulletins (from memory)",
       find_thin_litter},
      {"fit.gap", "parts that all but touch lie against each other", "common practice", find_gaps},
      {"fit.sliver", "no part runs out to a strip too narrow to be cut safely", "common practice",
       find_slivers},
      {"fit.near-twin", "parts that are alike but for a hair are cut as one mark", "common practice",
       find_near_twins},
      {"support.chain", "every part is held by what stands on the ground", "geometry", find_unsupported},
  };
  return table;
}

std::vector<Finding> check(const Design& design, const Building& building) {
  const Scene standing = scene(building);
  std::vector<Finding> all;
  for (const Check& row : checks())
    for (Finding& finding : row.find({design, building, standing})) {
      finding.rule = row.rule;
      if (finding.source.empty()) finding.source = row.source;
      all.push_back(std::move(finding));
    }
  return all;
}

std::string called(const Building& building, std::size_t part) {
  return building.parts[part].name + " " + building.mark_of(part).label;
}

std::string printed(const Design& design, Length length) {
  return geometry::print_length(length, {design.units, 16}) + (design.units == Units::mm ? " mm" : "");
}

namespace {

std::string decimals(double value, double steps_in_one, const char* unit) {
  char text[40];
  const auto end =
      std::to_chars(text, text + sizeof text, std::round(value * steps_in_one) / steps_in_one + 0.0).ptr;
  return std::string(text, end) + unit;
}

}  // namespace

std::string printed(const Design& design, geometry::Area area) {
  const double ft2 = (geometry::feet(1) * geometry::feet(1)).mm2;
  return design.units == Units::mm ? decimals(area.mm2 / 1e6, 100, " m2")
                                   : decimals(area.mm2 / ft2, 10, " ft2");
}

std::string printed(const Design& design, geometry::Volume volume) {
  const double in3 = geometry::inches(1).mm() * geometry::inches(1).mm() * geometry::inches(1).mm();
  return design.units == Units::mm ? decimals(volume.mm3 / 1000, 10, " cm3")
                                   : decimals(volume.mm3 / in3, 100, " in3");
}

std::string printed_fine(const Design& design, Length length) {
  return design.units == Units::mm ? decimals(length.mm(), 10, " mm") : decimals(length.inches(), 100, " in");
}

}  // namespace models
