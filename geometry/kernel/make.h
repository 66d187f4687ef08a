// Making a Solid from what an operation of the kernel left.
#pragma once

#include <TopoDS_Shape.hxx>
#include <gp_Dir.hxx>
#include <gp_Pnt.hxx>
#include <gp_Trsf.hxx>
#include <gp_Vec.hxx>

#include "geometry/solid.h"

namespace geometry::kernel {

[[nodiscard]] inline gp_Pnt point(Vec3 p) { return {p.x, p.y, p.z}; }
[[nodiscard]] inline gp_Vec vector(Vec3 v) { return {v.x, v.y, v.z}; }
[[nodiscard]] inline gp_Dir direction(Vec3 v) { return {v.x, v.y, v.z}; }
[[nodiscard]] inline Vec3 from(const gp_Pnt& p) { return {p.X(), p.Y(), p.Z()}; }
[[nodiscard]] gp_Trsf transformation(const Placement& placement);

[[nodiscard]] Solid wrap(const TopoDS_Shape& shape);
// The single solid within `shape`; fails in the operation's name when there is none or several.
[[nodiscard]] Solid only_solid(const char* operation, const TopoDS_Shape& shape);

}  // namespace geometry::kernel
