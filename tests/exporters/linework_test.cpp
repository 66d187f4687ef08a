// Which edges are seen: against cases drawn by hand, and against rays.
#include "exporters/sheets/linework.h"

#include <cmath>
#include <numbers>

#include <gtest/gtest.h>

#include "support/random_frame.h"

namespace exporters {
namespace {

using geometry::mm;

// An edge within a thousandth of a millimetre of a nearer piece's outline counts as seen.
constexpr double near_enough = 0.01;

double total(const std::vector<Line>& lines) {
  double sum = 0;
  for (const Line& line : lines) sum += norm(line.b - line.a);
  return sum;
}

models::Building of(const std::vector<std::pair<geometry::Body, geometry::Placement>>& pieces) {
  models::Building building;
  models::FrameView frame;
  frame.name = "frame";
  frame.kind = "wall";
  for (const auto& [body, placement] : pieces) {
    frame.parts.push_back(building.parts.size());
    building.parts.push_back({building.marks.size(), "part", models::Group::frame, {}, placement});
    building.marks.push_back(support::stick_mark("F1", "part", body));
  }
  building.frames.push_back(frame);
  return building;
}

Linework lines_of(const models::Building& building) { return linework(scene(building, building.frames[0])); }

TEST(linework, of_one_stick_is_its_rectangle) {
  const auto building = of({{geometry::stick(mm(500), mm(40), mm(20)), {}}});
  const Linework lines = lines_of(building);
  EXPECT_NEAR(total(lines.visible), 2 * (500 + 40), near_enough);
  EXPECT_TRUE(lines.hidden.empty());  // the far edges lie behind the near ones
}

TEST(linework, a_nearer_stick_hides_what_it_covers) {
  // A post 40 wide in front of a rail: of the rail's two long edges, 40 mm each are hidden.
  const auto building = of({{geometry::stick(mm(500), mm(40), mm(20)), {}},
                            {geometry::stick(mm(300), mm(40), mm(20)),
                             geometry::placement({200, -100, 20}, {0, 1, 0}, {-1, 0, 0})}});
  const Linework lines = lines_of(building);
  EXPECT_NEAR(total(lines.hidden), 2 * 40, near_enough);
  EXPECT_NEAR(total(lines.visible), 2 * (500 + 40) - 2 * 40 + 2 * (300 + 40), near_enough);
}

TEST(linework, sticks_that_meet_flush_share_one_line) {
  // Two squares side by side in one plane: seven sides in all.
  const auto building = of({{geometry::stick(mm(40), mm(40), mm(20)), {}},
                            {geometry::stick(mm(40), mm(40), mm(20)), geometry::shift({40, 0, 0})}});
  const Linework lines = lines_of(building);
  EXPECT_NEAR(total(lines.visible), 7 * 40, near_enough);
}

TEST(linework, a_notch_shows_and_a_hole_can_be_seen_through) {
  geometry::Body panel = geometry::stick(mm(400), mm(300), mm(12));
  panel.outline.holes.push_back({{100, 100}, {100, 200}, {200, 200}, {200, 100}});
  // A stick behind it passes the hole: 100 mm of both its edges show.
  const auto building =
      of({{panel, {}}, {geometry::stick(mm(380), mm(20), mm(20)), geometry::shift({10, 140, -20})}});
  const Linework lines = lines_of(building);
  EXPECT_NEAR(total(lines.visible), 2 * (400 + 300) + 4 * 100 + 2 * 100, near_enough);
  EXPECT_NEAR(total(lines.hidden), 2 * 380 + 2 * 20 - 2 * 100, near_enough);
}

TEST(linework, a_bevelled_end_shows_both_its_edges) {
  // 45 degrees through 20 mm of thickness, the upper face shorter: its edge shows 20 mm from the end.
  geometry::Body body = geometry::stick(mm(300), mm(40), mm(20));
  const double r = std::sqrt(0.5);
  body.bevels.push_back({{300, 0, 0}, {r, 0, r}});
  const Linework lines = lines_of(of({{body, {}}}));
  EXPECT_NEAR(total(lines.visible), 2 * (300 + 40) + 40, near_enough);
}

// A point is hidden when the ray from it to the viewer runs inside some piece; tried at close steps.
bool hidden_by_ray(const Scene& scene, Vec3 p) {
  for (const SceneMember& member : scene) {
    for (const geometry::ConvexPiece& piece : member.pieces) {
      for (double z = p.z + 0.05; z < piece.box.high.z; z += 0.5) {
        bool inside = true;
        for (const auto& face : piece.faces)
          inside = inside && dot(face.outward, {p.x, p.y, z}) < face.offset - 0.01;
        if (inside) return true;
      }
    }
  }
  return false;
}

bool on_a_line(const std::vector<Line>& lines, Vec2 p) {
  for (const Line& line : lines) {
    const Vec2 d = line.b - line.a;
    const double t = dot(p - line.a, d) / dot(d, d);
    if (t > -1e-6 && t < 1 + 1e-6 && norm(line.a + d * t - p) < 0.02) return true;
  }
  return false;
}

TEST(linework, agrees_with_rays_on_random_frames) {
  int seen = 0, hidden = 0;
  for (std::uint32_t seed = 0; seed < 300; ++seed) {
    const models::Building building = support::random_frame(seed);
    const Scene members = scene(building, building.frames[0]);
    const Linework lines = linework(members);
    for (const SceneMember& member : members) {
      for (std::size_t i = 0; i < member.body.edges.size(); i += 3) {
        const Vec3 a = member.placement.point(member.body.edges[i].a);
        const Vec3 b = member.placement.point(member.body.edges[i].b);
        const Vec3 p = a + (b - a) * 0.37;
        if (std::hypot(b.x - a.x, b.y - a.y) < 1) continue;
        if (hidden_by_ray(members, p)) {
          ++hidden;
          EXPECT_TRUE(on_a_line(lines.hidden, {p.x, p.y}) || on_a_line(lines.visible, {p.x, p.y}))
              << "seed " << seed;
          // Behind a face, not behind a line: then no visible line runs there unless another edge does.
        } else {
          ++seen;
          EXPECT_TRUE(on_a_line(lines.visible, {p.x, p.y})) << "seed " << seed;
        }
      }
    }
    // And what is drawn as hidden is hidden: some edge passes there that a ray cannot leave.
    for (const Line& line : lines.hidden) {
      const Vec2 p = line.a + (line.b - line.a) * 0.41;
      bool found = false;
      for (const SceneMember& member : members) {
        for (const geometry::DrawnEdge& edge : member.body.edges) {
          const Vec3 a = member.placement.point(edge.a), b = member.placement.point(edge.b);
          const Vec2 d{b.x - a.x, b.y - a.y};
          if (norm(d) < 1) continue;
          const double t = dot(p - Vec2{a.x, a.y}, d) / dot(d, d);
          if (t < 0 || t > 1 || norm(Vec2{a.x, a.y} + d * t - p) > 0.01) continue;
          found = found || hidden_by_ray(members, a + (b - a) * t);
        }
      }
      EXPECT_TRUE(found) << "seed " << seed;
    }
  }
  EXPECT_GT(seen, 5000);
  EXPECT_GT(hidden, 50);
}

}  // namespace
}  // namespace exporters
