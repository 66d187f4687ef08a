#include "models/cutting/sheet_problem.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace models::cutting {

namespace {

__extension__ using Wide = __int128;

// What is bought of it, in square millimetres, rounded up.
Money area_of(const SheetStock& stock) {
  if (stock.at_hand) return 0;
  const Wide mm2 = static_cast<Wide>(1'000'000) * 1'000'000;
  return static_cast<Money>((static_cast<Wide>(stock.x) * stock.y + mm2 - 1) / mm2);
}

SheetProblem problem_of(const SheetOrder& order, int material, bool by_area) {
  SheetProblem problem;
  problem.kerf = order.saw.kerf;
  std::map<std::tuple<Nanometres, Nanometres, bool>, std::vector<int>> sorts;
  for (std::size_t p = 0; p < order.pieces.size(); ++p) {
    const SheetPiece& piece = order.pieces[p];
    if (piece.material != material || piece.count == 0) continue;
    const bool turns = piece.may_turn && piece.x != piece.y;
    const auto key = turns ? std::tuple(std::max(piece.x, piece.y), std::min(piece.x, piece.y), true)
                           : std::tuple(piece.x, piece.y, false);
    sorts[key].push_back(static_cast<int>(p));
  }
  for (const auto& [sort, pieces] : sorts) {
    problem.items.push_back({std::get<0>(sort), std::get<1>(sort), std::get<2>(sort)});
    int demand = 0;
    for (int p : pieces) demand += order.pieces[static_cast<std::size_t>(p)].count;
    problem.cover.demand.push_back(demand);
    problem.pieces.push_back(pieces);
  }
  problem.cover.item_family.assign(problem.items.size(), 0);
  std::map<std::pair<Nanometres, Nanometres>, int> kinds;
  std::vector<int> count;
  for (std::size_t s = 0; s < order.stock.size(); ++s) {
    const SheetStock& stock = order.stock[s];
    const SheetKind kind{stock.x - 2 * order.saw.edge_trim, stock.y - 2 * order.saw.edge_trim};
    const bool useful = std::any_of(problem.items.begin(), problem.items.end(), [&](const SheetItem& item) {
      return holds(kind, item.x, item.y) || (item.may_turn && holds(kind, item.y, item.x));
    });
    if (stock.material != material || stock.available.value_or(1) == 0 || !useful) continue;
    const auto [at, is_new] = kinds.try_emplace({kind.x, kind.y}, static_cast<int>(problem.kinds.size()));
    if (is_new) {
      problem.kinds.push_back(kind);
      problem.cover.next_smaller.push_back(-1);
      problem.cover.kind_family.push_back(0);
    }
    Source source{by_area ? area_of(stock) : stock.price.value_or(0), {{at->second, 1}}, -1};
    if (stock.available) {
      source.group = static_cast<int>(problem.cover.group_limit.size());
      problem.cover.group_limit.push_back(*stock.available);
    }
    problem.cover.sources.push_back(std::move(source));
    problem.stock.push_back(static_cast<int>(s));
  }
  if (problem.stock.size() > 1) problem.cover.measures.emplace_back(problem.stock.size(), 1);
  return problem;
}

}  // namespace

std::vector<Block> ways_to_lie(const SheetItem& item, int index) {
  Block block;
  block.x = item.x;
  block.y = item.y;
  block.item = index;
  std::vector<Block> ways{block};
  if (item.may_turn) {
    std::swap(block.x, block.y);
    block.turned = true;
    ways.push_back(block);
  }
  return ways;
}

std::vector<SheetProblem> sheet_problems(const SheetOrder& order, bool by_area) {
  std::vector<SheetProblem> problems;
  for (int material = 0; material < static_cast<int>(order.materials.size()); ++material) {
    SheetProblem problem = problem_of(order, material, by_area);
    if (!problem.items.empty()) problems.push_back(std::move(problem));
  }
  return problems;
}

}  // namespace models::cutting
