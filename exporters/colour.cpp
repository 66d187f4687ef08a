#include "exporters/colour.h"

#include <cmath>

namespace exporters {

// Muted, so that a whole house is easy on the eye; neighbours on a house differ in lightness as well as in
// hue, so that they can be told apart in grey and by colour-blind eyes.
Colour colour(models::Group group) {
  using models::Group;
  switch (group) {
    case Group::frame:
      return {0xC9, 0xA2, 0x6B};  // fresh timber
    case Group::roof:
      return {0x85, 0x5A, 0x36};  // darker timber
    case Group::cover:
      return {0x6F, 0x82, 0x96};  // slate
    case Group::cladding:
      return {0xEA, 0xDF, 0xC6};  // pale board
    case Group::door:
      return {0x5F, 0x8F, 0x76};  // sage
    case Group::nest:
      return {0xB8, 0x64, 0x54};  // clay
    case Group::roost:
      return {0x8A, 0x7D, 0xB5};  // heather
    case Group::hardware:
      return {0x3C, 0x42, 0x4B};  // iron
    case Group::mesh:
      return {0xB4, 0xBE, 0xC6};  // galvanised wire
    case Group::floor:
      return {0x6B, 0x6A, 0x3A};  // moss
    case Group::run:
      return {0xA9, 0xB5, 0x8A};  // lichen
    case Group::extra:
      return {0xCC, 0x97, 0xB2};  // mauve: nothing else is
  }
  return {};
}

double opacity(models::Group group) { return group == models::Group::mesh ? 0.35 : 1; }

double linear(std::uint8_t channel) {
  const double value = channel / 255.0;
  return value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
}

}  // namespace exporters
