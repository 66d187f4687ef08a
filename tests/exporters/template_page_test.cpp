// What stands on a template, and which marks get one.
#include "exporters/templates/template_page.h"

#include <algorithm>
#include <cmath>
#include <random>

#include <gtest/gtest.h>

#include "exporters/cut_text.h"
#include "exporters/templates/pattern.h"
#include "exporters/templates/templates.h"
#include "support/layout.h"
#include "support/random_frame.h"

namespace exporters {
namespace {

using geometry::mm;

int count(const Drawing& drawing, const std::string& text) {
  return static_cast<int>(std::count_if(drawing.labels.begin(), drawing.labels.end(),
                                        [&](const Label& l) { return l.text == text; }));
}

bool has_part(const Drawing& drawing, const std::string& text) {
  return std::any_of(drawing.labels.begin(), drawing.labels.end(),
                     [&](const Label& l) { return l.text.find(text) != std::string::npos; });
}

TEST(templates, are_made_for_what_is_not_a_plain_rectangle) {
  geometry::Body panel = geometry::stick(mm(600), mm(400), mm(12)), ripped = panel, bored = panel,
                 bevelled = panel, pierced = panel;
  ripped.bevels.push_back({{0, 400, 0}, {0, std::sqrt(0.5), std::sqrt(0.5)}});
  bevelled.bevels.push_back({{600, 0, 0}, {std::sqrt(0.5), 0, std::sqrt(0.5)}});
  bored.bores.push_back({{100, 100}, mm(50)});
  pierced.outline.holes.push_back({{100, 100}, {100, 200}, {200, 200}, {200, 100}});
  EXPECT_FALSE(needs_template(models::cuts(panel)));
  EXPECT_FALSE(needs_template(models::cuts(ripped)));
  EXPECT_TRUE(needs_template(models::cuts(bevelled)));
  EXPECT_TRUE(needs_template(models::cuts(bored)));
  EXPECT_TRUE(needs_template(models::cuts(pierced)));

  Plan plan;
  plan.building = support::door_frame();
  EXPECT_TRUE(templates(plan).empty());
  plan.building = support::truss(8, 1800, 200, 38);
  const auto files = templates(plan);
  ASSERT_EQ(files.size(), 1u);  // both rafters carry one mark
  EXPECT_EQ(files[0].file, "F1.svg");
}

TEST(templates, of_a_rafter_name_every_cut) {
  // 8 in 12: plumb cuts 33.7 degrees from square, the seat as many to the edge.
  const TemplatePage page = template_page(support::truss(8, 1800, 200, 38), 0, {geometry::Units::mm});
  const Drawing& d = page.drawing;
  EXPECT_EQ(count(d, "F1"), 1);
  EXPECT_EQ(count(d, "rafter"), 1);
  EXPECT_EQ(count(d, "plumb cut"), 2);
  EXPECT_EQ(count(d, "seat"), 1);
  EXPECT_EQ(count(d, "heel"), 1);
  EXPECT_EQ(count(d, "33.7\u00b0"), 4);  // plumb cuts and heel from square, seat to the edge
  EXPECT_EQ(count(d, "56.3\u00b0"), 4);
  EXPECT_TRUE(has_part(d, "Make 2 of"));
  EXPECT_TRUE(has_part(d, "actual size (100 %)"));
  EXPECT_TRUE(has_part(d, "this face up"));
  EXPECT_TRUE(has_part(d, "reference edge"));
  EXPECT_EQ(count(d, "100 mm"), 1);
  EXPECT_EQ(count(d, "4 in"), 1);
}

TEST(templates, give_the_tape_every_hook_line) {
  // Two housings in a stick of 600: their four mouths and the two ends.
  const geometry::Body body{{{{0, 0},
                              {600, 0},
                              {600, 90},
                              {500, 90},
                              {500, 75},
                              {460, 75},
                              {460, 90},
                              {80, 90},
                              {80, 60},
                              {42, 60},
                              {42, 90},
                              {0, 90}},
                             {}},
                            mm(38),
                            {},
                            {},
                            {}};
  const models::Cuts cuts = models::cuts(body);
  const std::vector<double> expected{0, 42, 80, 460, 500, 600};
  EXPECT_EQ(hook_places(cuts), expected);
  EXPECT_EQ(reference_edge(cuts), models::LongEdge::near);  // the far edge is the notched one
}

TEST(templates, are_as_long_as_the_stick_and_a_margin) {
  const models::Building building = support::truss(6, 3000, 300, 63);
  const double length = models::cuts(building.marks[0].body).length.mm();
  const TemplatePage page = template_page(building, 0, {geometry::Units::mm});
  EXPECT_GT(page.drawing.width, length + 20);
  EXPECT_LT(page.drawing.width, length + 80);
}

// A stick with mitred ends and notches of two or three edges, from the seed alone.
geometry::Body random_stick(std::uint32_t seed) {
  std::mt19937 engine(seed);
  const auto between = [&](double low, double high) {
    return low + (high - low) * (static_cast<double>(engine()) / 4294967296.0);
  };
  const double width = between(18, 140), length = between(2, 14) * width + 60;
  const auto skew = [&] { return between(0, 1) < 0.4 ? 0 : between(-1, 1) * width; };
  const double left = skew(), right = skew();
  geometry::Polygon outer{{std::max(0.0, left), 0}};
  const auto notches = [&](double from, double to, bool far) {
    double x = from + between(5, 40);
    while (x + 30 < to) {
      const double mouth = std::min(between(8, 90), to - x - 5), depth = between(0.1, 0.45) * width;
      const double y0 = far ? width : 0, y1 = far ? width - depth : depth;
      const auto at = [&](double along) { return far ? to + from - along : along; };
      outer.push_back({at(x), y0});
      if (between(0, 1) < 0.5) {
        outer.push_back({at(x + mouth * between(0.1, 0.9)), y1});
      } else {
        outer.push_back({at(x), y1});
        outer.push_back({at(x + mouth), y1});
      }
      outer.push_back({at(x + mouth), y0});
      x += mouth + between(20, 300);
    }
  };
  notches(outer.back().x, length - std::max(0.0, right), false);
  outer.push_back({length - std::max(0.0, right), 0});
  outer.push_back({length - std::max(0.0, -right), width});
  if (between(0, 1) < 0.4) notches(std::max(0.0, -left), length - std::max(0.0, -right), true);
  outer.push_back({std::max(0.0, -left), width});
  return {{outer, {}}, mm(38), {}, {}, {}};
}

TEST(templates, nothing_runs_into_anything) {
  int complaints = 0, edges = 0, named = 0;
  for (std::uint32_t seed = 0; seed < 1500; ++seed) {
    models::Building building;
    building.marks.push_back(support::stick_mark("X1", "brace", random_stick(seed)));
    building.parts.push_back({0, "brace", models::Group::frame, {}, {}});
    const models::Cuts cuts = models::cuts(building.marks[0].body);
    const geometry::LengthStyle style{seed % 2 == 0 ? geometry::Units::mm : geometry::Units::in};
    const Drawing drawing = template_page(building, 0, style).drawing;
    for (const std::string& fault :
         support::layout_faults(drawing, {{8, 8}, {drawing.width - 8, drawing.height - 8}})) {
      ADD_FAILURE() << "seed " << seed << ": " << fault;
      if (++complaints > 20) return;
    }
    // Nearly every cut's letter finds a place beside its edge (all stand in the table).
    for (const LetteredCut& cut : lettered_cuts(cuts, {})) {
      ++edges;
      if (std::any_of(drawing.labels.begin(), drawing.labels.end(), [&](const Label& l) {
            return l.role == Role::mark && (l.text == cut.letter || l.text.starts_with(cut.letter + " "));
          }))
        ++named;
    }
  }
  EXPECT_GT(edges, 6000);
  EXPECT_GT(named, edges * 98 / 100);
}

}  // namespace
}  // namespace exporters
