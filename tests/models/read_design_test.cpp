// Good design files: what they say, and what they leave to the defaults.
#include "models/read_design.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/buildable.h"
#include "tests/models/design_text.h"

namespace {

using geometry::degrees;
using geometry::feet;
using geometry::inches;
using geometry::Length;
using geometry::mm;
using models::Design;
using models::Lumber;
using models::Side;
using testing::IsEmpty;

// The design of a file that must have no problems.
Design design_of(const std::string& text, const std::vector<models::Override>& set = {}) {
  const auto result = models::read_design(text, "f.xml", set);
  EXPECT_THAT(test::printed(result.problems), IsEmpty());
  EXPECT_THAT(test::printed(result.remarks), IsEmpty());
  return result.design;
}

void expect_length(Length found, Length expected, const char* what) {
  EXPECT_NEAR(found.mm(), expected.mm(), 1e-9) << what;
}

void expect_lumber(const Lumber& found, const char* name, Length thickness, Length width) {
  EXPECT_EQ(found.name, name);
  expect_length(found.thickness, thickness, name);
  expect_length(found.width, width, name);
}

TEST(ReadDesign, EveryValueOfAFullDesign) {
  const Design design = design_of(test::full_design);
  EXPECT_EQ(design.name, "School garden house");
  EXPECT_EQ(design.file, "f.xml");
  EXPECT_EQ(design.units, models::Units::in);
  EXPECT_EQ(design.flock.birds, 5);
  EXPECT_EQ(design.flock.planned, 2);
  EXPECT_EQ(design.flock.size, models::BodySize::large);

  const auto& house = design.house;
  expect_length(house.width, feet(6), "width");
  expect_length(house.depth, inches(54), "depth");
  expect_length(house.wall_height, inches(48), "wall height");
  expect_length(house.post_spacing, inches(20), "post spacing");
  expect_lumber(house.framing, "2x2", inches(1.4375), inches(1.5));  // the stock's own
  EXPECT_EQ(house.corners, models::Corners::left_and_right_run);

  ASSERT_EQ(design.walls.size(), 4u);
  const auto& front = design.walls[0];
  expect_lumber(front.cladding.slats, "1x3", inches(0.75), inches(2.5));
  EXPECT_EQ(front.cladding.run, models::Run::level);  // as the house's
  expect_length(front.cladding.gap, inches(0), "gap");
  const auto& right = design.walls[1];
  expect_lumber(right.cladding.slats, "1x6", inches(0.75), inches(5.5));
  EXPECT_EQ(right.cladding.run, models::Run::level);
  expect_length(right.cladding.gap, inches(0.25), "gap");
  EXPECT_THAT(right.openings, IsEmpty());

  ASSERT_EQ(front.openings.size(), 2u);
  const auto& pop = front.openings[0];  // openings come from left to right, not in the file's order
  EXPECT_EQ(pop.name, "birds' door");
  EXPECT_EQ(pop.line, 17);
  EXPECT_EQ(pop.door.kind, models::DoorKind::sliding);
  EXPECT_EQ(pop.door.edge, models::Edge::left);
  expect_length(pop.door.lap, inches(0.75), "lap");
  expect_lumber(pop.door.slats, "1x3", inches(0.75), inches(2.5));  // as the wall's
  const auto& door = front.openings[1];
  EXPECT_EQ(door.name, "keeper's door");
  EXPECT_EQ(door.kind, models::OpeningKind::door);
  EXPECT_EQ(door.line, 14);
  expect_length(door.left, inches(30), "left");
  expect_length(door.bottom, inches(4), "bottom");
  expect_length(door.width, inches(24), "width");
  expect_length(door.height, inches(36), "height");
  EXPECT_EQ(door.door.kind, models::DoorKind::hinged);
  EXPECT_EQ(door.door.edge, models::Edge::right);
  EXPECT_EQ(door.door.swing, models::Swing::inward);
  EXPECT_NEAR(door.door.opens.degrees(), 95, 1e-9);
  expect_length(door.door.reveal, inches(3.0 / 16), "reveal");
  expect_lumber(door.door.frame, "1x2", inches(0.75), inches(1.5));
  expect_lumber(door.door.slats, "1x2", inches(0.75), inches(1.5));

  const auto& back = design.walls[2];
  ASSERT_EQ(back.openings.size(), 1u);
  EXPECT_EQ(back.openings[0].kind, models::OpeningKind::nest_door);
  EXPECT_EQ(back.openings[0].door.edge, models::Edge::top);

  const auto& roof = design.roof;
  EXPECT_EQ(roof.line, 24);
  EXPECT_NEAR(roof.rise_in_12, 10, 1e-12);
  // Framing square: 10 in 12 is 39.806 degrees.
  EXPECT_NEAR(roof.pitch.degrees(), 39.806, 0.0005);
  EXPECT_EQ(roof.ridge_runs, models::RidgeRuns::left_to_right);
  expect_length(roof.eave_overhang, inches(8), "eave");
  expect_length(roof.gable_overhang, inches(5), "gable");
  expect_lumber(roof.rafters, "2x3", inches(1.5), inches(2.5));
  expect_lumber(roof.ridge, "1x4", inches(0.75), inches(3.5));
  expect_length(roof.spacing, inches(16), "spacing");
  ASSERT_TRUE(roof.seat);
  expect_length(*roof.seat, inches(1.25), "seat");
  ASSERT_TRUE(roof.tie);
  expect_lumber(*roof.tie, "1x2", inches(0.75), inches(1.5));
  expect_length(roof.tie_height, inches(9), "tie");
  ASSERT_TRUE(roof.gussets);
  EXPECT_EQ(roof.gussets->name, "1/4 plywood");
  EXPECT_FALSE(roof.boards);
  ASSERT_TRUE(roof.sheets);
  EXPECT_EQ(roof.sheets->name, "roof ply");
  expect_length(roof.sheets->thickness, inches(15.0 / 32), "roof ply");
  expect_length(roof.sheets->width, feet(4), "roof ply");
  expect_length(roof.sheets->length, feet(8), "roof ply");

  ASSERT_TRUE(design.nests);
  EXPECT_EQ(design.nests->wall, Side::back);
  EXPECT_EQ(design.nests->line, 29);
  EXPECT_EQ(design.nests->count, 3);
  expect_length(design.nests->left, inches(8), "left");
  expect_length(design.nests->bottom, inches(20), "bottom");
  expect_length(design.nests->width, inches(11), "width");
  expect_length(design.nests->depth, inches(13), "depth");
  expect_length(design.nests->height, inches(15), "height");
  expect_length(design.nests->lip, inches(4), "lip");
  EXPECT_EQ(design.nests->panel.name, "3/8 plywood");
  EXPECT_EQ(design.nests->ledges.name, "1x2");
  EXPECT_EQ(design.nests->lip_board.name, "1x5");

  ASSERT_TRUE(design.roosts);
  EXPECT_EQ(design.roosts->line, 30);
  EXPECT_EQ(design.roosts->count, 2);
  EXPECT_FALSE(design.roosts->along_x);
  expect_length(design.roosts->first, inches(14), "first");
  expect_length(design.roosts->spacing, inches(11), "spacing");
  expect_length(design.roosts->height, inches(30), "height");
  expect_length(design.roosts->step, inches(6), "step");
  expect_lumber(design.roosts->bars, "ash bar", inches(1.25), inches(2));
  expect_length(design.roosts->rounding, inches(0.375), "rounding");
  EXPECT_EQ(design.roosts->ledges.name, "2x3");
}

TEST(ReadDesign, DefaultsOfADesignInInches) {
  const Design design =
      design_of(test::coop("<wall side='left'><door width='1ft' height='1ft'><slides/></door></wall>"
                           "<wall side='right'><door width='2ft' height='3ft'/></wall>"
                           "<roof><tie/><gussets/></roof><nests count='2'/><roosts count='2'/>"));
  EXPECT_EQ(design.name, "coop");
  EXPECT_EQ(design.flock.planned, 0);
  EXPECT_EQ(design.flock.size, models::BodySize::medium);
  expect_lumber(design.house.framing, "2x2", inches(1.5), inches(1.5));
  EXPECT_EQ(design.house.corners, models::Corners::front_and_back_run);
  expect_length(design.house.post_spacing, inches(24), "post spacing");

  ASSERT_EQ(design.walls.size(), 4u);
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_EQ(design.walls[i].side, static_cast<Side>(i));
    expect_lumber(design.walls[i].cladding.slats, "1x4", inches(0.75), inches(3.5));
    EXPECT_EQ(design.walls[i].cladding.run, models::Run::upright);
    expect_length(design.walls[i].cladding.gap, inches(0.125), "gap");
  }
  ASSERT_EQ(design.walls[1].openings.size(), 1u);
  const auto& door = design.walls[1].openings[0];
  EXPECT_EQ(door.name, "right door");
  expect_length(door.left, inches(12), "in the middle of 48 in");
  expect_length(door.bottom, inches(1.5), "on the bottom rail");
  EXPECT_EQ(door.door.kind, models::DoorKind::hinged);
  EXPECT_EQ(door.door.edge, models::Edge::left);
  EXPECT_EQ(door.door.swing, models::Swing::outward);
  EXPECT_NEAR(door.door.opens.degrees(), 110, 1e-9);
  expect_length(door.door.reveal, inches(0.125), "reveal");
  expect_lumber(door.door.frame, "1x3", inches(0.75), inches(2.5));
  expect_lumber(door.door.slats, "1x4", inches(0.75), inches(3.5));
  const auto& slider = design.walls[3].openings.at(0);
  EXPECT_EQ(slider.door.kind, models::DoorKind::sliding);
  EXPECT_EQ(slider.door.edge, models::Edge::left);
  expect_length(slider.door.lap, inches(1), "lap");
  expect_length(slider.bottom, inches(3), "on a sill rail that lies on the bottom rail");

  EXPECT_NEAR(design.roof.rise_in_12, 8, 1e-12);
  EXPECT_EQ(design.roof.ridge_runs, models::RidgeRuns::front_to_back);
  expect_length(design.roof.eave_overhang, inches(6), "eave");
  expect_length(design.roof.gable_overhang, inches(4), "gable");
  expect_lumber(design.roof.rafters, "2x4", inches(1.5), inches(3.5));
  expect_lumber(design.roof.ridge, "1x3", inches(0.75), inches(2.5));
  expect_length(design.roof.spacing, inches(24), "spacing");
  EXPECT_FALSE(design.roof.seat);
  ASSERT_TRUE(design.roof.tie);
  expect_lumber(*design.roof.tie, "1x3", inches(0.75), inches(2.5));
  expect_length(design.roof.tie_height, inches(8), "36 in of run rise 24 in; a third of that");
  ASSERT_TRUE(design.roof.gussets);
  EXPECT_EQ(design.roof.gussets->name, "1/2 plywood");
  EXPECT_FALSE(design.roof.sheets);
  ASSERT_TRUE(design.roof.boards);
  expect_lumber(*design.roof.boards, "1x6", inches(0.75), inches(5.5));

  ASSERT_TRUE(design.nests);
  EXPECT_EQ(design.nests->wall, Side::back);
  expect_length(design.nests->bottom, inches(18), "bottom");
  expect_length(design.nests->width, inches(12), "width");
  expect_length(design.nests->depth, inches(12), "depth");
  expect_length(design.nests->height, inches(18), "height");
  expect_length(design.nests->lip, inches(5.5), "lip");
  expect_length(design.nests->left, inches((72 - (2 * 12 + 3 * 0.5)) / 2), "in the middle");
  EXPECT_EQ(design.nests->panel.name, "1/2 plywood");
  EXPECT_EQ(design.nests->ledges.name, "2x2");
  EXPECT_EQ(design.nests->lip_board.name, "1x6");

  ASSERT_TRUE(design.roosts);
  EXPECT_TRUE(design.roosts->along_x);
  expect_length(design.roosts->first, inches(18), "first");
  expect_length(design.roosts->spacing, inches(12), "spacing");
  expect_length(design.roosts->height, inches(24), "height");
  expect_length(design.roosts->step, inches(0), "step");
  expect_lumber(design.roosts->bars, "2x2", inches(1.5), inches(1.5));
  expect_length(design.roosts->rounding, inches(0.5), "rounding");
  EXPECT_EQ(design.roosts->ledges.name, "2x2");
}

TEST(ReadDesign, DefaultsOfADesignInMillimetres) {
  const Design design =
      design_of(test::coop("<wall side='right'><door width='600' height='900'/></wall><wall side='left'>"
                           "<door width='300' height='300'><slides/></door></wall>"
                           "<roof><tie/><gussets/><sheets/></roof><nests count='2'/><roosts count='2'/>",
                           "mm"));
  EXPECT_EQ(design.units, models::Units::mm);
  expect_length(design.house.width, mm(1800), "a bare number is in millimetres");
  expect_lumber(design.house.framing, "38x38", mm(38), mm(38));
  expect_length(design.house.post_spacing, mm(600), "post spacing");
  expect_lumber(design.walls[0].cladding.slats, "19x100", mm(19), mm(100));
  expect_length(design.walls[0].cladding.gap, mm(3), "gap");
  const auto& door = design.walls[1].openings.at(0);
  expect_length(door.left, mm(300), "in the middle of 1200");
  expect_length(door.bottom, mm(38), "on the bottom rail");
  expect_length(door.door.reveal, mm(3), "reveal");
  EXPECT_EQ(door.door.frame.name, "19x75");
  expect_length(design.walls[3].openings.at(0).door.lap, mm(25), "lap");
  EXPECT_NEAR(design.roof.pitch.degrees(), 35, 1e-9);
  EXPECT_NEAR(design.roof.rise_in_12, 8.4025, 0.0001);  // 12 tan 35 degrees
  expect_length(design.roof.eave_overhang, mm(150), "eave");
  expect_length(design.roof.gable_overhang, mm(100), "gable");
  EXPECT_EQ(design.roof.rafters.name, "38x89");
  EXPECT_EQ(design.roof.ridge.name, "19x75");
  expect_length(design.roof.spacing, mm(600), "spacing");
  EXPECT_EQ(design.roof.tie->name, "19x75");
  EXPECT_EQ(design.roof.gussets->name, "12mm plywood");
  EXPECT_EQ(design.roof.sheets->name, "12mm plywood");
  expect_length(design.nests->bottom, mm(450), "bottom");
  expect_length(design.nests->width, mm(300), "width");
  expect_length(design.nests->depth, mm(300), "depth");
  expect_length(design.nests->height, mm(450), "height");
  expect_length(design.nests->lip, mm(150), "lip");
  EXPECT_EQ(design.nests->panel.name, "12mm plywood");
  EXPECT_EQ(design.nests->ledges.name, "38x38");
  EXPECT_EQ(design.nests->lip_board.name, "19x150");
  expect_length(design.roosts->first, mm(450), "first");
  expect_length(design.roosts->spacing, mm(300), "spacing");
  expect_length(design.roosts->height, mm(600), "height");
  EXPECT_EQ(design.roosts->bars.name, "38x38");
  expect_length(design.roosts->rounding, mm(12), "rounding");
  EXPECT_EQ(design.roosts->ledges.name, "38x38");
}

// Parts can be made for a house in which every size is a default.
TEST(ReadDesign, TheDefaultsGoTogether) {
  for (const char* units : {"in", "mm"}) {
    const Design design =
        design_of(test::coop("<wall side='right'><door width='2ft' height='3ft'/></wall><wall side='left'>"
                             "<nest-door width='300mm' height='300mm'><slides/></nest-door></wall>"
                             "<roof><tie/><gussets/></roof><nests count='2'/><roosts count='2'/>",
                             units));
    EXPECT_THAT(test::printed(models::unbuildable(design)), IsEmpty()) << units;
  }
}

TEST(ReadDesign, WhatIsLeftOutAltogether) {
  const Design design = design_of(test::coop(""));
  EXPECT_FALSE(design.nests);
  EXPECT_FALSE(design.roosts);
  EXPECT_FALSE(design.roof.tie);
  EXPECT_FALSE(design.roof.gussets);
  ASSERT_TRUE(design.roof.boards);
  EXPECT_NEAR(design.roof.rise_in_12, 8, 1e-12);
  ASSERT_EQ(design.walls.size(), 4u);
  for (const auto& wall : design.walls) EXPECT_THAT(wall.openings, IsEmpty());
}

TEST(ReadDesign, UnnamedOpeningsAreNamedByTheirWallAndNumbered) {
  const Design design =
      design_of(test::coop("<wall side='front'><door left='3in' width='1ft' height='1ft'/><door left='20in' "
                           "width='1ft' height='1ft'/>"
                           "<door name='front door' left='50in' width='1ft' height='1ft'/></wall>"
                           "<wall side='back'><nest-door width='1ft' height='1ft'/></wall>"));
  ASSERT_EQ(design.walls[0].openings.size(), 3u);
  EXPECT_EQ(design.walls[0].openings[0].name, "front door 2");  // "front door" is taken by the third
  EXPECT_EQ(design.walls[0].openings[1].name, "front door 3");
  EXPECT_EQ(design.walls[0].openings[2].name, "front door");
  EXPECT_EQ(design.walls[2].openings.at(0).name, "back nest door");
}

TEST(ReadDesign, PitchesInTheirSeveralForms) {
  const auto roof = [](const std::string& pitch) {
    return design_of(test::coop("<roof pitch='" + pitch + "'/>")).roof;
  };
  // Framing-square angles: 4 in 12 is 18.435 degrees, 12 in 12 is 45.
  EXPECT_NEAR(roof("4:12").pitch.degrees(), 18.435, 0.0005);
  EXPECT_NEAR(roof("1:3").rise_in_12, 4, 1e-12);
  EXPECT_NEAR(roof("8.5 : 12").rise_in_12, 8.5, 1e-12);
  EXPECT_DOUBLE_EQ(roof("45deg").rise_in_12, 12);
  EXPECT_DOUBLE_EQ(roof("12:12").pitch.degrees(), 45);
  EXPECT_NEAR(roof("33.7\u00b0").rise_in_12, 8.003, 0.001);
  EXPECT_DOUBLE_EQ(roof("1:12").rise_in_12, 1);
  EXPECT_DOUBLE_EQ(roof("24:12").rise_in_12, 24);
}

TEST(ReadDesign, CommentsInstructionsAndSchemaHintsAreFine) {
  const Design design = design_of(
      "\xEF\xBB\xBF<?xml version='1.0'?><?style a?>\n<!-- a -->\n"
      "<coop format='1' units='mm' xmlns:xsi='http://www.w3.org/2001/XMLSchema-instance'"
      " xsi:noNamespaceSchemaLocation='design.xsd'>\n<!-- b --><?editor fold?>\n<flock birds='4'><!-- c "
      "--></flock>\n"
      "<house width='1.5m' depth='4ft' wall-height='48in'/><?end?></coop>\n<!-- d --><?done?>\n");
  expect_length(design.house.width, mm(1500), "metres in a file in millimetres");
  expect_length(design.house.depth, feet(4), "feet in a file in millimetres");
}

TEST(ReadDesign, ANameMayHoldWhatAnyAlphabetHas) {
  EXPECT_EQ(
      design_of(
          "<coop units='mm' name='H&#xFC;hner &amp; G\u00e4nse \u9d8f'><flock birds='1'/><house width='2m' "
          "depth='1m' wall-height='1m'/></coop>")
          .name,
      "H\u00fchner & G\u00e4nse \u9d8f");
}

TEST(ReadDesign, OwnSizesFarFromTheStandardGetARemark) {
  const auto result =
      models::read_design(test::coop("<stock>\n<lumber name='2x4' thickness='2in' width='4in'/>\n"
                                     "<lumber name='2x6' thickness='1-7/16in' width='5-7/16in'/></stock>"),
                          "f.xml");
  EXPECT_THAT(test::printed(result.problems), IsEmpty());
  EXPECT_THAT(test::printed(result.remarks),
              testing::ElementsAre(
                  "f.xml:4: coop/stock/lumber[1]: \"2x4\" is 2\" by 4\" here, and 1 1/2\" by 3 1/2\" as "
                  "it is sold"));
  expect_length(result.design.roof.rafters.width, inches(4), "the default rafter is the stock's 2x4");
}

}  // namespace
