#include "models/read_parts.h"

namespace models {

Flock read_flock(const Element& coop) {
  const Element element = coop.child("flock");
  const Flock flock{element.whole("birds"), element.whole("planned"), element.choice<BodySize>("size")};
  if (element.given() && element.sound() && flock.birds + flock.planned == 0)
    element.problem("birds", "no birds now and none planned: expected at least 1 of either");
  return flock;
}

House read_house(const Element& coop) {
  const Element element = coop.child("house");
  const House house{element.length("width"),
                    element.length("depth"),
                    element.length("wall-height"),
                    element.lumber("framing"),
                    element.choice<Corners>("corners"),
                    element.length("post-spacing")};
  if (!house_is_sound(coop)) return house;

  // Each wall has a post at either end and a rail at top and bottom, and something between them; where it
  // stands between its neighbours, they take their thickness from it.
  const Length least_wall = 3 * house.framing.width, between = least_wall + 2 * house.framing.thickness;
  const bool front_runs = house.corners == Corners::front_and_back_run;
  const Length least_width = front_runs ? least_wall : between,
               least_depth = front_runs ? between : least_wall;
  const std::string too_small = "too little for framing of " + house.framing.name;
  if (house.width < least_width) element.must_be_at_least("width", least_width, too_small);
  if (house.depth < least_depth) element.must_be_at_least("depth", least_depth, too_small);
  if (house.wall_height < least_wall) element.must_be_at_least("wall-height", least_wall, too_small);
  // Posts spread evenly come as close as half of the spacing asked.
  if (element.sound({"post-spacing"}) && house.post_spacing < 2 * house.framing.width)
    element.must_be_at_least("post-spacing", 2 * house.framing.width,
                             "posts of " + house.framing.name + " would run into each other");
  return house;
}

bool house_is_sound(const Element& coop) {
  const Element element = coop.child("house");
  return element.given() && element.sound({"width", "depth", "wall-height", "framing", "corners"});
}

}  // namespace models
