// The space a moving solid passes through: every face pushed or turned, and all of it fused with both end
// positions.
#include <BRepAlgoAPI_Fuse.hxx>
#include <BRepGProp.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <BRepPrimAPI_MakeRevol.hxx>
#include <GProp_GProps.hxx>
#include <ShapeUpgrade_UnifySameDomain.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_ListOfShape.hxx>
#include <gp_Ax1.hxx>

#include "geometry/kernel/guard.h"
#include "geometry/kernel/make.h"
#include "geometry/kernel/shape.h"
#include "geometry/tolerance.h"

namespace geometry {

using kernel::guarded;
using kernel::shape_of;

namespace {

// Fuses the solid in its first and last position with what each of its faces passes through.
template <class SweepFace>
Solid fused(const Solid& solid, const Placement& last, const char* operation, SweepFace&& sweep_face) {
  TopTools_ListOfShape first_one, others;
  first_one.Append(shape_of(solid));
  others.Append(shape_of(placed(solid, last)));
  for (TopExp_Explorer e(shape_of(solid), TopAbs_FACE); e.More(); e.Next()) {
    const TopoDS_Shape piece = sweep_face(e.Current());
    GProp_GProps properties;
    BRepGProp::VolumeProperties(piece, properties);
    // A face that moves within its own plane sweeps no space.
    if (std::abs(properties.Mass()) > same_place)
      others.Append(properties.Mass() > 0 ? piece : piece.Reversed());
  }
  BRepAlgoAPI_Fuse fuse;
  fuse.SetArguments(first_one);
  fuse.SetTools(others);
  fuse.SetFuzzyValue(same_place);
  fuse.Build();
  if (fuse.HasErrors()) kernel::fail(operation, "the boolean failed");
  ShapeUpgrade_UnifySameDomain unify(fuse.Shape());
  unify.Build();
  return kernel::only_solid(operation, unify.Shape());
}

}  // namespace

Solid swept(const Solid& solid, const Axis& axis, Angle angle) {
  return guarded("sweep a solid about an axis", [&] {
    const gp_Ax1 about(kernel::point(axis.point), kernel::direction(axis.direction));
    return fused(solid, turn(axis, angle), "sweep a solid about an axis", [&](const TopoDS_Shape& face) {
      return BRepPrimAPI_MakeRevol(face, about, angle.radians(), true).Shape();
    });
  });
}

Solid swept(const Solid& solid, Vec3 by) {
  return guarded("sweep a solid along a line", [&] {
    return fused(solid, shift(by), "sweep a solid along a line", [&](const TopoDS_Shape& face) {
      return BRepPrimAPI_MakePrism(face, kernel::vector(by), true).Shape();
    });
  });
}

}  // namespace geometry
