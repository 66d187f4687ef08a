#include "models/cutting/part_fitter.h"

#include <algorithm>

#include "models/cutting/nested_pricer.h"
#include "models/cutting/search.h"
#include "models/cutting/stepped_boards.h"

namespace models::cutting {

namespace {

constexpr int most_tries = 12;
constexpr std::int64_t most_nodes = 300;  // of each try
constexpr std::int64_t one_share = 3;     // of what may be done, for one question
constexpr double dear_piece = 1'000;      // uncut, in parts ripped
constexpr std::int64_t real_part = 1, stepped_part = 10;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

}  // namespace

PartFitter::PartFitter(const StickProblem& problem, RippingPricer& pricer, const Saw& saw,
                       const Limits& limits)
    : problem_(problem),
      pricer_(pricer),
      saw_(saw),
      uses_(board_uses(problem, saw)),
      uses_pricer_(uses_.problem, saw),
      uses_cutter_(uses_.problem.cover, uses_.problem.cover.item_family[0], uses_pricer_, limits_),
      shortest_pieces_(shortest_pieces(problem, saw.kerf)),
      kerf_(saw.kerf),
      limits_(limits) {
  Objective parts;
  for (const BoardUses::Use& use : uses_.uses) parts.weight.push_back(use.part ? 1 : 0);
  uses_cutter_.set_goal(parts, dear_piece);
}

std::vector<PatternUse> PartFitter::real_boards(const Stepped& stepped, const CoverPlan& plan,
                                                std::vector<Parted>& parted) {
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
        parted.push_back({s, room - rest.length, ripped});
        all_fit = all_fit && ripped + rest.length <= room;
      }
      boards.push_back({pricer_.pattern_of(source.kind, lies), 1});
    }
  }
  if (!all_fit) boards.clear();
  return boards;
}

void PartFitter::divide(const Stepped& stepped, const std::vector<Parted>& parted, Steps& steps) const {
  for (const Parted& board : parted) {
    if (board.strips_have_room <= board.rest_has_room) continue;
    // At any place between them, neither step holds both.
    const Stepped::Source& source = stepped.sources[board.source];
    const Nanometres middle = (source.from + source.to) / 2;
    Places& places = steps.at({source.kind, source.rip});
    divide_at(places, std::clamp(middle, board.rest_has_room + 1, board.strips_have_room));
    for (const Nanometres point : {board.strips_have_room, board.rest_has_room})
      if (is_among(places.all, point)) places.points.insert(point);
  }
}

bool PartFitter::worked_out(const Work& before) const {
  const auto is_done = [&](std::int64_t Work::*done, std::int64_t Limits::*most) {
    return work().*done >= limits_.*most || work().*done - before.*done >= limits_.*most / one_share;
  };
  return is_done(&Work::lp_iterations, &Limits::lp_iterations) ||
         is_done(&Work::pricing_steps, &Limits::pricing_steps);
}

Fit PartFitter::fit(const std::vector<int>& taken, const Spare& spare, std::vector<PatternUse>& patterns) {
  if (const Fit by_split = split(taken, patterns); by_split != Fit::unknown) return by_split;
  const Work before = work();
  const Uses uses = near_enough(taken, spare);
  Steps steps = first_steps(uses);
  const Limits each{most_nodes, limits_.lp_iterations / 5, limits_.pricing_steps / 3};
  for (int n = 0; n < most_tries; ++n) {
    if (worked_out(before)) break;
    const Stepped boards = stepped(taken, uses, steps);
    NestedPricer pricer(boards.problem, kerf_);
    Search search(boards.problem.cover, pricer, each, length_cuts(boards.problem, kerf_));
    Objective parts;
    for (const Stepped::Source& source : boards.sources)
      parts.weight.push_back(!source.part ? 0 : source.from == source.to ? real_part : stepped_part);
    const CoverResult found = search.minimise(parts, std::nullopt, most_nodes);
    work_ += found.work;
    if (found.impossible) return Fit::no;
    if (!found.plan) return Fit::unknown;
    std::vector<Parted> parted;
    patterns = real_boards(boards, *found.plan, parted);
    if (!patterns.empty()) return Fit::yes;
    divide(boards, parted, steps);
  }
  return Fit::unknown;
}

}  // namespace models::cutting
