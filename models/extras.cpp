#include <cmath>

#include "models/grounds.h"

namespace models {
namespace {

// An end cut as a plane: mitre leans it in the face, bevel through the thickness. `end` is the unit vector out of the
// stick's end; the plane passes through the long point, so the blank's length is to the long points.
geometry::HalfSpace end_cut(const Body& blank, double end, Angle mitre, Angle bevel) {
  const geometry::Box box = geometry::blank(blank);
  const double m = tan(mitre), b = tan(bevel);
  // On the plane: end * (x - x_end) = m * (y - y_long) + b * (z - z_long), long where the right side is greatest.
  const Vec3 outward = normalized(Vec3{end, -m, -b});
  const Vec3 long_point{end > 0 ? box.high.x : box.low.x, m > 0 ? box.high.y : box.low.y,
                        b > 0 ? box.high.z : box.low.z};
  return {long_point, outward};
}

}  // namespace

void add_extras(Assembler& assembler, const Design& design) {
  for (const ExtraStick& extra : design.extra_sticks) {
    Body body = geometry::stick(extra.length, extra.lumber.width, extra.lumber.thickness);
    const auto cut = [&](double end, Angle mitre, Angle bevel) {
      if (mitre != Angle() || bevel != Angle()) body.bevels.push_back(end_cut(body, end, mitre, bevel));
    };
    cut(-1, extra.left_mitre, extra.left_bevel);
    cut(+1, extra.right_mitre, extra.right_bevel);
    assembler.add({extra.name, Group::extra, stick_of(extra.lumber), body, extra.placement, {}},
                  {extra_parts});
  }
  for (const ExtraPanel& extra : design.extra_panels) {
    const Material material = extra.mesh ? mesh_of(*extra.mesh) : sheet_of(*extra.sheet);
    const Length thickness = extra.mesh ? extra.mesh->wire : extra.sheet->thickness;
    assembler.add({extra.name,
                   extra.mesh ? Group::mesh : Group::extra,
                   material,
                   {extra.outline, thickness, {}, {}, {}},
                   extra.placement,
                   {}},
                  {extra_parts});
  }
}

}  // namespace models
