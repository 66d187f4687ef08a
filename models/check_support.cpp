// Whether every part is held.
#include <algorithm>
#include <cmath>

#include "geometry/tolerance.h"
#include "models/checks.h"
#include "models/directions.h"
#include "models/support.h"

namespace models {
namespace {

using geometry::mm;

double apart(const geometry::Box& a, const geometry::Box& b) {
  const auto gap = [](double low_a, double high_a, double low_b, double high_b) {
    return std::max({0.0, low_b - high_a, low_a - high_b});
  };
  return norm(Vec3{gap(a.low.x, a.high.x, b.low.x, b.high.x), gap(a.low.y, a.high.y, b.low.y, b.high.y),
                   gap(a.low.z, a.high.z, b.low.z, b.high.z)});
}

// What is nearest to a group of parts that nothing holds: a part that is held, or the ground.
struct Nearest {
  double distance = INFINITY;
  std::size_t own = 0;
  std::optional<std::size_t> other;  // none: the ground
  Vec3 place, direction;
};
Nearest nearest_support(const Subject& s, const std::vector<std::size_t>& group,
                        const std::vector<bool>& held) {
  Nearest best;
  const double ground = standing_ground(s.design, s.building, s.scene);
  for (const std::size_t own : group) {
    const geometry::Box& box = s.scene.parts[own].box;
    if (box.low.z - ground < best.distance)
      best = {box.low.z - ground, own, std::nullopt, {box.centre().x, box.centre().y, box.low.z}, {0, 0, -1}};
  }
  for (const std::size_t own : group)
    for (std::size_t other = 0; other < s.building.parts.size(); ++other) {
      if (!held[other] || apart(s.scene.parts[own].box, s.scene.parts[other].box) >= best.distance) continue;
      const geometry::Clearance clearance = part_clearance(s.scene, own, other);
      if (clearance.distance < best.distance)
        best = {std::max(0.0, clearance.distance), own, other, clearance.on_a, clearance.direction};
    }
  return best;
}

}  // namespace

std::vector<Finding> find_unsupported(const Subject& s) {
  const std::vector<std::vector<std::size_t>> groups =
      unheld(s.design, s.building, s.scene, joints(s.building, s.scene));
  std::vector<bool> held(s.building.parts.size(), true);
  for (const std::vector<std::size_t>& group : groups)
    for (const std::size_t part : group) held[part] = false;
  for (const Mover& mover : s.building.movers)  // a leaf holds nothing
    for (const std::size_t part : mover.parts) held[part] = false;
  std::vector<Finding> findings;
  for (const std::vector<std::size_t>& group : groups) {
    const Nearest nearest = nearest_support(s, group, held);
    const std::string own = called(s.building, nearest.own);
    const std::string other = nearest.other ? called(s.building, *nearest.other) : "the ground";
    const std::string gap = printed_fine(s.design, mm(nearest.distance));
    Finding finding;
    // Without a house, what the parts will be fixed to may not be in the design.
    finding.severity = s.design.has_house ? Severity::error : Severity::warning;
    finding.parts = group;
    finding.place = nearest.place;
    const std::size_t more = group.size() - 1;
    finding.message = "nothing holds " + own;
    if (more > 0)
      finding.message += " and " + std::to_string(more) + (more == 1 ? " part" : " parts") + " joined to it";
    finding.asked = "contact with something that stands on the ground";
    if (nearest.distance <= geometry::contact) {
      finding.measured = "no more than a corner or an edge touches " + other;
      finding.advice = "let it lie against " + other + " over an area";
    } else {
      finding.measured = gap + " short of " + other;
      finding.advice = "move or lengthen " + own + " " + std::string(direction_word(nearest.direction)) +
                       " by " + gap + " to meet " + other;
    }
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace models
