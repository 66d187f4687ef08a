#include "models/cutting/stepped_boards.h"

#include <algorithm>

namespace models::cutting {

namespace {

constexpr int steps_at_first = 3;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

}  // namespace

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
  using Blank = Stepped::Blank;
  Stepped made(problem_);
  for (std::size_t s = 0; s < taken.size(); ++s) {
    if (taken[s] == 0) continue;
    const Source& source = problem_.cover.sources[s];
    const int k = source.supplies[0].kind;
    const StickKind& kind = problem_.kinds[at(k)];
    std::map<Blank, int> whole;
    for (const Supply& supply : source.supplies)
      whole[{problem_.kinds[at(supply.kind)].section, problem_.kinds[at(supply.kind)].length}] +=
          supply.count;
    made.add({k, -1, false, 0, 0, static_cast<int>(s)}, source.cost, whole);
    for (const int rip : kind.rips) {
      const std::vector<int>& strips = problem_.layouts[at(rip)].strips;
      std::map<Blank, int> ripped;
      for (const int strip : strips) ++ripped[{strip, kind.length}];
      made.add({k, rip, false, 0, 0, static_cast<int>(s)}, source.cost, ripped);
      const auto places = steps.find({k, rip});
      if (places == steps.end()) continue;
      const auto add_part = [&](Nanometres from, Nanometres end) {
        std::map<Blank, int> part;
        for (const int strip : strips) ++part[{strip, end - kerf_}];
        ++part[{kind.section, kind.length - from}];
        made.add({k, rip, true, from, end, static_cast<int>(s)}, source.cost, part);
      };
      const std::set<Nanometres>& starts = places->second.steps;
      for (auto from = starts.begin(); std::next(from) != starts.end(); ++from)
        add_part(*from, *std::next(from) - 1);
      for (const Nanometres point : places->second.points) add_part(point, point);
    }
    made.problem.cover.group_limit.push_back(taken[s]);
  }
  made.number_kinds();
  return made;
}

// Each board ripped in part is a source of its own.
PartFitter::Stepped PartFitter::only(const Stepped& stepped, const CoverPlan& plan,
                                     const std::vector<Parted>& parted, double share) const {
  Stepped made(problem_);
  const auto add = [&](const Stepped::Source& source, const std::map<Stepped::Blank, int>& gives, int count) {
    made.add(source, 0, gives);
    made.problem.cover.group_limit.push_back(count);
  };
  for (std::size_t s = 0; s < plan.sources.size(); ++s)
    if (plan.sources[s] > 0 && !stepped.sources[s].part)
      add(stepped.sources[s], stepped.blanks[s], plan.sources[s]);
  for (const Parted& board : parted) {
    Stepped::Source source = stepped.sources[board.source];
    const auto [first, last] = std::minmax(board.rest_has_room, board.strips_have_room);
    source.from = source.to = first + static_cast<Nanometres>(share * static_cast<double>(last - first));
    const StickKind& kind = problem_.kinds[at(source.kind)];
    std::map<Stepped::Blank, int> gives;
    for (const int strip : problem_.layouts[at(source.rip)].strips) ++gives[{strip, source.to - kerf_}];
    ++gives[{kind.section, kind.length - source.from}];
    add(source, gives, 1);
  }
  made.number_kinds();
  return made;
}

}  // namespace models::cutting
