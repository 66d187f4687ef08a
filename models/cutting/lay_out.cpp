#include "models/cutting/lay_out.h"

#include <algorithm>

namespace models::cutting {

namespace {

using Counts = std::map<int, int>;  // by item

struct Use {  // the pieces of one blank
  int kind = 0;
  int rip = -1;                // layout of the problem that its left part is ripped by; -1: none
  std::vector<Counts> strips;  // of that part
  Counts rest;                 // behind it, or all
  Nanometres length = 0;       // kerfs included, one after each piece
};

std::shared_ptr<Nesting> nesting_of(const StickProblem& problem, int section) {
  const auto found = problem.nestings.find(section);
  return found == problem.nestings.end() ? nullptr : found->second;
}

Load load_of(const StickProblem& problem, int section, const Counts& counts) {
  Load load{section, 0, 0, {}, {}, nesting_of(problem, section)};
  for (const auto& [item, count] : counts)
    if (count > 0) load.pieces[problem.items[static_cast<std::size_t>(item)].shape] += count;
  return load;
}

// How long the part to be ripped is, a kerf behind it included.
Nanometres ripped_length(const StickProblem& problem, const Use& use, const Saw& saw) {
  Nanometres longest = 0;
  for (std::size_t s = 0; s < use.strips.size(); ++s) {
    const int section = problem.layouts[static_cast<std::size_t>(use.rip)].strips[s];
    longest = std::max(longest, taken_in(load_of(problem, section, use.strips[s]), saw.kerf));
  }
  return longest > 0 ? std::max(longest, saw.shortest_rip + saw.kerf) : 0;
}

Nanometres length_of(const StickProblem& problem, const Use& use, const Saw& saw) {
  const int section = problem.kinds[static_cast<std::size_t>(use.kind)].section;
  return ripped_length(problem, use, saw) + taken_in(load_of(problem, section, use.rest), saw.kerf);
}

std::vector<Use> uses_of(const StickProblem& problem, const CoverPlan& plan, const RippingPricer* how,
                         const Saw& saw) {
  std::vector<Use> uses;
  std::vector<std::int64_t> spare(problem.items.size());
  for (std::size_t i = 0; i < spare.size(); ++i) spare[i] = -std::int64_t{problem.cover.demand[i]};
  const auto counts_of = [](const std::vector<ItemCount>& items) {
    Counts counts;
    for (const ItemCount& part : items) counts[part.item] = part.count;
    return counts;
  };
  for (const PatternUse& use : plan.patterns) {
    Use blank{use.pattern.kind, -1, {}, {}, 0};
    if (how != nullptr) {
      const RippedPattern& lies = how->lying(use.pattern);
      blank.rip = lies.rip;
      blank.rest = counts_of(lies.rest);
      for (const auto& strip : lies.strips) blank.strips.push_back(counts_of(strip));
    } else {
      blank.rest = counts_of(use.pattern.items);
    }
    for (const ItemCount& part : use.pattern.items)
      spare[static_cast<std::size_t>(part.item)] += std::int64_t{use.count} * part.count;
    blank.length = length_of(problem, blank, saw);
    uses.insert(uses.end(), static_cast<std::size_t>(use.count), blank);
  }
  // What is cut too often is left out where least is cut already: leftovers grow together.
  std::stable_sort(uses.begin(), uses.end(), [](const Use& a, const Use& b) { return a.length < b.length; });
  for (Use& use : uses) {
    const auto leave_out = [&](Counts& counts) {
      for (auto& [item, count] : counts) {
        std::int64_t& over = spare[static_cast<std::size_t>(item)];
        const auto out = static_cast<int>(std::min<std::int64_t>(over, count));
        count -= out;
        over -= out;
      }
      std::erase_if(counts, [](const auto& part) { return part.second == 0; });
    };
    leave_out(use.rest);
    for (Counts& strip : use.strips) leave_out(strip);
    if (std::all_of(use.strips.begin(), use.strips.end(), [](const Counts& c) { return c.empty(); })) {
      use.strips.clear();
      use.rip = -1;
    }
    use.length = length_of(problem, use, saw);
  }
  std::erase_if(uses, [](const Use& use) { return use.rip < 0 && use.rest.empty(); });
  return uses;
}

struct Blank {  // one stretch of a stick that is to be cut
  int section = 0;
  std::vector<int> rips;  // as the kind's
  std::size_t board = 0;
  std::size_t stick = 0;
  Stretch stretch;
  Money work = 0;  // of ripping it
};

// The strips of a board ripped by this layout, each clear over these stretches.
std::vector<Stick> strips_of(const StickOrder& order, const RipLayout& layout,
                             const std::vector<Stretch>& clear) {
  std::vector<Stick> sticks;
  Nanometres across = order.saw.edge_trim;
  for (const int strip : layout.strips) {
    sticks.push_back({strip, across, {}, clear});
    across += order.sections[static_cast<std::size_t>(strip)].width + order.saw.rip_kerf;
  }
  return sticks;
}

class Layer {
 public:
  Layer(Layout& layout, const StickOrder& order, const StickProblem& problem)
      : layout_(layout), order_(order), problem_(problem) {}

  void add_boards(std::size_t source, int count) {
    const StickSource& of = problem_.sources[source];
    const auto at = static_cast<std::size_t>(of.source);
    const int section = of.bought ? order_.stock[at].section : order_.on_hand[at].section;
    const Nanometres length = of.bought ? order_.stock[at].length : order_.on_hand[at].length;
    const std::vector<Stretch> clear = clear_stretches(
        length, of.bought ? std::vector<Stretch>{} : order_.on_hand[at].defects, order_, section);
    const std::vector<Supply>& supplies = problem_.cover.sources[source].supplies;
    const std::vector<int>& rips = problem_.kinds[static_cast<std::size_t>(supplies[0].kind)].rips;
    for (int n = 0; n < count; ++n) {
      Board board;
      board.bought = of.bought;
      board.source = of.source;
      board.cost = problem_.board_cost[source];
      if (!rips.empty()) board.cost -= of.work;  // until it is known how it is ripped
      if (of.ripped) {
        board.sticks = strips_of(order_, *of.ripped, clear);
        board.leftover_width = of.ripped->leftover;
      } else {
        board.sticks = {{section, 0, {}, clear}};
      }
      for (std::size_t stick = 0; stick < board.sticks.size(); ++stick)
        for (const Stretch& stretch : clear)
          blanks_[{board.sticks[stick].section, rips}].push_back(
              {board.sticks[stick].section, rips, layout_.boards.size(), stick, stretch, of.work});
      layout_.boards.push_back(std::move(board));
    }
  }

  // The fullest pattern on the longest blank, and so on down: where any assignment fits, this one does.
  void cut(std::vector<Use> uses) {
    std::stable_sort(uses.begin(), uses.end(),
                     [](const Use& a, const Use& b) { return a.length > b.length; });
    for (auto& [sort, blanks] : blanks_) {
      std::stable_sort(blanks.begin(), blanks.end(), [](const Blank& a, const Blank& b) {
        return a.stretch.to - a.stretch.from > b.stretch.to - b.stretch.from;
      });
      std::size_t next = 0;
      for (const Use& use : uses) {
        const StickKind& kind = problem_.kinds[static_cast<std::size_t>(use.kind)];
        if (kind.section == sort.first && kind.rips == sort.second) put(blanks[next++], use);
      }
      for (; next < blanks.size(); ++next) put(blanks[next], {});
    }
  }

 private:
  void put(const Blank& blank, const Use& use) {
    if (use.rip >= 0)
      rip(blank, use);
    else
      add_load(blank.section, blank.board, blank.stick, blank.stretch, use.rest);
  }

  void add_load(int section, std::size_t board, std::size_t stick, const Stretch& stretch,
                const Counts& counts) {
    Load load = load_of(problem_, section, counts);
    load.board = board;
    load.stick = stick;
    load.stretch = stretch;
    layout_.loads.push_back(std::move(load));
  }

  // Over its whole length where nothing is cut from the rest.
  void rip(const Blank& blank, const Use& use) {
    const RipLayout& by = problem_.layouts[static_cast<std::size_t>(use.rip)];
    Board& board = layout_.boards[blank.board];
    Stretch ripped = blank.stretch;
    if (!use.rest.empty()) {
      ripped.to = ripped.from + ripped_length(problem_, use, order_.saw) - order_.saw.kerf;
      board.ripped_to = ripped.to;
    }
    board.sticks = strips_of(order_, by, {ripped});
    board.leftover_width = by.leftover;
    board.cost += blank.work;
    for (std::size_t s = 0; s < by.strips.size(); ++s)
      add_load(by.strips[s], blank.board, s, ripped, use.strips[s]);
    if (use.rest.empty()) return;
    const Stretch rest{ripped.to + order_.saw.kerf, blank.stretch.to};
    board.sticks.push_back({blank.section, 0, {}, {rest}});
    add_load(blank.section, blank.board, by.strips.size(), rest, use.rest);
  }

  Layout& layout_;
  const StickOrder& order_;
  const StickProblem& problem_;
  std::map<std::pair<int, std::vector<int>>, std::vector<Blank>> blanks_;  // by section and rips
};

}  // namespace

void add_to(Layout& layout, const StickOrder& order, const StickProblem& problem, const CoverPlan& plan,
            const RippingPricer* how) {
  Layer layer(layout, order, problem);
  for (std::size_t s = 0; s < plan.sources.size(); ++s)
    if (plan.sources[s] > 0) layer.add_boards(s, plan.sources[s]);
  layer.cut(uses_of(problem, plan, how, order.saw));
}

}  // namespace models::cutting
