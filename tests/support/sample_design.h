// A small house put together in code, for tests of what is built from a design without going through the
// reader.
#pragma once

#include "models/design.h"

namespace test_support {

// 72 x 60 in, 60 in high, framed in 2x2, gable over 2x4 rafters, 1x4 slats; a door hinged left in the front
// wall.
inline models::Design sample_design(double rise_in_12 = 8) {
  using namespace geometry;
  using namespace models;
  const Lumber two_by_two{"2x2", inches(1.5), inches(1.5)}, one_by_three{"1x3", inches(0.75), inches(2.5)},
      one_by_four{"1x4", inches(0.75), inches(3.5)}, one_by_six{"1x6", inches(0.75), inches(5.5)},
      two_by_four{"2x4", inches(1.5), inches(3.5)};
  Design d;
  d.name = "sample";
  d.units = Units::in;
  d.flock = {0, 0, BodySize::medium};  // who ask for nothing
  d.house = {inches(72), inches(60), inches(60), two_by_two, Corners::front_and_back_run, inches(24)};
  for (const Side side : {Side::front, Side::right, Side::back, Side::left})
    d.walls.push_back({side, {one_by_four, Run::upright, inches(0.125)}, {}});
  Opening door;
  door.name = "door";
  door.left = inches(20);
  door.bottom = inches(1.5);
  door.width = inches(24);
  door.height = inches(44);
  door.door.reveal = inches(0.125);
  door.door.lap = inches(1);
  door.door.frame = one_by_three;
  door.door.slats = one_by_four;
  d.walls[0].openings.push_back(door);
  d.roof.pitch = radians(std::atan(rise_in_12 / 12));
  d.roof.rise_in_12 = rise_in_12;
  d.roof.eave_overhang = inches(8);
  d.roof.gable_overhang = inches(6);
  d.roof.rafters = two_by_four;
  d.roof.ridge = one_by_three;
  d.roof.spacing = inches(24);
  d.roof.boards = one_by_six;
  return d;
}

}  // namespace test_support
