#include "exporters/cut/board_drawing.h"

#include "exporters/lettering.h"
#include "exporters/table.h"

namespace exporters {
namespace {

constexpr double bar = 6;          // height of a board's bar
constexpr double mark_cap = 2.5;   // lettering of marks
constexpr double total_cap = 1.8;  // of running totals, which stand upright under their cuts
constexpr double closest = 2.4;    // of two totals side by side

std::string numbers(const BoardLine& line) {
  if (line.part) return "";
  if (line.first == line.last) return std::to_string(line.first);
  return std::to_string(line.first) + "-" + std::to_string(line.last);
}

// Words at the left: which boards, what they are, how many are cut alike.
void add_caption(Drawing& out, const BoardLine& line) {
  const int alike = line.last - line.first + 1;
  std::string what = line.board;
  if (!line.part && alike > 1) what += ", " + std::to_string(alike) + " alike";
  const double indent = line.part ? 18 : 15;
  const std::string which = numbers(line);
  // Long runs of numbers are smaller, so that they end before what the boards are.
  const double which_cap = text_width(which, mark_cap) <= indent - 1 ? mark_cap : total_cap;
  out.label(Role::mark, {0, 4}, which, {which_cap});
  out.label(Role::note, {indent, 4}, fitted(what, mark_cap, board_caption_width - indent - 2), {mark_cap});
  // A ripped board has no bar of its own, so that its note has the whole line.
  const double room = line.length > 0 ? board_caption_width - indent - 2 : 300;
  out.label(Role::note, {indent, 8}, fitted(line.note, total_cap, room), {total_cap});
}

}  // namespace

Drawing board_drawing(const BoardLine& line, double scale, const geometry::LengthStyle& style) {
  Drawing out;
  add_caption(out, line);
  if (line.length <= 0) return out;
  const auto x = [&](double at) { return board_caption_width + (line.starts + at) * scale; };
  const auto box = [&](double from, double to, const Pen& pen, std::string_view fill) {
    out.strokes.push_back({fill == no_fill ? Role::edge : Role::waste,
                           {{x(from), 0}, {x(to), 0}, {x(to), bar}, {x(from), bar}},
                           true,
                           pen,
                           fill});
  };
  box(0, line.length, {wide_line}, "#e4e4e4");
  const auto piece_shape = [&](const LinePiece& piece) {
    out.strokes.push_back({Role::edge,
                           {{x(piece.far_left), 0},
                            {x(piece.far_right), 0},
                            {x(piece.near_right), bar},
                            {x(piece.near_left), bar}},
                           true,
                           {medium_line},
                           "#ffffff"});
  };
  const auto write_below = [&](double at, const std::string& text) {
    out.label(Role::dimension, {at + total_cap / 2, bar + 2}, text, {total_cap, Lettering::Anchor::end, 90});
  };
  double last_total = -closest;
  double last_upper = -100;
  if (const std::string first = first_cut_text(line); !first.empty()) {
    last_total = x(line.pieces.front().from);
    write_below(last_total, first);
  }
  for (std::size_t i = 0; i < line.pieces.size(); ++i) {
    const LinePiece& piece = line.pieces[i];
    if (piece.mark.empty()) continue;
    piece_shape(piece);
    // The mark keeps clear of both slopes.
    const double left = std::max(piece.near_left, piece.far_left),
                 right = std::min(piece.near_right, piece.far_right);
    const double wide = (right - left) * scale, middle = x((left + right) / 2);
    const std::string mark = piece.lies.empty() ? piece.mark : piece.mark + " " + piece.lies;
    const double needs = text_width(mark, mark_cap), small = text_width(mark, total_cap);
    if (needs + 0.6 <= wide) {
      out.labels.push_back(centred(Role::mark, {middle, bar / 2}, mark, mark_cap));
    } else if (small + 0.6 <= wide) {
      out.labels.push_back(centred(Role::mark, {middle, bar / 2}, mark, total_cap));
    } else if (small <= bar - 0.4 && wide >= total_cap + 0.4) {
      out.labels.push_back(centred(Role::mark, {middle, bar / 2}, mark, total_cap, 90));
    } else if (middle - needs / 2 > last_upper) {  // over the bar where it finds no room in it
      out.labels.push_back(centred(Role::mark, {middle, -1.6}, mark, total_cap));
      last_upper = middle + needs / 2;
    }
    const double at = x(piece.cut_at());
    out.line(Role::extension, {at, bar}, {at, bar + 1.5});
    if (at - last_total >= closest) {
      write_below(at, total_text(line, i, style));
      last_total = at;
    }
  }
  return out;
}

}  // namespace exporters
