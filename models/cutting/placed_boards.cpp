#include "models/cutting/placed_boards.h"

#include <algorithm>

#include "models/cutting/nested_pricer.h"

namespace models::cutting {

namespace {

constexpr Limits of_one_section{0, 3'000, 10'000'000};
// Of pricing, in other steps: there are many lengths of blanks, and each state is looked at for all.
constexpr std::int64_t dear_step = 2;
constexpr double near_all = 0.95;  // of the depth of a cut: so deep that it is sought with samples first

std::size_t at(int index) { return static_cast<std::size_t>(index); }

}  // namespace

PlacedBoards::PlacedBoards(const StickProblem& problem, RippingPricer& pricer, const Saw& saw)
    : problem_(problem), pricer_(pricer), kerf_(saw.kerf) {
  for (const StickItem& item : problem.items) sections_.insert(item.section);
}

std::vector<PlacedBoards::Board> PlacedBoards::boards_of(const std::vector<BoardUse>& uses,
                                                         const std::vector<int>& used,
                                                         const std::vector<CrosscutBoard>& crosscut) const {
  std::vector<Board> boards;
  for (std::size_t u = 0; u < used.size(); ++u) {
    const BoardUse& use = uses[u];
    if (use.part) continue;
    for (int n = 0; n < used[u]; ++n) {
      for (const Supply& supply : problem_.cover.sources[at(use.source)].supplies) {
        const Nanometres room = problem_.kinds[at(supply.kind)].length + kerf_;
        const Board board =
            use.rip < 0 ? Board{supply.kind, -1, 0, room} : Board{supply.kind, use.rip, room, 0};
        boards.insert(boards.end(), at(supply.count), board);
      }
    }
  }
  for (const CrosscutBoard& of : crosscut) {
    const int kind = problem_.cover.sources[at(of.use.source)].supplies[0].kind;
    boards.push_back({kind, of.use.rip, of.place, problem_.kinds[at(kind)].length + kerf_ - of.place});
  }
  return boards;
}

PlacedBoards::Lengths PlacedBoards::lengths_of(const std::vector<Board>& boards) const {
  Lengths made;
  made.problem.items = problem_.items;
  made.problem.nestings = problem_.nestings;
  made.problem.cover.demand = problem_.cover.demand;
  for (const StickItem& item : problem_.items) made.problem.cover.item_family.push_back(item.section);
  std::map<Blanks, int> alike;
  for (const Board& board : boards) {
    Blanks gives;
    if (board.ripped > 0)
      for (const int strip : problem_.layouts[at(board.rip)].strips)
        ++gives[{strip, {}, board.ripped - kerf_, {}}];
    if (board.rest > 0) ++gives[{problem_.kinds[at(board.kind)].section, {}, board.rest - kerf_, {}}];
    ++alike[gives];
  }
  for (const auto& [gives, count] : alike) {
    made.problem.cover.sources.push_back({0, {}, static_cast<int>(made.problem.cover.group_limit.size())});
    made.problem.cover.group_limit.push_back(count);
    made.blanks.push_back(gives);
  }
  number_kinds(made.problem, made.blanks, [](int section) { return section; });
  return made;
}

Fit PlacedBoards::hold(const Lengths& lengths, int section, bool wholly, std::vector<PatternUse>& patterns) {
  const StickProblem& problem = lengths.problem;
  NestedPricer pricer(problem, kerf_);
  Cutter cutter(problem.cover, section, pricer, of_one_section);
  std::set<std::vector<ItemCount>>& sets = piece_sets_[section];
  for (const std::vector<ItemCount>& items : sets) {
    const Nanometres length = pricer_.taken(section, items);
    const auto shortest = std::find_if(
        problem.kinds.begin(), problem.kinds.end(),
        [&](const StickKind& kind) { return kind.section == section && kind.length + kerf_ >= length; });
    if (shortest != problem.kinds.end())
      cutter.add({static_cast<int>(shortest - problem.kinds.begin()), items});
  }
  const std::vector<int>& all = problem.cover.group_limit;  // each source is a group
  const std::vector<Cut> lacks = cutter.lacking({all.begin(), all.end()}, near_all);
  Fit fit = Fit::unknown;
  if (std::any_of(lacks.begin(), lacks.end(), [&](const Cut& cut) { return !meets(cut, all); }))
    fit = Fit::no;
  else if (lacks.empty() && !cutter.worked_out())
    fit = Fit::yes;
  if (wholly && fit == Fit::yes) {
    fit = cutter.fit(all);
    patterns.insert(patterns.end(), cutter.patterns().begin(), cutter.patterns().end());
  }
  work_ += {0, cutter.iterations(), dear_step * pricer.steps()};
  for (const auto& [pattern, often] : cutter.uses()) sets.insert(pattern.items);
  return fit;
}

bool PlacedBoards::may_hold(const Lengths& lengths, int section) {
  std::map<Nanometres, int> of_section;
  for (std::size_t s = 0; s < lengths.blanks.size(); ++s)
    for (const auto& [blank, count] : lengths.blanks[s])
      if (blank.section == section) of_section[blank.length] += count * lengths.problem.cover.group_limit[s];
  const auto [known, is_new] = may_hold_.try_emplace({section, of_section}, true);
  std::vector<PatternUse> none;
  if (is_new) known->second = hold(lengths, section, false, none) != Fit::no;
  return known->second;
}

// The longest set of pieces on the longest blank, and so on down.
std::vector<PatternUse> PlacedBoards::on_boards(const std::vector<Board>& boards, const Lengths& lengths,
                                                const std::vector<PatternUse>& patterns) const {
  using Items = std::vector<ItemCount>;
  const auto longest_first = [](const auto& a, const auto& b) { return a.first > b.first; };
  std::map<int, std::vector<std::pair<Nanometres, Items>>> sets;  // by section
  for (const PatternUse& use : patterns) {
    const int section = lengths.problem.kinds[at(use.pattern.kind)].section;
    const Nanometres length = pricer_.taken(section, use.pattern.items);
    sets[section].insert(sets[section].end(), at(use.count), {length, use.pattern.items});
  }
  std::vector<RippedPattern> lie;
  for (const Board& board : boards) {
    lie.push_back({board.rip, {}, {}});
    if (board.rip >= 0) lie.back().strips.resize(problem_.layouts[at(board.rip)].strips.size());
  }
  std::map<int, std::vector<std::pair<Nanometres, Items*>>> blanks;  // by section
  for (std::size_t b = 0; b < boards.size(); ++b) {
    const Board& board = boards[b];
    for (std::size_t n = 0; n < lie[b].strips.size(); ++n)
      blanks[problem_.layouts[at(board.rip)].strips[n]].emplace_back(board.ripped, &lie[b].strips[n]);
    if (board.rest > 0) blanks[problem_.kinds[at(board.kind)].section].emplace_back(board.rest, &lie[b].rest);
  }
  for (auto& [section, of] : sets) {
    std::vector<std::pair<Nanometres, Items*>>& on = blanks[section];
    std::stable_sort(of.begin(), of.end(), longest_first);
    std::stable_sort(on.begin(), on.end(), longest_first);
    if (of.size() > on.size()) return {};
    for (std::size_t n = 0; n < of.size(); ++n) *on[n].second = of[n].second;
  }
  std::vector<PatternUse> found;
  for (std::size_t b = 0; b < boards.size(); ++b) {
    if (!pricer_.fits(boards[b].kind, lie[b])) return {};
    const Pattern pattern = pricer_.pattern_of(boards[b].kind, lie[b]);
    if (!pattern.items.empty()) found.push_back({pattern, 1});
  }
  return found;
}

Fit PlacedBoards::fit(const std::vector<BoardUse>& uses, const std::vector<int>& used,
                      const std::vector<CrosscutBoard>& crosscut, std::vector<PatternUse>& patterns) {
  const std::vector<Board> boards = boards_of(uses, used, crosscut);
  const Lengths lengths = lengths_of(boards);
  for (const int section : sections_)
    if (!may_hold(lengths, section)) return Fit::no;
  std::vector<PatternUse> cut;
  for (const int section : sections_)
    if (const Fit fit = hold(lengths, section, true, cut); fit != Fit::yes) return fit;
  patterns = on_boards(boards, lengths, cut);
  return patterns.empty() ? Fit::unknown : Fit::yes;
}

}  // namespace models::cutting
