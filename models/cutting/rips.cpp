#include "models/cutting/rips.h"

#include <algorithm>
#include <map>

namespace models::cutting {

namespace {

constexpr std::size_t most_layouts = 500;  // of one section; real boards give a handful

struct Strip {
  int section;
  Nanometres width;
  Money work;
};

// Extends `layout` by strips from `first` on, widest first, and collects every step.
void extend(const std::vector<Strip>& strips, std::size_t first, Nanometres room, Nanometres kerf,
            RipLayout layout, std::vector<RipLayout>& found) {
  for (std::size_t i = first; i < strips.size() && found.size() < most_layouts; ++i) {
    if (strips[i].width > room) continue;
    RipLayout longer = layout;
    longer.strips.push_back(strips[i].section);
    const Nanometres left = room - strips[i].width;
    // A strip that ends at the board's edge needs no cut of its own.
    if (left > 0) longer.work += strips[i].work;
    longer.leftover = std::max<Nanometres>(0, left - kerf);
    found.push_back(longer);
    extend(strips, i, left - kerf, kerf, std::move(longer), found);
  }
}

bool lies_within(const RipLayout& small, const RipLayout& large) {
  return std::includes(large.strips.begin(), large.strips.end(), small.strips.begin(), small.strips.end());
}

}  // namespace

std::optional<std::vector<RipLayout>> rip_layouts(const std::vector<Section>& sections,
                                                  const std::vector<RipRule>& rules, const Saw& saw) {
  std::map<std::pair<int, int>, Money> work;
  for (const RipRule& rule : rules) {
    const auto [at, is_new] = work.try_emplace({rule.from, rule.to}, rule.work);
    if (!is_new) at->second = std::min(at->second, rule.work);
  }
  std::vector<RipLayout> layouts;
  for (int from = 0; from < static_cast<int>(sections.size()); ++from) {
    std::vector<Strip> strips;
    for (const auto& [pair, cost] : work) {
      if (pair.first == from) {
        strips.push_back({pair.second, sections[static_cast<std::size_t>(pair.second)].width, cost});
      }
    }
    std::stable_sort(strips.begin(), strips.end(),
                     [](const Strip& a, const Strip& b) { return a.width > b.width; });
    RipLayout none;
    none.from = from;
    std::vector<RipLayout> found;
    const Nanometres room = sections[static_cast<std::size_t>(from)].width - 2 * saw.edge_trim;
    extend(strips, 0, room, saw.rip_kerf, none, found);
    if (found.size() >= most_layouts) return std::nullopt;
    // In a fixed order of sections, so that one set can be looked for in another.
    std::vector<RipLayout> sorted = found;
    for (RipLayout& layout : sorted) std::sort(layout.strips.begin(), layout.strips.end());
    for (std::size_t i = 0; i < found.size(); ++i) {
      bool worse = false;
      for (std::size_t j = 0; j < found.size() && !worse; ++j) {
        worse = i != j && found[j].work <= found[i].work && lies_within(sorted[i], sorted[j]) &&
                sorted[i].strips.size() < sorted[j].strips.size();
      }
      if (!worse) layouts.push_back(found[i]);
    }
  }
  return layouts;
}

}  // namespace models::cutting
