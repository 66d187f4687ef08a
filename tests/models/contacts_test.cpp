// Joints of the sample house against what a tape would measure, and against the kernel.
#include "models/contacts.h"

#include <cmath>

#include <gtest/gtest.h>

#include "tests/support/sample_design.h"

namespace models {
namespace {

using geometry::inches;

class Joints : public testing::Test {
 protected:
  // Of all joints between parts of these names, in order.
  std::vector<Joint> between(const std::string& one, const std::string& other) const {
    std::vector<Joint> found;
    for (const Joint& j : joints_) {
      const std::string &a = building_.parts[j.a].name, &b = building_.parts[j.b].name;
      if ((a == one && b == other) || (a == other && b == one)) found.push_back(j);
    }
    return found;
  }
  Building building_ = build(test_support::sample_design());
  Scene scene_ = scene(building_);
  std::vector<Joint> joints_ = joints(building_, scene_);
};

TEST_F(Joints, APostStandsOnItsRailWithItsWholeSection) {
  const std::vector<Joint> found = between("post", "bottom rail");
  std::size_t posts = 0;
  for (const Part& part : building_.parts) posts += part.name == "post";
  std::size_t on_rail = 0;
  for (const Joint& j : found) {
    ASSERT_EQ(j.contacts.size(), 1U);
    const Contact& c = j.contacts[0];
    if (std::abs(c.plane.z.z) < 0.5) continue;  // the corner posts also stand beside the neighbours' rails
    ++on_rail;
    EXPECT_NEAR(c.area.mm2, 38.1 * 38.1, 1e-3);
    EXPECT_NEAR(c.length.mm(), 38.1, 1e-6);
    EXPECT_NEAR(c.width.mm(), 38.1, 1e-6);
    EXPECT_NEAR(c.plane.origin.z, 38.1, 1e-6);
  }
  EXPECT_EQ(on_rail, posts);
}

TEST_F(Joints, ARafterSeatsOnTheWholeRailAndStandsAgainstItWithItsHeel) {
  const std::vector<Joint> found = between("rafter", "top rail");
  int seats = 0, heels = 0;
  for (const Joint& j : found)
    for (const Contact& c : j.contacts) {
      if (std::abs(c.plane.z.z) > 0.5 && std::abs(c.length.mm() - 38.1) < 1e-6) {
        ++seats;  // 1-1/2 in of seat by the rafter's 1-1/2 in
        EXPECT_NEAR(c.area.mm2, 38.1 * 38.1, 1e-3);
      }
      if (std::abs(c.plane.z.x) > 0.5) {
        ++heels;  // as high as the seat is long, times 8/12
        EXPECT_NEAR(c.area.mm2, 38.1 * 38.1 * 8 / 12, 1e-3);
      }
    }
  EXPECT_EQ(heels, 8);  // four trusses
  EXPECT_EQ(seats, 8);
}

TEST_F(Joints, HaveTheAreaThatTheKernelFindsWhenOneIsPressedIntoTheOther) {
  // Pressed a twentieth of a millimetre into each other, they share that times the area where they touch.
  constexpr double pressed = 0.05;
  int judged = 0;
  for (const Joint& j : joints_) {
    if (j.contacts.size() != 1) continue;
    const Contact& c = j.contacts[0];
    const geometry::Solid a = placed(building_.mark_of(j.a).solid, building_.parts[j.a].placement);
    const geometry::Solid b = placed(building_.mark_of(j.b).solid, building_.parts[j.b].placement);
    const double shared =
        geometry::overlap(a, geometry::placed(b, geometry::shift(c.plane.z * -pressed))).volume.mm3;
    // An edge that slopes adds to the area by up to its length times that depth.
    const double edges = 2 * (c.length + c.width).mm() * pressed;
    EXPECT_NEAR(shared / pressed, c.area.mm2, edges + 1e-3 * c.area.mm2)
        << building_.parts[j.a].name << " and " << building_.parts[j.b].name;
    ++judged;
  }
  EXPECT_GT(judged, 300);
}

TEST_F(Joints, AreInOrderAndBetweenPartsThatTouch) {
  // Every pair, by the distance between their pieces. Pairs that touch along an edge or at a corner have no joint.
  std::size_t next = 0;
  for (std::size_t a = 0; a < building_.parts.size(); ++a)
    for (std::size_t b = a + 1; b < building_.parts.size(); ++b) {
      if (next == joints_.size() || joints_[next].a != a || joints_[next].b != b) continue;
      ++next;
      EXPECT_NEAR(part_clearance(scene_, a, b).distance, 0, 1e-6);
    }
  EXPECT_EQ(next, joints_.size());
}

TEST_F(Joints, SayWhereTheirAreaLies) {
  for (const Joint& j : joints_) {
    double sum = 0;
    for (const Contact& c : j.contacts) {
      sum += c.area.mm2;
      EXPECT_NEAR(geometry::area(c.region).mm2, c.area.mm2, 1e-3 + 1e-6 * c.area.mm2);
      EXPECT_GE(c.length, c.width);
      EXPECT_LE(c.area.mm2, (c.length.mm() + 1e-3) * (c.width.mm() + 1e-3));
      for (const geometry::Outline& o : c.region)
        for (const geometry::Vec2 p : o.outer) {
          EXPECT_LE(std::abs(p.x), c.length.mm() / 2 + 1e-3);
          EXPECT_LE(std::abs(p.y), c.width.mm() / 2 + 1e-3);
        }
    }
    EXPECT_NEAR(sum, j.area.mm2, 1e-6);
  }
}

}  // namespace
}  // namespace models
