#include "models/cutting/part_fitter.h"

#include <algorithm>

#include "models/cutting/nested_pricer.h"
#include "models/cutting/search.h"

namespace models::cutting {

namespace {

constexpr int steps_at_first = 3;
constexpr int most_tries = 12;
constexpr std::int64_t most_nodes = 300;  // of each try
constexpr std::int64_t real_part = 1, stepped_part = 10;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

}  // namespace

// The boards as a problem in which sections are families of their own.
struct PartFitter::Stepped {
  StickProblem problem;
  struct Source {
    int kind = 0;                 // of the whole problem, that the board is
    int rip = -1;                 // layout; -1: not ripped
    bool part = false;            // else over its whole length
    Nanometres from = 0, to = 0;  // a point where they are one
    int whole = -1;  // source of the whole problem that gives several blanks, none of which is ripped in part
  };
  std::vector<Source> sources;
};

PartFitter::PartFitter(const StickProblem& problem, RippingPricer& pricer, const Saw& saw,
                       const Limits& limits)
    : problem_(problem),
      pricer_(pricer),
      kerf_(saw.kerf),
      shortest_(saw.shortest_rip + saw.kerf),
      limits_(limits) {}

PartFitter::Steps PartFitter::first_steps(const std::vector<int>& taken) const {
  std::map<int, Nanometres> shortest;  // by section, kerf included
  for (const StickItem& item : problem_.items) {
    const Nanometres length = item.length - 2 * item.saved + kerf_;
    const auto [known, is_new] = shortest.try_emplace(item.section, length);
    if (!is_new) known->second = std::min(known->second, length);
  }
  Steps steps;
  for (std::size_t s = 0; s < taken.size(); ++s) {
    if (taken[s] == 0) continue;
    const int k = problem_.cover.sources[s].supplies[0].kind;
    const StickKind& kind = problem_.kinds[at(k)];
    for (const int rip : kind.rips) {
      Nanometres from = kind.length;
      for (const int strip : problem_.layouts[at(rip)].strips)
        if (shortest.contains(strip)) from = std::min(from, shortest.at(strip));
      from = std::max(from, std::max<Nanometres>(shortest_, 1));
      const Nanometres to = kind.length + kerf_ - shortest.at(kind.section);
      if (from > to) continue;  // where they are one, there is one place for the crosscut
      std::set<Nanometres>& places = steps[{k, rip}].steps;
      for (int n = 0; n < steps_at_first; ++n) places.insert(from + (to - from) * n / steps_at_first);
      places.insert(to + 1);
    }
  }
  return steps;
}

PartFitter::Stepped PartFitter::stepped(const std::vector<int>& taken, const Steps& steps) const {
  using Blank = std::pair<int, Nanometres>;  // section, clear length
  Stepped made;
  StickProblem& to = made.problem;
  to.items = problem_.items;
  to.nestings = problem_.nestings;
  to.cover.demand = problem_.cover.demand;
  for (const StickItem& item : to.items) to.cover.item_family.push_back(item.section);
  std::vector<std::map<Blank, int>> blanks;
  std::map<Blank, int> kinds;
  const auto add = [&](const Stepped::Source& source, std::int64_t cost, std::map<Blank, int> gives) {
    made.sources.push_back(source);
    to.cover.sources.push_back({cost, {}, static_cast<int>(to.cover.group_limit.size())});
    for (const auto& [blank, count] : gives) kinds[blank] = 0;
    blanks.push_back(std::move(gives));
  };
  for (std::size_t s = 0; s < taken.size(); ++s) {
    if (taken[s] == 0) continue;
    const Source& source = problem_.cover.sources[s];
    const int k = source.supplies[0].kind;
    const StickKind& kind = problem_.kinds[at(k)];
    std::map<Blank, int> whole;
    for (const Supply& supply : source.supplies)
      whole[{problem_.kinds[at(supply.kind)].section, problem_.kinds[at(supply.kind)].length}] +=
          supply.count;
    add({k, -1, false, 0, 0, static_cast<int>(s)}, source.cost, whole);
    for (const int rip : kind.rips) {
      const std::vector<int>& strips = problem_.layouts[at(rip)].strips;
      std::map<Blank, int> ripped;
      for (const int strip : strips) ++ripped[{strip, kind.length}];
      add({k, rip, false, 0, 0, static_cast<int>(s)}, source.cost, ripped);
      const auto places = steps.find({k, rip});
      if (places == steps.end()) continue;
      const auto add_part = [&](Nanometres from, Nanometres end) {
        std::map<Blank, int> part;
        for (const int strip : strips) ++part[{strip, end - kerf_}];
        ++part[{kind.section, kind.length - from}];
        add({k, rip, true, from, end, static_cast<int>(s)}, source.cost, part);
      };
      const std::set<Nanometres>& starts = places->second.steps;
      for (auto from = starts.begin(); std::next(from) != starts.end(); ++from)
        add_part(*from, *std::next(from) - 1);
      for (const Nanometres point : places->second.points) add_part(point, point);
    }
    to.cover.group_limit.push_back(taken[s]);
  }
  for (auto& [blank, kind] : kinds) {
    kind = static_cast<int>(to.kinds.size());
    const bool same = !to.kinds.empty() && to.kinds.back().section == blank.first;
    to.cover.next_smaller.push_back(same ? kind - 1 : -1);
    to.cover.kind_family.push_back(blank.first);
    to.kinds.push_back({blank.first, blank.second, {}});
  }
  for (std::size_t s = 0; s < blanks.size(); ++s)
    for (const auto& [blank, count] : blanks[s])
      to.cover.sources[s].supplies.push_back({kinds.at(blank), count});
  return made;
}

std::vector<PatternUse> PartFitter::real_boards(const Stepped& stepped, const CoverPlan& plan, Steps& steps) {
  struct Set {  // the pieces of one blank
    Nanometres length = 0;
    std::vector<ItemCount> items;
  };
  std::map<int, std::vector<Set>> sets;  // by section, longest first
  for (const PatternUse& use : plan.patterns) {
    const int section = stepped.problem.kinds[at(use.pattern.kind)].section;
    const Nanometres length = pricer_.taken(section, use.pattern.items);
    sets[section].insert(sets[section].end(), static_cast<std::size_t>(use.count),
                         {length, use.pattern.items});
  }
  for (auto& [section, of] : sets)
    std::stable_sort(of.begin(), of.end(), [](const Set& a, const Set& b) { return a.length > b.length; });
  // The longest set on the longest blank, and so on down.
  struct Slot {
    Nanometres length = 0;  // kerf included
    std::size_t source = 0;
    bool rest = false;  // or a strip
    int kind = 0;       // of the whole problem, where the blank is no part of a ripped board
  };
  std::map<int, std::vector<Slot>> slots;
  for (std::size_t s = 0; s < plan.sources.size(); ++s) {
    const Stepped::Source& source = stepped.sources[s];
    for (int n = 0; n < plan.sources[s]; ++n) {
      if (source.rip < 0) {
        for (const Supply& supply : problem_.cover.sources[at(source.whole)].supplies) {
          const StickKind& kind = problem_.kinds[at(supply.kind)];
          for (int c = 0; c < supply.count; ++c)
            slots[kind.section].push_back({kind.length + kerf_, s, false, supply.kind});
        }
        continue;
      }
      const StickKind& kind = problem_.kinds[at(source.kind)];
      for (const int strip : problem_.layouts[at(source.rip)].strips)
        slots[strip].push_back({source.part ? source.to : kind.length + kerf_, s, false, 0});
      if (source.part) slots[kind.section].push_back({kind.length + kerf_ - source.from, s, true, 0});
    }
  }
  struct Ripped {                            // by source
    std::map<int, std::vector<Set>> strips;  // by section, longest first
    std::vector<Set> rests;                  // longest first
  };
  std::vector<Ripped> cuts(plan.sources.size());
  std::vector<PatternUse> boards;
  for (auto& [section, of] : slots) {
    std::stable_sort(of.begin(), of.end(), [](const Slot& a, const Slot& b) { return a.length > b.length; });
    std::vector<Set>& fill = sets[section];
    for (std::size_t n = 0; n < of.size(); ++n) {
      const Slot& slot = of[n];
      Set set = n < fill.size() ? fill[n] : Set{};
      if (stepped.sources[slot.source].rip < 0) {
        if (!set.items.empty()) boards.push_back({pricer_.pattern_of(slot.kind, {-1, {}, set.items}), 1});
      } else if (slot.rest) {
        cuts[slot.source].rests.push_back(std::move(set));
      } else {
        cuts[slot.source].strips[section].push_back(std::move(set));
      }
    }
  }
  bool all_fit = true;
  for (std::size_t s = 0; s < plan.sources.size(); ++s) {
    const Stepped::Source& source = stepped.sources[s];
    if (plan.sources[s] == 0 || source.rip < 0) continue;
    const Nanometres room = problem_.kinds[at(source.kind)].length + kerf_;
    std::map<int, std::size_t> next;
    for (int n = 0; n < plan.sources[s]; ++n) {
      RippedPattern lies{source.rip, {}, {}};
      for (const int strip : problem_.layouts[at(source.rip)].strips) {
        const Set& set = cuts[s].strips.at(strip)[next[strip]++];
        lies.strips.push_back(set.items);
      }
      if (source.part) {  // the longest strips with the shortest rest
        const Set& rest = cuts[s].rests[cuts[s].rests.size() - 1 - static_cast<std::size_t>(n)];
        lies.rest = rest.items;
        const Nanometres ripped = pricer_.ripped_length(lies);
        if (ripped + rest.length > room) {
          // At any place between them, neither step holds both.
          const Nanometres middle = (source.from + source.to) / 2;
          Places& places = steps.at({source.kind, source.rip});
          places.steps.insert(std::clamp(middle, room - rest.length + 1, ripped));
          places.points.insert(ripped);
          places.points.insert(room - rest.length);
          all_fit = false;
        }
      }
      boards.push_back({pricer_.pattern_of(source.kind, lies), 1});
    }
  }
  if (!all_fit) boards.clear();
  return boards;
}

Fit PartFitter::fit(const std::vector<int>& taken, std::vector<PatternUse>& patterns) {
  Steps steps = first_steps(taken);
  const Limits each{most_nodes, limits_.lp_iterations / 5, limits_.pricing_steps / 3};
  for (int n = 0; n < most_tries; ++n) {
    if (work_.lp_iterations >= limits_.lp_iterations || work_.pricing_steps >= limits_.pricing_steps) break;
    const Stepped boards = stepped(taken, steps);
    NestedPricer pricer(boards.problem, kerf_);
    Search search(boards.problem.cover, pricer, each, length_cuts(boards.problem, kerf_));
    Objective parts;
    for (const Stepped::Source& source : boards.sources)
      parts.weight.push_back(!source.part ? 0 : source.from == source.to ? real_part : stepped_part);
    const CoverResult found = search.minimise(parts, std::nullopt, most_nodes);
    work_ += found.work;
    if (found.impossible) return Fit::no;
    if (!found.plan) return Fit::unknown;
    patterns = real_boards(boards, *found.plan, steps);
    if (!patterns.empty()) return Fit::yes;
  }
  return Fit::unknown;
}

}  // namespace models::cutting
