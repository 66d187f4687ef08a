#include "models/cutting/board_uses.h"

#include <algorithm>

#include "models/cutting/blanks.h"

namespace models::cutting {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

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

CrosscutRange crosscut_range(const StickProblem& problem, const StickKind& kind, int rip,
                             const std::map<int, Nanometres>& shortest, const Saw& saw) {
  CrosscutRange range{kind.length, kind.length + saw.kerf - shortest.at(kind.section)};
  for (const int strip : problem.layouts[at(rip)].strips)
    if (shortest.contains(strip)) range.from = std::min(range.from, shortest.at(strip));
  range.from = std::max(range.from, std::max<Nanometres>(saw.shortest_rip + saw.kerf, 1));
  return range;
}

BoardUses board_uses(const StickProblem& whole, const Saw& saw) {
  const std::map<int, Nanometres> shortest = shortest_pieces(whole, saw.kerf);
  BoardUses made;
  StickProblem& problem = made.problem;
  problem.items = whole.items;
  problem.layouts = whole.layouts;
  problem.nestings = whole.nestings;
  problem.cover.demand = whole.cover.demand;
  problem.cover.item_family = whole.cover.item_family;
  problem.cover.group_limit = whole.cover.group_limit;
  std::vector<Blanks> blanks;
  for (std::size_t s = 0; s < whole.cover.sources.size(); ++s) {
    const Source& source = whole.cover.sources[s];
    const auto add = [&](int rip, bool part, const Blanks& gives) {
      made.uses.push_back({static_cast<int>(s), rip, part});
      problem.cover.sources.push_back({source.cost, {}, source.group});
      blanks.push_back(gives);
    };
    Blanks as_it_is;
    for (const Supply& supply : source.supplies) {
      const StickKind& kind = whole.kinds[at(supply.kind)];
      as_it_is[{kind.section, {}, kind.length}] += supply.count;
    }
    add(-1, false, as_it_is);
    const StickKind& kind = whole.kinds[at(source.supplies[0].kind)];
    for (const int rip : kind.rips) {
      Blanks strips;
      for (const int strip : whole.layouts[at(rip)].strips)
        if (shortest.contains(strip)) ++strips[{strip, {}, kind.length}];
      add(rip, false, strips);
      const CrosscutRange range = crosscut_range(whole, kind, rip, shortest, saw);
      if (range.from <= range.to) add(rip, true, {{{kind.section, {rip}, kind.length}, 1}});
    }
  }
  number_kinds(problem, blanks, [&](int) { return whole.cover.item_family[0]; });
  for (StickKind& kind : problem.kinds)
    if (!kind.rips.empty()) kind.least_rest = shortest.at(kind.section) - saw.kerf;
  problem.cover.measures.resize(whole.cover.sources.size());
  for (std::vector<int>& measure : problem.cover.measures) measure.assign(made.uses.size(), 0);
  for (std::size_t u = 0; u < made.uses.size(); ++u) problem.cover.measures[at(made.uses[u].source)][u] = 1;
  return made;
}

}  // namespace models::cutting
