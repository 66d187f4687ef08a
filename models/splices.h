// Where what is longer than it can be bought is made of pieces.
#pragma once

#include <utility>
#include <vector>

#include "geometry/outline.h"
#include "models/design.h"

namespace models {

// The longest stick of the section that the design's shop gives, whole or ripped from something wider, its ends trimmed.
// Where nothing is said of it: the longest of the usual lengths.
[[nodiscard]] Length longest_board(const Design& design, const Lumber& lumber);

// From `from` to `to` in pieces no longer than `most`, joined at some of the places (ascending): as few as can be, each as
// long as can be; for every other row `staggered`, the first is shorter, so that joints do not stand in line. Where no
// place is within reach a piece is longer than asked. All mm.
[[nodiscard]] std::vector<std::pair<double, double>> pieces_between(double from, double to, double most,
                                                                    const std::vector<double>& places,
                                                                    bool staggered = false);

// Level boards on a wall that are longer than those on sale meet in the middle of posts, in neighbouring rows over
// different ones.
class BoardJoints {
 public:
  BoardJoints(const Design& design, const Wall& wall);
  // Of the next row's board, in wall coordinates.
  [[nodiscard]] geometry::Region pieces_of(const geometry::Outline& board);

 private:
  double longest_;
  std::vector<double> posts_;
  bool staggered_ = true;
};

}  // namespace models
