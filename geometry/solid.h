// A B-rep solid as a value: cheap to copy, never changed, the kernel's own types hidden.
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "geometry/body.h"
#include "geometry/mesh.h"

namespace geometry {

namespace kernel {
struct Shape;
}

// Never empty: an operation that would leave nothing throws KernelError.
class Solid {
 public:
  explicit Solid(std::shared_ptr<const kernel::Shape> shape) : shape_(std::move(shape)) {}
  [[nodiscard]] const kernel::Shape& shape() const { return *shape_; }

 private:
  std::shared_ptr<const kernel::Shape> shape_;
};

// The solid of a body, in the body's local coordinates, built directly from its outline.
[[nodiscard]] Solid make_solid(const Body& body);
// The outline, in the plane z = 0, pushed up to z = thickness.
[[nodiscard]] Solid extrude(const Outline& outline, Length thickness);
// What of the solid lies inside the half-space.
[[nodiscard]] Solid cut(const Solid& solid, const HalfSpace& keep);
// The solid less a round hole along an axis, right through.
[[nodiscard]] Solid drill(const Solid& solid, const Axis& axis, Length diameter);
// The solid with every straight edge parallel to `direction` (unit) rounded.
[[nodiscard]] Solid round_edges(const Solid& solid, Vec3 direction, Length radius);
// The same solid standing elsewhere; shares its geometry.
[[nodiscard]] Solid placed(const Solid& solid, const Placement& placement);

[[nodiscard]] Volume volume(const Solid& solid);
[[nodiscard]] Vec3 centre_of_mass(const Solid& solid);
[[nodiscard]] Box bounds(const Solid& solid);  // exact for plane-faced solids
// Closed, oriented outwards, one solid, and without complaint from the kernel's own checker.
[[nodiscard]] bool is_valid(const Solid& solid);

// Least distance between the two; 0 when they touch or overlap, one inside the other included.
[[nodiscard]] Length distance(const Solid& a, const Solid& b);
// What the two have in common.
struct Overlap {
  Volume volume;
  Vec3 centre;  // its centre of mass; meaningful when volume > 0
};
[[nodiscard]] Overlap overlap(const Solid& a, const Solid& b);

// All the space that the solid passes through while it turns about the axis from 0 to `angle` (0 < angle <=
// 180 degrees), or moves along `by`. Exact for plane-faced convex solids.
[[nodiscard]] Solid swept(const Solid& solid, const Axis& axis, Angle angle);
[[nodiscard]] Solid swept(const Solid& solid, Vec3 by);

// Triangles of the surface, facing outwards. Curved faces are approximated to within `chord`.
[[nodiscard]] Mesh mesh(const Solid& solid, Length chord);

}  // namespace geometry
