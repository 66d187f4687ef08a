#include "support/sample_plan.h"

#include <cmath>

namespace support {

namespace {

using geometry::mm;
using geometry::Placement;
using geometry::Vec3;
using models::Group;
using models::Side;

models::Mark mark(const std::string& label, const std::string& name, Group group, const std::string& stock,
                  models::Material::Form form, geometry::Body body) {
  geometry::Solid solid = geometry::make_solid(body);
  return {label, {stock, form}, group, name, std::move(body), std::move(solid), {}, 0};
}

geometry::Body rafter() {
  geometry::Body body;
  body.outline.outer = {{64, 0}, {450, 0}, {474, 24}, {498, 0}, {700, 0}, {700, 64}, {0, 64}};
  body.thickness = mm(38);
  return body;
}

geometry::Body panel() {
  geometry::Body body;
  body.outline = geometry::rectangle(mm(600), mm(400));
  body.outline.holes = {{{100, 100}, {100, 250}, {300, 250}, {300, 100}}};
  body.thickness = mm(12);
  return body;
}

// On end: the grain runs up, the width back, the thickness from right to left.
Placement upright(double x, double y) { return geometry::placement({x + 38, y, 0}, {0, 0, 1}, {0, 1, 0}); }
// Lying along the wall: the grain runs right, the width back.
Placement along(double x, double y, double z) { return geometry::shift({x, y, z}); }

}  // namespace

models::Building sample_building() {
  using Form = models::Material::Form;
  models::Building building;

  geometry::Body rail = geometry::stick(mm(1124), mm(38), mm(38));
  rail.bores = {{{100, 19}, mm(8)}, {{1024, 19}, mm(8)}};
  geometry::Body brace = geometry::stick(mm(500), mm(38), mm(38));
  brace.bevels = {{{500, 0, 0}, {std::sqrt(0.5), 0, std::sqrt(0.5)}}};
  geometry::Body perch = geometry::stick(mm(1000), mm(45), mm(45));
  perch.rounding = mm(6);
  building.marks = {
      mark("F1", "post", Group::frame, "2x2", Form::stick, geometry::stick(mm(900), mm(38), mm(38))),
      mark("F2", "rail", Group::frame, "2x2", Form::stick, rail),
      mark("F3", "brace", Group::frame, "2x2", Form::stick, brace),
      mark("R1", "rafter", Group::roof, "2x3", Form::stick, rafter()),
      mark("P1", "panel", Group::cladding, "12 mm plywood", Form::sheet, panel()),
      mark("B1", "perch", Group::roost, "2x2", Form::stick, perch),
      mark("M1", "mesh", Group::mesh, "1/2 in mesh", Form::mesh, geometry::stick(mm(500), mm(300), mm(1))),
  };

  const double s = std::sqrt(0.5);
  building.parts = {
      {0, "left post", Group::frame, Side::front, upright(0, 0)},
      {0, "right post", Group::frame, Side::front, upright(1162, 0)},
      {1, "bottom rail", Group::frame, Side::front, along(38, 0, 0)},
      {1, "top rail", Group::frame, Side::front, along(38, 0, 862)},
      {2, "brace", Group::frame, Side::front, along(200, 0, 400)},
      {0, "left post", Group::frame, Side::back, upright(0, 762)},
      {0, "prop", Group::roost, Side::back, upright(1162, 762)},  // the same stick put to another use
      {4, "panel", Group::cladding, Side::back, geometry::placement({300, 800, 200}, {1, 0, 0}, {0, 0, 1})},
      {3, "front rafter", Group::roof, std::nullopt,
       geometry::placement({300, -100, 800}, {0, s, s}, {0, -s, s})},
      {3, "back rafter", Group::roof, std::nullopt,
       geometry::placement({338, 900, 800}, {0, -s, s}, {0, s, s})},
      {5, "perch", Group::roost, std::nullopt, along(100, 400, 500)},
      {6, "mesh", Group::mesh, Side::back, geometry::placement({350, 801, 250}, {1, 0, 0}, {0, 0, 1})},
  };
  building.marks[6].material.opening = geometry::inches(0.5);
  for (const models::Part& part : building.parts) ++building.marks[part.mark].count;
  building.tree = {
      "H\xC3\xBChnerhaus 'O''Neill'",
      {{"front wall", {}, {0, 1, 2, 3, 4}}, {"back wall", {}, {5, 6, 7, 11}}, {"roof", {}, {8, 9}}},
      {10}};
  return building;
}

exporters::Plan sample_plan() {
  exporters::Plan plan;
  plan.name = "sample";
  plan.design.name = "H\xC3\xBChnerhaus";
  plan.design.flock = {6, 2, models::BodySize::medium};
  plan.design.house.width = mm(1200);
  plan.design.house.depth = mm(800);
  plan.design.house.wall_height = mm(900);
  plan.design.house.framing = {"2x2", mm(38), mm(38)};
  for (const Side side : {Side::front, Side::right, Side::back, Side::left})
    plan.design.walls.push_back({side, {}, {}});
  models::Opening opening;
  opening.name = "back door";
  opening.left = mm(300);
  opening.width = mm(600);
  opening.height = mm(400);
  plan.design.walls[2].openings.push_back(opening);
  opening.kind = models::OpeningKind::vent;
  opening.name = "vent";
  plan.design.walls[2].openings.push_back(opening);
  plan.design.roof.pitch = geometry::degrees(45);
  plan.design.roof.rafters = {"2x3", mm(38), mm(64)};

  plan.building = sample_building();
  models::Mover hinged;
  hinged.name = "back door";
  hinged.wall = Side::back;
  hinged.line = 12;
  hinged.parts = {7};
  hinged.axis = {{300, 812, 200}, {0, 0, 1}};
  hinged.opens = geometry::degrees(110);
  hinged.reveal = mm(3);
  models::Mover sliding = hinged;
  sliding.name = "bird door";
  sliding.kind = models::DoorKind::sliding;
  sliding.ignored = {5, 6};
  sliding.travel = {250, 0, 0};
  models::Mover loose = hinged;
  loose.name = "nest door";
  loose.kind = models::DoorKind::lift_off;
  loose.closes = models::OpeningKind::nest_door;
  plan.building.movers = {hinged, sliding, loose};
  plan.building.frames = {{"front wall frame",
                           "wall",
                           geometry::placement({0, 0, 0}, {1, 0, 0}, {0, 0, 1}),
                           mm(1200),
                           mm(900),
                           {0, 1, 2, 3},
                           {{"bird door", {400, 38}, {700, 400}}}}};
  models::Finding finding;
  finding.rule = "fit.overlap";
  finding.message = "The brace runs through nothing.";
  finding.parts = {2, 4};
  finding.place = {200, 19, 400};
  finding.measured = "0 mm";
  finding.source = "common practice";
  plan.findings = {finding};
  return plan;
}

}  // namespace support
