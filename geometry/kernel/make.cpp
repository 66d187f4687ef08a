#include "geometry/kernel/make.h"

#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>

#include "geometry/kernel/guard.h"
#include "geometry/kernel/shape.h"

namespace geometry::kernel {

gp_Trsf transformation(const Placement& p) {
  gp_Trsf t;
  t.SetValues(p.x.x, p.y.x, p.z.x, p.origin.x, p.x.y, p.y.y, p.z.y, p.origin.y, p.x.z, p.y.z, p.z.z,
              p.origin.z);
  return t;
}

Solid wrap(const TopoDS_Shape& shape) { return Solid(std::make_shared<const Shape>(Shape{shape})); }

Solid only_solid(const char* operation, const TopoDS_Shape& shape) {
  TopoDS_Shape found;
  int count = 0;
  for (TopExp_Explorer explorer(shape, TopAbs_SOLID); explorer.More(); explorer.Next(), ++count)
    found = explorer.Current();
  if (count != 1) fail(operation, count == 0 ? "nothing is left" : "it falls into several pieces");
  return wrap(found);
}

}  // namespace geometry::kernel
