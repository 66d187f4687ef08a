// Whether sliders stay on their wall and openings can be gone through.
#include <algorithm>

#include "geometry/tolerance.h"
#include "models/checks.h"
#include "models/leaf.h"
#include "models/practice.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::mm;

const Mover* mover_of(const Building& building, const Opening& opening) {
  for (const Mover& mover : building.movers)
    if (mover.name == opening.name) return &mover;
  return nullptr;
}

// Where the opening's left edge may be so that the slider stays on its wall when it opens towards `way`.
std::string feasible(const Design& design, const Opening& opening, Length wall, Edge way) {
  Opening turned = opening;
  turned.door.edge = way;
  const SliderReach reach = slider_reach(turned);
  const Length least = opening.left - reach.from, most = wall - (reach.to - opening.left);
  if (least > most) return "";
  return "from " + printed(design, least) + " to " + printed(design, most);
}

}  // namespace

std::vector<Finding> find_sliders_off_wall(const Subject& s) {
  std::vector<Finding> findings;
  for (const Wall& wall : s.design.walls) {
    const Length length = wall_length(s.design.house, wall.side);
    for (const Opening& opening : wall.openings) {
      const Mover* mover = mover_of(s.building, opening);
      if (opening.door.kind != DoorKind::sliding || !mover) continue;
      const SliderReach reach = slider_reach(opening);
      const Length over_left = -reach.from, over_right = reach.to - length;
      const Length over = std::max(over_left, over_right);
      if (over.mm() <= geometry::same_place) continue;
      Finding finding;
      finding.line = opening.line;
      finding.parts = mover->parts;
      const bool left = over_left > over_right;
      finding.place =
          wall_plane(s.design.house, wall.side)
              .point({(left ? reach.from : reach.to).mm(), (opening.bottom + opening.height / 2).mm(), 0});
      finding.message = "the leaf of " + opening.name + " and its guides run off the " +
                        std::string(name(wall.side)) + " wall's " + (left ? "left" : "right") + " end";
      finding.measured = printed(s.design, over) + " past the corner";
      finding.asked = "0 past the corner";
      const Edge other = opening.door.edge == Edge::left ? Edge::right : Edge::left;
      const std::string same_way = feasible(s.design, opening, length, opening.door.edge);
      const std::string other_way = feasible(s.design, opening, length, other);
      if (!same_way.empty())
        finding.advice = "the opening's left edge may stand " + same_way + " from the wall's left corner";
      if (!other_way.empty())
        finding.advice +=
            std::string(finding.advice.empty() ? "" : "; ") + "sliding to the other side, " + other_way;
      if (finding.advice.empty())
        finding.advice = "no place on this wall holds it: an opening of at most " +
                         printed(s.design, (length - opening.door.lap * 3) / 2) + " would fit";
      findings.push_back(std::move(finding));
    }
  }
  return findings;
}

std::vector<Finding> find_obstructed_openings(const Subject& s) {
  std::vector<Finding> findings;
  for (const Mover& mover : s.building.movers) {
    if (mover.closes != OpeningKind::door) continue;
    const Wall& wall = s.design.walls[static_cast<std::size_t>(mover.wall)];
    const auto opening = std::find_if(wall.openings.begin(), wall.openings.end(),
                                      [&](const Opening& o) { return o.name == mover.name; });
    if (opening == wall.openings.end()) continue;
    // The way in: the opening's own space, and behind it as far as an arm's reach to a latch.
    const Length behind = s.design.house.framing.thickness + practice::free_behind_door;
    const geometry::Body way{geometry::rectangle(opening->width, opening->height), behind, {}, {}, {}};
    const Placement place =
        geometry::compose(wall_plane(s.design.house, wall.side),
                          geometry::shift({opening->left.mm(), opening->bottom.mm(), -behind.mm()}));
    const geometry::ConvexPiece space = geometry::placed(geometry::convex_pieces(way).front(), place);
    Finding finding;
    double deepest = 0;
    for (std::size_t part = 0; part < s.building.parts.size(); ++part) {
      if (std::find(mover.parts.begin(), mover.parts.end(), part) != mover.parts.end()) continue;
      double depth = 0;
      Vec3 where;
      for (const geometry::ConvexPiece& piece : s.scene.parts[part].pieces) {
        if (!near(piece.box, space.box, 0)) continue;
        const geometry::Clearance found = geometry::clearance(space, piece);
        if (-found.distance > depth) depth = -found.distance, where = found.on_b;
      }
      if (depth <= geometry::contact) continue;
      finding.parts.push_back(part);
      if (depth <= deepest) continue;
      deepest = depth;
      finding.place = where;
      finding.message = called(s.building, part);
    }
    if (finding.parts.empty()) continue;
    const std::size_t more = finding.parts.size() - 1;
    finding.severity = Severity::warning;
    finding.line = mover.line;
    finding.message += (more == 0   ? std::string(" stands")
                        : more == 1 ? std::string(" and one more part stand")
                                    : " and " + std::to_string(more) + " more parts stand") +
                       " in the way through " + mover.name;
    finding.measured = printed_fine(s.design, mm(deepest)) + " into the way";
    finding.asked = printed(s.design, practice::free_behind_door) + " free behind the opening";
    finding.advice = "move them or the door by " + printed_fine(s.design, mm(deepest));
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace models
