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
      return {0x8F, 0x6B, 0x45};  // darker timber
    case Group::cover:
      return {0x7D, 0x90, 0xA0};  // slate
    case Group::cladding:
      return {0xE6, 0xD6, 0xB4};  // pale board
    case Group::door:
      return {0x5F, 0x8F, 0x76};  // sage
    case Group::nest:
      return {0xB8, 0x64, 0x54};  // clay
    case Group::roost:
      return {0x86, 0x7B, 0xAD};  // heather
    case Group::hardware:
      return {0x45, 0x4B, 0x54};  // iron
    case Group::mesh:
      return {0xA9, 0xB0, 0xB4};  // galvanised wire
    case Group::floor:
      return {0xA8, 0x8A, 0x5C};  // deck
    case Group::run:
      return {0xB9, 0x9B, 0x74};  // weathered timber
    case Group::extra:
      return {0xC2, 0x8E, 0x3A};  // ochre
  }
  return {};
}

double linear(std::uint8_t channel) {
  const double value = channel / 255.0;
  return value <= 0.04045 ? value / 12.92 : std::pow((value + 0.055) / 1.055, 2.4);
}

}  // namespace exporters
