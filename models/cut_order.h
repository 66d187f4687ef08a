// From a building and its design's shop to the orders that the cutting plans are made for.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "models/building.h"
#include "models/cut_list.h"
#include "models/cutting/sticks.h"

namespace models {

// Whole nanometres: 1/64 in and 0.1 mm are both exact.
[[nodiscard]] cutting::Nanometres nanometres(Length length);
[[nodiscard]] Length length_of(cutting::Nanometres nanometres);

// What a board of a plan is, bought or at hand.
struct BoardSource {
  int section = 0;  // index into the order's sections
  Length length;
  std::string section_name;
  std::optional<std::string> at_hand;  // its label; none when it is bought
};
[[nodiscard]] BoardSource source_of(const cutting::StickOrder& order, const cutting::Board& board);

// Where a piece meets the two long edges of its stick, from the board's left end, and its ends' mitres as it lies there:
// from square, positive where the end runs to the right from the near edge to the far one.
struct LyingPiece {
  cutting::Nanometres near_left = 0, near_right = 0, far_left = 0, far_right = 0;
  Angle left_mitre, right_mitre;
};
[[nodiscard]] LyingPiece lying(const cutting::StickOrder& order, const cutting::CutPiece& cut);

// Whether its left end lies against the right end of the piece before it, so that one slanted cut frees both.
[[nodiscard]] bool meets(const cutting::StickOrder& order, const cutting::CutPiece& before,
                         const cutting::CutPiece& cut);

// Whether it is one of the roof's profiled sheets: cut to length only.
[[nodiscard]] bool is_profiled(const Design& design, const Mark& mark);

struct StickCutting {
  cutting::StickOrder order;
  std::vector<std::size_t> piece_mark;  // by order.pieces: index into Building::marks
  std::vector<std::size_t> too_long;    // marks that no board is long enough for: left out of the order
  std::vector<std::string>
      usual;  // sections taken to be on sale in the usual lengths: nothing is said of them
};

// Every stick still to be cut, and the roof's profiled sheets, which are cut to length likewise. A piece that is ripped
// to a width of its own is cut from its stock first and ripped then.
[[nodiscard]] StickCutting stick_cutting(const Design& design, const Building& building, const CutList& list);

}  // namespace models
