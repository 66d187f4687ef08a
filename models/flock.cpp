#include "models/flock.h"

#include <algorithm>
#include <cmath>

namespace models {
namespace {

using geometry::feet;

constexpr std::string_view habit = "common practice";
constexpr std::string_view extension_floor = "extension table of floor space by body size, second-hand";
constexpr std::string_view extension_nests = "extension advice on nests, second-hand";
constexpr std::string_view bulletins = "several US bulletins (from memory)";
constexpr std::string_view hens = "Council Directive 1999/74/EC, Art. 4";

double square_feet(double value) { return (feet(1) * feet(1)).mm2 * value; }

// The opening that lets a bird's air through. Its allowance of air in cubic feet a minute for each pound of live weight,
// in cold, mild and hot weather, is MWPS's and ASABE EP270's (from memory); wind through an opening moves Cv A U, with
// Cv 0.3 for wind askew to it (ASHRAE Fundamentals; from memory). Wind of 1 m/s, a light air, as much opening for the air
// to leave by as for it to come in, and live weights of 1, 2 and 3.5 kg are common practice.
constexpr std::string_view air_allowance = "MWPS, ASABE EP270: air a pound of live weight (from memory)";
double air_for_a_bird(BodySize size, Climate climate) {
  constexpr double weight_kg[] = {1, 2, 3.5}, cfm_per_lb[] = {1, 0.5, 0.1};
  constexpr double kg_per_lb = 0.45359237, cubic_foot_m3 = 0.028316846592, cv = 0.3, wind_m_s = 1;
  const double m3_per_s = weight_kg[static_cast<int>(size)] / kg_per_lb *
                          cfm_per_lb[static_cast<int>(climate)] * cubic_foot_m3 / 60;
  return 2 * m3_per_s / (cv * wind_m_s) * 1e6;
}

}  // namespace

FlockNeeds flock_needs(BodySize size, Climate climate, Units units) {
  const auto inches = [&](double value) {
    return value * (units == Units::mm ? 25 : geometry::inches(1).mm());
  };
  const auto by_size = [&](double bantam, double medium, double large) {
    return size == BodySize::bantam ? bantam : size == BodySize::medium ? medium : large;
  };
  FlockNeeds needs;
  needs.floor = {square_feet(by_size(1, 1.5, 2)), extension_floor, square_feet(4), habit};
  needs.run = {square_feet(by_size(4, 8, 10)), extension_floor, square_feet(12), habit};
  needs.roost = {150, hens, inches(by_size(6, 8, 10)), bulletins};
  needs.air = {air_for_a_bird(size, climate), air_allowance, 0, habit};
  needs.birds_to_a_nest = {5, extension_nests, 4, extension_nests};
  needs.nest_side = {inches(by_size(10, 12, 12)),
                     size == BodySize::bantam ? "US bulletins, bantam nests (from memory)" : extension_nests,
                     inches(by_size(10, 12, 14)), size == BodySize::medium ? extension_nests : bulletins};
  needs.nest_height = {inches(12), habit, inches(by_size(12, 18, 18)), extension_nests};
  needs.bar_spacing = {300, hens, 300, hens};
  needs.bar_to_wall = {200, hens, 200, hens};
  needs.bird_door_width = {inches(by_size(10, 10, 12)), habit, inches(by_size(10, 10, 12)), habit};
  needs.bird_door_height = {inches(by_size(12, 12, 14)), habit, inches(by_size(12, 12, 14)), habit};
  needs.litter = {0, bulletins, inches(3), bulletins};
  return needs;
}

FlockNeeds flock_needs(const Design& design) {
  return flock_needs(design.flock.size, design.site ? design.site->climate : Climate::temperate,
                     design.units);
}

int boxes_for(int birds, double birds_to_a_nest) {
  return static_cast<int>(std::ceil(birds / birds_to_a_nest - 1e-9));
}

std::vector<FlockLine> flock_lines(const Design& design, const Building& building, const Scene& scene) {
  const int birds = all_birds(design.flock);
  if (!design.has_house || birds == 0) return {};
  using Unit = FlockLine::Unit;
  const FlockNeeds needs = flock_needs(design);
  std::vector<FlockLine> lines;
  const auto add = [&](std::string_view rule, std::string_view what, Unit unit, const Yardstick& asked,
                       double times, double given) {
    lines.push_back({rule, what, unit, asked.least * times, asked.better * times, given, asked.source,
                     asked.better_source});
  };
  const double floor = floor_given(building, scene).mm2;
  add("flock.floor", "floor", Unit::area, needs.floor, birds, floor);
  add("flock.run", "run", Unit::area, needs.run, birds, run_given(design, building, scene).mm2);

  const NestsGiven nests = nests_given(building, scene, design);
  const Yardstick& share = needs.birds_to_a_nest;
  lines.push_back({"flock.nests", "nest boxes", Unit::count,
                   static_cast<double>(boxes_for(birds, share.least)),
                   static_cast<double>(boxes_for(birds, share.better)), static_cast<double>(nests.boxes),
                   share.source, share.better_source});
  if (nests.boxes > 0) {
    add("flock.nests", "width of a nest box", Unit::length, needs.nest_side, 1, nests.width.mm());
    add("flock.nests", "depth of a nest box", Unit::length, needs.nest_side, 1, nests.depth.mm());
    add("flock.nests", "height of a nest box", Unit::length, needs.nest_height, 1, nests.height.mm());
  }

  const RoostsGiven roosts = roosts_given(building, scene, design);
  add("flock.roost", "length of roost", Unit::length, needs.roost, birds, roosts.length.mm());
  if (roosts.spacing)
    add("flock.roost", "space from bar to bar", Unit::length, needs.bar_spacing, 1, roosts.spacing->mm());
  if (roosts.bars > 0)
    add("flock.roost", "space from bar to wall", Unit::length, needs.bar_to_wall, 1, roosts.to_wall.mm());

  lines.push_back({"flock.air", "free opening for air", Unit::area, needs.air.least * birds,
                   std::max(needs.air.least * birds, floor * air_of_floor),
                   air_given(design, building, scene).mm2(), needs.air.source, needs.air.better_source});

  double width = 0, height = 0;
  for (const BirdDoorGiven& door : bird_doors_given(design)) {
    width = width > 0 ? std::min(width, door.opening->width.mm()) : door.opening->width.mm();
    height = height > 0 ? std::min(height, door.opening->height.mm()) : door.opening->height.mm();
  }
  add("flock.bird-door", "width of the birds' door", Unit::length, needs.bird_door_width, 1, width);
  add("flock.bird-door", "height of the birds' door", Unit::length, needs.bird_door_height, 1, height);
  add("flock.litter", "depth of litter", Unit::length, needs.litter, 1, design.litter.mm());
  return lines;
}

}  // namespace models
