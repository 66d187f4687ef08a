#include <numeric>

#include "models/furniture.h"
#include "models/practice.h"
#include "models/splices.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::mm;
using geometry::Outline;
using geometry::rectangle;
using geometry::Vec2;

// A row of boxes that are one, or one box of several that stand loose.
struct Row {
  Assembler& assembler;
  const Nests& nests;
  Placement plane;  // of the wall
  double left, right, back, front,
      floor;  // wall coordinates; back and front are z, floor the top of the nests' floor
  std::vector<std::string> path;
};

// A long row is longer than a sheet or a board: it is made of pieces, joined in the middle of dividers.
std::vector<std::pair<double, double>> pieces_of_row(const Row& row, Length longest) {
  const double t = row.nests.panel.thickness.mm();
  std::vector<double> middles;
  for (int i = 1; i < row.nests.count; ++i)
    middles.push_back(row.left + i * box_pitch(row.nests).mm() + t / 2);
  return pieces_between(row.left, row.right, longest.mm(), middles);
}

void add_level_panel(const Row& row, const char* name, double top) {
  // Grain along the wall: x to the right, y into the house (-z of the wall), so the thickness goes up.
  const double depth = row.back - row.front;
  for (const auto& [from, to] : pieces_of_row(row, row.nests.panel.length))
    row.assembler.add(
        {name,
         Group::nest,
         sheet_of(row.nests.panel),
         {rectangle(mm(to - from), mm(depth)), row.nests.panel.thickness, {}, {}, {}},
         geometry::compose(
             row.plane, geometry::placement({from, top - row.nests.panel.thickness.mm(), row.back}, {1, 0, 0},
                                            {0, 0, -1})),
         row.nests.wall},
        row.path);
}

void add_dividers(const Row& row, double lip_thickness) {
  const Nests& n = row.nests;
  const double t = n.panel.thickness.mm();
  for (int i = 0; i <= n.count; ++i) {
    const double x = row.left + i * (n.width.mm() + t);
    // Grain from back to front; the lip board stands before all of them.
    row.assembler.add(
        {n.loose ? "nest side" : "nest divider",
         Group::nest,
         sheet_of(n.panel),
         {rectangle(mm(row.back - t - row.front - lip_thickness), n.height), n.panel.thickness, {}, {}, {}},
         geometry::compose(row.plane,
                           geometry::placement({x, row.floor, row.back - t}, {0, 0, -1}, {0, 1, 0})),
         n.wall},
        row.path);
  }
}

void add_back(const Row& row, const Wall& wall) {
  const Nests& n = row.nests;
  std::vector<Outline> doors;
  for (const Opening& o : wall.openings)
    if (o.kind == OpeningKind::nest_door)
      doors.push_back(
          rectangle({o.left.mm(), o.bottom.mm()}, {(o.left + o.width).mm(), (o.bottom + o.height).mm()}));
  for (const auto& [from, to] : pieces_of_row(row, row.nests.panel.length)) {
    const Outline whole = rectangle({from, row.floor}, {to, row.floor + n.height.mm()});
    for (const Outline& piece : geometry::difference({whole}, doors))
      row.assembler.add(
          {"nest back",
           Group::nest,
           sheet_of(n.panel),
           {piece, n.panel.thickness, {}, {}, {}},
           geometry::compose(row.plane, geometry::shift({0, 0, row.back - n.panel.thickness.mm()})),
           n.wall},
          row.path);
  }
}

void add_lip(const Row& row, const Design& design) {
  const Nests& n = row.nests;
  for (const auto& [from, to] : pieces_of_row(row, longest_board(design, n.lip_board)))
    row.assembler.add({"litter lip", Group::nest, stick_of(n.lip_board),
                       geometry::stick(mm(to - from), n.lip, n.lip_board.thickness),
                       geometry::compose(row.plane, geometry::shift({from, row.floor, row.front})), n.wall},
                      row.path);
}

void add_ledges(const Row& row, const Design& design) {
  const Nests& n = row.nests;
  const double top = row.floor - n.panel.thickness.mm();
  const double high = n.ledges.width.mm(), deep = n.ledges.thickness.mm();
  const auto ledge = [&](const char* name, double from, double to, double z) {
    row.assembler.add({name, Group::nest, stick_of(n.ledges),
                       geometry::stick(mm(to - from), n.ledges.width, n.ledges.thickness),
                       geometry::compose(row.plane, geometry::shift({from, top - high, z})), n.wall},
                      {"nests", "ledges"});
  };
  const Reach reach = reach_of_posts(design, n.wall, row.left, row.right);
  // Joined over posts at the back, over legs at the front.
  const Length longest = longest_board(design, n.ledges);
  const std::vector<double> posts = post_middles(design, n.wall);
  for (const auto& [from, to] : pieces_between(reach.from, reach.to, longest.mm(), posts))
    ledge("back ledge", from, to, row.back - deep);
  std::vector<double> legs{row.left};
  for (const auto& [from, to] : pieces_of_row(row, longest)) {
    ledge("front ledge", from, to, row.front);
    legs.push_back(to < row.right ? to - high / 2 : row.right - high);
  }
  for (const double x : legs)
    row.assembler.add(
        {"nest leg", Group::nest, stick_of(n.ledges),
         geometry::stick(mm(top - high), n.ledges.width, n.ledges.thickness),
         geometry::compose(
             row.plane, geometry::placement({x + n.ledges.width.mm(), 0, row.front}, {0, 1, 0}, {-1, 0, 0})),
         n.wall},
        {"nests", "ledges"});
}

void add_boxes(const Row& row, const Design& design) {
  const Nests& n = row.nests;
  add_level_panel(row, "nest floor", row.floor);
  add_back(row, design.walls[static_cast<std::size_t>(n.wall)]);
  add_dividers(row, n.lip_board.thickness.mm());
  add_lip(row, design);
  add_level_panel(row, "nest lid", row.floor + n.height.mm() + n.panel.thickness.mm());
}

}  // namespace

Length box_pitch(const Nests& nests) {
  const Length shared = nests.width + nests.panel.thickness;
  return nests.loose ? shared + nests.panel.thickness + practice::box_play : shared;
}

Length row_length(const Nests& nests) {
  return box_pitch(nests) * (nests.count - 1) + nests.width + nests.panel.thickness * 2;
}

Length row_depth(const Nests& nests) {
  return nests.panel.thickness + nests.depth + nests.lip_board.thickness;
}

void add_nests(Assembler& assembler, const Design& design) {
  if (!design.nests) return;
  if (design.nests->outside) return add_outside_nests(assembler, design);
  const Nests& n = *design.nests;
  const double back = -design.house.framing.thickness.mm();
  const Row row{assembler,
                n,
                wall_plane(design.house, n.wall),
                n.left.mm(),
                (n.left + row_length(n)).mm(),
                back,
                back - row_depth(n).mm(),
                n.bottom.mm(),
                {"nests", "row"}};
  add_ledges(row, design);
  if (!n.loose) return add_boxes(row, design);
  for (int i = 0; i < n.count; ++i) {
    Nests one = n;
    one.count = 1;
    const double left = row.left + i * box_pitch(n).mm();
    const std::size_t first = assembler.building().parts.size();
    add_boxes({assembler,
               one,
               row.plane,
               left,
               left + row_length(one).mm(),
               row.back,
               row.front,
               row.floor,
               {"nests", "box " + std::to_string(i + 1)}},
              design);
    LooseBox box{i + 1, std::vector<std::size_t>(assembler.building().parts.size() - first)};
    std::iota(box.parts.begin(), box.parts.end(), first);
    assembler.add(std::move(box));
  }
}

}  // namespace models
