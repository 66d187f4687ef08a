#include "models/cutting/ripping_pricer.h"

#include <algorithm>
#include <iterator>
#include <set>

namespace models::cutting {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

}  // namespace

RippingPricer::RippingPricer(const StickProblem& problem, const Saw& saw)
    : problem_(problem), kerf_(saw.kerf), shortest_(saw.shortest_rip + saw.kerf) {
  const auto family_of = [&](int section) -> Family& {
    const auto nesting = problem.nestings.find(section);
    const std::shared_ptr<Nesting> meets = nesting == problem.nestings.end() ? nullptr : nesting->second;
    return families_.try_emplace(section, Family{{}, 0, meets, Profile(meets)}).first->second;
  };
  for (const StickKind& kind : problem.kinds) {
    const auto reach = [&](int section) {
      Family& family = family_of(section);
      family.twice_longest = std::max(family.twice_longest, 2 * (kind.length + kerf_));
    };
    reach(kind.section);
    for (const int rip : kind.rips)
      for (const int strip : problem.layouts[at(rip)].strips) reach(strip);
  }
  for (auto& [section, family] : families_)
    if (family.nesting) family.items.resize(family.nesting->shapes().size());
  for (std::size_t i = 0; i < problem.items.size(); ++i) {
    Family& family = family_of(problem.items[i].section);
    if (family.nesting)
      family.items[family.nesting->index_of(problem.items[i].shape)] = static_cast<int>(i);
    else
      family.items.push_back(static_cast<int>(i));
  }
}

void RippingPricer::fill(const Prices& prices, const std::vector<int>& at_most, bool exact) {
  for (auto& [section, family] : families_) {
    std::vector<Profile::Item> items;
    for (std::size_t n = 0; n < family.items.size(); ++n) {
      const std::size_t i = at(family.items[n]);
      const Nanometres twice =
          family.nesting ? family.nesting->twice_taken(n) : 2 * (problem_.items[i].length + kerf_);
      items.push_back({twice, prices.item[i], at_most[i]});
    }
    if (exact)
      family.profile.fill(items, family.twice_longest);
    else
      family.profile.sample(items, family.twice_longest);
  }
}

const RippingPricer::Step& RippingPricer::within(int section, Nanometres twice_length) const {
  const std::vector<Step>& steps = families_.at(section).profile.steps();
  const auto after =
      std::upper_bound(steps.begin(), steps.end(), twice_length,
                       [](Nanometres length, const Step& s) { return length < s.twice_length; });
  return *std::prev(after);
}

// The crosscut stands where a strip's pieces end: all steps of the strips are tried, with what the rest has room for.
RippingPricer::Split RippingPricer::best_split(int kind, int rip) const {
  const Nanometres room = 2 * (problem_.kinds[at(kind)].length + kerf_);
  const std::vector<int>& strips = problem_.layouts[at(rip)].strips;
  const std::vector<Step>& rest = families_.at(problem_.kinds[at(kind)].section).profile.steps();
  std::map<int, int> counts;  // of strips, by section
  for (const int strip : strips) ++counts[strip];
  struct Side {
    const std::vector<Step>* steps;
    int count;
    std::size_t next;
  };
  std::vector<Side> sides;
  for (const auto& [strip, count] : counts) sides.push_back({&families_.at(strip).profile.steps(), count, 0});
  std::size_t r = rest.size() - 1;
  Split best;
  Nanometres best_at = 0;
  const Stretch& crosscut = problem_.kinds[at(kind)].crosscut;
  const Nanometres last = crosscut.to > 0 ? 2 * crosscut.to : room;
  for (Nanometres cut = 2 * std::max(shortest_, crosscut.from); cut <= last;) {
    double worth = 0;
    Nanometres next_cut = room + 1;
    for (Side& side : sides) {
      while (side.next + 1 < side.steps->size() && (*side.steps)[side.next + 1].twice_length <= cut)
        ++side.next;
      worth += side.count * (*side.steps)[side.next].worth;
      if (side.next + 1 < side.steps->size())
        next_cut = std::min(next_cut, (*side.steps)[side.next + 1].twice_length);
    }
    while (rest[r].twice_length > room - cut) --r;
    worth += rest[r].worth;
    if (worth > best.worth) {
      best.worth = worth;
      best.rest = &rest[r];
      best_at = cut;
    }
    cut = next_cut;
  }
  if (best.rest != nullptr)
    for (const int strip : strips) best.strips.push_back(&within(strip, best_at));
  return best;
}

std::vector<ItemCount> RippingPricer::items_at(int section, const Step& step) const {
  const Family& family = families_.at(section);
  const std::vector<int> counts = family.profile.counts(step);
  std::vector<ItemCount> items;
  for (std::size_t n = 0; n < counts.size(); ++n)
    if (counts[n] > 0) items.push_back({family.items[n], counts[n]});
  std::sort(items.begin(), items.end());
  return items;
}

Nanometres RippingPricer::taken(int section, const std::vector<ItemCount>& items) const {
  const std::shared_ptr<Nesting>& nesting = families_.at(section).nesting;
  Nanometres taken = 0;
  std::map<Shape, int> pieces;
  for (const ItemCount& part : items) {
    const StickItem& item = problem_.items[at(part.item)];
    taken += part.count * (item.length + kerf_);
    pieces[item.shape] += part.count;
  }
  return nesting ? nesting->taken(pieces) : taken;
}

Nanometres RippingPricer::ripped_length(const RippedPattern& lies) const {
  Nanometres length = 0;
  for (std::size_t s = 0; s < lies.strips.size(); ++s)
    length = std::max(length, taken(problem_.layouts[at(lies.rip)].strips[s], lies.strips[s]));
  return length > 0 ? std::max(length, shortest_) : 0;
}

bool RippingPricer::fits(int kind, const RippedPattern& lies) const {
  const StickKind& of = problem_.kinds[at(kind)];
  const Nanometres ripped = ripped_length(lies), rest = taken(of.section, lies.rest),
                   room = of.length + kerf_;
  if (of.crosscut.to > 0 && (ripped > of.crosscut.to || rest > room - of.crosscut.from)) return false;
  return ripped + rest <= room;
}

Pattern RippingPricer::pattern_of(int kind, const RippedPattern& lies) {
  std::map<int, int> counts;
  const auto count = [&](const std::vector<ItemCount>& items) {
    for (const ItemCount& part : items) counts[part.item] += part.count;
  };
  count(lies.rest);
  for (const auto& strip : lies.strips) count(strip);
  Pattern pattern{kind, {}};
  for (const auto& [item, number] : counts) pattern.items.push_back({item, number});
  lying_.try_emplace(pattern, lies);
  return pattern;
}

std::vector<Pattern> RippingPricer::patterns(int kind, double over, double& worth) {
  const StickKind& of = problem_.kinds[at(kind)];
  std::vector<Pattern> found;
  const auto offer = [&](const RippedPattern& lies) {
    if (fits(kind, lies)) found.push_back(pattern_of(kind, lies));
  };
  if (of.crosscut.to == 0) {
    const Step& whole = within(of.section, 2 * (of.length + kerf_));
    worth = std::max(worth, whole.worth);
    if (whole.worth > over) offer({-1, {}, items_at(of.section, whole)});
  }
  for (const int rip : of.rips) {
    const Split split = best_split(kind, rip);
    steps_ += static_cast<std::int64_t>(families_.at(of.section).profile.steps().size());
    worth = std::max(worth, split.worth);
    if (split.worth <= over) continue;
    RippedPattern lies{rip, {}, items_at(of.section, *split.rest)};
    const std::vector<int>& strips = problem_.layouts[at(rip)].strips;
    for (std::size_t s = 0; s < strips.size(); ++s)
      lies.strips.push_back(items_at(strips[s], *split.strips[s]));
    offer(lies);
  }
  return found;
}

Priced RippingPricer::price(const Prices& prices, const std::vector<int>& at_most) {
  fill(prices, at_most, true);
  Priced priced;
  priced.worth = prices.kind;
  for (std::size_t k = 0; k < problem_.kinds.size(); ++k)
    for (Pattern& pattern : patterns(static_cast<int>(k), prices.kind[k], priced.worth[k]))
      priced.patterns.push_back(std::move(pattern));
  return priced;
}

std::vector<Pattern> RippingPricer::sample(const Prices& prices, const std::vector<int>& at_most) {
  fill(prices, at_most, false);
  std::vector<Pattern> found;
  for (std::size_t k = 0; k < problem_.kinds.size(); ++k) {
    double worth = 0;
    for (Pattern& pattern : patterns(static_cast<int>(k), prices.kind[k], worth))
      found.push_back(std::move(pattern));
  }
  return found;
}

std::optional<std::vector<Pattern>> RippingPricer::list(const Prices&, const std::vector<int>&, std::size_t) {
  return std::nullopt;
}

std::int64_t RippingPricer::steps() const {
  std::int64_t steps = steps_;
  for (const auto& [section, family] : families_) steps += family.profile.work();
  return steps;
}

}  // namespace models::cutting
