// Measuring solids: volume, centre, bounds, validity, distance, overlap, triangles.
#include <map>
#include <tuple>

#include <BRepAlgoAPI_Common.hxx>
#include <BRepBndLib.hxx>
#include <BRepBuilderAPI_Copy.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRepClass3d.hxx>
#include <BRepExtrema_DistShapeShape.hxx>
#include <BRepGProp.hxx>
#include <BRepMesh_IncrementalMesh.hxx>
#include <BRep_Tool.hxx>
#include <Bnd_Box.hxx>
#include <GProp_GProps.hxx>
#include <Poly_Triangulation.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>

#include "geometry/kernel/guard.h"
#include "geometry/kernel/make.h"
#include "geometry/kernel/shape.h"
#include "geometry/solid.h"

namespace geometry {

using kernel::guarded;
using kernel::shape_of;

namespace {

GProp_GProps properties(const TopoDS_Shape& shape) {
  GProp_GProps result;
  BRepGProp::VolumeProperties(shape, result);
  return result;
}

}  // namespace

Volume volume(const Solid& solid) {
  return guarded("measure a volume", [&] { return Volume{properties(shape_of(solid)).Mass()}; });
}

Vec3 centre_of_mass(const Solid& solid) {
  return guarded("find a centre of mass",
                 [&] { return kernel::from(properties(shape_of(solid)).CentreOfMass()); });
}

Box bounds(const Solid& solid) {
  return guarded("measure bounds", [&] {
    Bnd_Box found;
    BRepBndLib::AddOptimal(shape_of(solid), found, false, false);
    Box box;
    box.add(kernel::from(found.CornerMin()));
    box.add(kernel::from(found.CornerMax()));
    return box;
  });
}

bool is_valid(const Solid& solid) {
  return guarded("check a solid", [&] {
    const TopoDS_Shape& shape = shape_of(solid);
    int solids = 0, shells = 0;
    for (TopExp_Explorer e(shape, TopAbs_SOLID); e.More(); e.Next()) ++solids;
    for (TopExp_Explorer e(shape, TopAbs_SHELL); e.More(); e.Next()) {
      ++shells;
      if (!e.Current().Closed() && !BRep_Tool::IsClosed(e.Current())) return false;
    }
    return solids == 1 && shells == 1 && BRepCheck_Analyzer(shape).IsValid() && properties(shape).Mass() > 0;
  });
}

Length distance(const Solid& a, const Solid& b) {
  return guarded("measure a distance", [&] {
    BRepExtrema_DistShapeShape extrema(shape_of(a), shape_of(b));
    if (!extrema.IsDone()) kernel::fail("measure a distance", "no answer");
    return mm(extrema.InnerSolution() ? 0 : extrema.Value());
  });
}

Overlap overlap(const Solid& a, const Solid& b) {
  return guarded("intersect two solids", [&] {
    BRepAlgoAPI_Common common(shape_of(a), shape_of(b));
    if (common.HasErrors()) kernel::fail("intersect two solids", "the boolean failed");
    const GProp_GProps found = properties(common.Shape());
    return Overlap{{found.Mass()}, found.Mass() > 0 ? kernel::from(found.CentreOfMass()) : Vec3{}};
  });
}

Mesh mesh(const Solid& solid, Length chord) {
  return guarded("make triangles", [&] {
    // Triangles are stored in the kernel's faces; a copy keeps the solid itself unchanged.
    const TopoDS_Shape copy = BRepBuilderAPI_Copy(shape_of(solid)).Shape();
    BRepMesh_IncrementalMesh(copy, chord.mm(), false, 0.3, false);
    Mesh result;
    std::map<std::tuple<double, double, double>, std::uint32_t>
        known;  // faces share the points of their edges
    for (TopExp_Explorer e(copy, TopAbs_FACE); e.More(); e.Next()) {
      const TopoDS_Face& face = TopoDS::Face(e.Current());
      TopLoc_Location location;
      const Handle(Poly_Triangulation) triangles = BRep_Tool::Triangulation(face, location);
      if (triangles.IsNull()) kernel::fail("make triangles", "a face has none");
      std::vector<std::uint32_t> index(static_cast<std::size_t>(triangles->NbNodes()) + 1);
      for (int i = 1; i <= triangles->NbNodes(); ++i) {
        const gp_Pnt p = triangles->Node(i).Transformed(location.Transformation());
        // Rounded to a nanometre so that the two faces of an edge find the same point.
        const auto round = [](double v) { return std::round(v * 1e6) / 1e6 + 0.0; };
        const std::tuple key{round(p.X()), round(p.Y()), round(p.Z())};
        const auto [at, fresh] = known.emplace(key, static_cast<std::uint32_t>(result.points.size()));
        if (fresh) result.points.push_back({std::get<0>(key), std::get<1>(key), std::get<2>(key)});
        index[static_cast<std::size_t>(i)] = at->second;
      }
      for (int i = 1; i <= triangles->NbTriangles(); ++i) {
        int a = 0, b = 0, c = 0;
        triangles->Triangle(i).Get(a, b, c);
        if (face.Orientation() == TopAbs_REVERSED) std::swap(b, c);
        const std::array<std::uint32_t, 3> triangle{index[static_cast<std::size_t>(a)],
                                                    index[static_cast<std::size_t>(b)],
                                                    index[static_cast<std::size_t>(c)]};
        if (triangle[0] != triangle[1] && triangle[1] != triangle[2] && triangle[2] != triangle[0])
          result.triangles.push_back(triangle);
      }
    }
    return result;
  });
}

}  // namespace geometry
