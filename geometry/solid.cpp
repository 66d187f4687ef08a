// Building solids: extrusion, cuts, holes, rounded edges.
#include "geometry/solid.h"

#include <BRepAlgoAPI_Cut.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepBuilderAPI_MakePolygon.hxx>
#include <BRepFilletAPI_MakeFillet.hxx>
#include <BRepPrimAPI_MakeCylinder.hxx>
#include <BRepPrimAPI_MakeHalfSpace.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <BRep_Tool.hxx>
#include <TopExp.hxx>
#include <TopLoc_Location.hxx>
#include <TopTools_IndexedMapOfShape.hxx>
#include <TopoDS.hxx>
#include <gp_Ax2.hxx>
#include <gp_Pln.hxx>

#include "geometry/kernel/guard.h"
#include "geometry/kernel/make.h"
#include "geometry/kernel/shape.h"
#include "geometry/tolerance.h"

namespace geometry {

using kernel::guarded;

namespace {

TopoDS_Wire wire(const Polygon& polygon) {
  BRepBuilderAPI_MakePolygon maker;
  for (const Vec2 p : polygon) maker.Add(gp_Pnt(p.x, p.y, 0));
  maker.Close();
  return maker.Wire();
}

}  // namespace

Solid extrude(const Outline& outline, Length thickness) {
  return guarded("extrude an outline", [&] {
    if (outline.outer.size() < 3 || thickness <= Length()) kernel::fail("extrude an outline", "it is empty");
    BRepBuilderAPI_MakeFace face(gp_Pln(gp_Pnt(0, 0, 0), gp_Dir(0, 0, 1)), wire(outline.outer), true);
    for (const Polygon& hole : outline.holes) face.Add(wire(hole));
    return kernel::only_solid("extrude an outline",
                              BRepPrimAPI_MakePrism(face.Face(), gp_Vec(0, 0, thickness.mm())).Shape());
  });
}

Solid cut(const Solid& solid, const HalfSpace& keep) {
  return guarded("cut off at a plane", [&] {
    const gp_Pln plane(kernel::point(keep.point), kernel::direction(keep.outward));
    const TopoDS_Face face = BRepBuilderAPI_MakeFace(plane).Face();
    const TopoDS_Shape outside =
        BRepPrimAPI_MakeHalfSpace(face, kernel::point(keep.point + keep.outward)).Solid();
    BRepAlgoAPI_Cut cut(kernel::shape_of(solid), outside);
    if (cut.HasErrors()) kernel::fail("cut off at a plane", "the boolean failed");
    return kernel::only_solid("cut off at a plane", cut.Shape());
  });
}

Solid drill(const Solid& solid, const Axis& axis, Length diameter) {
  return guarded("drill a hole", [&] {
    // Long enough to go through, wherever along the axis the solid lies.
    const Box box = bounds(solid);
    const double reach = norm(box.size()) + norm(box.centre() - axis.point) + 1;
    const gp_Ax2 along(kernel::point(axis.point - axis.direction * reach), kernel::direction(axis.direction));
    BRepAlgoAPI_Cut cut(kernel::shape_of(solid),
                        BRepPrimAPI_MakeCylinder(along, diameter.mm() / 2, 2 * reach).Shape());
    if (cut.HasErrors()) kernel::fail("drill a hole", "the boolean failed");
    return kernel::only_solid("drill a hole", cut.Shape());
  });
}

Solid round_edges(const Solid& solid, Vec3 direction, Length radius) {
  return guarded("round edges", [&] {
    BRepFilletAPI_MakeFillet fillet(kernel::shape_of(solid));
    TopTools_IndexedMapOfShape edges;
    TopExp::MapShapes(kernel::shape_of(solid), TopAbs_EDGE, edges);
    for (int i = 1; i <= edges.Extent(); ++i) {
      const TopoDS_Edge& edge = TopoDS::Edge(edges(i));
      const Vec3 a = kernel::from(BRep_Tool::Pnt(TopExp::FirstVertex(edge)));
      const Vec3 b = kernel::from(BRep_Tool::Pnt(TopExp::LastVertex(edge)));
      if (norm(b - a) > same_place && norm(cross(normalized(b - a), direction)) < 1e-9)
        fillet.Add(radius.mm(), edge);
    }
    fillet.Build();
    if (!fillet.IsDone()) kernel::fail("round edges", "the radius does not fit");
    return kernel::only_solid("round edges", fillet.Shape());
  });
}

Solid placed(const Solid& solid, const Placement& placement) {
  return guarded("place a solid", [&] {
    return kernel::wrap(kernel::shape_of(solid).Moved(TopLoc_Location(kernel::transformation(placement))));
  });
}

Solid make_solid(const Body& body) {
  Solid solid = extrude(body.outline, body.thickness);
  for (const HalfSpace& bevel : body.bevels) solid = cut(solid, bevel);
  if (body.rounding > Length()) solid = round_edges(solid, {1, 0, 0}, body.rounding);
  for (const Bore& bore : body.bores)
    solid = drill(solid, {{bore.centre.x, bore.centre.y, 0}, {0, 0, 1}}, bore.diameter);
  return solid;
}

}  // namespace geometry
