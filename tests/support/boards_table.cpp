#include "support/boards_table.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>

#include "exporters/cut/boards_csv.h"
#include "support/csv.h"

namespace support {
namespace {

using namespace models::cutting;

Nanometres nanometres(const std::string& text) {
  return text.empty() ? 0 : std::llround(std::stod(text) * 1e6);
}

class Reader {
 public:
  explicit Reader(const StickOrder& order) : order_(order), cut_(order.pieces.size()) {}

  std::vector<Board> boards(const std::string& table) {
    for (const auto& row : records(table)) {
      const auto board = static_cast<std::size_t>(std::stoi(row.at("board")));
      const auto strip = static_cast<std::size_t>(std::stoi(row.at("strip")));
      if (board > boards_.size()) {
        boards_.resize(board);
        boards_.back().bought = row.at("from") == "buy";
        boards_.back().source = std::stoi(row.at("source")) - 1;
        boards_.back().cost = std::stoll(row.at("cost"));
        boards_.back().ripped_to = nanometres(row.at("ripped to mm"));
      }
      std::vector<Stick>& sticks = boards_.back().sticks;
      if (strip > sticks.size()) {
        sticks.resize(strip);
        sticks.back().section = section(row.at("section"));
        sticks.back().across = nanometres(row.at("across mm"));
      }
      if (row.at("mark").empty()) continue;
      const Nanometres at = nanometres(row.at("left mm"));
      const std::string& lies = row.at("lies");
      sticks.back().pieces.push_back({piece(row.at("mark"), nanometres(row.at("right mm")) - at), at,
                                      lies.find("end for end") != std::string::npos,
                                      lies.find("face down") != std::string::npos});
    }
    return boards_;
  }

 private:
  [[nodiscard]] int section(const std::string& name) const {
    for (std::size_t i = 0; i < order_.sections.size(); ++i)
      if (order_.sections[i].name == name) return static_cast<int>(i);
    throw std::runtime_error("no section is called " + name);
  }

  int piece(const std::string& mark, Nanometres length) {
    for (std::size_t i = 0; i < order_.pieces.size(); ++i)
      if (order_.pieces[i].mark == mark && order_.pieces[i].length == length &&
          cut_[i] < order_.pieces[i].count) {
        ++cut_[i];
        return static_cast<int>(i);
      }
    throw std::runtime_error("no such piece is wanted any more: " + mark);
  }

  const StickOrder& order_;
  std::vector<int> cut_;
  std::vector<Board> boards_;
};

}  // namespace

StickPlan made_anew(const models::CutPlan& plan) {
  StickPlan anew = plan.plan;
  anew.boards = Reader(plan.sticks.order).boards(exporters::boards_csv(plan));
  for (std::size_t b = 0; b < std::min(anew.boards.size(), plan.plan.boards.size()); ++b) {
    const Board& known = plan.plan.boards[b];
    anew.boards[b].leftover_width = known.leftover_width;
    for (std::size_t s = 0; s < std::min(anew.boards[b].sticks.size(), known.sticks.size()); ++s)
      anew.boards[b].sticks[s].leftovers = known.sticks[s].leftovers;
  }
  return anew;
}

}  // namespace support
