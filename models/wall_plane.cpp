#include "models/wall_plane.h"

namespace models {

geometry::Placement wall_plane(const House& house, Side side) {
  const double w = house.width.mm(), d = house.depth.mm();
  const geometry::Vec3 up{0, 0, 1};
  switch (side) {
    case Side::front:
      return geometry::placement({0, 0, 0}, {1, 0, 0}, up);
    case Side::right:
      return geometry::placement({w, 0, 0}, {0, 1, 0}, up);
    case Side::back:
      return geometry::placement({w, d, 0}, {-1, 0, 0}, up);
    case Side::left:
      return geometry::placement({0, d, 0}, {0, -1, 0}, up);
  }
  return {};
}

Length wall_length(const House& house, Side side) {
  return side == Side::front || side == Side::back ? house.width : house.depth;
}

bool runs_through(const House& house, Side side) {
  return (side == Side::front || side == Side::back) == (house.corners == Corners::front_and_back_run);
}

Extent frame_extent(const House& house, Side side) {
  const Length set_in = runs_through(house, side) ? Length() : house.framing.thickness;
  return {set_in, wall_length(house, side) - set_in};
}

}  // namespace models
