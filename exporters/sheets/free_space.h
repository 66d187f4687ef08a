// What is left of a sheet, and blocks set into it.
#pragma once

#include <optional>
#include <vector>

#include "exporters/drawing.h"

namespace exporters {

class FreeSpace {
 public:
  explicit FreeSpace(const Space& whole) : free_{whole} {}

  // Nothing will be set there.
  void take(const Space& space);
  // The place as high up as there is for a block, and as far left of those: its upper left corner. It is taken.
  std::optional<Vec2> place(double width, double height);

 private:
  std::vector<Space> free_;  // every largest free rectangle; they overlap
};

}  // namespace exporters
