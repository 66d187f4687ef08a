// Chains of dimensions: what they print adds up, and they keep out of each other's way.
#include "exporters/sheets/dimensions.h"

#include <algorithm>
#include <random>

#include <gtest/gtest.h>

#include "support/layout.h"

namespace exporters {
namespace {

using geometry::LengthStyle;
using geometry::Units;

double read(const std::string& text, Units units) {
  const auto value = geometry::read_length(text, units);
  return std::holds_alternative<geometry::Length>(value) ? std::get<geometry::Length>(value).mm() : -1e9;
}

TEST(dimensions, differences_of_rounded_positions_add_up_where_rounded_differences_would_not) {
  // Three bays of 10-1/32 in over 30-3/32: each alone rounds to 10-1/16, which would make 30-3/16.
  const double bay = 10.03125 * 25.4;
  const LengthStyle style{Units::in, 16};
  const auto values = printed_values({0, bay, 2 * bay, 3 * bay}, style);
  ASSERT_EQ(values.size(), 3u);
  EXPECT_NEAR((values[0] + values[1] + values[2]) / 25.4, 30.125, 1e-9);  // 30-3/32, half a step, goes up
  EXPECT_EQ(span_text(0, 3 * bay, style), geometry::print_length(geometry::inches(30.125), style));
}

TEST(dimensions, positions_that_print_alike_are_one) {
  EXPECT_EQ(printed_values({0, 100, 100.1, 200}, {Units::mm, 16}).size(), 2u);
}

TEST(dimensions, read_back_from_the_drawing_close_on_the_overall_one) {
  std::mt19937 engine(11);
  const auto random = [&](double high) { return high * (static_cast<double>(engine()) / 4294967296.0); };
  int left_out = 0;
  for (int round = 0; round < 2000; ++round) {
    const Units units = round % 2 == 0 ? Units::mm : Units::in;
    Chain chain{0};
    const int parts = 2 + static_cast<int>(random(14));
    for (int i = 0; i < parts; ++i)
      chain.push_back(chain.back() + (random(1) < 0.4 ? 19 + random(30) : 60 + random(600)));
    const DimensionStyle style{{units, 16}, 0.2, 2.5};
    for (const bool upright : {false, true}) {
      Drawing drawing;
      const DimensionSide side = upright ? left_of({0, 0}) : below({0, 0});
      const DimensionRows rows = add_chains(drawing, side, {chain, {chain.front(), chain.back()}}, style);
      if (!rows.complete) {  // next to no room: a few short parts and nothing else
        ++left_out;
        continue;
      }
      // The overall value stands farthest out.
      double sum = 0, overall = 0, farthest = -1;
      for (const Label& label : drawing.labels) {
        const double value = read(label.text, units), v = dot(text_box(label).centre, side.away);
        sum += value;
        if (v > farthest) {
          farthest = v;
          overall = value;
        }
      }
      EXPECT_NEAR(sum - overall, overall, 1e-6) << "round " << round;
      const Space space = extent(drawing);
      for (const std::string& fault : support::layout_faults(drawing, space))
        ADD_FAILURE() << "round " << round << ": " << fault;
      // They stay on their side of the thing, and within what they say they take.
      EXPECT_GE(upright ? -space.high.x : space.low.y, 0);
      EXPECT_LE(upright ? -space.low.x : space.high.y, rows.depth + 1.3);
    }
  }
  EXPECT_LT(left_out, 200);  // of 4000
}

TEST(dimensions, a_chain_too_fine_for_its_length_is_left_out) {
  Chain chain;
  for (int i = 0; i <= 400; ++i) chain.push_back(i);
  Drawing drawing;
  EXPECT_FALSE(add_chains(drawing, below({0, 0}), {chain, {0, 400}}, {{Units::mm, 16}, 0.1, 2.5}).complete);
  ASSERT_EQ(drawing.labels.size(), 1u);  // the overall one
  EXPECT_EQ(drawing.labels[0].text, "400");
}

}  // namespace
}  // namespace exporters
