// How large a house a flock gets.
#include "models/design_start.h"

#include <algorithm>
#include <cmath>

#include "models/flock.h"
#include "models/stock.h"

namespace models {
namespace {

using geometry::inches;
using geometry::mm;

// No more birds than this live in a house that nobody walks into: common practice.
constexpr int birds_in_low_house = 6;

// The sizes of one kind of house, in the units of the design.
struct Maker {
  const StartChoices& choices;
  FlockNeeds needs = flock_needs(choices.size, Climate::temperate, choices.units);

  [[nodiscard]] Length at(double in, double millimetres) const {
    return choices.units == Units::in ? inches(in) : mm(millimetres);
  }
  // To a whole inch, or a whole centimetre.
  [[nodiscard]] Length up(Length length) const { return at(1, 10) * std::ceil(length / at(1, 10) - 1e-9); }
  [[nodiscard]] Length down(Length length) const { return at(1, 10) * std::floor(length / at(1, 10) + 1e-9); }

  // Room that birds and boards need between a bar and what stands beside it.
  [[nodiscard]] Length beside_bar() const { return at(8, 200); }
  [[nodiscard]] Length row(const StartSizes& s) const {
    return s.box_side * s.boxes + s.box_wall * (s.boxes + 1);
  }
  // From the outside of the right wall to the near side of the last bar.
  [[nodiscard]] Length bars_reach(const StartSizes& s) const {
    return s.frame_thickness + s.first_bar + s.bar_spacing * (s.bars - 1) + s.bar_width / 2;
  }
  [[nodiscard]] Length inside(const StartSizes& s, Length across) const {
    return across - s.frame_thickness * 2;
  }

  // What does not depend on the plan of the house.
  [[nodiscard]] StartSizes fixed() const {
    const bool single = choices.roof == RoofKind::single_slope;
    StartSizes s;
    s.walk_in = choices.birds > birds_in_low_house;
    s.frame_thickness = at(1.5, 38);
    s.frame_width = s.walk_in ? at(2.5, 63) : at(1.5, 38);
    // Under a single slope this is the lower wall.
    s.wall_height = s.walk_in ? (single ? at(72, 1800) : at(82, 2100)) : single ? at(44, 1100) : at(48, 1200);
    s.boxes = boxes_for(choices.birds, needs.birds_to_a_nest.better);
    s.box_side = mm(needs.nest_side.better);
    s.box_height = mm(needs.nest_height.better);
    s.box_wall = at(0.5, 12);
    s.first_bar = at(10, 250);
    s.bar_spacing = at(12, 300);
    s.vent_height = s.walk_in ? at(16, 400) : at(8, 200);
    s.run_height = s.walk_in ? (single ? at(66, 1650) : at(72, 1800)) : at(42, 1050);
    s.vent_mesh = choices.units == Units::in ? "1/4 hardware cloth" : "6mm mesh";  // that keeps mice out
    return s;
  }

  // What follows from width and depth. False when it does not all go in.
  [[nodiscard]] bool furnish(StartSizes& s) const {
    const Length in_depth = inside(s, s.depth), t = s.frame_thickness, w = s.frame_width;
    s.bar_width = s.depth > at(96, 2400) ? at(3.5, 75) : s.walk_in ? at(3.5, 89) : at(1.5, 38);
    s.bars = static_cast<int>(std::ceil(needs.roost.better * choices.birds / in_depth.mm() - 1e-9));
    const Length bars = bars_reach(s);
    const double legs = 2 * (at(1.5, 38) * at(1.5, 38)).mm2;
    if ((in_depth * inside(s, s.width)).mm2 - legs < needs.floor.better * choices.birds) return false;
    if (s.walk_in) {
      s.nests_left = up(bars + beside_bar());
      s.door_left = at(12, 300);
      s.door_width = at(32, 800);
      return s.nests_left + row(s) <= s.width - t && s.door_left + s.door_width + w <= s.width - bars;
    }
    s.nests_left = (s.depth - row(s)) / 2;
    const Length nests_reach = t + s.box_wall + s.box_side + at(0.75, 19) + beside_bar();
    s.door_left = w * 2;
    const Length room = s.width - bars - s.door_left;  // the jamb post may stand under the bar's end
    s.doors = room >= at(52, 1300) + w ? 2 : 1;
    s.door_width = std::min(down((room - w * (s.doors - 1)) / s.doors), at(36, 900));
    return row(s) <= in_depth && nests_reach <= s.width - bars && s.door_width >= at(24, 600);
  }

  // The least floor that holds it all; of equal ones the least deep, for short rafters.
  void plan(StartSizes& s) const {
    const bool low = !s.walk_in;
    const Length least_depth = low ? at(48, 1200) : at(72, 1800),
                 most_depth = low ? least_depth : at(168, 4200);
    const Length step = at(6, 100), depth_step = at(12, 200);
    // A wall's rails are single boards; only large birds need a longer wall.
    for (const Length most_width : {at(240, 6000), at(360, 9000)}) {
      std::optional<StartSizes> best;
      const auto steps = [](Length from, Length to, Length by) { return std::lround((to - from) / by); };
      for (long i = 0; i <= steps(least_depth, most_depth, depth_step); ++i) {
        StartSizes tried = s;
        tried.depth = least_depth + depth_step * static_cast<double>(i);
        const Length least_width = std::max(tried.depth, at(48, 1200));
        for (long k = 0; k <= steps(least_width, most_width, step); ++k) {
          tried.width = least_width + step * static_cast<double>(k);
          if (!furnish(tried)) continue;
          if (!best || (tried.width * tried.depth).mm2 < (best->width * best->depth).mm2 - 1) best = tried;
          break;
        }
      }
      if (!best) continue;
      s = *best;
      return;
    }
  }

  // Free opening of a tenth of the floor, high in the walls.
  void ventilate(StartSizes& s) const {
    struct Stretch {
      Side wall;
      Length from, to;
    };
    const Length w = s.frame_width, gap = up(w * 2);
    const Length bird_door_end = at(8, 200) + mm(needs.bird_door_width.better) + w * 2;
    const Length doors_end = s.door_left + s.door_width * s.doors + w * (s.doors + 1) + w;
    std::vector<Stretch> stretches;
    const auto add = [&](Side wall, Length from, Length to) {
      stretches.push_back({wall, up(from), down(to)});
    };
    add(Side::back, s.walk_in ? bird_door_end : w * 2, s.width - w * 2);
    if (s.walk_in) {
      const Length set_in = s.frame_thickness + w * 2;
      add(Side::right, set_in, s.depth - set_in);
      add(Side::front, doors_end, s.width - w * 2);
      add(Side::left, set_in, s.depth - set_in);
    }
    const Stock stock = standard_stock();
    const Mesh& mesh = *find_mesh(stock, s.vent_mesh);
    const double through = free_share(mesh.opening, mesh.wire);
    const Length all =
        mm((inside(s, s.depth) * inside(s, s.width)).mm2 * air_of_floor / through / s.vent_height.mm());
    const Length widest = at(36, 900);
    for (int count = static_cast<int>(std::ceil(all / widest - 1e-9));; ++count) {
      s.vent_width = up(all / count);
      s.vents.clear();
      for (const Stretch& stretch : stretches) {
        const int room =
            std::max(0, static_cast<int>((stretch.to - stretch.from + gap) / (s.vent_width + gap) + 1e-9));
        const int here = std::min(room, count - static_cast<int>(s.vents.size()));
        // In the middle of their stretch.
        const Length spare = stretch.to - stretch.from - (s.vent_width + gap) * here + gap;
        for (int i = 0; i < here; ++i)
          s.vents.push_back({stretch.wall, stretch.from + down(spare / 2) + (s.vent_width + gap) * i});
      }
      if (static_cast<int>(s.vents.size()) == count || count > 60) return;
    }
  }

  // Along the right wall of a low house, the back wall of one to walk in; as long as the birds are advised to have, or as
  // a board is.
  void pen(StartSizes& s) const {
    const Length across = inside(s, s.walk_in ? s.width : s.depth), ends = s.frame_thickness + at(1, 25);
    const Length board = at(240, 6000);
    // To a whole half foot, or decimetre.
    const auto length_for = [&](double each) {
      const Length step = at(6, 100);
      return step * std::ceil((mm(each * choices.birds / across.mm()) + ends) / step - 1e-9);
    };
    if (length_for(needs.run.least) > board) return;
    s.run_length = std::min(length_for(needs.run.better), board);
    // Mesh hangs through over a wider one.
    s.run_has_top = across <= at(144, 3600);
  }
};

}  // namespace

StartSizes start_sizes(const StartChoices& choices) {
  const Maker maker{choices};
  StartSizes sizes = maker.fixed();
  maker.plan(sizes);
  maker.ventilate(sizes);
  maker.pen(sizes);
  return sizes;
}

}  // namespace models
