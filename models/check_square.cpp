// Whether leaves bear as much racking as a workshop leaves in a frame.
#include "models/checks.h"
#include "models/leaf_context.h"
#include "models/practice.h"
#include "models/squareness.h"
#include "models/wall_plane.h"

namespace models {

std::vector<Finding> find_leaves_that_rack(const Subject& s) {
  std::vector<Finding> findings;
  for (const Wall& wall : s.design.walls)
    for (const Opening& o : wall.openings) {
      if (!has_leaf(o.kind) || o.door.kind == DoorKind::sliding) continue;
      const bool upright =
          o.door.kind == DoorKind::hinged && (o.door.edge == Edge::left || o.door.edge == Edge::right);
      const Length hung = upright ? o.height : o.width, other = upright ? o.width : o.height;
      const Length allowed = allowed_racking(hung, other, o.door.reveal);
      if (allowed >= practice::racking) continue;
      Finding finding;
      finding.severity = Severity::warning;
      finding.line = o.line;
      finding.place = wall_plane(s.design.house, wall.side)
                          .point({(o.left + o.width / 2).mm(), (o.bottom + o.height / 2).mm(), 0});
      for (const Mover& mover : s.building.movers)
        if (mover.name == o.name) finding.parts = mover.parts;
      finding.message = "the leaf of " + o.name + " binds as soon as its opening is a little out of square";
      finding.measured = printed_fine(s.design, allowed) + " between the diagonals";
      finding.asked = printed_fine(s.design, practice::racking) + ", as a workshop holds";
      finding.advice = "a reveal of at least " +
                       printed_fine(s.design, reveal_for_racking(hung, other, practice::racking)) +
                       " bears that much";
      findings.push_back(std::move(finding));
    }
  return findings;
}

}  // namespace models
