#include "exporters/cut/boards_csv.h"

#include "exporters/cut/board_lines.h"
#include "exporters/cut/csv.h"
#include "exporters/plan.h"

namespace exporters {

std::string boards_csv(const models::CutPlan& plan) {
  const auto& order = plan.sticks.order;
  const auto mm = [](models::cutting::Nanometres n) { return number(models::length_of(n).mm(), 6); };
  std::vector<std::vector<std::string>> rows;
  for (std::size_t i = 0; i < plan.plan.boards.size(); ++i) {
    const auto& board = plan.plan.boards[i];
    const models::BoardSource source = models::source_of(order, board);
    for (std::size_t k = 0; k < board.sticks.size(); ++k) {
      const auto& stick = board.sticks[k];
      const std::vector<std::string> stick_cells{std::to_string(i + 1),
                                                 source.at_hand ? "at hand: " + *source.at_hand : "buy",
                                                 std::to_string(board.source + 1),
                                                 source.section_name,
                                                 number(source.length.mm(), 6),
                                                 board.ripped_to > 0 ? mm(board.ripped_to) : "",
                                                 std::to_string(board.cost),
                                                 std::to_string(k + 1),
                                                 order.sections[static_cast<std::size_t>(stick.section)].name,
                                                 mm(stick.across)};
      const auto add = [&](const std::vector<std::string>& cells) {
        rows.push_back(stick_cells);
        rows.back().insert(rows.back().end(), cells.begin(), cells.end());
      };
      if (stick.pieces.empty()) add(std::vector<std::string>(10));
      for (const auto& cut : stick.pieces) {
        const auto& piece = order.pieces[static_cast<std::size_t>(cut.piece)];
        const models::LyingPiece lies = models::lying(order, cut);
        add({piece.mark, mm(cut.at), mm(cut.at + piece.length), number(lies.left_mitre.degrees(), 3),
             number(lies.right_mitre.degrees(), 3), mm(lies.near_left), mm(lies.near_right),
             mm(lies.far_left), mm(lies.far_right), lies_text(cut)});
      }
    }
  }
  return csv({"board",        "from",          "source",      "stock",        "length mm",
              "ripped to mm", "cost",          "strip",       "section",      "across mm",
              "mark",         "left mm",       "right mm",    "left mitre",   "right mitre",
              "near left mm", "near right mm", "far left mm", "far right mm", "lies"},
             rows);
}

}  // namespace exporters
