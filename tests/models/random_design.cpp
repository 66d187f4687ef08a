#include "tests/models/random_design.h"

#include <algorithm>
#include <cmath>
#include <random>

#include "models/design_format.h"
#include "models/furniture.h"
#include "models/wall_plane.h"

namespace test {
namespace {

using geometry::inches;
using geometry::Length;
using models::Design;
using models::Edge;
using models::Side;

// Numbers from a seed that are the same on every machine: the engine is fixed by the standard, its distributions are not.
class Dice {
 public:
  explicit Dice(std::uint32_t seed) : engine_(seed) {}
  int roll(int least, int most) {
    return least + static_cast<int>(engine_() % static_cast<std::uint32_t>(most - least + 1));
  }
  bool chance(int percent) { return roll(1, 100) <= percent; }
  // Inches, in eighths.
  double eighths(double least, double most) {
    return roll(static_cast<int>(std::ceil(least * 8 - 1e-9)),
                static_cast<int>(std::floor(most * 8 + 1e-9))) /
           8.0;
  }
  std::string pick(const std::vector<const char*>& words) {
    return words[static_cast<std::size_t>(roll(0, static_cast<int>(words.size()) - 1))];
  }

 private:
  std::mt19937 engine_;
};

// Puts a design together; all sizes in inches.
class Maker {
 public:
  explicit Maker(std::uint32_t seed) : dice_(seed), loose_boxes_(seed % 3 == 0) {}

  Node coop() {
    Node root = node("coop");
    word(root, "format", "1");
    word(root, "name", "random");
    Node flock = node("flock");
    word(flock, "birds", std::to_string(dice_.roll(1, 12)));
    root.children.push_back(flock);
    root.children.push_back(house());
    root.children.push_back(cladding());
    plan_nests();
    for (const char* side : {"front", "right", "back", "left"}) root.children.push_back(wall(side));
    root.children.push_back(roof());
    if (!nests_.name.empty()) root.children.push_back(nests_);
    if (dice_.chance(45)) root.children.push_back(roosts());
    if (dice_.chance(35))
      root.children.push_back(floor());
    else if (dice_.chance(40))
      root.children.push_back(base());
    if (dice_.chance(30)) root.children.push_back(apron());
    if (dice_.chance(30)) root.children.push_back(run());
    if (dice_.chance(20)) root.children.push_back(extra());
    return root;
  }

 private:
  static Node node(const char* name) { return {name, {}, {}, {}}; }
  static void word(Node& node, const char* name, const std::string& value) {
    node.words.emplace_back(name, value);
  }
  static void length(Node& node, const char* name, double in) { node.lengths.emplace_back(name, inches(in)); }
  void size(Node& node, const char* name, double least, double most) {
    length(node, name, dice_.eighths(least, most));
  }
  static double eighth_up(double in) { return std::ceil(in * 8 - 1e-9) / 8; }

  bool through(const std::string& side) const {
    return (side == "front" || side == "back") == front_and_back_run_;
  }
  double along(const std::string& side) const { return side == "front" || side == "back" ? width_ : depth_; }

  Node house() {
    Node house = node("house");
    width_ = dice_.eighths(34, 90);
    depth_ = dice_.eighths(32, 76);
    high_ = dice_.eighths(36, 76);
    length(house, "width", width_);
    length(house, "depth", depth_);
    length(house, "wall-height", high_);
    const std::string framing = dice_.pick({"2x2", "2x3", "38x38", "38x63"});
    word(house, "framing", framing);
    in_inches_ = framing[1] == 'x';
    frame_ = framing == "2x2" ? 1.5 : framing == "2x3" ? 2.5 : framing == "38x38" ? 38 / 25.4 : 63 / 25.4;
    thick_ = in_inches_ ? 1.5 : 38 / 25.4;
    front_and_back_run_ = dice_.chance(50);
    word(house, "corners", front_and_back_run_ ? "front-and-back-run" : "left-and-right-run");
    size(house, "post-spacing", 14, 32);
    if (dice_.chance(25)) word(house, "corner-trim", dice_.pick({"1x3", "19x75", "1x4"}));
    return house;
  }

  Node cladding() {
    Node cladding = node("cladding");
    const int kind = dice_.roll(1, 10);
    word(cladding, "kind", kind <= 6 ? "slats" : kind <= 8 ? "lapped" : "sheets");
    word(cladding, "slats", dice_.pick({"1x4", "1x6", "19x100", "22x150"}));
    word(cladding, "run", dice_.pick({"upright", "level"}));
    length(cladding, "gap", dice_.chance(20) ? 0 : dice_.eighths(0.125, 0.5));
    size(cladding, "lap", 0.5, 1.5);
    word(cladding, "sheet", dice_.pick({"1/2 plywood", "9mm plywood"}));
    return cladding;
  }

  // Outside nests need a wall for themselves, so they are planned before the walls.
  void plan_nests() {
    if (!dice_.chance(50)) return;
    Node nests = node("nests");
    const bool outside = dice_.chance(40);
    const std::string side = dice_.pick({"front", "right", "back", "left"});
    word(nests, "place", outside ? "outside" : "inside");
    word(nests, "wall", side);
    word(nests, "count", std::to_string(dice_.roll(1, 3)));
    size(nests, "bottom", 10, 20);
    size(nests, "width", 7, 12);
    size(nests, "depth", 7, 12);
    size(nests, "height", 10, 14);
    size(nests, "lip", 2, 5);
    word(nests, "panel", dice_.pick({"1/2 plywood", "3/8 plywood", "12mm plywood"}));
    word(nests, "ledges", dice_.pick({"2x2", "38x38"}));
    word(nests, "lip-board", dice_.pick({"1x6", "19x150"}));
    if (outside) {
      word(nests, "lid-pitch", std::to_string(dice_.roll(5, 25)) + "deg");
      size(nests, "lid-overhang", 0, 3);
      own_wall_ = side;
    } else if (loose_boxes_) {
      word(nests, "boxes", "loose");
    }
    nests_ = nests;
  }

  Node wall(const std::string& side) {
    Node wall = node("wall");
    word(wall, "side", side);
    if (dice_.chance(15)) wall.children.push_back(cladding());
    if (side == own_wall_) return wall;
    const double from = through(side) ? 0 : thick_, to = along(side) - from;
    double post = from;  // left edge of the post that the next opening may use
    for (int i = 0; i < 3 && dice_.chance(55); ++i) {
      const double flush = post + frame_;
      double left = in_inches_ && dice_.chance(25) ? flush : eighth_up(flush + frame_) + dice_.eighths(0, 8);
      Node opening = this->opening(left, to);
      if (opening.name.empty()) break;
      const double right = left + opening.lengths[2].second.inches();
      post = right;
      wall.children.push_back(std::move(opening));
    }
    return wall;
  }

  // An opening from `left` on, in a wall whose frame ends at `to`; without a name when there is no room.
  Node opening(double left, double to) {
    const std::string kind =
        dice_.pick({"door", "door", "nest-door", "bird-door", "vent", "round-vent", "window", "window"});
    const bool leaf = kind == "door" || kind == "nest-door" || kind == "bird-door";
    Node opening = node(kind.c_str());
    const double room = to - 2 * frame_ - left, tall = high_ - 2 * frame_;
    const double width = std::min(kind == "door"         ? dice_.eighths(14, 26)
                                  : kind == "round-vent" ? dice_.eighths(3, 7)
                                                         : dice_.eighths(8, 18),
                                  std::floor(room * 8) / 8);
    const double least = leaf ? 7 : 3;
    if (width < least) return {};
    const bool beside_batten = left < thick_ + 2 || left + width > to - thick_ - 2;
    if (!leaf && beside_batten) return {};
    const double bottom =
        in_inches_ && leaf && dice_.chance(25) ? frame_ : eighth_up(2 * frame_) + dice_.eighths(0.5, 8);
    const double most = std::floor((tall - bottom) * 8) / 8;
    const double height = kind == "round-vent"
                              ? width
                              : std::min(most, kind == "door" ? dice_.eighths(18, 60) : dice_.eighths(7, 18));
    if (height > most || height < least) return {};
    length(opening, "left", left);
    length(opening, "bottom", bottom);
    length(opening, kind == "round-vent" ? "diameter" : "width", width);
    if (kind != "round-vent") length(opening, "height", height);
    if (leaf) {
      add_leaf(opening, kind == "bird-door", bottom);
      return opening;
    }
    word(opening, "battens", dice_.pick({"1x2", "19x38"}));
    if (kind == "window" && dice_.chance(50))
      word(opening, "pane", dice_.pick({"1/4 plywood", "6mm plywood"}));
    else
      word(opening, "mesh", dice_.pick({"1/2 hardware cloth", "6mm mesh"}));
    return opening;
  }

  void add_leaf(Node& opening, bool birds, double bottom) {
    length(opening, "reveal", dice_.pick({"x", "y"}) == "x" ? 0.125 : 0.25);
    word(opening, "frame", dice_.pick({"1x2", "1x3", "19x50"}));
    if (dice_.chance(35)) word(opening, "sheet", dice_.pick({"1/2 plywood", "12mm plywood"}));
    if (birds && dice_.chance(40)) {
      word(opening, "ramp", "1/2 plywood");
      length(opening, "ramp-length", std::max(24.0, eighth_up(bottom * 1.2)) + 30);
    }
    const int way = dice_.roll(1, 10);
    if (way <= 6) {
      Node hinges = node("hinges");
      word(hinges, "edge", dice_.pick({"left", "right", "top", "bottom"}));
      word(hinges, "swing", dice_.pick({"outward", "outward", "inward"}));
      word(hinges, "opens", dice_.pick({"80deg", "110deg", "160deg"}));
      opening.children.push_back(hinges);
    } else if (way <= 9) {
      Node slides = node("slides");
      word(slides, "to", dice_.pick({"left", "right", "up"}));
      size(slides, "lap", 0.5, 1.25);
      opening.children.push_back(slides);
    } else {
      opening.children.push_back(node("lifts-off"));
    }
  }

  Node roof() {
    Node roof = node("roof");
    const bool gable = dice_.chance(60);
    word(roof, "slopes", gable ? "gable" : "single");
    word(roof, "pitch", std::to_string(gable ? dice_.roll(2, 14) : dice_.roll(1, 5)) + ":12");
    if (gable)
      word(roof, "ridge", dice_.pick({"front-to-back", "left-to-right"}));
    else
      word(roof, "rises-to", dice_.pick({"front", "right", "back", "left"}));
    const double eave = dice_.chance(15) ? 0 : dice_.eighths(1, 9),
                 verge = dice_.chance(20) ? 0 : dice_.eighths(2.5, 7);
    word(roof, "tails", eave > 3 && dice_.chance(50) ? "square" : "plumb");
    length(roof, "eave-overhang", eave);
    length(roof, "gable-overhang", verge);
    word(roof, "rafters", dice_.pick({"2x3", "2x4", "38x89"}));
    size(roof, "spacing", 12, 32);
    if (dice_.chance(30)) size(roof, "seat", 0.75, std::floor(thick_ * 8) / 8);
    bool mesh = false;
    if (dice_.chance(30)) length(roof, "eave-gap", dice_.eighths(0.375, 1)), mesh = true;
    if (gable) {
      word(roof, "ridge-board", dice_.pick({"1x2", "1x3", "19x50"}));
      if (dice_.chance(25)) length(roof, "ridge-gap", dice_.eighths(0.75, 1.5)), mesh = true;
      if (dice_.chance(40)) {
        Node tie = node("tie");
        word(tie, "size", dice_.pick({"1x2", "1x3"}));
        size(tie, "height", 1, 5);
        roof.children.push_back(tie);
      }
      if (dice_.chance(30)) roof.children.push_back(node("gussets"));
    }
    if (mesh) word(roof, "mesh", dice_.pick({"1/4 hardware cloth", "6mm mesh"}));
    if (eave > 2.5 && dice_.chance(30)) roof.children.push_back(node("fascia"));
    if (verge > 2.5 && dice_.chance(30)) roof.children.push_back(node("barge"));
    roof.children.push_back(node(dice_.pick({"boards", "sheets", "corrugated"}).c_str()));
    return roof;
  }

  Node roosts() {
    Node roosts = node("roosts");
    const bool across = dice_.chance(50);
    const int count = dice_.roll(1, 3);
    word(roosts, "runs", across ? "left-to-right" : "front-to-back");
    word(roosts, "count", std::to_string(count));
    size(roosts, "first", 4, 10);
    size(roosts, "spacing", 6, 12);
    length(roosts, "height", dice_.eighths(20, std::max(21.0, high_ - 8)));
    if (dice_.chance(30)) size(roosts, "step", 3, 5);
    word(roosts, "bars", dice_.pick({"2x2", "2x3", "38x63"}));
    length(roosts, "rounding", dice_.chance(30) ? 0 : 0.5);
    if (dice_.chance(20)) word(roosts, "droppings-board", "1/2 plywood");
    return roosts;
  }

  Node floor() {
    Node floor = node("floor");
    size(floor, "clear", 3, 18);
    size(floor, "joist-spacing", 10, 20);
    word(floor, "legs", dice_.pick({"4x4", "100x100", "2x4"}));
    if (dice_.chance(50))
      word(floor, "boards", dice_.pick({"1x6", "22x150"}));
    else
      word(floor, "sheet", dice_.pick({"1/2 plywood", "18mm plywood"}));
    return floor;
  }

  Node base() {
    Node base = node("base");
    word(base, "kind", dice_.pick({"stone", "blocks", "skids"}));
    return base;
  }

  Node apron() {
    Node apron = node("apron");
    size(apron, "depth", 0, 4);
    size(apron, "width", 4, 20);
    return apron;
  }

  Node run() {
    Node run = node("run");
    const std::string side = dice_.pick({"front", "right", "back", "left"});
    word(run, "wall", side);
    size(run, "length", 36, 96);
    if (dice_.chance(50)) size(run, "width", 30, along(side));
    length(run, "height", std::min(dice_.eighths(24, 60), high_));
    word(run, "top", dice_.pick({"mesh", "open"}));
    length(run, "door-width", dice_.chance(40) ? 0 : dice_.eighths(10, 18));
    return run;
  }

  // Beside the house, where nothing else is.
  Node extra() {
    Node extra = node("extra");
    Node stick = node("stick");
    word(stick, "name", "brace");
    word(stick, "lumber", dice_.pick({"1x4", "38x63"}));
    size(stick, "length", 30, 60);
    word(stick, "left-mitre", std::to_string(dice_.roll(-45, 45)) + "deg");
    word(stick, "right-bevel", std::to_string(dice_.roll(-45, 45)) + "deg");
    length(stick, "x", -1000 - dice_.eighths(0, 40));
    length(stick, "z", 40);
    word(stick, "turn-z", std::to_string(dice_.roll(-180, 180)) + "deg");
    word(stick, "turn-x", std::to_string(dice_.roll(-90, 90)) + "deg");
    extra.children.push_back(stick);
    return extra;
  }

  Dice dice_;
  bool loose_boxes_;
  double width_ = 0, depth_ = 0, high_ = 0, frame_ = 0, thick_ = 0;
  bool in_inches_ = true, front_and_back_run_ = true;
  std::string own_wall_;
  Node nests_;
};

// Eighths of an inch are 3.175 mm: three decimals say them exactly.
std::string said(Length length, geometry::Units units) {
  const long eighths = std::lround(length.inches() * 8);
  const long magnitude = std::abs(eighths);
  std::string text = eighths < 0 ? "-" : "";
  if (units == geometry::Units::in) {
    text += std::to_string(magnitude / 8);
    if (magnitude % 8 != 0) text += " " + std::to_string(magnitude % 8) + "/8";
    return text + "in";
  }
  const long thousandths = magnitude * 3175;
  std::string decimals = std::to_string(thousandths % 1000);
  decimals.insert(0, 3 - decimals.size(), '0');
  return text + std::to_string(thousandths / 1000) + "." + decimals + "mm";
}

bool given(const Node& node, std::string_view name) {
  const auto named = [&](const auto& attribute) { return attribute.first == name; };
  return std::any_of(node.words.begin(), node.words.end(), named) ||
         std::any_of(node.lengths.begin(), node.lengths.end(), named);
}

// Whether a default of the attribute would stand beside what it excludes.
bool excluded(const Node& node, std::string_view name) {
  return node.name == "roof" && name == "ridge-board" && given(node, "rises-to");
}

void write(const Node& node, geometry::Units units, std::string& text) {
  text += "<" + node.name;
  for (const auto& [name, value] : node.words) text += " " + name + "='" + value + "'";
  for (const auto& [name, value] : node.lengths) text += " " + name + "='" + said(value, units) + "'";
  if (node.name == "coop") text += units == geometry::Units::in ? " units='in'" : " units='mm'";
  for (const models::AttributeFormat& attribute : models::element_format(node.name).attributes)
    if (attribute.default_in != attribute.default_mm && !given(node, attribute.name) &&
        !excluded(node, attribute.name))
      text += " " + std::string(attribute.name) + "='" + std::string(attribute.default_in) + "'";
  text += ">\n";
  for (const Node& child : node.children) write(child, units, text);
  text += "</" + node.name + ">\n";
}

Side mirrored(Side side) {
  return side == Side::left ? Side::right : side == Side::right ? Side::left : side;
}
Edge mirrored(Edge edge) {
  return edge == Edge::left ? Edge::right : edge == Edge::right ? Edge::left : edge;
}

}  // namespace

Node random_design(std::uint32_t seed) { return Maker(seed).coop(); }

std::string text_of(const Node& node, geometry::Units units) {
  std::string text;
  write(node, units, text);
  return text;
}

bool mirror(Design& design) {
  const auto along = [&](Side side) { return wall_length(design.house, side); };
  std::swap(design.walls[1], design.walls[3]);
  for (models::Wall& wall : design.walls) {
    wall.side = mirrored(wall.side);
    for (models::Opening& opening : wall.openings) {
      opening.left = along(wall.side) - opening.left - opening.width;
      opening.door.edge = mirrored(opening.door.edge);
    }
    std::reverse(wall.openings.begin(), wall.openings.end());
  }
  design.roof.rises_to = mirrored(design.roof.rises_to);
  if (design.nests) {
    design.nests->left = along(design.nests->wall) - design.nests->left - models::row_length(*design.nests);
    design.nests->wall = mirrored(design.nests->wall);
  }
  if (design.run) design.run->wall = mirrored(design.run->wall);
  design.extra_sticks.clear();
  if (design.roosts && !design.roosts->along_x) {
    models::Roosts& roosts = *design.roosts;
    if (roosts.step > Length() && roosts.count > 1) return false;
    const Length inside = design.house.width - design.house.framing.thickness * 2;
    roosts.first = inside - roosts.first - roosts.spacing * (roosts.count - 1);
  }
  return true;
}

}  // namespace test
