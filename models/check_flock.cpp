// Whether house and run are enough for the flock, now and as planned.
#include <algorithm>
#include <cmath>

#include "models/checks.h"
#include "models/flock.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::Area;
using geometry::inches;
using geometry::mm;

bool has_flock(const Subject& s) { return s.design.has_house && all_birds(s.design.flock) > 0; }

// "8 medium birds (2 of them planned)"
std::string birds_of(const Subject& s) {
  constexpr const char* sizes[] = {"bantam", "medium", "large"};
  const Flock& flock = s.design.flock;
  const int all = all_birds(flock);
  std::string text =
      std::to_string(all) + " " + sizes[static_cast<int>(flock.size)] + (all == 1 ? " bird" : " birds");
  if (flock.planned > 0) text += " (" + std::to_string(flock.planned) + " planned)";
  return text;
}

// Up to the next whole centimetre, or half inch: a size that is easily said and measured.
Length round_up(const Design& design, Length length) {
  const Length step = design.units == Units::mm ? mm(10) : inches(0.5);
  return step * std::ceil(length / step - 1e-9);
}

std::string or_at_most(const char* what, double given, double each) {
  const int most = static_cast<int>(given / each + 1e-9);
  return most > 0 ? ", or " + std::string(what) + " at most " + std::to_string(most) + " birds" : "";
}

// Which of the two figures is missed, if any.
struct Missed {
  bool any = false;
  double figure = 0;
  Severity severity = Severity::warning;
  std::string_view source;
};
Missed missed(double given, const Yardstick& asked, double times) {
  const double hair = 1e-6;  // of a figure, for rounding
  if (given < asked.least * times * (1 - hair))
    return {true, asked.least * times, Severity::warning, asked.source};
  if (given < asked.better * times * (1 - hair))
    return {true, asked.better * times, Severity::note, asked.better_source};
  return {};
}

// "at least 2 m2" or "2 m2 by advice"
std::string asked_of(const Missed& m, const std::string& figure) {
  return m.severity == Severity::warning ? "at least " + figure : figure + " by advice";
}

Finding finding_of(const Missed& m) {
  Finding finding;
  finding.severity = m.severity;
  finding.source = m.source;
  return finding;
}

Vec3 middle(const Design& design) { return {design.house.width.mm() / 2, design.house.depth.mm() / 2, 0}; }

// A size of one thing that falls short, with how much more it needs.
void add_size(std::vector<Finding>& findings, const Subject& s, const std::string& what, Length given,
              const Yardstick& asked, Finding place) {
  const Missed m = missed(given.mm(), asked, 1);
  if (!m.any) return;
  Finding finding = finding_of(m);
  finding.line = place.line;
  finding.place = place.place;
  finding.parts = place.parts;
  finding.message = what + " is less than " + birds_of(s) + " ask for";
  finding.measured = printed(s.design, given);
  finding.asked = asked_of(m, printed(s.design, mm(m.figure)));
  finding.advice = printed(s.design, mm(m.figure) - given) + " more";
  findings.push_back(std::move(finding));
}

std::vector<std::size_t> parts_named(const Building& building,
                                     std::initializer_list<std::string_view> names) {
  std::vector<std::size_t> parts;
  for (std::size_t i = 0; i < building.parts.size(); ++i)
    if (std::find(names.begin(), names.end(), building.parts[i].name) != names.end()) parts.push_back(i);
  return parts;
}

Vec3 centre_of(const Subject& s, const std::vector<std::size_t>& parts) {
  geometry::Box box;
  for (const std::size_t part : parts) box.add(s.scene.parts[part].box);
  return box.centre();
}

// An area that falls short: how much more of its length would do, or how many birds it is enough for.
Finding short_area(const Subject& s, const Missed& m, double given, Length across, const std::string& larger,
                   const char* longer, const char* as_it_is) {
  Finding finding = finding_of(m);
  finding.measured = printed(s.design, Area{given});
  finding.asked = asked_of(m, printed(s.design, Area{m.figure}));
  finding.advice = larger + printed(s.design, round_up(s.design, mm((m.figure - given) / across.mm()))) +
                   longer + or_at_most(as_it_is, given, m.figure / all_birds(s.design.flock));
  return finding;
}

}  // namespace

std::vector<Finding> find_crowded_floor(const Subject& s) {
  if (!has_flock(s)) return {};
  const int birds = all_birds(s.design.flock);
  const Yardstick asked = flock_needs(s.design).floor;
  const double given = floor_given(s.building, s.scene).mm2;
  const Missed m = missed(given, asked, birds);
  if (!m.any) return {};
  const House& house = s.design.house;
  Finding finding = short_area(s, m, given, house.width - house.framing.thickness * 2, "a house ", " deeper",
                               "with this floor,");
  finding.place = middle(s.design);
  finding.message = "the floor is small for " + birds_of(s);
  return {finding};
}

std::vector<Finding> find_crowded_run(const Subject& s) {
  if (!has_flock(s)) return {};
  const int birds = all_birds(s.design.flock);
  const Yardstick asked = flock_needs(s.design).run;
  if (!s.design.run) {
    Finding finding;
    finding.severity = Severity::note;
    finding.source = asked.source;
    finding.place = middle(s.design);
    finding.message = "the design has no run for " + birds_of(s);
    finding.measured = printed(s.design, Area{0});
    finding.asked = "at least " + printed(s.design, Area{asked.least * birds});
    finding.advice =
        "a run as wide as the house is deep, " + printed(s.design, s.design.house.depth) + ", and " +
        printed(s.design, round_up(s.design, mm(asked.least * birds / s.design.house.depth.mm()))) +
        " long; or let them range";
    return {finding};
  }
  const RunPen& run = *s.design.run;
  const double given = run_given(s.design, s.building, s.scene).mm2;
  const Missed m = missed(given, asked, birds);
  if (!m.any) return {};
  const std::vector<std::size_t> mesh = parts_named(s.building, {"run mesh"});
  Finding finding =
      short_area(s, m, given, run.width - run.framing.thickness * 2, "a run ", " longer", "in this run,");
  finding.line = run.line;
  finding.place = centre_of(s, mesh);
  finding.message = "the run is small for " + birds_of(s);
  return {finding};
}

std::vector<Finding> find_short_nests(const Subject& s) {
  if (!has_flock(s)) return {};
  const int birds = all_birds(s.design.flock);
  const FlockNeeds needs = flock_needs(s.design);
  const NestsGiven nests = nests_given(s.building, s.scene, s.design);
  Finding place;
  place.place = middle(s.design);
  if (s.design.nests) {
    place.line = s.design.nests->line;
    place.parts = parts_named(s.building, {"nest divider", "nest end", "nest side"});
    place.place = centre_of(s, place.parts);
  }
  const Yardstick& share = needs.birds_to_a_nest;
  // In birds to a box fewer is better, so the figures are turned into boxes first.
  const Yardstick boxes{static_cast<double>(boxes_for(birds, share.least)), share.source,
                        static_cast<double>(boxes_for(birds, share.better)), share.better_source};
  std::vector<Finding> findings;
  if (const Missed m = missed(nests.boxes, boxes, 1); m.any) {
    const int more = static_cast<int>(m.figure) - nests.boxes;
    const double to_a_box = m.severity == Severity::warning ? share.least : share.better;
    Finding finding = finding_of(m);
    finding.line = place.line;
    finding.place = place.place;
    finding.parts = place.parts;
    finding.message = "there are too few nest boxes for " + birds_of(s);
    finding.measured = std::to_string(nests.boxes) + (nests.boxes == 1 ? " box" : " boxes");
    finding.asked = asked_of(m, std::to_string(static_cast<int>(m.figure)));
    finding.advice = (more == 1 ? std::string("one more box") : std::to_string(more) + " more boxes") +
                     or_at_most("with these,", nests.boxes * to_a_box, 1);
    findings.push_back(std::move(finding));
  }
  if (nests.boxes == 0) return findings;
  const bool narrow = nests.width <= nests.depth;
  add_size(findings, s, narrow ? "the width of a nest box" : "the depth of a nest box",
           narrow ? nests.width : nests.depth, needs.nest_side, place);
  add_size(findings, s, "the height of a nest box", nests.height, needs.nest_height, place);
  return findings;
}

std::vector<Finding> find_short_roosts(const Subject& s) {
  if (!has_flock(s)) return {};
  const int birds = all_birds(s.design.flock);
  const FlockNeeds needs = flock_needs(s.design);
  const RoostsGiven roosts = roosts_given(s.building, s.scene, s.design);
  Finding place;
  place.place = middle(s.design);
  if (roosts.bars > 0) {
    place.line = s.design.roosts->line;
    place.parts = parts_named(s.building, {"roost bar"});
    place.place = centre_of(s, place.parts);
  }
  std::vector<Finding> findings;
  if (const Missed m = missed(roosts.length.mm(), needs.roost, birds); m.any) {
    const Length lacks = mm(m.figure) - roosts.length;
    Finding finding = finding_of(m);
    finding.line = place.line;
    finding.place = place.place;
    finding.parts = place.parts;
    finding.message = "the roosts are short for " + birds_of(s);
    finding.measured = printed(s.design, roosts.length);
    finding.asked = asked_of(m, printed(s.design, mm(m.figure)));
    const House& house = s.design.house;
    const Length bar =
        roosts.bars > 0 ? roosts.length / roosts.bars : house.width - house.framing.thickness * 2;
    const int more = static_cast<int>(std::ceil(lacks / bar - 1e-9));
    finding.advice = (more == 1 ? std::string("one more bar") : std::to_string(more) + " more bars") +
                     " of " + printed(s.design, bar);
    if (roosts.bars > 0)
      finding.advice += (roosts.bars == 1 ? ", or a bar " : ", or each bar ") +
                        printed(s.design, round_up(s.design, lacks / roosts.bars)) + " longer" +
                        or_at_most("on these,", roosts.length.mm(), m.figure / birds);
    findings.push_back(std::move(finding));
  }
  if (roosts.spacing)
    add_size(findings, s, "the space from roost to roost", *roosts.spacing, needs.bar_spacing, place);
  if (roosts.bars > 0)
    add_size(findings, s, "the space from roost to wall", roosts.to_wall, needs.bar_to_wall, place);
  return findings;
}

std::vector<Finding> find_stale_air(const Subject& s) {
  if (!has_flock(s)) return {};
  const FlockNeeds needs = flock_needs(s.design);
  const AirGiven air = air_given(s.design, s.building, s.scene);
  const double least = needs.air.least * all_birds(s.design.flock);
  const double better = std::max(least, floor_given(s.building, s.scene).mm2 * air_of_floor);
  const Missed m = missed(air.mm2(), {least, needs.air.source, better, needs.air.better_source}, 1);
  if (!m.any) return {};
  Finding finding = finding_of(m);
  finding.place = middle(s.design);
  finding.place.z = s.design.house.wall_height.mm();
  finding.message = m.severity == Severity::warning
                        ? "the openings for air are small for " + birds_of(s)
                        : "the openings for air are less than a tenth of the floor";
  finding.measured = printed(s.design, Area{air.mm2()});
  if (air.gaps.mm2 > 0)
    finding.measured += " (" + printed(s.design, Area{air.gaps.mm2}) + " of it gaps in the walls)";
  finding.asked = asked_of(m, printed(s.design, Area{m.figure}));
  // Vents a hand's breadth and a half high, as wide as it takes, through half-inch mesh.
  const double through = free_share(inches(0.459), inches(0.041));
  const Length high = s.design.units == Units::mm ? mm(150) : inches(6);
  const Length widest = std::max(s.design.house.width, s.design.house.depth) / 2;
  const Length wide = mm((m.figure - air.mm2()) / through / high.mm());
  const int vents = std::max(1, static_cast<int>(std::ceil(wide / widest)));
  finding.advice = (vents == 1 ? std::string("one more vent") : std::to_string(vents) + " more vents") +
                   " of " + printed(s.design, round_up(s.design, wide / vents)) + " by " +
                   printed(s.design, high) + " behind half-inch mesh, high up, over the roosts";
  return {finding};
}

std::vector<Finding> find_small_bird_doors(const Subject& s) {
  if (!has_flock(s)) return {};
  const FlockNeeds needs = flock_needs(s.design);
  const std::vector<BirdDoorGiven> doors = bird_doors_given(s.design);
  std::vector<Finding> findings;
  if (doors.empty()) {
    Finding finding;
    finding.severity = Severity::warning;
    finding.source = needs.bird_door_width.source;
    finding.place = middle(s.design);
    finding.message = "no door lets " + birds_of(s) + " out";
    finding.measured = "none";
    finding.asked = "one";
    finding.advice = "a bird door of " + printed(s.design, mm(needs.bird_door_width.least)) + " by " +
                     printed(s.design, mm(needs.bird_door_height.least));
    findings.push_back(std::move(finding));
  }
  for (const BirdDoorGiven& door : doors) {
    const Opening& o = *door.opening;
    Finding place;
    place.line = o.line;
    place.place = wall_plane(s.design.house, door.wall)
                      .point({(o.left + o.width / 2).mm(), (o.bottom + o.height / 2).mm(), 0});
    add_size(findings, s, "the width of " + o.name, o.width, needs.bird_door_width, place);
    add_size(findings, s, "the height of " + o.name, o.height, needs.bird_door_height, place);
  }
  return findings;
}

std::vector<Finding> find_thin_litter(const Subject& s) {
  if (!has_flock(s)) return {};
  const Yardstick asked = flock_needs(s.design).litter;
  std::vector<Finding> findings;
  Finding place;
  place.place = middle(s.design);
  add_size(findings, s, "the litter's depth", s.design.litter, asked, place);
  if (!findings.empty() && s.design.litter <= Length())
    findings.front().message = "there is no litter on the floor for " + birds_of(s);
  // What lies higher than a sill runs out of the door.
  if (s.design.litter > Length())
    for (const BirdDoorGiven& door : bird_doors_given(s.design)) {
      if (door.opening->kind != OpeningKind::bird_door || door.opening->bottom >= s.design.litter) continue;
      place.line = door.opening->line;
      add_size(findings, s, "the height of the sill of " + door.opening->name, door.opening->bottom,
               {0, "common practice", s.design.litter.mm(), "common practice"}, place);
    }
  return findings;
}

}  // namespace models
