#include "models/cutting/whole_rips.h"

#include <algorithm>

namespace models::cutting {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

class Translation {
 public:
  Translation(const StickProblem& problem, RippingPricer& pricer) : problem_(problem), pricer_(pricer) {
    plan_.sources.assign(problem.sources.size(), 0);
  }

  void add(const Board& board, const std::vector<const Load*>& loads) {
    std::vector<int> strips;
    for (const Stick& stick : board.sticks) strips.push_back(stick.section);
    for (std::size_t s = 0; s < problem_.sources.size(); ++s) {
      const StickSource& source = problem_.sources[s];
      if (source.bought != board.bought || source.source != board.source) continue;
      const StickKind& kind = problem_.kinds[at(problem_.cover.sources[s].supplies[0].kind)];
      const bool whole = strips.size() == 1 && strips[0] == kind.section;
      if (source.ripped ? source.ripped->strips == strips : whole) {
        ++plan_.sources[s];
        for (const Load* load : loads) add_plain(kind, *load);
        return;
      }
      for (const int rip : kind.rips) {
        if (problem_.layouts[at(rip)].strips != strips) continue;
        ++plan_.sources[s];
        RippedPattern lies{rip, {}, {}};
        lies.strips.resize(strips.size());
        for (const Load* load : loads) lies.strips[load->stick] = items_of(*load);
        use(pricer_.pattern_of(problem_.cover.sources[s].supplies[0].kind, lies));
        return;
      }
    }
  }

  [[nodiscard]] CoverPlan finish() { return std::move(plan_); }

 private:
  // `of` is the kind of a whole board, or of one of the stretches that a board gives.
  void add_plain(const StickKind& of, const Load& load) {
    const Nanometres length = load.stretch.to - load.stretch.from;
    for (std::size_t k = 0; k < problem_.kinds.size(); ++k) {
      const StickKind& kind = problem_.kinds[k];
      if (kind.section != load.section || kind.length != length || kind.rips != of.rips) continue;
      use(pricer_.pattern_of(static_cast<int>(k), {-1, {}, items_of(load)}));
      return;
    }
  }

  [[nodiscard]] std::vector<ItemCount> items_of(const Load& load) const {
    std::vector<ItemCount> items;
    for (std::size_t i = 0; i < problem_.items.size(); ++i) {
      const auto found = load.pieces.find(problem_.items[i].shape);
      if (problem_.items[i].section == load.section && found != load.pieces.end())
        items.push_back({static_cast<int>(i), found->second});
    }
    return items;
  }

  void use(Pattern pattern) { plan_.patterns.push_back({std::move(pattern), 1}); }

  const StickProblem& problem_;
  RippingPricer& pricer_;
  CoverPlan plan_;
};

}  // namespace

CoverPlan as_ripped_in_part(const Layout& layout, const StickProblem& problem, RippingPricer& pricer) {
  std::vector<std::vector<const Load*>> loads(layout.boards.size());
  for (const Load& load : layout.loads)
    if (!load.pieces.empty()) loads[load.board].push_back(&load);
  Translation translation(problem, pricer);
  for (std::size_t b = 0; b < layout.boards.size(); ++b)
    if (!loads[b].empty()) translation.add(layout.boards[b], loads[b]);
  return translation.finish();
}

std::vector<Pattern> as_ripped_in_part(const StickProblem& whole, const std::vector<Pattern>& patterns,
                                       const StickProblem& problem, RippingPricer& pricer) {
  std::vector<Pattern> found;
  for (const Pattern& pattern : patterns) {
    const StickKind& of = whole.kinds[at(pattern.kind)];
    for (std::size_t k = 0; k < problem.kinds.size(); ++k) {
      const StickKind& kind = problem.kinds[k];
      if (kind.length != of.length) continue;
      if (kind.section == of.section)
        found.push_back(pricer.pattern_of(static_cast<int>(k), {-1, {}, pattern.items}));
      for (const int rip : kind.rips) {
        RippedPattern lies{rip, {}, {}};
        for (const int strip : problem.layouts[at(rip)].strips)
          lies.strips.push_back(strip == of.section ? pattern.items : std::vector<ItemCount>{});
        found.push_back(pricer.pattern_of(static_cast<int>(k), lies));
      }
    }
  }
  return found;
}

}  // namespace models::cutting
