// Ways in whose width is known by hand, each as a design file of parts placed by hand: read, built, and judged by the
// check. The same scenes as bodies, in other attitudes: tests/geometry/passage_test.cpp.
#include <array>
#include <charconv>
#include <cmath>
#include <numbers>
#include <sstream>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/buildable.h"
#include "models/checks.h"
#include "models/passage_check.h"
#include "models/read_design.h"
#include "tests/models/design_text.h"

namespace models {
namespace {

using geometry::Certainty;
using geometry::WaysEnd;
using testing::HasSubstr;
using testing::IsEmpty;

// A design file of panels 20 thick, sticks of 38 by 38, and wire mesh.
class ByHand {
 public:
  using Point = std::array<double, 3>;

  // From one corner to the opposite one; 20 along one of the axes.
  void panel(const std::string& name, Point low, Point high) {
    const double x = high[0] - low[0], y = high[1] - low[1], z = high[2] - low[2];
    if (z == 20)
      flat(name, "sheet='board'", x, y, low, 0, 0);
    else if (y == 20)  // stood up about x, the thickness comes to lie towards the front
      flat(name, "sheet='board'", x, z, {low[0], high[1], low[2]}, 90, 0);
    else if (x == 20)
      flat(name, "sheet='board'", y, z, low, 90, 90);
    else
      ADD_FAILURE() << name << " is not 20 thick";
  }
  void mesh(const std::string& name, double width, double height, Point at) {
    flat(name, "mesh='netting'", width, height, at, 90, 0);
  }
  // With its axis along x, through a point; turned about that axis.
  void stick(const std::string& name, double length, Point axis, double degrees) {
    const double a = degrees * std::numbers::pi / 180, c = std::cos(a), s = std::sin(a);
    const Point corner{axis[0], axis[1] - 19 * c + 19 * s, axis[2] - 19 * s - 19 * c};
    std::ostringstream what;
    what << "stick name='" << name << "' lumber='square' length='" << length << "'";
    parts_.push_back({what.str(), corner, degrees, 0});
  }
  // A box 400 wide, deep and high inside, at 100 above the ground, open in front. Its sides, top and bottom reach
  // forward to `front`.
  void box(double front = 0) {
    panel("bottom", {-20, front, 80}, {420, 420, 100});
    panel("top", {-20, front, 500}, {420, 420, 520});
    panel("left", {-20, front, 100}, {0, 420, 500});
    panel("right", {400, front, 100}, {420, 420, 500});
    panel("back", {0, 400, 100}, {400, 420, 500});
  }
  // A front of four panels round a hole.
  void front_with_hole(double low_x, double high_x, double low_z, double high_z) {
    panel("front below", {-20, -20, 80}, {420, 0, low_z});
    panel("front above", {-20, -20, high_z}, {420, 0, 520});
    panel("front left", {-20, -20, low_z}, {low_x, 0, high_z});
    panel("front right", {high_x, -20, low_z}, {420, 0, high_z});
  }

  // All of it turned about the house's corner, seen from above.
  [[nodiscard]] std::string text(double degrees) const {
    std::ostringstream text;
    text.precision(14);
    text
        << "<coop units='mm'><stock><sheet name='board' thickness='20' width='2m' length='2m'/>"
           "<lumber name='square' thickness='38' width='38'/>"
           "<mesh name='netting' opening='16' wire='1' roll-width='1m' roll-length='5m'/></stock>\n<extra>\n";
    const double a = degrees * std::numbers::pi / 180, c = std::cos(a), s = std::sin(a);
    for (const Placed& part : parts_)
      text << '<' << part.what << " x='" << c * part.at[0] - s * part.at[1] << "' y='"
           << s * part.at[0] + c * part.at[1] << "' z='" << part.at[2] << "' turn-x='" << part.turn_x
           << "deg' turn-z='" << part.turn_z + degrees << "deg'/>\n";
    text << "</extra></coop>";
    return text.str();
  }

 private:
  struct Placed {
    std::string what;  // the element with all but its place
    Point at;
    double turn_x, turn_z;
  };
  void flat(const std::string& name, const std::string& of, double width, double height, Point at,
            double turn_x, double turn_z) {
    std::ostringstream what;
    what << "panel name='" << name << "' " << of << " outline='0,0 " << width << ",0 " << width << ','
         << height << " 0," << height << "'";
    parts_.push_back({what.str(), at, turn_x, turn_z});
  }
  std::vector<Placed> parts_;
};

struct Judged {
  geometry::Passages passages;
  std::vector<Finding> findings;
};
Judged judged(const ByHand& parts, double degrees = 0) {
  const ReadResult read = read_design(parts.text(degrees), "by-hand.xml");
  EXPECT_THAT(test::printed(read.problems), IsEmpty());
  EXPECT_THAT(test::printed(unbuildable(read.design)), IsEmpty());
  const Building building = build(read.design);
  const Scene standing = scene(building);
  return {ways_in(read.design, building, standing), find_ways_in({read.design, building, standing})};
}

// "12.5 mm"
double figure(const std::string& measured) {
  double value = 0;
  std::from_chars(measured.data(), measured.data() + measured.size(), value);
  return value;
}

// The check finds just these ways, widest first, to 0.05 mm, and says that it proved that there is no other; as the
// parts stand, and turned askew.
void expect_found(const ByHand& parts, const std::vector<double>& diameters) {
  for (const double degrees : {0, 30}) {
    SCOPED_TRACE(degrees);
    const Judged found = judged(parts, degrees);
    ASSERT_EQ(found.passages.ways.size(), diameters.size());
    ASSERT_EQ(found.findings.size(), diameters.size() + 1);
    for (std::size_t i = 0; i < diameters.size(); ++i) {
      SCOPED_TRACE(i);
      const geometry::Way& way = found.passages.ways[i];
      EXPECT_EQ(way.certainty, Certainty::proven);
      EXPECT_LE(way.lower.mm(), diameters[i] + 1e-6);
      EXPECT_GE(way.upper.mm(), diameters[i] - 1e-6);
      EXPECT_LE((way.upper - way.lower).mm(), 0.05);
      // What is printed is the upper bound to a tenth.
      EXPECT_NEAR(figure(found.findings[i].measured), way.upper.mm(), 0.05 + 1e-6);
      EXPECT_THAT(found.findings[i].message, HasSubstr("a ball of " + found.findings[i].measured));
    }
    EXPECT_EQ(found.passages.end, WaysEnd::none_left);
    EXPECT_THAT(found.findings.back().message, HasSubstr("no ball of 6 mm gets into the house: proven"));
  }
}

TEST(KnownWaysIn, PartsThatMerelyTouchLetNothingThrough) {
  ByHand parts;
  parts.box();
  parts.panel("front", {-20, -20, 80}, {420, 0, 520});
  expect_found(parts, {});
}

TEST(KnownWaysIn, BoardsThatTouchAlongAnEdgeOnlyLetNothingThrough) {
  ByHand parts;
  parts.box(-40);
  parts.panel("lower front", {0, -20, 100}, {400, 0, 300});
  parts.panel("upper front", {0, -40, 300}, {400, -20, 500});
  expect_found(parts, {});
}

TEST(KnownWaysIn, SlotLetsItsWidthThrough) {
  ByHand parts;
  parts.box();
  parts.panel("lower front", {-20, -20, 80}, {420, 0, 280});
  parts.panel("upper front", {-20, -20, 292.5}, {420, 0, 520});
  expect_found(parts, {12.5});
}

TEST(KnownWaysIn, SquareHoleLetsItsSideThrough) {
  ByHand parts;
  parts.box();
  parts.front_with_hole(200, 225.4, 250, 275.4);
  expect_found(parts, {25.4});
}

TEST(KnownWaysIn, TwoHolesInSeriesCountAsTheSmaller) {
  ByHand parts;
  parts.box(-120);
  parts.panel("front below", {0, -20, 100}, {400, 0, 250});
  parts.panel("front above", {0, -20, 290}, {400, 0, 500});
  parts.panel("front left", {0, -20, 250}, {200, 0, 290});
  parts.panel("front right", {240, -20, 250}, {400, 0, 290});
  parts.panel("lower screen", {0, -120, 100}, {400, -100, 330});
  parts.panel("upper screen", {0, -120, 348}, {400, -100, 500});
  expect_found(parts, {18});
}

TEST(KnownWaysIn, TwoInParallelAreTwoWays) {
  ByHand parts;
  parts.panel("bottom", {-20, 0, 80}, {420, 420, 100});
  parts.panel("top", {-20, 0, 500}, {420, 420, 520});
  parts.panel("left", {-20, 0, 100}, {0, 420, 500});
  parts.panel("back", {0, 400, 100}, {420, 420, 500});
  parts.panel("lower right", {400, 0, 100}, {420, 400, 300});
  parts.panel("upper right", {400, 0, 331}, {420, 400, 500});
  parts.front_with_hole(150, 170, 250, 270);
  expect_found(parts, {31, 20});
}

TEST(KnownWaysIn, PassageThatTurnsACornerLetsItsWidthThrough) {
  // In over the lower front, up between the two fronts, and out over the outer one, whose foot is closed: 24 all the
  // way, as deep as it is high.
  ByHand parts;
  parts.box(-64);
  parts.panel("lower front", {0, -20, 100}, {400, 0, 200});
  parts.panel("upper front", {0, -20, 224}, {400, 0, 500});
  parts.panel("outer front", {0, -64, 100}, {400, -44, 300});
  parts.panel("outer front above", {0, -64, 324}, {400, -44, 500});
  parts.panel("foot", {0, -44, 180}, {400, -20, 200});
  parts.panel("cap", {0, -44, 324}, {400, -20, 344});
  expect_found(parts, {24});
}

TEST(KnownWaysIn, StickTurnedOnEdgeLeavesTheDistanceOfItsEdge) {
  // Turned by 30 degrees about its length, a square stick of 38 reaches 38 (sin 30 + cos 30) / 2 below its axis and
  // as far above it: 15 remain over the lower board, nothing under the upper one.
  const double reach = 19 * (std::sin(std::numbers::pi / 6) + std::cos(std::numbers::pi / 6));
  const double axis = 250 + 15 + reach;
  ByHand parts;
  parts.box(-60);
  parts.panel("lower front", {0, -40, 100}, {400, -20, 250});
  parts.stick("stick", 400, {0, -30, axis}, 30);
  parts.panel("upper front", {0, -40, axis + reach}, {400, -20, 500});
  expect_found(parts, {15});
}

TEST(KnownWaysIn, StickOfLeaningFacesOverAnotherLeavesTheSlantedDistance) {
  // Two square sticks of 38, both turned by 45 degrees, one above and before the other: their nearest faces are
  // parallel. With axes (a, b) apart it is (a + b) / sqrt 2 - 38 from face to face.
  const double half = 19 * std::numbers::sqrt2;
  ByHand parts;
  const double a = 40, b = 34;  // upwards, and to the front
  parts.box(-150);
  parts.panel("lower front", {0, -60, 100}, {400, -40, 200});
  parts.stick("inner stick", 400, {0, -50, 200 + half}, 45);
  parts.stick("outer stick", 400, {0, -50 - b, 200 + half + a}, 45);
  parts.panel("upper front", {0, -60 - b, 200 + 2 * half + a}, {400, -40 - b, 500});
  expect_found(parts, {(a + b) / std::numbers::sqrt2 - 38});
}

TEST(KnownWaysIn, MeshLetsItsOpeningThrough) {
  ByHand parts;
  parts.box();
  parts.front_with_hole(100, 250, 200, 350);
  parts.mesh("netting", 200, 200, {75, -20, 175});
  expect_found(parts, {16});
}

TEST(KnownWaysIn, GapsJustUnderAndJustOverAThreshold) {
  const auto slot = [](double gap) {
    ByHand parts;
    parts.box();
    parts.panel("lower front", {-20, -20, 80}, {420, 0, 280});
    parts.panel("upper front", {-20, -20, 280 + gap}, {420, 0, 520});
    return parts;
  };
  // Below 6 mm nothing is listed.
  expect_found(slot(5.95), {});
  expect_found(slot(6.05), {6.05});
  // A quarter inch, 6.35 mm, lets mice in.
  EXPECT_THAT(judged(slot(6.3)).findings.at(0).message, testing::Not(HasSubstr("mice")));
  EXPECT_THAT(judged(slot(6.4)).findings.at(0).message, HasSubstr("so do mice"));
  // Half an inch, 12.7 mm, is an error.
  EXPECT_EQ(judged(slot(12.65)).findings.at(0).severity, Severity::note);
  EXPECT_EQ(judged(slot(12.75)).findings.at(0).severity, Severity::error);
}

}  // namespace
}  // namespace models
