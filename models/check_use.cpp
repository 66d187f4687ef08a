// Whether the house can be lived in and looked after: what an arm reaches, where birds sleep and walk.
#include <algorithm>
#include <cmath>

#include "geometry/tolerance.h"
#include "models/checks.h"
#include "models/doorway.h"
#include "models/furniture.h"
#include "models/practice.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::mm;

// A rectangle that an arm goes through, where it stands: level with the inside of the wall's frame.
struct Hatch {
  const Opening* opening;
  Placement plane;  // origin at the opening's lower left, z outwards
};

std::vector<Hatch> hatches(const Design& design) {
  std::vector<Hatch> all;
  for (const Wall& wall : design.walls)
    for (const Opening& o : wall.openings)
      if (o.kind == OpeningKind::door || o.kind == OpeningKind::nest_door)
        all.push_back({&o, geometry::compose(wall_plane(design.house, wall.side),
                                             geometry::shift({o.left.mm(), o.bottom.mm(),
                                                              -design.house.framing.thickness.mm()}))});
  return all;
}

double distance(const Hatch& hatch, Vec3 point) {
  const Vec3 p = hatch.plane.inverse_point(point);
  return norm(p - Vec3{std::clamp(p.x, 0.0, hatch.opening->width.mm()),
                       std::clamp(p.y, 0.0, hatch.opening->height.mm()), 0});
}

// One nest box.
struct Nest {
  int number;          // from the left, from 1
  Vec3 egg;            // the middle of its floor
  Vec3 mouth;          // the middle of its open front, over the lip
  double left, right;  // clear, wall coordinates
};
std::vector<Nest> boxes(const Design& design) {
  std::vector<Nest> all;
  if (!design.nests) return all;
  const Nests& n = *design.nests;
  const Placement plane = wall_plane(design.house, n.wall);
  for (int i = 0; i < n.count; ++i) {
    const double left = (n.left + n.panel.thickness + box_pitch(n) * i).mm();
    const double x = left + n.width.mm() / 2, in = -design.house.framing.thickness.mm();
    const double deep = n.outside ? n.depth.mm() / 2 : in - n.depth.mm() / 2;
    const double front = n.outside ? in : in - row_depth(n).mm();
    all.push_back({i + 1, plane.point({x, n.bottom.mm(), deep}),
                   plane.point({x, (n.bottom + (n.lip + n.height) / 2).mm(), front}), left,
                   left + n.width.mm()});
  }
  return all;
}

// How far an arm has to reach for the egg through the nearest opening, without stepping in: straight through a door
// behind the box that a hand fits through, or round into its open front.
double reach_for_egg(const Design& design, const Nest& nest) {
  const Nests& n = *design.nests;
  if (n.outside) return n.height.mm();  // under its lid
  double least = INFINITY;
  for (const Hatch& hatch : hatches(design)) {
    const Opening& o = *hatch.opening;
    const bool behind =
        o.kind == OpeningKind::nest_door && wall_plane(design.house, n.wall).z == hatch.plane.z;
    const double across = std::min(nest.right, (o.left + o.width).mm()) - std::max(nest.left, o.left.mm());
    const double upright = std::min((n.bottom + n.height).mm(), (o.bottom + o.height).mm()) -
                           std::max(n.bottom.mm(), o.bottom.mm());
    if (behind && across >= practice::hand.mm() && upright >= practice::hand.mm())
      least = std::min(least, distance(hatch, nest.egg));
    else if (!behind)
      least = std::min(least, distance(hatch, nest.mouth) + norm(nest.egg - nest.mouth));
  }
  return least;
}

Finding finding_at(Severity severity, Vec3 place, int line, std::string message) {
  Finding finding;
  finding.severity = severity;
  finding.place = place;
  finding.line = line;
  finding.message = std::move(message);
  return finding;
}

std::vector<std::size_t> named(const Building& building, std::string_view name) {
  std::vector<std::size_t> parts;
  for (std::size_t i = 0; i < building.parts.size(); ++i)
    if (building.parts[i].name == name) parts.push_back(i);
  return parts;
}

}  // namespace

std::vector<Finding> find_out_of_reach(const Subject& s) {
  std::vector<Finding> findings;
  if (!s.design.has_house || has_doorway(s.design)) return findings;
  const std::vector<Hatch> all = hatches(s.design);
  const Length arm = practice::arm;
  const auto tell = [&](Vec3 place, double reach, const std::string& what) {
    Finding finding = finding_at(Severity::warning, place, 0, what + " is out of an arm's reach");
    finding.measured = std::isfinite(reach) ? printed(s.design, mm(reach)) + " from the nearest opening"
                                            : std::string("no opening to reach in by");
    finding.asked = "at most " + printed(s.design, arm) + ", or a doorway";
    finding.advice =
        (std::isfinite(reach)
             ? "an opening " + printed(s.design, mm(reach) - arm) + " nearer reaches it, or a doorway of "
             : std::string("give the house a doorway of ")) +
        printed(s.design, practice::doorway_width) + " by " + printed(s.design, practice::doorway_height);
    findings.push_back(std::move(finding));
  };
  const double in = s.design.house.framing.thickness.mm();
  const double right = s.design.house.width.mm() - in, back = s.design.house.depth.mm() - in;
  for (const auto& [corner, what] : {std::pair{Vec3{in, in, 0}, "the front left corner of the floor"},
                                     {Vec3{right, in, 0}, "the front right corner of the floor"},
                                     {Vec3{in, back, 0}, "the back left corner of the floor"},
                                     {Vec3{right, back, 0}, "the back right corner of the floor"}}) {
    double reach = INFINITY;
    for (const Hatch& hatch : all) reach = std::min(reach, distance(hatch, corner));
    if (reach > arm.mm()) tell(corner, reach, what);
  }
  for (const Nest& nest : boxes(s.design))
    if (const double reach = reach_for_egg(s.design, nest); reach > arm.mm())
      tell(nest.egg, reach, "nest " + std::to_string(nest.number));
  return findings;
}

std::vector<Finding> find_eggs_inside(const Subject& s) {
  std::vector<Finding> findings;
  if (!has_doorway(s.design)) return findings;  // then use.reach says it
  for (const Nest& nest : boxes(s.design)) {
    const double reach = reach_for_egg(s.design, nest);
    if (reach <= practice::arm.mm()) continue;
    Finding finding =
        finding_at(Severity::note, nest.egg, s.design.nests->line,
                   "an egg in nest " + std::to_string(nest.number) + " is not reached without stepping in");
    finding.measured = printed(s.design, mm(reach)) + " from the nearest opening";
    finding.asked = "at most " + printed(s.design, practice::arm);
    finding.advice = "a nest door in the " + std::string(name(s.design.nests->wall)) + " wall from " +
                     printed(s.design, mm(nest.left)) + " to " + printed(s.design, mm(nest.right)) +
                     ", from " + printed(s.design, s.design.nests->bottom) + " up, reaches it";
    findings.push_back(std::move(finding));
  }
  return findings;
}

std::vector<Finding> find_low_headroom(const Subject& s) {
  std::vector<Finding> findings;
  const double asked = practice::headroom.mm();
  for (const std::size_t bar : named(s.building, "roost bar")) {
    const geometry::Box& box = s.scene.parts[bar].box;
    // The room over the bar, up to a height; nobody sits against the walls, where mesh and battens are.
    const Vec3 whole = box.size();
    const double end = std::min(practice::off_the_wall.mm(), std::max(whole.x, whole.y) / 4);
    const Vec3 inset = whole.x > whole.y ? Vec3{end, 0, 0} : Vec3{0, end, 0};
    const Vec3 size = whole - inset * 2;
    const auto over = [&](double height) {
      const geometry::Body room = geometry::stick(mm(size.x), mm(size.y), mm(height));
      return geometry::placed(geometry::convex_pieces(room).front(),
                              geometry::shift({box.low.x + inset.x, box.low.y + inset.y, box.high.z}));
    };
    double free = asked;
    std::size_t above = bar;
    for (std::size_t part = 0; part < s.building.parts.size(); ++part) {
      if (part == bar || !near(s.scene.parts[part].box, over(free).box, 0)) continue;
      for (const geometry::ConvexPiece& piece : s.scene.parts[part].pieces) {
        const auto hits = [&](double height) {
          return geometry::clearance(over(height), piece).distance < -geometry::contact;
        };
        if (!hits(free)) continue;
        double clear = 0, met = free;
        while (met - clear > 0.1) {
          const double middle = (clear + met) / 2;
          (hits(middle) ? met : clear) = middle;
        }
        free = clear;
        above = part;
      }
    }
    // One that runs through the bar itself is an overlap.
    if (above == bar || part_clearance(s.scene, bar, above).distance < -geometry::contact) continue;
    Finding finding = finding_at(
        Severity::warning, {box.centre().x, box.centre().y, box.high.z + free},
        s.design.roosts ? s.design.roosts->line : 0,
        "birds on " + called(s.building, bar) + " have no headroom under " + called(s.building, above));
    finding.parts = {std::min(bar, above), std::max(bar, above)};
    finding.measured = printed(s.design, mm(free));
    finding.asked = "at least " + printed(s.design, practice::headroom);
    finding.advice = "hang the bar " + printed(s.design, mm(asked - free)) + " lower";
    findings.push_back(std::move(finding));
  }
  return findings;
}

std::vector<Finding> find_roosts_out_of_order(const Subject& s) {
  std::vector<Finding> findings;
  if (!s.design.nests || s.design.nests->outside) return findings;
  const Nests& n = *s.design.nests;
  geometry::Box row;
  for (const std::size_t part : named(s.building, "nest floor")) row.add(s.scene.parts[part].box);
  for (const std::size_t bar : named(s.building, "roost bar")) {
    const geometry::Box& box = s.scene.parts[bar].box;
    const double under = n.bottom.mm() - box.high.z;
    if (under > geometry::contact) {
      Finding finding =
          finding_at(Severity::warning, box.centre(), s.design.roosts ? s.design.roosts->line : 0,
                     "birds will sleep in the nests: they stand higher than " + called(s.building, bar));
      finding.parts = {bar};
      finding.measured = printed(s.design, mm(under)) + " under the nests' floor";
      finding.asked = "every bar above the nests' floor";
      finding.advice =
          "raise the bar by " + printed(s.design, mm(under)) + " or hang the nests as much lower";
      findings.push_back(std::move(finding));
    }
    const double x = std::min(box.high.x, row.high.x) - std::max(box.low.x, row.low.x);
    const double y = std::min(box.high.y, row.high.y) - std::max(box.low.y, row.low.y);
    if (under > geometry::contact || std::min(x, y) <= geometry::contact) continue;
    Finding finding = finding_at(Severity::warning, box.centre(), s.design.roosts ? s.design.roosts->line : 0,
                                 called(s.building, bar) + " runs over the nests: droppings fall on them");
    finding.parts = {bar};
    finding.measured = printed_fine(s.design, mm(std::min(x, y))) + " over them";
    finding.asked = "bars clear of the nests";
    finding.advice = "move the bar by " + printed_fine(s.design, mm(std::min(x, y))) + " off the nests";
    findings.push_back(std::move(finding));
  }
  return findings;
}

std::vector<Finding> find_low_sills(const Subject& s) {
  std::vector<Finding> findings;
  for (const Wall& wall : s.design.walls)
    for (const Opening& o : wall.openings) {
      const Length least = s.design.litter + practice::sill_over_litter;
      if (o.kind != OpeningKind::bird_door || s.design.litter <= Length() || o.bottom >= least) continue;
      Finding finding = finding_at(
          Severity::warning,
          wall_plane(s.design.house, wall.side).point({(o.left + o.width / 2).mm(), o.bottom.mm(), 0}),
          o.line, "litter is scratched out over the sill of " + o.name);
      finding.measured = printed(s.design, o.bottom) + " above the floor";
      finding.asked = "at least " + printed(s.design, least) + ": over the litter";
      finding.advice = "raise the opening by " + printed(s.design, least - o.bottom);
      findings.push_back(std::move(finding));
    }
  return findings;
}

}  // namespace models
