#include "models/cutting/crosscut_places.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace models::cutting {

namespace {

using Placed = UsesRelaxation::Placed;

constexpr double nothing = 1e-5;  // of a board
constexpr double decided = 1e-3;  // so near to a whole number of boards on either side

// By kind, how many boards are ripped in part.
std::map<int, int> count_parts(const UsesRelaxation& relaxed, const std::vector<int>& used) {
  std::map<int, int> counts;
  for (std::size_t u = 0; u < used.size(); ++u)
    if (relaxed.uses()[u].part && used[u] > 0) counts[relaxed.kind_of(u)] += used[u];
  return counts;
}

// The relaxation's crosscuts in as many equal parts as there are boards, from the left: of each part what all crosscuts in
// it have in common, or the mean where there is nothing.
std::vector<Nanometres> means(const std::vector<Placed>& placed, int boards, const Stretch& range,
                              bool& exact) {
  double all = 0;
  for (const Placed& of : placed) all += of.often;
  std::vector<Nanometres> places;
  auto next = placed.begin();
  double left = next == placed.end() ? 0 : next->often;
  for (int n = 0; n < boards; ++n) {
    double sum = 0, taken = 0;
    Stretch common = range;
    while (next != placed.end() && all / boards - taken > nothing) {
      const double take = std::min(all / boards - taken, left);
      sum += take * (static_cast<double>(next->anywhere.from + next->anywhere.to) / 2);
      taken += take;
      left -= take;
      if (take > nothing)
        common = {std::max(common.from, next->anywhere.from), std::min(common.to, next->anywhere.to)};
      if (left <= nothing && ++next != placed.end()) left = next->often;
    }
    const bool agree = common.from <= common.to;
    exact = exact && agree;
    places.push_back(agree ? (common.from + common.to) / 2 : static_cast<Nanometres>(sum / taken));
    places.back() = std::clamp(places.back(), range.from, range.to);
  }
  return places;
}

// Between crosscuts of which it is not decided how many boards are crosscut to the left, at most as many as there are
// boards.
std::set<Nanometres> undecided(const std::vector<Placed>& placed, int boards) {
  std::vector<std::pair<double, Nanometres>> found;  // how decided, where
  double left = 0;
  for (std::size_t i = 0; i + 1 < placed.size(); ++i) {
    left += placed[i].often;
    const double apart = std::abs(left - std::round(left));
    const Nanometres from = placed[i].anywhere.to, to = placed[i + 1].anywhere.from;
    if (apart > decided && from < to) found.emplace_back(-apart, (from + to + 1) / 2);
  }
  std::sort(found.begin(), found.end());
  std::set<Nanometres> places;
  for (std::size_t i = 0; i < found.size() && i < static_cast<std::size_t>(boards); ++i)
    places.insert(found[i].second);
  return places;
}

}  // namespace

LikelyPlaces likely_places(const UsesRelaxation& relaxed, const std::vector<int>& used) {
  const auto crosscuts = relaxed.crosscuts();
  const std::map<int, int> counts = count_parts(relaxed, used);
  std::map<int, std::vector<Nanometres>> places;  // by kind, the last one first
  LikelyPlaces likely;
  for (std::size_t u = 0; u < used.size(); ++u) {
    const BoardUse& use = relaxed.uses()[u];
    if (!use.part || used[u] == 0) continue;
    const int kind = relaxed.kind_of(u);
    const auto [of_kind, is_new] = places.try_emplace(kind);
    if (is_new) {
      const auto placed = crosscuts.find(kind);
      of_kind->second = means(placed == crosscuts.end() ? std::vector<Placed>{} : placed->second,
                              counts.at(kind), use.crosscut, likely.exact);
      std::reverse(of_kind->second.begin(), of_kind->second.end());
    }
    for (int n = 0; n < used[u]; ++n) {
      likely.boards.push_back({use, of_kind->second.back()});
      of_kind->second.pop_back();
    }
  }
  return likely;
}

std::vector<BoardUse> narrower_uses(const UsesRelaxation& relaxed, const std::vector<int>& used,
                                    Nanometres step) {
  const auto crosscuts = relaxed.crosscuts();
  const std::map<int, int> counts = count_parts(relaxed, used);
  std::vector<BoardUse> uses;
  int group = 0;
  bool narrower = false;
  for (std::size_t u = 0; u < used.size(); ++u) {
    if (used[u] == 0) continue;
    BoardUse use = relaxed.uses()[u];
    use.group = group++;
    if (use.part && use.crosscut.from < use.crosscut.to) {
      const auto placed = crosscuts.find(relaxed.kind_of(u));
      std::set<Nanometres> places;
      if (placed != crosscuts.end()) places = undecided(placed->second, counts.at(relaxed.kind_of(u)));
      if (places.empty()) places.insert((use.crosscut.from + use.crosscut.to + 1) / 2);
      // Some strip ends at the crosscut, or else it may stand farther to the left.
      const Stretch range = use.crosscut;
      Nanometres from = range.from;
      for (const Nanometres place : places) {
        const Nanometres next = (place + step - 1) / step * step;
        if (next <= from || next > range.to) continue;
        use.crosscut = {from, std::max(from, next - step)};
        uses.push_back(use);
        from = next;
      }
      use.crosscut = {from, std::max(from, range.to / step * step)};
      narrower = narrower || use.crosscut != range;
    }
    uses.push_back(use);
  }
  return narrower ? uses : std::vector<BoardUse>{};
}

}  // namespace models::cutting
