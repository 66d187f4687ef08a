#include "models/cutting/board_uses.h"

#include <algorithm>

#include "models/cutting/blanks.h"

namespace models::cutting {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

const StickKind& board_of(const StickProblem& whole, int source) {
  return whole.kinds[at(whole.cover.sources[at(source)].supplies[0].kind)];
}

// What a board gives that is used so.
Blanks blanks_of(const StickProblem& whole, const BoardUse& use, const std::map<int, Nanometres>& shortest) {
  const StickKind& board = board_of(whole, use.source);
  if (use.part) return {{{board.section, {use.rip}, board.length, use.crosscut}, 1}};
  Blanks blanks;
  if (use.rip < 0) {
    for (const Supply& supply : whole.cover.sources[at(use.source)].supplies) {
      const StickKind& kind = whole.kinds[at(supply.kind)];
      blanks[{kind.section, {}, kind.length, {}}] += supply.count;
    }
    return blanks;
  }
  for (const int strip : whole.layouts[at(use.rip)].strips)
    if (shortest.contains(strip)) ++blanks[{strip, {}, board.length, {}}];
  return blanks;
}

}  // namespace

std::map<int, Nanometres> shortest_pieces(const StickProblem& problem, Nanometres kerf) {
  std::map<int, Nanometres> shortest;
  for (const StickItem& item : problem.items) {
    const Nanometres length = item.length - 2 * item.saved + kerf;
    const auto [known, is_new] = shortest.try_emplace(item.section, length);
    if (!is_new) known->second = std::min(known->second, length);
  }
  return shortest;
}

Stretch crosscut_range(const StickProblem& problem, const StickKind& kind, int rip,
                       const std::map<int, Nanometres>& shortest, const Saw& saw) {
  Stretch range{kind.length, kind.length + saw.kerf - shortest.at(kind.section)};
  for (const int strip : problem.layouts[at(rip)].strips)
    if (shortest.contains(strip)) range.from = std::min(range.from, shortest.at(strip));
  range.from = std::max(range.from, std::max<Nanometres>(saw.shortest_rip + saw.kerf, 1));
  return range;
}

std::vector<BoardUse> ways_to_use(const StickProblem& whole, const Saw& saw) {
  const std::map<int, Nanometres> shortest = shortest_pieces(whole, saw.kerf);
  std::vector<BoardUse> uses;
  for (std::size_t s = 0; s < whole.cover.sources.size(); ++s) {
    const int source = static_cast<int>(s);
    uses.push_back({source, -1, false, {}, source});
    const StickKind& board = board_of(whole, source);
    for (const int rip : board.rips) {
      uses.push_back({source, rip, false, {}, source});
      const Stretch range = crosscut_range(whole, board, rip, shortest, saw);
      if (range.from <= range.to) uses.push_back({source, rip, true, range, source});
    }
  }
  return uses;
}

BoardUses board_uses(const StickProblem& whole, std::vector<BoardUse> uses, const Saw& saw) {
  const std::map<int, Nanometres> shortest = shortest_pieces(whole, saw.kerf);
  BoardUses made;
  made.uses = std::move(uses);
  StickProblem& problem = made.problem;
  problem.items = whole.items;
  problem.layouts = whole.layouts;
  problem.nestings = whole.nestings;
  problem.cover.demand = whole.cover.demand;
  problem.cover.item_family = whole.cover.item_family;
  problem.cover.group_limit = whole.cover.group_limit;
  std::vector<Blanks> blanks;
  int groups = 0;
  for (const BoardUse& use : made.uses) {
    const Source& source = whole.cover.sources[at(use.source)];
    problem.cover.sources.push_back({source.cost, {}, source.group});
    blanks.push_back(blanks_of(whole, use, shortest));
    groups = std::max(groups, use.group + 1);
  }
  number_kinds(problem, blanks, [&](int) { return whole.cover.item_family[0]; });
  problem.cover.measures.assign(at(groups), std::vector<int>(made.uses.size()));
  for (std::size_t u = 0; u < made.uses.size(); ++u) problem.cover.measures[at(made.uses[u].group)][u] = 1;
  return made;
}

}  // namespace models::cutting
