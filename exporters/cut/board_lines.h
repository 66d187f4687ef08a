// The boards of a cutting plan as lines to saw by: boards that are cut alike are one line.
#pragma once

#include <string>
#include <vector>

#include "geometry/length_text.h"
#include "models/cut_plan.h"

namespace exporters {

// A piece, or what is left, from the line's left end; mm.
struct LinePiece {
  std::string mark;  // empty: what is left over
  double from = 0, to = 0;
};

struct BoardLine {
  int first = 0, last = 0;  // numbers of the boards that are cut so, from 1
  std::string board;        // "2x4, 8'"; of a strip what it is
  std::string note;         // "buy", "at hand: old bed"; how it is ripped
  bool strip = false;       // one of the strips of the ripped board whose line stands above
  double length = 0;        // mm; 0 for a ripped board, whose strips' lines follow
  double zero = 0;          // where the tape is hooked on: the left end once it is trimmed; mm
  std::vector<LinePiece> pieces;
};

[[nodiscard]] std::vector<BoardLine> board_lines(const models::CutPlan& plan,
                                                 const geometry::LengthStyle& style);

}  // namespace exporters
