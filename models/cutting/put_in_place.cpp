#include <algorithm>

#include "models/cutting/lay_out.h"

namespace models::cutting {

namespace {

// The pieces of one board in cutting order: by stick, by stretch, equal lengths together, beginning with the length
// that the stop stands at where there is one.
class CuttingOrder {
 public:
  CuttingOrder(Layout& layout, const StickOrder& order) : layout_(layout), order_(order) {
    loads_of_.resize(layout.boards.size());
    for (Load& load : layout.loads) loads_of_[load.board].push_back(&load);
    for (auto& loads : loads_of_) {
      std::erase_if(loads, [](const Load* load) { return load->pieces.empty(); });
      std::stable_sort(loads.begin(), loads.end(), [](const Load* a, const Load* b) {
        return a->stick != b->stick ? a->stick < b->stick : a->stretch.from < b->stretch.from;
      });
      Cuts cuts;
      for (const Load* load : loads) {
        cuts.push_back({load->section, load->pieces});
        for (const auto& [shape, count] : load->pieces) ++holders_[shape.length];
      }
      if (!loads.empty()) alike_[std::move(cuts)].push_back(loads.front()->board);
    }
    const std::vector<Shape> shapes = shapes_of(order).planned;
    for (std::size_t p = 0; p < order.pieces.size(); ++p) {
      const Piece& piece = order.pieces[p];
      if (piece.count > 0) marks_[{piece.section, shapes[p]}].push_back({static_cast<int>(p), piece.count});
    }
    for (auto& [sort, marks] : marks_) std::reverse(marks.begin(), marks.end());
  }

  std::vector<Board> run() {
    std::vector<Board> ordered;
    while (!alike_.empty()) {
      const auto next = best_next();
      for (std::size_t board : next->second) {
        cut(board);
        ordered.push_back(std::move(layout_.boards[board]));
      }
      alike_.erase(next);
    }
    return ordered;
  }
  [[nodiscard]] int set_ups() const { return set_ups_; }

 private:
  using Cuts = std::vector<std::pair<int, std::map<Shape, int>>>;  // of one board, by stretch
  using Alike = std::map<Cuts, std::vector<std::size_t>>;          // boards that are cut alike

  // Boards that begin with the length at which the stop stands, or else those that hold the longest piece.
  [[nodiscard]] Alike::iterator best_next() {
    const auto rank = [&](const Cuts& cuts) {
      const auto& first = cuts.front().second;
      const bool stands = std::any_of(first.begin(), first.end(),
                                      [&](const auto& part) { return part.first.length == stop_; });
      return std::pair(stands, first.rbegin()->first);
    };
    return std::max_element(alike_.begin(), alike_.end(),
                            [&](const auto& a, const auto& b) { return rank(a.first) < rank(b.first); });
  }

  void cut(std::size_t board) {
    for (Load* load : loads_of_[board]) {
      for (const auto& [shape, count] : load->pieces) --holders_[shape.length];
      Stick& stick = layout_.boards[board].sticks[load->stick];
      const Nanometres kerf = order_.saw.kerf;
      Nanometres at = load->stretch.from;
      const std::vector<Laid> row = row_of(*load);
      for (std::size_t i = 0; i < row.size(); ++i) {
        const Nanometres length = row[i].shape.length;
        if (length != stop_) ++set_ups_;
        stop_ = length;
        const int mark = next_mark({load->section, row[i].shape});
        const Piece& piece = order_.pieces[static_cast<std::size_t>(mark)];
        const Turn turn = turn_for(piece, row[i].left, row[i].right);
        stick.pieces.push_back({mark, at, turn.turned, turn.face_down});
        at += length;
        if (i + 1 < row.size()) {
          at += load->nesting ? load->nesting->between(row[i], row[i + 1]) : kerf;
        } else {  // behind the last cut, slanted or not, the stick is whole again
          at += slanted_kerf(order_.sections[static_cast<std::size_t>(load->section)].width, kerf,
                             turn.turned ? piece.left_lean : piece.right_lean);
        }
      }
      for (Stretch& leftover : stick.leftovers) {
        if (leftover.from == load->stretch.from) leftover.from = std::min(at, leftover.to);
      }
    }
    for (Stick& stick : layout_.boards[board].sticks) {
      std::erase_if(stick.leftovers, [](const Stretch& left) { return left.from >= left.to; });
    }
  }

  // Square pieces first: a slope that no other meets comes to lie at the end then, where one cut makes it.
  [[nodiscard]] std::vector<Laid> row_of(const Load& load) const {
    Load square = load;
    std::erase_if(square.pieces, [](const auto& part) { return part.first.leans(); });
    std::vector<Laid> row;
    for (const Shape& shape : sequence(square))
      row.insert(row.end(), static_cast<std::size_t>(load.pieces.at(shape)), {shape, 0, 0});
    if (!load.nesting) return row;
    std::vector<Laid> sloped = load.nesting->arrange(load.pieces);
    if (sloped.empty()) return row;
    // Half a turn of all of it leaves every end met.
    const Laid &first = sloped.front(), &last = sloped.back();
    const bool square_last = last.right == 0 && first.left != 0,
               square_first = first.left == 0 && last.right != 0;
    const bool stop_last = last.shape.length == stop_ && first.shape.length != stop_;
    if (square_last || (stop_last && row.empty() && !square_first)) {
      std::reverse(sloped.begin(), sloped.end());
      for (Laid& laid : sloped) std::swap(laid.left, laid.right);
    }
    row.insert(row.end(), sloped.begin(), sloped.end());
    turn_least(row, load.section);
    return row;
  }

  // Pieces that meet may all be rolled over together, where each of them may: so that fewer lie face down.
  void turn_least(std::vector<Laid>& row, int section) const {
    for (std::size_t from = 0, to = 0; from < row.size(); from = to) {
      to = from + 1;
      while (to < row.size() && row[to].left != 0 && row[to].left == row[to - 1].right) ++to;
      int as_it_is = 0, rolled = 0;
      bool all_may = true;
      for (std::size_t i = from; i < to; ++i) {
        const Laid& laid = row[i];
        const int mark = marks_.at({section, laid.shape}).back().first;
        const Piece& piece = order_.pieces[static_cast<std::size_t>(mark)];
        as_it_is += turn_for(piece, laid.left, laid.right).face_down ? 1 : 0;
        rolled += turn_for(piece, -laid.left, -laid.right).face_down ? 1 : 0;
        all_may = all_may && laid.shape.may_turn_over;
      }
      if (!all_may || rolled >= as_it_is) continue;
      for (std::size_t i = from; i < to; ++i) {
        row[i].left = -row[i].left;
        row[i].right = -row[i].right;
      }
    }
  }

  // First the length the stop stands at, last the one that most of the loads still to come hold too, longest first
  // between them.
  [[nodiscard]] std::vector<Shape> sequence(const Load& load) const {
    std::vector<Shape> shapes;
    for (auto at = load.pieces.rbegin(); at != load.pieces.rend(); ++at) shapes.push_back(at->first);
    const auto first =
        std::find_if(shapes.begin(), shapes.end(), [&](const Shape& shape) { return shape.length == stop_; });
    const auto behind = first == shapes.end() ? shapes.begin() : shapes.begin() + 1;
    if (first != shapes.end()) std::rotate(shapes.begin(), first, first + 1);
    const auto last = std::max_element(behind, shapes.end(), [&](const Shape& a, const Shape& b) {
      return holders_.at(a.length) < holders_.at(b.length);
    });
    if (last != shapes.end() && holders_.at(last->length) > 0) std::rotate(last, last + 1, shapes.end());
    return shapes;
  }

  int next_mark(const std::pair<int, Shape>& sort) {
    auto& marks = marks_.at(sort);
    const int piece = marks.back().first;
    if (--marks.back().second == 0) marks.pop_back();
    return piece;
  }

  Layout& layout_;
  const StickOrder& order_;
  std::vector<std::vector<Load*>> loads_of_;  // by board
  Alike alike_;
  std::map<Nanometres, int> holders_;  // loads still to cut that hold a length
  std::map<std::pair<int, Shape>, std::vector<std::pair<int, int>>> marks_;
  Nanometres stop_ = 0;
  int set_ups_ = 0;
};

}  // namespace

void put_in_place(Layout layout, const StickOrder& order, StickPlan& plan) {
  CuttingOrder cutting(layout, order);
  plan.boards = cutting.run();
  plan.set_ups = cutting.set_ups();
  for (const Board& board : plan.boards) {
    plan.cost += board.cost;
    plan.bought += board.bought ? 1 : 0;
    for (const Stick& stick : board.sticks) {
      for (const Stretch& left : stick.leftovers) {
        plan.longest_leftover = std::max(plan.longest_leftover, left.to - left.from);
      }
    }
  }
}

}  // namespace models::cutting
