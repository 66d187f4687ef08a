#include "models/cutting/shape.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>

namespace models::cutting {

namespace {

__extension__ using Wide = unsigned __int128;

constexpr std::size_t most_leans = 3;  // of one section, apart from their sense

struct Lean {
  Nanometres size = 0;
  Nanometres saved = 0;
  std::int64_t ends = 0;
};

// By section: what its pieces' ends lean, where two or more could meet, the most promising first.
std::map<int, std::vector<Lean>> leans_of(const StickOrder& order) {
  std::map<std::pair<int, Nanometres>, std::int64_t> ends;
  for (const Piece& piece : order.pieces)
    for (const Nanometres lean : {piece.left_lean, piece.right_lean})
      if (lean != 0) ends[{piece.section, std::abs(lean)}] += piece.count;
  std::map<int, std::vector<Lean>> leans;
  for (const auto& [lean, count] : ends) {
    const Nanometres width = order.sections[static_cast<std::size_t>(lean.first)].width;
    const Nanometres saved = saved_by_meeting(width, order.saw.kerf, lean.second);
    if (saved > 0 && count > 1) leans[lean.first].push_back({lean.second, saved, count});
  }
  for (auto& [section, of_section] : leans)
    std::stable_sort(of_section.begin(), of_section.end(), [](const Lean& a, const Lean& b) {
      return static_cast<Wide>(a.saved) * static_cast<Wide>(a.ends) >
             static_cast<Wide>(b.saved) * static_cast<Wide>(b.ends);
    });
  return leans;
}

// Of the ways in which it may lie, the greatest.
Shape shape_of(const Piece& piece, const std::vector<Lean>& leans, std::size_t most) {
  const auto kept = [&](Nanometres lean) {
    const auto end = leans.begin() + static_cast<std::ptrdiff_t>(std::min(most, leans.size()));
    return std::any_of(leans.begin(), end, [&](const Lean& l) { return l.size == std::abs(lean); }) ? lean
                                                                                                    : 0;
  };
  const Nanometres left = kept(piece.left_lean), right = kept(piece.right_lean);
  std::pair<Nanometres, Nanometres> best = std::max(std::pair(left, right), std::pair(right, left));
  if (piece.may_turn_over) best = std::max({best, std::pair(-left, -right), std::pair(-right, -left)});
  return {piece.length, best.first, best.second, piece.may_turn_over || left == -right};
}

}  // namespace

Nanometres slanted_kerf(Nanometres width, Nanometres kerf, Nanometres lean) {
  // The least whole number whose product with the width is no less than the kerf's with the cut's length.
  const auto square = [](Nanometres n) {
    return static_cast<Wide>(n < 0 ? -n : n) * static_cast<Wide>(n < 0 ? -n : n);
  };
  const Wide asked = square(kerf) * (square(width) + square(lean));
  const auto enough = [&](Nanometres n) { return square(n) * square(width) >= asked; };
  const double slope = static_cast<double>(lean) / static_cast<double>(width);
  Nanometres least =
      std::max<Nanometres>(kerf, std::llround(static_cast<double>(kerf) * std::hypot(1.0, slope)));
  while (!enough(least)) ++least;
  while (least > kerf && enough(least - 1)) --least;
  return least;
}

Nanometres saved_by_meeting(Nanometres width, Nanometres kerf, Nanometres lean) {
  if (lean == 0) return 0;
  return std::max<Nanometres>(0, std::abs(lean) - (slanted_kerf(width, kerf, lean) - kerf));
}

Shapes shapes_of(const StickOrder& order) {
  const std::map<int, std::vector<Lean>> leans = leans_of(order);
  const std::vector<Lean> none;
  Shapes shapes;
  for (const Piece& piece : order.pieces) {
    const auto found = leans.find(piece.section);
    const std::vector<Lean>& of_section = found == leans.end() ? none : found->second;
    shapes.planned.push_back(shape_of(piece, of_section, most_leans));
    shapes.whole.push_back(shape_of(piece, of_section, of_section.size()));
  }
  return shapes;
}

Turn turn_for(const Piece& piece, Nanometres left, Nanometres right) {
  const auto suits = [&](const Turn& turn) {
    Nanometres l = turn.turned ? piece.right_lean : piece.left_lean;
    Nanometres r = turn.turned ? piece.left_lean : piece.right_lean;
    if (turn.face_down) {
      l = -l;
      r = -r;
    }
    return (left == 0 || left == l) && (right == 0 || right == r);
  };
  for (const Turn turn : {Turn{false, false}, Turn{true, false}, Turn{false, true}, Turn{true, true}})
    if ((piece.may_turn_over || !turn.face_down) && suits(turn)) return turn;
  return {};
}

}  // namespace models::cutting
