// The kinds of floor, cover, cladding, leaf, nest and pen beyond the plain house: each built into the sample and held
// against what a person would measure, and none in anything else's way.
#include <algorithm>
#include <cmath>
#include <set>

#include <gtest/gtest.h>

#include "geometry/tolerance.h"
#include "models/buildable.h"
#include "models/checks.h"
#include "models/contacts.h"
#include "models/grounds.h"
#include "models/roof_shape.h"
#include "models/scene.h"
#include "tests/support/sample_design.h"

namespace models {
namespace {

using namespace geometry::literals;
using geometry::inches;
using test_support::sample_design;

const Mesh half_inch{"1/2 hardware cloth", inches(0.459), inches(0.041), inches(36), inches(600)};
const Sheet half_ply{"1/2 plywood", inches(0.5), inches(48), inches(96)};
const Lumber two_by_two{"2x2", inches(1.5), inches(1.5)}, two_by_four{"2x4", inches(1.5), inches(3.5)},
    one_by_three{"1x3", inches(0.75), inches(2.5)}, one_by_four{"1x4", inches(0.75), inches(3.5)},
    one_by_six{"1x6", inches(0.75), inches(5.5)};

// Builds it, and fails on invalid solids and on anything that a check calls an error. These houses show one element each
// and are not all closed (a house on skids needs an apron): whether animals get in is not asked.
Building sound(const Design& design) {
  Building building = build(design);
  for (const Mark& mark : building.marks)
    EXPECT_TRUE(geometry::is_valid(mark.solid)) << mark.label << " " << mark.name;
  for (const Finding& f : check(design, building))
    EXPECT_TRUE(f.severity != Severity::error || f.rule == "passage.way-in")
        << f.rule << ": " << f.message << "; " << f.measured << "; " << f.advice;
  return building;
}

std::vector<std::size_t> named(const Building& building, const std::string& name) {
  std::vector<std::size_t> parts;
  for (std::size_t i = 0; i < building.parts.size(); ++i)
    if (building.parts[i].name == name) parts.push_back(i);
  return parts;
}

geometry::Box box_of(const Building& building, const std::string& name) {
  const Scene standing = scene(building);
  geometry::Box box;
  for (const std::size_t part : named(building, name)) box.add(standing.parts[part].box);
  return box;
}

TEST(RaisedFloor, StandsOnLegsAtTheHeightAsked) {
  Design d = sample_design();
  d.floor = RaisedFloor{0, inches(12), two_by_four, two_by_four, two_by_two, inches(16), {}, half_ply};
  const Building b = sound(d);
  // Deck, joists, bearers and the clear height below: 0.5 + 3.5 + 3.5 + 12 in under the bottom rails.
  EXPECT_NEAR(b.ground, -19.5 * 25.4, 1e-9);
  EXPECT_NEAR(box_of(b, "leg").low.z, b.ground, 1e-9);
  EXPECT_NEAR(box_of(b, "leg").high.z - b.ground, 12 * 25.4, 1e-9);
  EXPECT_NEAR(box_of(b, "deck sheet").high.z, 0, 1e-9);
  // Joists over 72 in, no farther than 16 in apart: five bays, six joists.
  EXPECT_EQ(named(b, "joist").size(), 6U);
}

TEST(Base, SkidsAndBlocksCarryTheBottomRails) {
  Design d = sample_design();
  d.base = Base{0, BaseKind::skids, {}, {}, {}, {}, two_by_four};
  EXPECT_NEAR(sound(d).ground, -3.5 * 25.4, 1e-9);
  d.base = Base{0, BaseKind::blocks, {}, {}, 390_mm, 190_mm, {}};
  const Building b = sound(d);
  EXPECT_NEAR(b.ground, -190, 1e-9);
  EXPECT_EQ(named(b, "block").size(), 6U);  // 72 in is more than 1200 mm: three a side
}

TEST(Base, KeepsClearOfTheRun) {
  for (const BaseKind kind : {BaseKind::skids, BaseKind::blocks}) {
    for (const Side wall : {Side::front, Side::right, Side::back, Side::left}) {
      Design d = sample_design();
      d.base = Base{0, kind, {}, {}, 390_mm, 190_mm, two_by_four};
      RunPen run;
      run.wall = wall;
      run.length = inches(60);
      run.width = inches(40);
      run.height = inches(40);
      run.framing = two_by_two;
      run.post_spacing = inches(36);
      run.mesh = half_inch;
      d.run = run;
      const Building b = build(d);
      const std::string name = kind == BaseKind::skids ? "skid" : "block";
      // On the run's side it ends with the frame, 72 in by 60 in.
      const geometry::Box base = box_of(b, name);
      const double over[] = {-base.low.y, base.high.x - 72 * 25.4, base.high.y - 60 * 25.4, -base.low.x};
      EXPECT_LE(over[static_cast<int>(wall)], 1e-9);
      // Skids reach 150 mm past the other end; blocks stand level with the frame all round.
      EXPECT_NEAR(*std::max_element(std::begin(over), std::end(over)), kind == BaseKind::skids ? 150 : 0,
                  1e-9);
      const Scene standing = scene(b);
      for (const std::size_t part : named(b, name)) {
        for (std::size_t other = 0; other < b.parts.size(); ++other) {
          if (other == part) continue;
          EXPECT_GE(part_clearance(standing, part, other).distance, -geometry::contact)
              << b.parts[other].name;
        }
      }
    }
  }
}

TEST(Base, TheStoneRingHasTheAreaOfABandUnderTheWalls) {
  Design d = sample_design();
  d.base = Base{0, BaseKind::stone, inches(9.5), inches(6), {}, {}, {}};
  // 9.5 in wide, 1.5 in of it under the frame: 4 in either side. (72 + 8)(60 + 8) - (72 - 11)(60 - 11) in2.
  EXPECT_NEAR(stone_ring(d).area.mm2 / 645.16, 80 * 68 - 61 * 49, 1e-6);
  EXPECT_NEAR(stone_ring(d).volume.mm3 / 16387.064, (80 * 68 - 61 * 49) * 6, 1e-4);
}

TEST(ApronAndRun, LieAndStandAsAsked) {
  Design d = sample_design();
  d.apron = Apron{0, half_inch, inches(2), inches(12)};
  RunPen run;
  run.wall = Side::right;
  run.length = inches(120);
  run.width = inches(58);
  run.height = inches(52);
  run.framing = two_by_two;
  run.post_spacing = inches(36);
  run.mesh = half_inch;
  run.door_width = inches(24);
  d.run = run;
  const Building b = sound(d);
  const geometry::Box apron = box_of(b, "apron mesh");
  // House 72 in wide, slats 3/4 in, run 120 in, and 12 in of apron beyond on both sides.
  EXPECT_NEAR(apron.size().x / 25.4, 72 + 0.75 + 120 + 24, 1e-6);
  EXPECT_NEAR(apron.size().y / 25.4, 60 + 24, 1e-6);
  EXPECT_NEAR(apron.high.z / 25.4, -2 - 0.041 + 0.041, 1e-6);
  const PlanRectangle plan = run_plan(d);
  EXPECT_NEAR((plan.high.x - plan.low.x) * (plan.high.y - plan.low.y) / 92903.04, 120.0 * 58 / 144, 1e-6);
  EXPECT_EQ(
      std::count_if(b.movers.begin(), b.movers.end(), [](const Mover& m) { return m.name == "run door"; }),
      1);
}

TEST(Vents, AreClosedWithMeshHeldByBattens) {
  Design d = sample_design();
  Opening vent;
  vent.kind = OpeningKind::vent;
  vent.name = "vent";
  vent.left = inches(24);
  vent.bottom = inches(46);
  vent.width = inches(12);
  vent.height = inches(6);
  vent.mesh = half_inch;
  vent.battens = one_by_three;
  d.walls[2].openings.push_back(vent);
  vent.kind = OpeningKind::round_vent;
  vent.name = "round vent";
  vent.left = inches(44);
  vent.height = vent.width = inches(6);
  d.walls[2].openings.push_back(vent);
  const Building b = sound(d);
  EXPECT_EQ(named(b, "mesh").size(), 2U);
  EXPECT_EQ(named(b, "batten").size(), 8U);
  // Mesh laps the opening by a batten's width all round: 12 + 5 by 6 + 5.
  const Mark& mesh = b.mark_of(named(b, "mesh").front());
  EXPECT_NEAR(geometry::area(mesh.body.outline).mm2 / 645.16, 17 * 11, 1e-6);
}

TEST(Leaves, OfOneSheetSlidingUpAndLiftingOff) {
  Design d = sample_design();
  Door& door = d.walls[0].openings.front().door;
  door.sheet = half_ply;
  Building b = sound(d);
  ASSERT_EQ(named(b, "leaf sheet").size(), 1U);
  EXPECT_NEAR(geometry::area(b.mark_of(named(b, "leaf sheet")[0]).body.outline).mm2 / 645.16, 23.75 * 43.75,
              1e-6);

  door.kind = DoorKind::lift_off;
  b = sound(d);
  EXPECT_NEAR(b.movers.front().travel.y, -(0.5 * 25.4 + 100), 1e-9);  // straight out of the front wall

  Opening bird;
  bird.kind = OpeningKind::bird_door;
  bird.name = "bird door";
  bird.left = inches(20);
  bird.bottom = inches(8);
  bird.width = inches(12);
  bird.height = inches(14);
  bird.door = door;
  bird.door.kind = DoorKind::sliding;
  bird.door.edge = Edge::top;
  bird.door.lap = inches(1);
  bird.ramp = half_ply;
  bird.ramp_length = inches(24);
  d.walls[2].openings.push_back(bird);
  b = sound(d);
  const auto mover =
      std::find_if(b.movers.begin(), b.movers.end(), [](const Mover& m) { return m.name == "bird door"; });
  ASSERT_NE(mover, b.movers.end());
  EXPECT_NEAR(mover->travel.z, 15 * 25.4, 1e-9);  // its height and its lap
  // The ramp's foot is on the ground, its head under the leaf's stop: 8 - 1 - 1.5 in up.
  const geometry::Box ramp = box_of(b, "ramp");
  EXPECT_NEAR(ramp.high.z / 25.4, 5.5, 1e-6);
  EXPECT_LE(std::abs(ramp.low.z), 0.5 * 25.4 + 1e-6);
}

TEST(OutsideNests, OpenIntoTheHouseUnderASlopedLid) {
  Design d = sample_design();
  Nests n;
  n.outside = true;
  n.lid_pitch = 15_deg;
  n.lid_overhang = inches(1.5);
  n.wall = Side::left;
  n.count = 3;
  n.left = inches(9);
  n.bottom = inches(20);
  n.width = inches(12);
  n.depth = inches(13);
  n.height = inches(15);
  n.lip = inches(4);
  n.panel = half_ply;
  n.ledges = two_by_two;
  n.lip_board = one_by_six;
  d.nests = n;
  const Building b = sound(d);
  EXPECT_EQ(named(b, "nest divider").size(), 2U);
  EXPECT_EQ(named(b, "nest end").size(), 2U);
  // Front height under the lid: 15 in less 13.5 in of depth at 15 degrees.
  const Mark& front = b.mark_of(named(b, "nest front").front());
  EXPECT_NEAR(front.body.outline.outer.size(), 4, 0);
  EXPECT_NEAR(geometry::high(front.body.outline).y / 25.4, 15 - 13.5 * std::tan(15 * 3.14159265358979 / 180),
              1e-6);
  EXPECT_EQ(
      std::count_if(b.movers.begin(), b.movers.end(), [](const Mover& m) { return m.name == "nest lid"; }),
      1);
}

// Boards of 1x6 that lap by an inch.
Design lapped_sample() {
  Design d = sample_design();
  for (Wall& wall : d.walls) {
    wall.cladding.kind = CladdingKind::lapped;
    wall.cladding.slats = one_by_six;
    wall.cladding.lap = inches(1);
  }
  d.roof.gable_overhang = inches(6);
  return d;
}

TEST(Cladding, LappedBoardsLeanOnEachOther) {
  const Design d = lapped_sample();
  const Building b = sound(d);
  // Each board lies flat on the one below: 3/4 in out from it, square to its face, and 4-1/2 in up along it.
  const std::vector<std::size_t> boards = named(b, "lapped board");
  const Placement &lowest = b.parts[boards[0]].placement, &next = b.parts[boards[1]].placement;
  EXPECT_NEAR(std::abs(lowest.z.z), std::sin(std::atan(0.75 / 4.5)), 1e-9);
  EXPECT_NEAR(norm(lowest.z - next.z), 0, 1e-9);
  EXPECT_NEAR(norm(next.origin - lowest.origin), inches(std::hypot(0.75, 4.5)).mm(), 1e-6);
  EXPECT_NEAR(std::abs(dot(next.origin - lowest.origin, lowest.z)), inches(0.75).mm(), 1e-6);
}

TEST(Cladding, BoardsAboveTheTopRailAreScrewedToCleats) {
  // Narrow boards, level: the uppermost lie wholly over the eaves' top rails, up to the rafters' upper edges.
  Design d = sample_design();
  for (Wall& wall : d.walls) {
    wall.cladding.run = Run::level;
    wall.cladding.slats = Lumber{"1x2", inches(0.75), inches(1.5)};
  }
  const Building b = sound(d);  // nothing unheld among it
  // One on each side of each of four rafters, but none past the end ones; at two eaves.
  const std::vector<std::size_t> cleats = named(b, "slat cleat");
  EXPECT_EQ(cleats.size(), 12U);
  // From the rail up to where the rafters' upper edges are over the boards' faces: 3-1/2 in plumb at 8 in 12, less the
  // notch of 1 in, less 3/4 in outwards.
  const double height = 3.5 * std::sqrt(1 + 4.0 / 9) - 1 - 0.75 * 2 / 3;
  for (const std::size_t cleat : cleats)
    EXPECT_NEAR(geometry::high(b.mark_of(cleat).body.outline).x / 25.4, height, 1e-9);
  std::set<std::size_t> stand, hold;
  for (const Joint& j : joints(b, scene(b)))
    for (const auto& [one, other] : {std::pair{j.a, j.b}, {j.b, j.a}}) {
      if (b.parts[one].name != "slat cleat") continue;
      if (b.parts[other].name == "top rail") stand.insert(one);
      if (b.parts[other].name == "slat") hold.insert(one);
    }
  EXPECT_EQ(stand.size(), 12U);
  EXPECT_EQ(hold.size(), 12U);
  // Boards that reach down onto the rail need none.
  for (Wall& wall : d.walls) wall.cladding.run = Run::upright;
  EXPECT_TRUE(named(build(d), "slat cleat").empty());
}

TEST(Cladding, LappedBoardsButtAgainstStripsThatCloseTheWedgeBehindThem) {
  // The wedge of air behind a board of 3/4 in lets a mouse run along it: closed at the corners, round the door and at the
  // foot, nothing of half an inch gets in.
  const Design d = lapped_sample();
  const Building b = sound(d);
  for (const Finding& f : check(d, b))
    EXPECT_TRUE(f.rule != "passage.way-in" || f.severity != Severity::error) << f.message;
  // On the front wall: two at its ends, four round the door.
  std::size_t front = 0;
  for (const std::size_t i : named(b, "edge strip")) {
    front += b.parts[i].wall == Side::front;
    // Half of a post's 1-1/2 in, or where a gable's boards lap over the corner as much more; as thick as the boards.
    EXPECT_NEAR(b.mark_of(i).body.thickness.inches(), 0.75, 1e-12);
  }
  EXPECT_EQ(front, 6U);
  // The starter is as high as the first board's back takes to come 3/4 in out: 4-1/2 in less than the board is high.
  const double high = 5.5 * std::cos(std::atan(0.75 / 4.5)) - 4.5;
  for (const std::size_t i : named(b, "starter strip"))
    EXPECT_NEAR(geometry::high(b.mark_of(i).body.outline).y / 25.4, high, 1e-6);
}

TEST(Cladding, SheetsCoverTheWallOnce) {
  Design d = sample_design();
  for (Wall& wall : d.walls) {
    wall.cladding.kind = CladdingKind::sheets;
    wall.cladding.sheet = half_ply;
  }
  d.roof.gable_overhang = geometry::Length();
  const Building b = sound(d);
  double front = 0;
  for (const Part& part : b.parts)
    if (part.group == Group::cladding && part.wall == Side::front)
      front += geometry::area(b.marks[part.mark].body.outline).mm2;
  const double hap = 3.5 * std::sqrt(1 + 4.0 / 9) - 1.0;  // above the rail's outer face
  EXPECT_NEAR(front / 645.16, 73 * (60 + hap - 1.0 / 3) + 36.5 * 36.5 * 2 / 3 - 24 * 44, 1e-4);
}

TEST(RoofEdges, FasciaBargeAndAirGaps) {
  Design d = sample_design();
  d.roof.fascia = one_by_four;
  d.roof.barge = one_by_four;
  d.roof.eave_gap = inches(1);
  d.roof.ridge_gap = inches(1);
  d.roof.mesh = half_inch;
  const Building b = sound(d);
  EXPECT_EQ(named(b, "fascia").size(), 2U);
  EXPECT_EQ(named(b, "barge board").size(), 4U);
  EXPECT_GE(named(b, "vent mesh").size(), 4U);
  // Each half of the cover: from past the fascia to an inch short of the centre, along the slope.
  const double up = (36 + 8 + 0.75 - 1) * std::sqrt(1 + 4.0 / 9);
  EXPECT_NEAR(roof_shape(d.house, d.roof).slope_length() / 25.4, up, 1e-9);
}

TEST(RoofEdges, OfASingleSlope) {
  Design d = sample_design(4);
  d.roof.kind = RoofKind::single_slope;
  d.roof.rises_to = Side::back;
  d.roof.fascia = one_by_four;
  d.roof.barge = one_by_four;
  d.roof.eave_gap = inches(1);
  d.roof.mesh = half_inch;
  sound(d);
}

TEST(RoofEdges, AFasciaOnSquareTailsLeansWithThem) {
  Design d = sample_design();
  d.roof.tails = TailCut::square;
  d.roof.fascia = one_by_four;
  for (const bool gable : {true, false}) {
    d.roof.kind = gable ? RoofKind::gable : RoofKind::single_slope;
    const Building b = sound(d);
    for (const std::size_t fascia : named(b, "fascia")) {
      // 8 in 12: its face leans from upright by as much as the roof from level, cosine 12 / sqrt(208).
      EXPECT_NEAR(std::abs(b.parts[fascia].placement.y.z), 12 / std::sqrt(208.0), 1e-9);
      // It lies against every tail over its width and the rafter's thickness, and the cover on all of its upper edge.
      int tails = 0;
      for (const Joint& j : joints(b, scene(b)))
        if (j.b == fascia && b.parts[j.a].name == "rafter") {
          EXPECT_NEAR(j.area.mm2 / 645.16, 3.5 * 1.5, 1e-4);
          ++tails;
        }
      EXPECT_EQ(tails, 4);
    }
  }
}

TEST(RoofEdges, AFasciaThatLeansIntoTheWallIsRefused) {
  // A 1x4 on square tails at 8 in 12 reaches 3-1/2 in x 8 / sqrt(208) = 1.94 in back, to boards 3/4 in thick.
  Design d = sample_design();
  d.roof.tails = TailCut::square;
  d.roof.fascia = one_by_four;
  const double least = 3.5 * 8 / std::sqrt(208.0) + 0.75;
  d.roof.eave_overhang = inches(least + 0.01);
  EXPECT_TRUE(unbuildable(d).empty());
  sound(d);
  d.roof.eave_overhang = inches(least - 0.01);
  ASSERT_FALSE(unbuildable(d).empty());
  EXPECT_NE(unbuildable(d).front().message.find("with a fascia"), std::string::npos);
}

TEST(Cover, ProfiledSheetsAreDrawnToTheWidthTheyCover) {
  Design d = sample_design();
  d.roof.boards.reset();
  d.roof.corrugated =
      Corrugated{"corrugated steel", inches(0.75), inches(26), inches(24), inches(96), inches(6)};
  const Building b = sound(d);
  EXPECT_EQ(named(b, "roof panel").size(), 6U);  // 60 + 12 in at 24 in: three a half
}

TEST(CornerTrim, CoversTheCladdingsEdges) {
  Design d = sample_design();
  d.house.corner_trim = one_by_three;
  const Building b = sound(d);
  EXPECT_EQ(named(b, "corner trim").size(), 8U);
}

TEST(Roosts, MayStepDownAndHaveADroppingsBoard) {
  Design d = sample_design();
  Roosts r;
  r.count = 2;
  r.along_x = true;
  r.first = inches(8);
  r.spacing = inches(12);
  r.height = inches(36);
  r.step = inches(4);
  r.bars = two_by_four;
  r.rounding = inches(0.5);
  r.ledges = two_by_two;
  r.droppings_board = half_ply;
  d.roosts = r;
  const Building b = sound(d);
  EXPECT_EQ(named(b, "roost ledge").size(), 4U);
  EXPECT_EQ(named(b, "droppings board").size(), 1U);
  EXPECT_NEAR(box_of(b, "roost bar").high.z / 25.4, 36, 1e-9);
}

TEST(ExtraParts, AreCutAndPlacedAsSaid) {
  Design d;
  d.has_house = false;
  d.name = "brace";
  ExtraStick brace;
  brace.name = "brace";
  brace.lumber = two_by_two;
  brace.length = inches(30);
  brace.left_mitre = 45_deg;
  brace.right_mitre = -(45_deg);
  brace.right_bevel = 10_deg;
  brace.placement = geometry::shift({100, 200, 300});
  d.extra_sticks.push_back(brace);
  const Building b = build(d);
  ASSERT_EQ(b.parts.size(), 1U);
  EXPECT_TRUE(geometry::is_valid(b.marks[0].solid));
  // Mitres take a triangle of 1.5 x 1.5 in off either end; the bevel a wedge of 1.5 tan 10 more, on average half of it
  // through the thickness.
  const double wedge = 1.5 * std::tan(10 * 3.14159265358979 / 180) / 2 * 1.5 * 1.5;
  EXPECT_NEAR(geometry::volume(b.marks[0].solid).mm3 / 16387.064, 30 * 2.25 - 2 * 1.5 * 1.5 / 2 * 1.5 - wedge,
              1e-6);
}

}  // namespace
}  // namespace models
