#include "models/cutting/stepped_boards.h"

#include <algorithm>

namespace models::cutting {

namespace {

constexpr std::size_t steps_at_first = 12;  // of each way to rip a board

std::size_t at(int index) { return static_cast<std::size_t>(index); }

}  // namespace

// What a board is used for must be worth what is asked of it; and neither side of a crosscut is too short for a piece.
PartFitter::Uses PartFitter::near_enough(const std::vector<int>& taken, const Spare& spare) const {
  std::vector<double> least(problem_.kinds.size(), 0x1p60);
  for (std::size_t s = 0; s < taken.size(); ++s)
    if (taken[s] > 0) least[at(problem_.cover.sources[s].supplies[0].kind)] = spare.worth[s] - spare.spare;
  Uses uses = pricer_.uses(spare.prices, problem_.cover.demand, least);
  for (std::size_t k = 0; k < uses.size(); ++k) {
    const StickKind& kind = problem_.kinds[k];
    for (RippingPricer::Uses::Rip& rip : uses[k].rips) {
      const CrosscutRange range = crosscut_range(problem_, kind, rip.layout, shortest_pieces_, saw_);
      for (Stretch& place : rip.places)
        place = {std::max(place.from, range.from), std::min(place.to, range.to)};
      std::erase_if(rip.places, [](const Stretch& place) { return place.from > place.to; });
    }
  }
  return uses;
}

// The widest step is halved again and again; what lies between places falls away at the halves' ends.
PartFitter::Steps PartFitter::first_steps(const Uses& uses) const {
  Steps steps;
  for (std::size_t k = 0; k < uses.size(); ++k) {
    for (const RippingPricer::Uses::Rip& rip : uses[k].rips) {
      if (rip.places.empty()) continue;
      Places& places = steps[{static_cast<int>(k), rip.layout}];
      places.all = rip.places;
      places.steps[places.all.front().from] = places.all.back().to;
      while (places.steps.size() < steps_at_first) {
        const auto widest = std::max_element(
            places.steps.begin(), places.steps.end(),
            [](const auto& a, const auto& b) { return a.second - a.first < b.second - b.first; });
        if (widest->first == widest->second) break;
        divide_at(places, (widest->first + widest->second + 1) / 2);
      }
    }
  }
  return steps;
}

bool PartFitter::is_among(const std::vector<Stretch>& places, Nanometres place) {
  const auto after = std::upper_bound(places.begin(), places.end(), place,
                                      [](Nanometres p, const Stretch& stretch) { return p < stretch.from; });
  return after != places.begin() && place <= std::prev(after)->to;
}

void PartFitter::divide_at(Places& places, Nanometres place) {
  auto step = places.steps.upper_bound(place);
  if (step == places.steps.begin()) return;
  --step;
  const auto [from, to] = *step;
  if (place <= from || place > to) return;
  places.steps.erase(step);
  // What is left of either side.
  for (const Stretch& side : {Stretch{from, place - 1}, Stretch{place, to}}) {
    Stretch left{side.to, side.from};
    for (const Stretch& stretch : places.all) {
      if (stretch.to < side.from || stretch.from > side.to) continue;
      left.from = std::min(left.from, std::max(stretch.from, side.from));
      left.to = std::max(left.to, std::min(stretch.to, side.to));
    }
    if (left.from <= left.to) places.steps[left.from] = left.to;
  }
}

PartFitter::Stepped PartFitter::stepped(const std::vector<int>& taken, const Uses& uses,
                                        const Steps& steps) const {
  Stepped made(problem_);
  for (std::size_t s = 0; s < taken.size(); ++s) {
    if (taken[s] == 0) continue;
    const Source& source = problem_.cover.sources[s];
    const int k = source.supplies[0].kind;
    const StickKind& kind = problem_.kinds[at(k)];
    const int whole = static_cast<int>(s);
    if (kind.rips.empty() || uses[at(k)].whole)
      made.add({k, -1, false, 0, 0, whole}, source.cost, Stepped::as_it_is(problem_, source));
    for (const RippingPricer::Uses::Rip& use : uses[at(k)].rips) {
      const int rip = use.layout;
      if (use.whole)
        made.add({k, rip, false, 0, 0, whole}, source.cost, Stepped::ripped(problem_, rip, kind.length));
      const auto places = steps.find({k, rip});
      if (places == steps.end()) continue;
      const auto add_part = [&](Nanometres from, Nanometres to) {
        made.add({k, rip, true, from, to, whole}, source.cost,
                 Stepped::ripped_in_part(problem_, kind, rip, {from, to}, kerf_));
      };
      for (const auto& [from, to] : places->second.steps) add_part(from, to);
      for (const Nanometres point : places->second.points) add_part(point, point);
    }
    made.problem.cover.group_limit.push_back(taken[s]);
  }
  made.number_kinds();
  return made;
}

}  // namespace models::cutting
