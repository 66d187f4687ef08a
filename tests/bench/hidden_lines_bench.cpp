// How long hidden lines take for growing stacks of slatted panels, square on and aslant, beside the kernel's own
// way. Run it by itself; nothing of it is a test.
#include <chrono>
#include <cstdio>

#include <HLRAlgo_Projector.hxx>
#include <HLRBRep_Algo.hxx>
#include <gp_Ax2.hxx>

#include "geometry/hidden_lines.h"
#include "geometry/kernel/make.h"
#include "geometry/kernel/shape.h"

namespace {

using namespace geometry;

double seconds_since(std::chrono::steady_clock::time_point begin) {
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

// Panels of twenty slats on three rails, one behind the other.
void run(int panels) {
  const Body slat_body = stick(mm(1500), mm(95), mm(19)), rail_body = stick(mm(2000), mm(63), mm(38));
  const DrawnBody slat = drawn_body(slat_body), rail = drawn_body(rail_body);
  const Solid slat_solid = make_solid(slat_body), rail_solid = make_solid(rail_body);
  std::vector<ViewedPart> parts;
  std::vector<Solid> solids;
  const auto add = [&](bool is_slat, const Placement& at) {
    parts.push_back({is_slat ? &slat : &rail, at, true});
    solids.push_back(placed(is_slat ? slat_solid : rail_solid, at));
  };
  for (int panel = 0; panel < panels; ++panel) {
    const double y = panel * 300;
    for (int i = 0; i < 20; ++i) add(true, placement({i * 100.0 + 95, y, 0}, {0, 0, 1}, {-1, 0, 0}));
    for (const double z : {0.0, 700.0, 1437.0}) add(false, placement({0, y + 57, z}, {1, 0, 0}, {0, 0, 1}));
  }
  for (const Vec3 towards : {Vec3{0, -1, 0}, Vec3{0.62, -1, 0.45}}) {
    const Placement view = view_from(towards);
    auto begin = std::chrono::steady_clock::now();
    const PictureLines lines = drawn_once(picture_lines(parts, view), std::vector<int>(parts.size(), 0));
    const double own = seconds_since(begin);
    std::printf("%5zu parts, %s: %6.3f s, %zu lines", parts.size(),
                towards.z == 0 ? "square on" : "aslant   ", own, lines.visible.size());
    if (parts.size() < 500) {
      begin = std::chrono::steady_clock::now();
      Handle(HLRBRep_Algo) algo = new HLRBRep_Algo;
      for (const Solid& solid : solids) algo->Add(kernel::shape_of(solid));
      algo->Projector(
          HLRAlgo_Projector(gp_Ax2(gp_Pnt(0, 0, 0), kernel::direction(view.z), kernel::direction(view.x))));
      algo->Update();
      algo->Hide();
      std::printf("; the kernel %6.3f s", seconds_since(begin));
    }
    std::printf("\n");
  }
}

}  // namespace

int main() {
  for (const int panels : {4, 13, 26, 43, 130}) run(panels);
}
