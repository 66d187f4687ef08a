// The boards of a cutting plan as lines to saw by: boards that are cut alike are one line.
#pragma once

#include <string>
#include <vector>

#include "geometry/length_text.h"
#include "models/cut_plan.h"

namespace exporters {

// A piece, or what is left, from the line's left end; mm. The near edge is the bar's lower one.
struct LinePiece {
  std::string mark;         // empty: what is left over
  double from = 0, to = 0;  // its long points
  double near_left = 0, near_right = 0, far_left = 0, far_right = 0;
  geometry::Angle left_mitre, right_mitre;  // positive: runs to the right from the near edge to the far one
  bool meets = false;                       // its right end lies against the next piece's left end
  bool last = false;                        // nothing but what is left comes behind it
  std::string lies;                         // "(e)": end for end; "(d)": face down; "(d, e)"; else empty
  // One cut makes its right end: a slope that meets the next piece, or the stick's last end. Else a slope is cut square
  // at its long point first.
  [[nodiscard]] bool cut_once() const { return meets || last; }
  [[nodiscard]] double cut_at() const { return cut_once() ? near_right : to; }
  [[nodiscard]] bool sloped() const { return left_mitre.radians() != 0 || right_mitre.radians() != 0; }
};

struct BoardLine {
  int first = 0, last = 0;  // numbers of the boards that are cut so, from 1
  std::string board;        // "2x4, 8'"; of a part what it is
  std::string note;         // "buy", "at hand: old bed"; how it is ripped
  bool part = false;        // a strip, or the rest, of the ripped board whose line stands above
  double starts = 0;        // where its left end lies on its board, from the board's left end; mm
  double length = 0;        // mm; 0 for a ripped board, whose strips' lines follow
  double zero = 0;  // where the tape is hooked on: the left end once it is trimmed, of a rest as it is; mm
  std::vector<LinePiece> pieces;
};

// The total to cut at, at a piece's right end: "1200"; "1200 / 33.7°" for one slanted cut; "1200 then
// 33.7°, next 45°" for a square cut after which the piece's end, and the next one's, are mitred from their corners.
[[nodiscard]] std::string total_text(const BoardLine& line, std::size_t piece,
                                     const geometry::LengthStyle& style);
// What is cut at the left end before the first total: "33.7°", or nothing.
[[nodiscard]] std::string first_cut_text(const BoardLine& line);

// How a piece lies, in words: "as drawn", "end for end", "face down", "face down, end for end".
[[nodiscard]] std::string lies_text(const models::cutting::CutPiece& cut);

[[nodiscard]] std::vector<BoardLine> board_lines(const models::CutPlan& plan,
                                                 const geometry::LengthStyle& style);

}  // namespace exporters
