#include "exporters/colour.h"

#include <cmath>

#include <gtest/gtest.h>

using exporters::Colour;
using exporters::colour;
using exporters::linear;

namespace {

constexpr models::Group groups[] = {models::Group::frame,    models::Group::roof,     models::Group::cover,
                                    models::Group::cladding, models::Group::door,     models::Group::nest,
                                    models::Group::roost,    models::Group::hardware, models::Group::mesh,
                                    models::Group::floor,    models::Group::run,      models::Group::extra};

// CIE L*a*b* of an sRGB colour: primaries and white of IEC 61966-2-1, formulae of ISO/CIE 11664-4 (from
// memory).
geometry::Vec3 lab(Colour c) {
  const double r = linear(c.red), g = linear(c.green), b = linear(c.blue);
  const auto f = [](double t) { return t > 216.0 / 24389 ? std::cbrt(t) : (24389.0 / 27 * t + 16) / 116; };
  const double x = f((0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505);
  const double y = f(0.2126 * r + 0.7152 * g + 0.0722 * b);
  const double z = f((0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089);
  return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

}  // namespace

// Two patches of more than about 10 units apart are told apart at a glance (common practice).
TEST(Colours, TellGroupsApart) {
  for (const auto a : groups)
    for (const auto b : groups)
      if (a != b) {
        EXPECT_GT(norm(lab(colour(a)) - lab(colour(b))), 20) << name(a) << ", " << name(b);
      }
}

// No pure, glaring colour: chroma under half of what the primaries of a screen have (about 100 to 130).
TEST(Colours, AreCalm) {
  for (const auto group : groups) {
    const geometry::Vec3 c = lab(colour(group));
    EXPECT_LT(std::hypot(c.y, c.z), 50) << name(group);
  }
}

// IEC 61966-2-1: the ends, the join of the two pieces at 0.04045, and middle grey (values from memory).
TEST(Linear, FollowsTheStandardsCurve) {
  EXPECT_DOUBLE_EQ(linear(0), 0);
  EXPECT_DOUBLE_EQ(linear(255), 1);
  EXPECT_NEAR(linear(10), 10 / 255.0 / 12.92, 1e-12);
  EXPECT_NEAR(linear(188), 0.5029, 1e-4);
  EXPECT_NEAR(linear(119), 0.1845, 1e-4);
}
