// The run: two side panels, an end panel with a door, mesh over all of them and over the top.
#include <algorithm>
#include <cmath>

#include "models/flat_frame.h"
#include "models/grounds.h"
#include "models/splices.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::mm;
using geometry::Vec2;

// One flat panel: frame and mesh on its outer face.
struct Panel {
  std::string name;
  Placement plane;  // z outwards, frame behind z = 0
  double length;
  std::vector<FrameHole> holes;
};

// How far the run's parts stand off the wall: outside its cladding, and outside its corner boards where they meet them.
double wall_face(const Design& design) {
  const RunPen& run = *design.run;
  const double cladding = design.walls[static_cast<std::size_t>(run.wall)].cladding.thickness().mm();
  const std::optional<Lumber>& trim = design.house.corner_trim;
  const Length beside = (wall_length(design.house, run.wall) - run.width) / 2;
  return trim && beside < trim->width ? cladding + trim->thickness.mm() : cladding;
}

void add_mesh(Assembler& assembler, const Mesh& mesh, const Placement& plane,
              const geometry::Outline& outline, const std::vector<std::string>& path) {
  assembler.add({"run mesh", Group::mesh, mesh_of(mesh), {outline, mesh.wire, {}, {}, {}}, plane, {}}, path);
}

void add_panel(Assembler& assembler, const RunPen& run, const Panel& panel, double longest) {
  const std::vector<std::string> path{"run", panel.name};
  FrameSpec spec{
      0,  panel.length, run.height.mm(), run.framing.width.mm(), run.post_spacing.mm(), panel.holes,
      {}, {},           longest};
  std::vector<std::size_t> parts =
      add_members(assembler, frame_members(spec), run.framing, Group::run, panel.plane, {}, path);
  FrameView view{panel.name, "run", panel.plane, mm(panel.length), run.height, parts, {}};
  geometry::Region area{geometry::rectangle({0, 0}, {panel.length, run.height.mm()})};
  for (const FrameHole& hole : panel.holes) {
    view.openings.push_back({"run door", hole.low, hole.high});
    area = geometry::difference(area, {geometry::rectangle(hole.low, hole.high)});
  }
  for (const geometry::Outline& piece : area) add_mesh(assembler, run.mesh, panel.plane, piece, path);
  assembler.add(std::move(view));
}

// A leaf of sticks and mesh in the end panel, hinged at its left, opening outwards.
void add_door(Assembler& assembler, const RunPen& run, const Panel& panel) {
  const FrameHole& hole = panel.holes.front();
  const double reveal = 4, w = run.framing.width.mm();
  const Vec2 low = hole.low + Vec2{reveal, reveal}, high = hole.high - Vec2{reveal, reveal};
  const std::vector<std::string> path{"run", "run door"};
  std::vector<Member> members{{"stile", true, low, {low.x + w, high.y}},
                              {"stile", true, {high.x - w, low.y}, high},
                              {"leaf rail", false, {low.x + w, low.y}, {high.x - w, low.y + w}},
                              {"leaf rail", false, {low.x + w, high.y - w}, {high.x - w, high.y}}};
  const double middle = (low.y + high.y - w) / 2;
  members.push_back({"leaf rail", false, {low.x + w, middle}, {high.x - w, middle + w}});
  Mover mover;
  mover.name = "run door";
  mover.parts = add_members(assembler, members, run.framing, Group::door, panel.plane, {}, path);
  FrameView view{"run door leaf",
                 "leaf",
                 geometry::compose(panel.plane, geometry::shift({low.x, low.y, 0})),
                 mm(high.x - low.x),
                 mm(high.y - low.y),
                 mover.parts,
                 {}};
  mover.parts.push_back(assembler.building().parts.size());
  add_mesh(assembler, run.mesh, panel.plane, geometry::rectangle(low, high), path);
  mover.wall = run.wall;
  mover.line = run.line;
  mover.axis = {panel.plane.point({low.x - reveal / 2, 0, run.mesh.wire.mm()}),
                panel.plane.direction({0, -1, 0})};
  mover.opens = geometry::degrees(110);
  mover.reveal = mm(reveal);
  assembler.add(std::move(mover));
  assembler.add(std::move(view));
}

}  // namespace

PlanRectangle run_plan(const Design& design) {
  const RunPen& run = *design.run;
  const Placement plane = wall_plane(design.house, run.wall);
  const double length = wall_length(design.house, run.wall).mm(), from = (length - run.width.mm()) / 2;
  const Vec3 a = plane.point({from, 0, wall_face(design)});
  const Vec3 b = plane.point({from + run.width.mm(), 0, wall_face(design) + run.length.mm()});
  return {{std::min(a.x, b.x), std::min(a.y, b.y)}, {std::max(a.x, b.x), std::max(a.y, b.y)}};
}

void add_run(Assembler& assembler, const Design& design) {
  if (!design.run) return;
  const RunPen& run = *design.run;
  const Placement wall =
      geometry::compose(wall_plane(design.house, run.wall), geometry::shift({0, ground_level(design), 0}));
  const double face = wall_face(design), out = run.length.mm(), width = run.width.mm(),
               t = run.framing.thickness.mm();
  const double from = (wall_length(design.house, run.wall).mm() - width) / 2, to = from + width;
  const double w = run.framing.width.mm(), height = run.height.mm();

  // Side panels reach from the wall to the end panel, which runs across both.
  const Panel left{"run, left panel",
                   geometry::compose(wall, geometry::placement({from, 0, face}, {0, 0, 1}, {0, 1, 0})),
                   out - t,
                   {}};
  const Panel right{
      "run, right panel",
      geometry::compose(wall, geometry::placement({to, 0, face + out - t}, {0, 0, -1}, {0, 1, 0})),
      out - t,
      {}};
  Panel end{"run, end panel", geometry::compose(wall, geometry::shift({from, 0, face + out})), width, {}};
  if (run.door_width > Length()) {
    const double x = (width - run.door_width.mm()) / 2;
    end.holes.push_back({{x, w}, {x + run.door_width.mm(), height - w}});
  }
  const double longest = longest_board(design, run.framing).mm();
  add_panel(assembler, run, left, longest);
  add_panel(assembler, run, right, longest);
  add_panel(assembler, run, end, longest);
  if (!end.holes.empty()) add_door(assembler, run, end);
  if (!run.roof_mesh) return;

  // Cross rails lie level between the side panels, their upper faces level with the top rails; mesh over all.
  const std::vector<std::string> path{"run", "run, top"};
  const int bays = std::max(1, static_cast<int>(std::ceil(out / run.post_spacing.mm() - 1e-9)));
  for (int i = 1; i < bays; ++i) {
    const double z = face + out * i / bays;
    assembler.add({"cross rail",
                   Group::run,
                   stick_of(run.framing),
                   geometry::stick(mm(width - 2 * t), run.framing.width, run.framing.thickness),
                   geometry::compose(
                       wall, geometry::placement({from + t, height - w, z - t / 2}, {1, 0, 0}, {0, 1, 0})),
                   {}},
                  path);
  }
  add_mesh(assembler, run.mesh,
           geometry::compose(wall, geometry::placement({from, height, face}, {0, 0, 1}, {1, 0, 0})),
           geometry::rectangle({0, 0}, {out, width}), path);
}

}  // namespace models
