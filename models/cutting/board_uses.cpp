#include "models/cutting/board_uses.h"

#include <algorithm>

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
  struct Blank {
    int section = 0;
    std::vector<int> rips;
    Nanometres length = 0;
    auto operator<=>(const Blank&) const = default;
  };
  const std::map<int, Nanometres> shortest = shortest_pieces(whole, saw.kerf);
  BoardUses made;
  StickProblem& problem = made.problem;
  problem.items = whole.items;
  problem.layouts = whole.layouts;
  problem.nestings = whole.nestings;
  problem.cover.demand = whole.cover.demand;
  problem.cover.item_family = whole.cover.item_family;
  problem.cover.group_limit = whole.cover.group_limit;
  std::vector<std::map<Blank, int>> blanks;
  for (std::size_t s = 0; s < whole.cover.sources.size(); ++s) {
    const Source& source = whole.cover.sources[s];
    const auto add = [&](int rip, bool part, const std::map<Blank, int>& gives) {
      made.uses.push_back({static_cast<int>(s), rip, part});
      problem.cover.sources.push_back({source.cost, {}, source.group});
      blanks.push_back(gives);
    };
    std::map<Blank, int> as_it_is;
    for (const Supply& supply : source.supplies) {
      const StickKind& kind = whole.kinds[at(supply.kind)];
      as_it_is[{kind.section, {}, kind.length}] += supply.count;
    }
    add(-1, false, as_it_is);
    const StickKind& kind = whole.kinds[at(source.supplies[0].kind)];
    for (const int rip : kind.rips) {
      std::map<Blank, int> strips;
      for (const int strip : whole.layouts[at(rip)].strips)
        if (shortest.contains(strip)) ++strips[{strip, {}, kind.length}];
      add(rip, false, strips);
      const CrosscutRange range = crosscut_range(whole, kind, rip, shortest, saw);
      if (range.from <= range.to) add(rip, true, {{{kind.section, {rip}, kind.length}, 1}});
    }
  }
  std::map<Blank, int> kinds;
  for (const auto& of : blanks)
    for (const auto& [blank, count] : of) kinds[blank] = 0;
  for (auto& [blank, kind] : kinds) {
    kind = static_cast<int>(problem.kinds.size());
    const bool same = !problem.kinds.empty() && problem.kinds.back().section == blank.section &&
                      problem.kinds.back().rips == blank.rips;
    problem.cover.next_smaller.push_back(same ? kind - 1 : -1);
    problem.cover.kind_family.push_back(whole.cover.item_family[0]);
    const Nanometres rest = blank.rips.empty() ? 0 : shortest.at(blank.section) - saw.kerf;
    problem.kinds.push_back({blank.section, blank.length, blank.rips, rest});
  }
  for (std::size_t s = 0; s < blanks.size(); ++s)
    for (const auto& [blank, count] : blanks[s])
      problem.cover.sources[s].supplies.push_back({kinds.at(blank), count});
  problem.cover.measures.resize(whole.cover.sources.size());
  for (std::vector<int>& measure : problem.cover.measures) measure.assign(made.uses.size(), 0);
  for (std::size_t u = 0; u < made.uses.size(); ++u) problem.cover.measures[at(made.uses[u].source)][u] = 1;
  return made;
}

}  // namespace models::cutting
