#include <algorithm>
#include <array>
#include <map>

#include "geometry/tolerance.h"
#include "models/read_parts.h"
#include "models/roof_shape.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::mm;

const Length same = mm(geometry::same_place);

// What a wall's own cladding leaves out is as the house's.
Cladding read_cladding(const Element& element, const Cladding* house_cladding) {
  const auto inherits = [&](std::string_view attribute) {
    return house_cladding != nullptr && !element.has(attribute);
  };
  Cladding cladding;
  cladding.kind = inherits("kind") ? house_cladding->kind : element.choice<CladdingKind>("kind");
  cladding.slats = inherits("slats") ? house_cladding->slats : element.lumber("slats");
  cladding.run = inherits("run") ? house_cladding->run : element.choice<Run>("run");
  cladding.gap = inherits("gap") ? house_cladding->gap : element.length("gap");
  cladding.lap = inherits("lap") ? house_cladding->lap : element.length("lap");
  cladding.sheet = inherits("sheet") ? house_cladding->sheet : element.sheet("sheet");
  return cladding;
}

Door read_door(const Element& opening, OpeningKind kind, const Cladding& cladding) {
  Door door;
  door.reveal = opening.length("reveal");
  door.frame = opening.lumber("frame");
  door.slats = opening.has("slats") ? opening.lumber("slats") : cladding.slats;
  door.sheet = opening.given_sheet("sheet");
  const Element hinges = opening.child("hinges"), slides = opening.child("slides"),
                lifts_off = opening.child("lifts-off");
  opening.one_of({"hinges", "slides", "lifts-off"}, "a leaf opens one way");
  const bool bird_door = kind == OpeningKind::bird_door;
  if (slides.given() || (bird_door && !hinges.given() && !lifts_off.given())) {
    door.kind = DoorKind::sliding;
    // left, right and up come first among the edges
    door.edge = bird_door && !slides.has("to") ? Edge::top : slides.choice<Edge>("to");
    door.lap = slides.length("lap");
  } else if (lifts_off.given()) {
    door.kind = DoorKind::lift_off;
  } else {
    door.edge = hinges.choice<Edge>("edge");
    door.swing = hinges.choice<Swing>("swing");
    door.opens = hinges.angle("opens");
  }
  return door;
}

// Each kind of opening as the file calls it, and as it is called when the file gives it no name.
struct Kind {
  OpeningKind kind;
  const char* element;
  const char* words;
};
constexpr Kind kinds[] = {{OpeningKind::door, "door", "door"},
                          {OpeningKind::nest_door, "nest-door", "nest door"},
                          {OpeningKind::bird_door, "bird-door", "bird door"},
                          {OpeningKind::vent, "vent", "vent"},
                          {OpeningKind::round_vent, "round-vent", "round vent"},
                          {OpeningKind::window, "window", "window"}};

// What closes an opening without a leaf.
void read_closing(const Element& element, Opening& opening) {
  opening.battens = element.lumber("battens");
  if (opening.kind != OpeningKind::window) {
    opening.mesh = element.mesh("mesh");
    return;
  }
  opening.pane = element.given_sheet("pane");
  if (!opening.pane)
    opening.mesh = element.has("mesh") ? element.mesh("mesh") : element.default_mesh();
  else if (element.has("mesh"))
    element.problem("mesh", "a window has mesh or a pane: expected one of them, not both");
}

Opening read_opening(const Element& element, OpeningKind kind, const Wall& wall, const House& house,
                     const Roof& roof) {
  Opening opening;
  opening.kind = kind;
  opening.line = element.line();
  opening.name = element.given_text("name").value_or("");
  const bool round = kind == OpeningKind::round_vent;
  opening.width = element.length(round ? "diameter" : "width");
  opening.height = element.length(round ? "diameter" : "height");
  opening.left = element.given_length("left").value_or((wall_length(house, wall.side) - opening.width) / 2);
  const std::optional<Length> bottom = element.given_length("bottom");
  if (has_leaf(kind)) {
    opening.door = read_door(element, kind, wall.cladding);
    // A slider's lower guide needs room on the wall under the opening, so a sill rail goes between.
    const int rails = opening.door.kind == DoorKind::sliding ? 2 : 1;
    opening.bottom = bottom.value_or(rails * house.framing.width);
  } else {
    read_closing(element, opening);
    opening.bottom = bottom.value_or(wall_top(house, roof, wall.side) - house.framing.width - opening.height);
  }
  if (kind == OpeningKind::bird_door) {
    opening.ramp = element.given_sheet("ramp");
    opening.ramp_length = element.length("ramp-length");
  }
  return opening;
}

// Whether the opening stands where the file says.
bool has_place(const Element& element) {
  return element.sound({"left", "bottom", "width", "height", "diameter"});
}

// Whether the walls' heights are what the file says: under a single slope they hang on the whole roof.
bool heights_are_sound(const Element& coop, const Roof& roof) {
  const Element element = coop.child("roof");
  return house_is_sound(coop) && element.sound({"slopes"}) &&
         (roof.kind == RoofKind::gable || element.sound());
}

// The opening must lie within the frame's end posts and rails.
void check_place(const Element& element, const Opening& opening, const Wall& wall, const House& house,
                 const Roof& roof) {
  const Length top = wall_top(house, roof, wall.side);
  const Extent extent = frame_extent(house, wall.side);
  const Length post = house.framing.width;
  const Length from = extent.from + post, to = extent.to - post, low = post, high = top - post;
  if (to <= from || high <= low) return;  // the house is too small to have openings at all
  const bool round = opening.kind == OpeningKind::round_vent;
  if (opening.width > to - from + same)
    element.must_be_at_most(round ? "diameter" : "width", to - from,
                            "the opening is wider than the wall between its end posts");
  else if (opening.left < from - same)
    element.must_be_at_least("left", from, "the opening reaches into the wall's left end post");
  else if (opening.left + opening.width > to + same)
    element.must_be_at_most("left", to - opening.width, "the opening reaches past the wall's right end post");
  if (opening.height > high - low + same)
    element.must_be_at_most(round ? "diameter" : "height", high - low,
                            "the opening is higher than the wall between its rails");
  else if (opening.bottom < low - same)
    element.must_be_at_least("bottom", low, "the opening reaches into the wall's bottom rail");
  else if (opening.bottom + opening.height > high + same)
    element.must_be_at_most("bottom", high - opening.height, "the opening reaches into the wall's top rail");
}

// An opening with the element that it came from.
struct Read {
  Element element;
  Opening opening;
  Side side;
  bool placed;  // whether the file says which wall it is in
};

// Openings of a wall stand side by side with a post between: posts reach from rail to rail.
void check_neighbours(const std::vector<Read>& all, Side side, Length post) {
  std::vector<const Read*> in_wall;
  for (const auto& read : all)
    if (read.side == side && read.placed && has_place(read.element)) in_wall.push_back(&read);
  std::stable_sort(in_wall.begin(), in_wall.end(),
                   [](const Read* a, const Read* b) { return a->opening.left < b->opening.left; });
  const Read* last = nullptr;  // the one that reaches farthest right so far
  for (const Read* read : in_wall) {
    if (last != nullptr) {
      const Length end = last->opening.left + last->opening.width, gap = read->opening.left - end;
      const std::string other =
          in_quotes(last->opening.name) + " of line " + std::to_string(last->opening.line);
      if (gap < post - same)
        read->element.must_be_at_least("left", end + post,
                                       gap < -same ? "the opening overlaps " + other
                                                   : "the opening leaves no room for a post beside " + other);
    }
    if (last == nullptr ||
        read->opening.left + read->opening.width > last->opening.left + last->opening.width)
      last = read;
  }
}

void name_openings(std::vector<Read>& all) {
  std::map<std::string, int> lines;
  for (const auto& read : all) {
    if (read.opening.name.empty()) continue;
    const auto [found, fresh] = lines.emplace(read.opening.name, read.element.line());
    if (!fresh)
      read.element.problem("name", in_quotes(read.opening.name) + " is taken: the opening in line " +
                                       std::to_string(found->second) + " has the same name");
  }
  for (auto& read : all) {
    if (!read.opening.name.empty()) continue;
    const auto kind = std::find_if(std::begin(kinds), std::end(kinds),
                                   [&](const Kind& k) { return k.kind == read.opening.kind; });
    const std::string first = std::string(name(read.side)) + " " + kind->words;
    std::string candidate = first;
    for (int number = 2; !lines.emplace(candidate, read.element.line()).second; ++number)
      candidate = first + " " + std::to_string(number);
    read.opening.name = candidate;
  }
}

}  // namespace

std::vector<Wall> read_walls(const Element& coop, const House& house, const Roof& roof) {
  const Cladding house_cladding = read_cladding(coop.child("cladding"), nullptr);
  std::vector<Wall> walls;
  for (const Side side : {Side::front, Side::right, Side::back, Side::left})
    walls.push_back({side, house_cladding, {}});

  std::array<int, 4> lines{};
  std::vector<Read> all;
  for (const auto& element : coop.children("wall")) {
    const Side side = element.choice<Side>("side");
    const bool placed = element.has("side") && element.sound({"side"});
    const bool first = placed && lines[static_cast<std::size_t>(side)] == 0;
    int& line = lines[static_cast<std::size_t>(side)];
    if (placed && !first)
      element.problem("side", "the " + std::string(name(side)) +
                                  " wall is given twice: the first is in line " + std::to_string(line));
    Wall wall{side, read_cladding(element.child("cladding"), &house_cladding), {}};
    for (const Kind& kind : kinds)
      for (const auto& opening : element.children(kind.element))
        all.push_back({opening, read_opening(opening, kind.kind, wall, house, roof), side, placed});
    if (!first) continue;
    line = element.line();
    Wall& own = walls[static_cast<std::size_t>(side)];
    const Length width = house.framing.width;
    for (const auto& post : element.children("extra-post")) {
      own.extra_posts.push_back(post.length("left"));
      const Extent extent = frame_extent(house, side);
      if (!house_is_sound(coop) || !post.sound()) continue;
      if (own.extra_posts.back() < extent.from)
        post.must_be_at_least("left", extent.from, "that is where the wall's frame starts");
      else if (own.extra_posts.back() > extent.to - width)
        post.must_be_at_most("left", extent.to - width, "that is where the wall's end post stands");
    }
    for (const auto& rail : element.children("extra-rail")) {
      own.extra_rails.push_back(rail.length("bottom"));
      if (!house_is_sound(coop) || !rail.sound()) continue;
      if (own.extra_rails.back() < width)
        rail.must_be_at_least("bottom", width, "the bottom rail lies there");
      else if (own.extra_rails.back() > house.wall_height - width * 2)
        rail.must_be_at_most("bottom", house.wall_height - width * 2, "the top rail lies there");
    }
    walls[static_cast<std::size_t>(side)].cladding = wall.cladding;
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Read& a, const Read& b) { return a.element.line() < b.element.line(); });
  name_openings(all);

  const bool sound = house_is_sound(coop), heights = heights_are_sound(coop, roof);
  for (const auto& read : all)
    if (heights && read.placed && has_place(read.element))
      check_place(read.element, read.opening, walls[static_cast<std::size_t>(read.side)], house, roof);
  for (auto& wall : walls) {
    if (sound) check_neighbours(all, wall.side, house.framing.width);
    for (const auto& read : all)
      if (read.side == wall.side) wall.openings.push_back(read.opening);
    std::stable_sort(wall.openings.begin(), wall.openings.end(),
                     [](const Opening& a, const Opening& b) { return a.left < b.left; });
  }
  return walls;
}

}  // namespace models
