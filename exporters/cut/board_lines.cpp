#include "exporters/cut/board_lines.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "exporters/cut_text.h"

namespace exporters {
namespace {

using geometry::LengthStyle;
using models::cutting::Board;
using models::cutting::Nanometres;
using models::cutting::Stick;

double millimetres(Nanometres n) { return models::length_of(n).mm(); }

std::string size_text(geometry::Angle angle) {
  return angle_text(geometry::radians(std::fabs(angle.radians())));
}

bool same_cut(const models::cutting::CutPiece& a, const models::cutting::CutPiece& b) {
  return a.piece == b.piece && a.at == b.at && a.turned == b.turned && a.face_down == b.face_down;
}

class Lines {
 public:
  Lines(const models::CutPlan& plan, const LengthStyle& style)
      : order_(plan.sticks.order), plan_(plan), style_(style) {}

  std::vector<BoardLine> make() {
    // By what they are cut from, as the piles lie; within a pile in the plan's order.
    std::vector<Board> boards = plan_.plan.boards;
    std::stable_sort(boards.begin(), boards.end(),
                     [&](const Board& a, const Board& b) { return pile(a) < pile(b); });
    for (std::size_t i = 0; i < boards.size();) {
      std::size_t end = i + 1;
      while (end < boards.size() && alike(boards[i], boards[end])) ++end;
      add(boards[i], static_cast<int>(i) + 1, static_cast<int>(end));
      i = end;
    }
    return std::move(lines_);
  }

 private:
  int pile(const Board& board) const { return models::source_of(order_, board).section; }

  static bool alike(const Board& a, const Board& b) {
    if (a.bought != b.bought || a.source != b.source || a.ripped_to != b.ripped_to ||
        a.sticks.size() != b.sticks.size())
      return false;
    for (std::size_t i = 0; i < a.sticks.size(); ++i) {
      const Stick &s = a.sticks[i], &t = b.sticks[i];
      if (s.section != t.section || s.across != t.across || s.pieces.size() != t.pieces.size()) return false;
      for (std::size_t k = 0; k < s.pieces.size(); ++k)
        if (!same_cut(s.pieces[k], t.pieces[k])) return false;
    }
    return true;
  }

  void add(const Board& board, int first, int last) {
    const models::BoardSource source = models::source_of(order_, board);
    BoardLine line;
    line.first = first;
    line.last = last;
    line.board = source.section_name + ", " + print_length(source.length, style_);
    line.note = source.at_hand ? "at hand: " + *source.at_hand : "buy";
    const Nanometres trim = end_trim(order_, source.section);
    const bool ripped =
        board.sticks.size() > 1 || (!board.sticks.empty() && board.sticks[0].section != source.section);
    if (!ripped) {
      line.length = source.length.mm();
      line.zero = millimetres(trim);
      if (!board.sticks.empty()) line.pieces = pieces_of(board.sticks[0], 0);
      lines_.push_back(std::move(line));
      return;
    }
    const bool in_part = board.ripped_to > 0;
    const std::size_t strips = board.sticks.size() - (in_part ? 1 : 0);
    if (in_part)
      line.note += "; crosscut at " + print(board.ripped_to - trim) + ", rip that part into " +
                   widths(board, strips) + "; the rest stays whole";
    else
      line.note += "; rip into " + widths(board, strips);
    lines_.push_back(line);
    for (std::size_t i = 0; i < strips;) {
      std::size_t end = i + 1;
      while (end < strips && same_cuts(board.sticks[i], board.sticks[end])) ++end;
      BoardLine strip = part_of(line, board.sticks[i], 0);
      strip.board = "strip " + std::to_string(i + 1) + (end > i + 1 ? " to " + std::to_string(end) : "");
      strip.length = in_part ? millimetres(board.ripped_to) : source.length.mm();
      strip.zero = millimetres(trim);
      lines_.push_back(std::move(strip));
      i = end;
    }
    if (!in_part) return;
    BoardLine rest = part_of(line, board.sticks.back(), board.ripped_to + order_.saw.kerf);
    rest.board = "rest";
    rest.note +=
        rest.pieces.empty() || rest.pieces.front().mark.empty() ? "; left over" : "; tape from the fresh cut";
    rest.length = source.length.mm() - rest.starts;
    lines_.push_back(std::move(rest));
  }

  // One of the sticks of a ripped board, whose left end lies at `starts` on it.
  BoardLine part_of(const BoardLine& board, const Stick& stick, Nanometres starts) const {
    BoardLine line;
    line.first = board.first;
    line.last = board.last;
    line.part = true;
    line.note = order_.sections[static_cast<std::size_t>(stick.section)].name;
    line.starts = millimetres(starts);
    line.pieces = pieces_of(stick, starts);
    return line;
  }

  static bool same_cuts(const Stick& a, const Stick& b) {
    if (a.section != b.section || a.pieces.size() != b.pieces.size()) return false;
    for (std::size_t k = 0; k < a.pieces.size(); ++k)
      if (!same_cut(a.pieces[k], b.pieces[k])) return false;
    return true;
  }

  // "2 of 1 1/2" and 1 of 3/4"".
  std::string widths(const Board& board, std::size_t strips) const {
    std::vector<std::pair<int, int>> counts;  // section, how many
    for (std::size_t i = 0; i < strips; ++i) {
      const int section = board.sticks[i].section;
      if (counts.empty() || counts.back().first != section) counts.emplace_back(section, 0);
      ++counts.back().second;
    }
    std::string text;
    for (std::size_t i = 0; i < counts.size(); ++i)
      text += (i == 0                   ? ""
               : i + 1 == counts.size() ? " and "
                                        : ", ") +
              std::to_string(counts[i].second) + " of " +
              print(order_.sections[static_cast<std::size_t>(counts[i].first)].width);
    return text;
  }

  // Its pieces and what is left, from `starts` on the board.
  std::vector<LinePiece> pieces_of(const Stick& stick, Nanometres starts) const {
    const auto along = [&](Nanometres at) { return millimetres(at - starts); };
    std::vector<LinePiece> pieces;
    for (std::size_t i = 0; i < stick.pieces.size(); ++i) {
      const auto& cut = stick.pieces[i];
      const auto piece = static_cast<std::size_t>(cut.piece);
      const models::LyingPiece lies = models::lying(order_, cut);
      LinePiece out;
      out.mark = order_.pieces[piece].mark;
      out.from = along(cut.at);
      out.to = along(cut.at + order_.pieces[piece].length);
      out.near_left = along(lies.near_left);
      out.near_right = along(lies.near_right);
      out.far_left = along(lies.far_left);
      out.far_right = along(lies.far_right);
      out.left_mitre = lies.left_mitre;
      out.right_mitre = lies.right_mitre;
      out.meets = i + 1 < stick.pieces.size() && models::meets(order_, cut, stick.pieces[i + 1]);
      out.last = i + 1 == stick.pieces.size();
      if (cut.turned || cut.face_down)
        out.lies = std::string("(") + (cut.face_down ? "d" : "") + (cut.face_down && cut.turned ? ", " : "") +
                   (cut.turned ? "e" : "") + ")";
      pieces.push_back(std::move(out));
    }
    for (const auto& left : stick.leftovers) {
      LinePiece out;
      out.from = out.near_left = out.far_left = along(left.from);
      out.to = out.near_right = out.far_right = along(left.to);
      pieces.push_back(std::move(out));
    }
    std::stable_sort(pieces.begin(), pieces.end(),
                     [](const LinePiece& a, const LinePiece& b) { return a.from < b.from; });
    return pieces;
  }

  std::string print(Nanometres n) const { return print_length(geometry::mm(millimetres(n)), style_); }

  const models::cutting::StickOrder& order_;
  const models::CutPlan& plan_;
  LengthStyle style_;
  std::vector<BoardLine> lines_;
};

}  // namespace

std::string total_text(const BoardLine& line, std::size_t piece, const LengthStyle& style) {
  const LinePiece& here = line.pieces[piece];
  std::string text = print_length(geometry::mm(here.cut_at() - line.zero), style);
  if (here.cut_once() && here.right_mitre.radians() != 0)
    return text + (here.right_mitre.radians() > 0 ? " / " : " \\ ") + size_text(here.right_mitre);
  if (here.right_mitre.radians() != 0) text += " then " + size_text(here.right_mitre);
  if (piece + 1 < line.pieces.size() && line.pieces[piece + 1].left_mitre.radians() != 0)
    text += ", next " + size_text(line.pieces[piece + 1].left_mitre);
  return text;
}

std::string first_cut_text(const BoardLine& line) {
  if (line.pieces.empty() || line.pieces.front().left_mitre.radians() == 0) return "";
  return size_text(line.pieces.front().left_mitre);
}

std::string lies_text(const models::cutting::CutPiece& cut) {
  if (cut.face_down) return cut.turned ? "face down, end for end" : "face down";
  return cut.turned ? "end for end" : "as drawn";
}

std::vector<BoardLine> board_lines(const models::CutPlan& plan, const LengthStyle& style) {
  return Lines(plan, style).make();
}

}  // namespace exporters
