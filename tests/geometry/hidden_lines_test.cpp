// Which edges are seen: cases worked out by hand, and random scenes judged by the kernel's own algorithm.
#include "geometry/hidden_lines.h"

#include <cmath>
#include <deque>
#include <numbers>
#include <random>

#include <BRep_Tool.hxx>
#include <HLRAlgo_Projector.hxx>
#include <HLRBRep_Algo.hxx>
#include <HLRBRep_HLRToShape.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Vertex.hxx>
#include <gp_Ax2.hxx>
#include <gtest/gtest.h>

#include "geometry/kernel/make.h"
#include "geometry/kernel/shape.h"
#include "geometry/solid.h"

namespace geometry {
namespace {

const Vec3 front{0, -1, 0}, corner{1, -1, 1};

class Scene {
 public:
  void add(const Body& body, const Placement& placement = {}) {
    bodies_.push_back(drawn_body(body));
    solids_.push_back(placed(make_solid(body), placement));
    parts_.push_back({&bodies_.back(), placement, true});
  }
  void add_box(Vec3 low, Vec3 high) {
    add(stick(mm(high.x - low.x), mm(high.y - low.y), mm(high.z - low.z)), shift(low));
  }
  [[nodiscard]] const std::vector<ViewedPart>& parts() const { return parts_; }
  ViewedPart& last() { return parts_.back(); }
  [[nodiscard]] const std::vector<Solid>& solids() const { return solids_; }
  [[nodiscard]] PictureLines lines(Vec3 from) const { return picture_lines(parts_, view_from(from)); }
  [[nodiscard]] PictureLines once(Vec3 from, double apart = 0) const {
    return drawn_once(lines(from), std::vector<int>(parts_.size(), 0), apart);
  }

 private:
  std::deque<DrawnBody> bodies_;  // which the parts point to
  std::vector<Solid> solids_;
  std::vector<ViewedPart> parts_;
};

double total(const std::vector<PictureLine>& lines) {
  double sum = 0;
  for (const PictureLine& line : lines) sum += norm(line.b - line.a);
  return sum;
}
double total_of(const std::vector<PictureLine>& lines, std::size_t part) {
  double sum = 0;
  for (const PictureLine& line : lines)
    if (line.part == part) sum += norm(line.b - line.a);
  return sum;
}

// Strips of 0.005 mm beside the edges are what is judged.
constexpr double near_enough = 0.02;

TEST(hidden_lines, a_box_has_twelve_edges_with_two_faces_each) {
  const DrawnBody body = drawn_body(stick(mm(500), mm(40), mm(20)));
  ASSERT_EQ(body.edges.size(), 12U);
  for (const DrawnEdge& edge : body.edges) EXPECT_EQ(edge.strips.size(), 2U);
}

TEST(hidden_lines, a_notched_and_bevelled_stick_has_its_own_edges_and_no_seams) {
  // A notch adds three corners' edges and their lines on both faces: 8 corners in all, 24 edges. The bevel
  // moves the end's edges without adding any.
  Body body = stick(mm(500), mm(60), mm(38));
  body.outline.outer = {{0, 0}, {200, 0}, {200, 20}, {240, 20}, {240, 0}, {500, 0}, {500, 60}, {0, 60}};
  const double r = std::sqrt(0.5);
  body.bevels.push_back({{500, 0, 0}, {r, 0, r}});
  EXPECT_EQ(drawn_body(body).edges.size(), 24U);
  // A bevel that takes a corner off, at 45 degrees to all three faces, adds a triangle.
  Body block = stick(mm(100), mm(100), mm(100));
  block.bevels.push_back({{80, 100, 100}, normalized({1, 1, 1})});
  EXPECT_EQ(drawn_body(block).edges.size(), 15U);
}

TEST(hidden_lines, a_cube_from_its_corner_shows_nine_edges) {
  // Each is seen at the angle whose sine is sqrt(1/3): foreshortened by sqrt(2/3).
  Scene scene;
  scene.add_box({0, 0, 0}, {100, 100, 100});
  const PictureLines lines = scene.once(corner);
  EXPECT_EQ(lines.visible.size(), 9U);
  for (const PictureLine& line : lines.visible)
    EXPECT_NEAR(norm(line.b - line.a), 100 * std::sqrt(2.0 / 3), 1e-9);
  EXPECT_EQ(lines.hidden.size(), 3U);
}

TEST(hidden_lines, the_picture_is_upright) {
  // Seen from the right, the front is at the left; from above, the back is up.
  const Placement right = view_from({1, 0, 0}), plan = view_from({0, 0, 1});
  EXPECT_LT(right.inverse_point({0, 0, 0}).x, right.inverse_point({0, 100, 0}).x);
  EXPECT_NEAR(right.inverse_point({0, 0, 100}).y, 100, 1e-12);
  EXPECT_NEAR(plan.inverse_point({0, 100, 0}).y, 100, 1e-12);
  EXPECT_NEAR(plan.inverse_point({100, 0, 0}).x, 100, 1e-12);
}

TEST(hidden_lines, a_box_before_a_box_hides_what_it_covers) {
  Scene scene;
  scene.add_box({0, 0, 0}, {500, 20, 40});
  scene.add_box({200, -50, -100}, {240, -30, 200});  // 40 wide, before the middle of it
  const PictureLines lines = scene.once(front);
  EXPECT_NEAR(total_of(lines.visible, 0), 2 * (500 + 40) - 2 * 40, near_enough);
  EXPECT_NEAR(total_of(lines.visible, 1), 2 * (300 + 40), near_enough);
  EXPECT_NEAR(total(lines.hidden), 2 * 40, near_enough);
  // From behind it is the other way round: 40 mm of both long edges of the upright are hidden.
  const PictureLines back = scene.once({0, 1, 0});
  EXPECT_NEAR(total_of(back.visible, 0), 2 * (500 + 40), near_enough);
  EXPECT_NEAR(total_of(back.visible, 1), 2 * (300 + 40) - 2 * 40, near_enough);
}

TEST(hidden_lines, a_slot_shows_what_is_behind_it) {
  Scene scene;
  scene.add_box({0, 100, 40}, {300, 120, 60});
  scene.add_box({-50, 0, 0}, {100, 20, 100});
  scene.add_box({107, 0, 0}, {350, 20, 100});
  const PictureLines lines = scene.once(front);
  EXPECT_NEAR(total_of(lines.visible, 0), 2 * 7, near_enough);
}

TEST(hidden_lines, one_looks_through_a_slot_aslant) {
  // From 30 degrees to the right, a slot 20 wide between boards 10 thick is 20 - 10 tan 30 wide; seen from
  // there, a level line behind is foreshortened by cos 30, as is the slot.
  Scene scene;
  scene.add_box({-1000, 100, 40}, {1000, 120, 60});
  scene.add_box({-2000, 0, -100}, {0, 10, 200});
  scene.add_box({20, 0, -100}, {2000, 10, 200});
  const double angle = std::numbers::pi / 6;
  const PictureLines lines = scene.once({std::sin(angle), -std::cos(angle), 0});
  EXPECT_NEAR(total_of(lines.visible, 0), 2 * (20 - 10 * std::tan(angle)) * std::cos(angle), near_enough);
}

TEST(hidden_lines, a_skew_stick_hides_as_much_as_it_is_wide_across_the_line) {
  // A stick 30 wide at 60 degrees to a level edge covers 30 / sin 60 of it.
  Scene scene;
  scene.add_box({0, 0, 0}, {1000, 20, 40});
  const double angle = std::numbers::pi / 3;
  const Vec3 along{std::cos(angle), 0, std::sin(angle)}, across{-std::sin(angle), 0, std::cos(angle)};
  scene.add(stick(mm(800), mm(30), mm(20)), placement(Vec3{500, -50, 20} - along * 400, along, across));
  const PictureLines lines = scene.once(front);
  EXPECT_NEAR(total_of(lines.hidden, 0), 2 * 30 / std::sin(angle), near_enough);
  EXPECT_NEAR(total_of(lines.visible, 1), 2 * (800 + 30), near_enough);
}

TEST(hidden_lines, joints_of_flush_parts_are_drawn_once) {
  Scene scene;
  scene.add_box({0, 0, 0}, {40, 40, 40});
  scene.add_box({40, 0, 0}, {80, 40, 40});
  EXPECT_NEAR(total(scene.once(front).visible), 7 * 40, near_enough);
  // From the corner: the outline of a box 80 long and the joint round its top and front.
  const double s = std::sqrt(2.0 / 3);
  EXPECT_NEAR(total(scene.once(corner).visible), 3 * (80 + 40 + 40) * s + 2 * 40 * s, 3 * near_enough);
}

TEST(hidden_lines, what_is_within_a_joint_stays_hidden) {
  // A board flush on a wall's front: of the wall nothing shows through the board, or under its edge.
  Scene scene;
  scene.add_box({0, 0, 0}, {400, 40, 300});
  scene.add_box({100, -20, 100}, {300, 0, 200});
  const PictureLines lines = scene.once(corner);
  const double s = std::sqrt(2.0 / 3);
  // The wall's nine edges are clear of the board; the board shows nine of its own.
  EXPECT_NEAR(total_of(lines.visible, 0), 3 * (400 + 40 + 300) * s, 3 * near_enough);
  EXPECT_NEAR(total_of(lines.visible, 1), 3 * (200 + 20 + 100) * s, 3 * near_enough);
}

TEST(hidden_lines, a_rounded_bar_shows_its_outline_only) {
  // Seen square on: two lines of its length, and two straight ends of its full height.
  Body bar = stick(mm(600), mm(40), mm(40));
  bar.rounding = mm(10);
  Scene scene;
  scene.add(bar, placement({0, 0, 0}, {1, 0, 0}, {0, 1, 0}));
  EXPECT_NEAR(total(scene.once(front).visible), 2 * (600 + 40), 0.5);
  // From its end: straight parts and four quarter rounds.
  EXPECT_NEAR(total(scene.once({1, 0, 0}).visible), 4 * 20 + 2 * std::numbers::pi * 10, 0.1);
}

TEST(hidden_lines, a_bore_is_seen_through) {
  Body plate = stick(mm(200), mm(100), mm(10));
  plate.bores.push_back({{100, 50}, mm(60)});
  Scene scene;
  scene.add_box({0, 100, 40}, {200, 110, 60});  // 20 wide, behind the hole's middle
  scene.add(plate, placement({0, 10, 0}, {1, 0, 0}, {0, 0, 1}));
  const PictureLines lines = scene.once(front);
  const double chord = 2 * std::sqrt(30 * 30 - 10 * 10);
  EXPECT_NEAR(total_of(lines.visible, 0), 2 * chord, 0.5);
  EXPECT_NEAR(total_of(lines.visible, 1), 2 * 300 + std::numbers::pi * 60, 0.5);
}

TEST(hidden_lines, mesh_is_seen_through) {
  Scene scene;
  scene.add_box({0, 100, 0}, {100, 120, 100});
  scene.add_box({-50, 0, -50}, {150, 1, 150});
  EXPECT_NEAR(total_of(scene.once(front).visible, 0), 0, 1e-9);
  scene.last().hides = false;
  EXPECT_NEAR(total_of(scene.once(front).visible, 0), 400, near_enough);
}

TEST(hidden_lines, the_lower_rank_has_the_common_line) {
  const PictureLines lines{{{{0, 0}, {100, 0}, 0}, {{40, 0}, {140, 0}, 1}}, {{{0, 0}, {200, 0}, 0}}};
  const PictureLines once = drawn_once(lines, {1, 0});
  EXPECT_NEAR(total_of(once.visible, 0), 40, 1e-9);
  EXPECT_NEAR(total_of(once.visible, 1), 100, 1e-9);
  EXPECT_NEAR(total(once.hidden), 60, 1e-9);
}

TEST(hidden_lines, lines_too_near_to_be_told_apart_are_one) {
  Scene scene;
  scene.add_box({0, 0, 0}, {100, 20, 1000});
  scene.add_box({103, 0, 0}, {203, 20, 1000});
  EXPECT_NEAR(total(scene.once(front).visible), 4 * 1000 + 4 * 100, near_enough);
  EXPECT_NEAR(total(scene.once(front, 4).visible), 3 * 1000 + 4 * 100, near_enough);
}

// The kernel's algorithm: what it sees of each part, in millimetres.
std::vector<double> seen_by_kernel(const std::vector<Solid>& solids, const Placement& view) {
  Handle(HLRBRep_Algo) algo = new HLRBRep_Algo;
  for (const Solid& solid : solids) algo->Add(kernel::shape_of(solid));
  algo->Projector(
      HLRAlgo_Projector(gp_Ax2(gp_Pnt(0, 0, 0), kernel::direction(view.z), kernel::direction(view.x))));
  algo->Update();
  algo->Hide();
  HLRBRep_HLRToShape shapes(algo);
  std::vector<double> out;
  for (const Solid& solid : solids) {
    double sum = 0;
    const TopoDS_Shape edges = shapes.VCompound(kernel::shape_of(solid));
    if (!edges.IsNull()) {
      for (TopExp_Explorer e(edges, TopAbs_EDGE); e.More(); e.Next()) {
        TopoDS_Vertex a, b;
        TopExp::Vertices(TopoDS::Edge(e.Current()), a, b);
        sum += BRep_Tool::Pnt(a).Distance(BRep_Tool::Pnt(b));
      }
    }
    out.push_back(sum);
  }
  return out;
}

Body random_body(std::mt19937& random) {
  const auto from = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random()) / 4294967296.0;
  };
  const double length = from(150, 300), width = from(40, 90), thickness = from(15, 60);
  Body body = stick(mm(length), mm(width), mm(thickness));
  const double r = std::sqrt(0.5);
  switch (random() % 4) {
    case 0:
      body.outline.outer = {{0, 0},   {60, 0},     {60, 25},        {100, 25},
                            {100, 0}, {length, 0}, {length, width}, {0, width}};
      break;
    case 1:
      body.bevels.push_back({{length, 0, 0}, {r, 0, r}});
      break;
    case 2:
      body.outline.holes.push_back({{60, 10}, {60, 30}, {110, 30}, {110, 10}});
      break;
    default:
      break;
  }
  return body;
}

struct RandomScene {
  Scene scene;
  Vec3 towards;
};

// Each body turned any way, in a cell of its own, so that none reach into each other.
RandomScene random_scene(std::mt19937& random) {
  const auto from = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random()) / 4294967296.0;
  };
  RandomScene out;
  const int count = 2 + static_cast<int>(random() % 7);
  for (int i = 0; i < count; ++i) {
    const Vec3 cell{static_cast<double>(i % 2) * 400, static_cast<double>(i / 2 % 2) * 400,
                    static_cast<double>(i / 4) * 400};
    const Placement turned =
        turn({{0, 0, 0}, normalized({from(-1, 1), from(-1, 1), from(0.1, 1)})}, degrees(from(0, 180)));
    const Body body = random_body(random);
    const Vec3 middle = blank(body).centre();
    out.scene.add(body, compose(shift(cell), compose(turned, shift(-middle))));
  }
  out.towards = {from(-1, 1), from(-1, 1), from(-1, 1)};
  return out;
}

TEST(hidden_lines, agree_with_the_kernel_on_random_scenes) {
  std::mt19937 random(20);
  for (int round = 0; round < 200; ++round) {
    const RandomScene r = random_scene(random);
    const PictureLines lines = r.scene.lines(r.towards);
    const std::vector<double> judged = seen_by_kernel(r.scene.solids(), view_from(r.towards));
    // Most agree to 0.01 mm; the kernel takes what is all but edge-on for edge-on.
    for (std::size_t i = 0; i < judged.size(); ++i)
      EXPECT_NEAR(total_of(lines.visible, i), judged[i], 3) << "round " << round << " part " << i;
  }
}

// Whether a ray meets a triangle.
bool meets(const Mesh& mesh, Vec3 from, Vec3 along) {
  for (const auto& triangle : mesh.triangles) {
    const Vec3 a = mesh.points[static_cast<std::size_t>(triangle[0])];
    const Vec3 ab = mesh.points[static_cast<std::size_t>(triangle[1])] - a;
    const Vec3 ac = mesh.points[static_cast<std::size_t>(triangle[2])] - a;
    const Vec3 p = cross(along, ac);
    const double det = dot(ab, p);
    if (std::fabs(det) < 1e-9) continue;
    const double u = dot(from - a, p) / det;
    const Vec3 q = cross(from - a, ab);
    const double v = dot(along, q) / det, t = dot(ac, q) / det;
    if (u >= 0 && v >= 0 && u + v <= 1 && t > 0) return true;
  }
  return false;
}

TEST(hidden_lines, agree_with_rays_cast_on_the_solids_triangles) {
  std::mt19937 random(21);
  int seen = 0, points = 0;
  for (int round = 0; round < 100; ++round) {
    const RandomScene r = random_scene(random);
    const Placement view = view_from(r.towards);
    std::vector<Mesh> meshes;
    for (const Solid& solid : r.scene.solids()) meshes.push_back(mesh(solid, mm(0.1)));
    const PictureLines lines = r.scene.lines(r.towards);
    for (std::size_t i = 0; i < r.scene.parts().size(); ++i) {
      const ViewedPart& part = r.scene.parts()[i];
      for (const DrawnEdge& edge : part.body->edges) {
        const auto grazed = [&](const DrawnEdge::Strip& strip) {  // a hair decides what is seen there
          return std::fabs(dot(part.placement.direction(strip.outward), view.z)) < 0.001;
        };
        if (std::any_of(edge.strips.begin(), edge.strips.end(), grazed)) continue;
        for (const double t : {0.03, 0.31, 0.52, 0.77, 0.96}) {
          // A point of the air beside the edge.
          const Vec3 on = edge.a + (edge.b - edge.a) * t;
          const Vec3 beside =
              part.placement.point(on + (edge.strips[0].outward + edge.strips[1].outward) * 0.001);
          const bool free = std::none_of(meshes.begin(), meshes.end(),
                                         [&](const Mesh& m) { return meets(m, beside, view.z); });
          const Vec3 p3 = view.inverse_point(part.placement.point(on));
          const Vec2 p{p3.x, p3.y};
          const Vec3 way3 = view.inverse_direction(part.placement.direction(edge.b - edge.a));
          const Vec2 way{way3.x, way3.y};
          if (norm(way) < 5) continue;  // all but end-on
          const auto drawn = [&](double margin) {
            return std::any_of(lines.visible.begin(), lines.visible.end(), [&](const PictureLine& line) {
              const Vec2 d = line.b - line.a;
              const double u = dot(p - line.a, d) / norm(d);
              if (std::fabs(cross(d, way)) > 1e-4 * norm(d) * norm(way)) return false;
              return line.part == i && u > -margin && u < norm(d) + margin &&
                     std::fabs(cross(d, p - line.a)) < 0.001 * norm(d);
            });
          };
          ++points;
          seen += free ? 1 : 0;
          if (free) {
            EXPECT_TRUE(drawn(0.5)) << "round " << round << " part " << i;
          } else {
            EXPECT_FALSE(drawn(-0.5)) << "round " << round << " part " << i;
          }
        }
      }
    }
  }
  EXPECT_GT(points, 20000);
  EXPECT_GT(seen, points / 4);
}

}  // namespace
}  // namespace geometry
