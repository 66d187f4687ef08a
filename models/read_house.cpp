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
  return {element.length("width"),
          element.length("depth"),
          element.length("wall-height"),
          element.lumber("framing"),
          element.choice<Corners>("corners"),
          element.length("post-spacing"),
          element.given_lumber("corner-trim")};
}

bool house_is_sound(const Element& coop) {
  const Element element = coop.child("house");
  return element.given() && element.sound({"width", "depth", "wall-height", "framing", "corners"});
}

}  // namespace models
