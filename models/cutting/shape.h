// What of a piece matters to the stick that it is cut from: its length and how its ends lean.
#pragma once

#include <vector>

#include "models/cutting/sticks.h"

namespace models::cutting {

// One of the ways in which a piece may lie stands for all of them. Shapes are ordered by length first.
struct Shape {
  Nanometres length = 0;
  Nanometres left = 0;  // leans, as in Piece
  Nanometres right = 0;
  bool may_turn_over = true;  // also where turning over gives nothing that half a turn does not
  auto operator<=>(const Shape&) const = default;
  [[nodiscard]] bool leans() const { return left != 0 || right != 0; }
};

// What two ends of one lean keep free between them, along the stick: the kerf of the slanted cut, rounded up.
[[nodiscard]] Nanometres slanted_kerf(Nanometres width, Nanometres kerf, Nanometres lean);

// How much less two pieces take where ends of one lean meet than with their long points a kerf apart; 0 or more.
[[nodiscard]] Nanometres saved_by_meeting(Nanometres width, Nanometres kerf, Nanometres lean);

struct Shapes {
  std::vector<Shape> planned;  // by piece of the order
  // With every lean that could save anything. A section of very many leans is planned with those that promise most, and
  // the others taken for square ends: `planned` and `whole` differ there.
  std::vector<Shape> whole;
};

// Leans that only one end of a section has meet none of their kind and are left out.
[[nodiscard]] Shapes shapes_of(const StickOrder& order);

// How the piece must lie so that its ends lean so; as it is drawn where nothing else is asked.
struct Turn {
  bool turned = false;
  bool face_down = false;
};
[[nodiscard]] Turn turn_for(const Piece& piece, Nanometres left, Nanometres right);

}  // namespace models::cutting
