// Whether nest boxes that stand loose can be drawn out to be cleaned.
#include <algorithm>
#include <cmath>
#include <optional>

#include "geometry/motion.h"
#include "geometry/tolerance.h"
#include "models/checks.h"
#include "models/door_places.h"
#include "models/doorway.h"
#include "models/furniture.h"
#include "models/practice.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::mm;

bool holds(const std::vector<std::size_t>& parts, std::size_t part) {
  return std::find(parts.begin(), parts.end(), part) != parts.end();
}

std::vector<Mover> doors_behind(const Subject& s) {
  std::vector<Mover> doors;
  for (const Mover& mover : s.building.movers)
    if (mover.closes == OpeningKind::nest_door && mover.wall == s.design.nests->wall) doors.push_back(mover);
  return doors;
}

// All that a box can meet: every part where it stands, but the doors behind it as they stand open; what is lifted off lies
// elsewhere.
Pieces in_the_way(const Subject& s, const LooseBox& box, const std::vector<Mover>& doors) {
  std::vector<std::size_t> staying;
  for (std::size_t part = 0; part < s.building.parts.size(); ++part)
    if (!holds(box.parts, part) &&
        std::none_of(doors.begin(), doors.end(), [&](const Mover& door) { return holds(door.parts, part); }))
      staying.push_back(part);
  Pieces pieces = pieces_of(s.scene, staying);
  for (const Mover& door : doors) {
    if (door.kind == DoorKind::lift_off) continue;
    const Placement open = geometry::placement_at(motion_of(door), 1);
    const Pieces leaf = pieces_of(s.scene, door.parts);
    for (std::size_t i = 0; i < leaf.pieces.size(); ++i) {
      pieces.pieces.push_back(geometry::placed(leaf.pieces[i], open));
      pieces.part.push_back(leaf.part[i]);
    }
  }
  return pieces;
}

// It slides on its ledges: touching is no hindrance.
geometry::FreeTravel drawn(const Pieces& box, const Pieces& fixed, Vec3 by) {
  return geometry::free_travel(box.pieces, fixed.pieces, geometry::Slide{by}, -geometry::contact);
}

// Where one of the doors behind, opened further, would let the box out: how far; in steps of 5 degrees.
std::optional<std::pair<std::string, Angle>> further_open(const Subject& s, const LooseBox& box, Vec3 out,
                                                          std::size_t in_its_way) {
  std::vector<Mover> doors = doors_behind(s);
  const auto door =
      std::find_if(doors.begin(), doors.end(), [&](const Mover& d) { return holds(d.parts, in_its_way); });
  if (door == doors.end() || door->kind != DoorKind::hinged) return std::nullopt;
  const Pieces moving = pieces_of(s.scene, box.parts);
  for (double angle = (std::floor(door->opens.degrees() / 5) + 1) * 5; angle <= 180; angle += 5) {
    door->opens = geometry::degrees(angle);
    if (drawn(moving, in_the_way(s, box, doors), out).until >= 1) return std::pair{door->name, door->opens};
  }
  return std::nullopt;
}

}  // namespace

std::vector<Finding> find_stuck_boxes(const Subject& s) {
  std::vector<Finding> findings;
  if (!s.design.nests) return findings;
  const Nests& n = *s.design.nests;
  const Placement wall = wall_plane(s.design.house, n.wall);
  const Length outward = row_depth(n) + s.design.house.framing.thickness +
                         s.design.walls[static_cast<std::size_t>(n.wall)].cladding.thickness();
  for (const LooseBox& box : s.building.loose_boxes) {
    const Pieces moving = pieces_of(s.scene, box.parts), fixed = in_the_way(s, box, doors_behind(s));
    const geometry::FreeTravel out = drawn(moving, fixed, wall.z * outward.mm());
    if (out.until >= 1) continue;
    if (has_doorway(s.design) && drawn(moving, fixed, wall.z * -row_depth(n).mm()).until >= 1) continue;
    Finding finding;
    finding.severity = Severity::warning;
    finding.line = n.line;
    const std::size_t own = moving.part[out.stopped_by.moving], other = fixed.part[out.stopped_by.fixed];
    finding.parts = {std::min(own, other), std::max(own, other)};
    finding.place = out.stopped_by.clearance.on_b;
    finding.message = "nest box " + std::to_string(box.number) + " is not drawn out through the " +
                      std::string(name(n.wall)) + " wall: it meets " + called(s.building, other);
    finding.measured = "after " + printed(s.design, outward * out.until);
    finding.asked = printed(s.design, outward) + ", or a doorway to lift it out by";
    const Length left = n.left + box_pitch(n) * (box.number - 1), play = practice::box_play;
    if (const auto further = further_open(s, box, wall.z * outward.mm(), other)) {
      finding.advice = "let " + further->first + " open to " +
                       std::to_string(static_cast<int>(std::lround(further->second.degrees()))) + "\u00b0";
      findings.push_back(std::move(finding));
      continue;
    }
    finding.advice = "a nest door from " + printed(s.design, left - play) + " to " +
                     printed(s.design, left + n.width + n.panel.thickness * 2 + play) +
                     " from the wall's left corner, from " + printed(s.design, n.bottom - n.panel.thickness) +
                     " up to " + printed(s.design, n.bottom + n.height + n.panel.thickness + play) +
                     ", lets it out";
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace models
