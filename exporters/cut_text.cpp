#include "exporters/cut_text.h"

#include <cmath>

#include "exporters/plan.h"
#include "geometry/tolerance.h"

namespace exporters {
namespace {

constexpr double no_angle = 1e-6;

bool is_zero(geometry::Angle angle) { return std::fabs(angle.radians()) <= no_angle; }

geometry::Angle magnitude(geometry::Angle angle) { return geometry::radians(std::fabs(angle.radians())); }

}  // namespace

std::string angle_text(geometry::Angle angle) { return number(angle.degrees(), 1) + "\u00b0"; }

std::string end_text(const models::End& end) {
  std::string out;
  for (const models::SawCut& cut : end.saw_cuts) {
    if (!out.empty()) out += " + ";
    out += is_zero(cut.mitre) ? "square" : angle_text(magnitude(cut.mitre));
    if (!is_zero(cut.bevel)) out += ", blade " + angle_text(magnitude(cut.bevel));
  }
  if (end.notched) out += out.empty() ? "notch" : " + notch";
  return out.empty() ? "point" : out;
}

std::string ends_text(const models::Cuts& cuts) {
  if (cuts.left.square() && cuts.right.square()) return "square";
  std::string out = end_text(cuts.left) + " / " + end_text(cuts.right);
  if (cuts.left.saw_cuts.size() == 1 && cuts.right.saw_cuts.size() == 1) {
    const geometry::Angle left = cuts.left.saw_cuts[0].mitre, right = cuts.right.saw_cuts[0].mitre;
    if (!is_zero(left) && !is_zero(right))
      out += left.radians() * right.radians() > 0 ? ", opposed" : ", parallel";
  }
  return out;
}

bool needs_template(const models::Cuts& cuts) {
  models::Cuts unripped = cuts;
  unripped.rips.clear();
  return !unripped.plain();
}

std::string cut_name(const models::CutEdge& edge, Where where, const geometry::Placement& placement) {
  if (where == Where::end && std::fabs(edge.from_square().radians()) <= no_angle) return "square cut";
  const geometry::Vec2 along = (edge.to - edge.from) * (1 / edge.length.mm());
  const geometry::Vec3 direction = placement.direction({along.x, along.y, 0});
  const geometry::Vec3 face = placement.direction({along.y, -along.x, 0});  // square to the cut
  const bool level = std::fabs(face.z) >= 1 - no_angle;
  const bool plumb = std::fabs(direction.z) >= 1 - no_angle;
  const double climb = std::fabs(placement.x.z);
  const bool sloping = climb > no_angle && climb < 1 - no_angle;
  if (level) return where == Where::notch && sloping ? "seat" : "level cut";
  if (plumb) return where == Where::notch && sloping ? "heel" : "plumb cut";
  return "cut";
}

}  // namespace exporters
