// Diving: from the relaxation to whole patterns by rounding one after the other, with new patterns priced for the pieces
// that remain.
#include <algorithm>
#include <cmath>

#include "models/cutting/cutter.h"

namespace models::cutting {

namespace {

constexpr double whole = 1e-6;
constexpr int most_rounds = 40;        // of pricing after each step
constexpr std::size_t most_tries = 4;  // at one place
constexpr int most_failures = 30;

struct Place {  // what is fixed so far, and the choices at this point that failed
  std::vector<int> floors;
  std::vector<int> remaining;
  std::vector<std::size_t> failed;
};

}  // namespace

bool Cutter::dive(const std::vector<int>& sources, int variant) {
  // No more than these sources, but fewer are welcome: so the relaxation keeps what is spare together for the end. It
  // costs more than they do only where pieces stay uncut.
  double limit = whole * master_.piece_price();
  std::vector<double> most;
  for (std::size_t s = 0; s < sources.size(); ++s) {
    limit += static_cast<double>(part_.problem.sources[s].cost) * sources[s];
    most.push_back(sources[s]);
  }
  master_.aim_at(Aim::cost);
  master_.bound_sources(std::vector<double>(sources.size()), most);
  std::vector<Place> trail{{{}, part_.problem.demand, {}}};
  int failures = 0;
  // Mistakes are often made long before they show: some failures go back further than others.
  const auto go_back = [&] {
    ++failures;
    const std::size_t levels = std::min(
        variant % 2 == 0 ? static_cast<std::size_t>(failures & -failures) : std::size_t{1} << (failures % 6),
        std::max<std::size_t>(trail.size() - 1, 1));
    trail.erase(trail.end() - static_cast<std::ptrdiff_t>(levels), trail.end());
    return failures <= most_failures;
  };
  bool found = false;
  while (!worked_out() && !trail.empty()) {
    Place& at = trail.back();
    at.floors.resize(master_.patterns().size());
    for (std::size_t p = 0; p < at.floors.size(); ++p)
      master_.bound_pattern(p, at.floors[p], Master::unbounded);
    bool alive = master_.solve();
    for (int round = 0; alive && round < most_rounds; ++round) {
      // Even variants go on as soon as all pieces fit, odd ones with the least that they can do with.
      if (variant % 2 == 0 && master_.value() <= limit) break;
      if (!enrich(at.remaining, false)) break;
      alive = master_.solve();
    }
    if (!alive || master_.value() > limit || master_.uncut() > whole) {
      if (!go_back()) break;
      continue;
    }
    const std::vector<double> uses = master_.uses();
    at.floors.resize(uses.size());
    const auto raise = [&](Place& place, std::size_t p, int to) {
      for (const ItemCount& item : master_.patterns()[p].items) {
        int& left = place.remaining[static_cast<std::size_t>(item.item)];
        left = std::max(0, left - (to - place.floors[p]) * item.count);
      }
      place.floors[p] = to;
    };
    std::vector<std::size_t> part;
    for (std::size_t p = 0; p < uses.size(); ++p) {
      const int below = static_cast<int>(std::floor(uses[p] + whole));
      if (below > at.floors[p] && at.failed.empty()) raise(at, p, below);
      if (uses[p] - below > whole) part.push_back(p);
    }
    if (part.empty()) {
      // Not the floors: where the dive came back to a place they stay behind.
      for (std::size_t p = 0; p < uses.size(); ++p) {
        const int count = static_cast<int>(std::floor(uses[p] + whole));
        if (count > 0) found_.push_back({master_.patterns()[p], count});
      }
      found = true;
      break;
    }
    const auto fraction = [&](std::size_t p) { return uses[p] - std::floor(uses[p]); };
    std::stable_sort(part.begin(), part.end(),
                     [&](std::size_t a, std::size_t b) { return fraction(a) > fraction(b); });
    std::erase_if(part, [&](std::size_t p) {
      return std::find(at.failed.begin(), at.failed.end(), p) != at.failed.end();
    });
    if (part.empty() || at.failed.size() >= most_tries) {
      trail.pop_back();
      continue;
    }
    // Variants leave the first choice now and then, each at its own moves.
    const bool second = variant > 0 && static_cast<int>(trail.size()) % (variant + 1) == 0;
    const std::size_t p = part[second ? 1 % part.size() : 0];
    at.failed.push_back(p);  // for when we come back
    Place next{at.floors, at.remaining, {}};
    raise(next, p, next.floors[p] + 1);
    trail.push_back(std::move(next));
  }
  master_.free_patterns();
  return found;
}

}  // namespace models::cutting
