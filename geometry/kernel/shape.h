// The one bridge between Solid and the kernel's own type.
#pragma once

#include <TopoDS_Shape.hxx>

#include "geometry/solid.h"

namespace geometry::kernel {

struct Shape {
  TopoDS_Shape shape;
};

[[nodiscard]] inline const TopoDS_Shape& shape_of(const Solid& solid) { return solid.shape().shape; }

}  // namespace geometry::kernel
