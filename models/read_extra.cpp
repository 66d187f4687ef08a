#include "models/read_parts.h"

namespace models {
namespace {

// Turned about the three axes through the part's origin, first x, then y, then z, and then moved.
geometry::Placement read_placement(const Element& element) {
  using geometry::compose;
  const auto turned = [&](const char* attribute, geometry::Vec3 axis) {
    return geometry::turn({{0, 0, 0}, axis}, element.angle(attribute));
  };
  const geometry::Placement x = turned("turn-x", {1, 0, 0}), y = turned("turn-y", {0, 1, 0}),
                            z = turned("turn-z", {0, 0, 1});
  const geometry::Vec3 to{element.length("x").mm(), element.length("y").mm(), element.length("z").mm()};
  return compose(geometry::shift(to), compose(z, compose(y, x)));
}

}  // namespace

bool only_extra_parts(const Element& coop) {
  if (!coop.child("extra").given()) return false;
  for (const std::string_view name : coop.format().children)
    if (name != "extra" && name != "stock" && name != "site" && name != "flock" && coop.child(name).given())
      return false;
  return true;
}

std::vector<ExtraStick> read_extra_sticks(const Element& coop) {
  std::vector<ExtraStick> sticks;
  for (const auto& element : coop.child("extra").children("stick")) {
    ExtraStick stick;
    stick.line = element.line();
    stick.name = element.text("name");
    stick.lumber = element.lumber("lumber");
    stick.length = element.length("length");
    stick.left_mitre = element.angle("left-mitre");
    stick.left_bevel = element.angle("left-bevel");
    stick.right_mitre = element.angle("right-mitre");
    stick.right_bevel = element.angle("right-bevel");
    stick.placement = read_placement(element);
    sticks.push_back(stick);
  }
  return sticks;
}

std::vector<ExtraPanel> read_extra_panels(const Element& coop) {
  std::vector<ExtraPanel> panels;
  for (const auto& element : coop.child("extra").children("panel")) {
    ExtraPanel panel;
    panel.line = element.line();
    panel.name = element.text("name");
    panel.mesh = element.given_mesh("mesh");
    if (!panel.mesh)
      panel.sheet = element.has("sheet") ? element.sheet("sheet") : element.default_sheet();
    else if (element.has("sheet"))
      element.problem("sheet", "a panel is of a sheet or of mesh: expected one of them, not both");
    panel.outline = element.outline("outline");
    panel.placement = read_placement(element);
    panels.push_back(panel);
  }
  return panels;
}

}  // namespace models
