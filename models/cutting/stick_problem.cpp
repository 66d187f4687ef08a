#include "models/cutting/stick_problem.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <set>

#include "models/cutting/blanks.h"

namespace models::cutting {

namespace {

__extension__ using Wide = __int128;

constexpr Nanometres longest_in_units = 1'000;  // of what the lengths on sale have in common

constexpr Wide mm3 = static_cast<Wide>(1'000'000) * 1'000'000 * 1'000'000;  // in cubic nanometres
constexpr Wide most_units =
    1'000'000'000;  // of the largest board: more would strain the arithmetic of the search

// In cubic nanometres.
Wide volume_of(const Section& section, Nanometres length) {
  return static_cast<Wide>(section.width) * section.thickness * length;
}
Wide gcd(Wide a, Wide b) { return b == 0 ? a : gcd(b, a % b); }

struct Tied {  // sections that ripping ties together share their lowest index
  std::vector<int> root;
  explicit Tied(std::size_t size) : root(size) { std::iota(root.begin(), root.end(), 0); }
  int of(int section) {
    while (root[static_cast<std::size_t>(section)] != section)
      section = root[static_cast<std::size_t>(section)];
    return section;
  }
  void tie(int a, int b) {
    a = of(a);
    b = of(b);
    root[static_cast<std::size_t>(std::max(a, b))] = std::min(a, b);
  }
};

class Builder {
 public:
  Builder(const StickOrder& order, const std::vector<Shape>& shapes, bool by_volume, Ripping ripping)
      : order_(order), shapes_(shapes), by_volume_(by_volume), ripping_(ripping) {}

  StickProblem build(const std::set<int>& sections, const std::vector<RipLayout>& layouts) {
    problem_.layouts = layouts;
    family_ = *sections.begin();
    std::map<std::pair<int, Shape>, int> demand;
    for (std::size_t p = 0; p < order_.pieces.size(); ++p) {
      const Piece& piece = order_.pieces[p];
      if (sections.count(piece.section) != 0) demand[{piece.section, shapes_[p]}] += piece.count;
    }
    for (const auto& [key, count] : demand) {
      const auto& [section, shape] = key;
      problem_.items.push_back({section, shape.length, shape, saved_by(section, shape)});
      problem_.cover.demand.push_back(count);
      problem_.cover.item_family.push_back(family_of(section));
      const auto [at, is_new] = shortest_.try_emplace(section, shape.length);
      if (!is_new) at->second = std::min(at->second, shape.length);
    }
    add_nestings();
    // Every way of taking a board, with the clear lengths that it gives.
    for (std::size_t s = 0; s < order_.stock.size(); ++s) {
      const Stock& stock = order_.stock[s];
      if (sections.count(stock.section) == 0 || stock.available.value_or(1) == 0) continue;
      add_board({true, static_cast<int>(s), {}, 0}, {stock.section, stock.length, {}},
                cost_of(order_, stock, by_volume_), stock.available);
    }
    for (std::size_t h = 0; h < order_.on_hand.size(); ++h) {
      const OnHand& hand = order_.on_hand[h];
      if (sections.count(hand.section) == 0 || hand.count == 0) continue;
      add_board({false, static_cast<int>(h), {}, 0}, {hand.section, hand.length, hand.defects},
                by_volume_ ? 0 : hand.value, hand.count);
    }
    for (const Source& source : problem_.cover.sources) problem_.board_cost.push_back(source.cost);
    if (by_volume_) reckon_in_common_units();
    number_kinds(problem_, blanks_, [&](int section) { return family_of(section); });
    measure();
    return std::move(problem_);
  }

 private:
  // All sections of a problem are one family where a board may give several of them in shares that are free.
  [[nodiscard]] int family_of(int section) const { return ripping_ == Ripping::parts ? family_ : section; }

  // Boards' volumes are exact in units of what they have in common: two of 8 ft are one of 16 ft, not a hair more.
  void reckon_in_common_units() {
    std::vector<Wide> volumes;
    Wide unit = 0, most = 0;
    for (const StickSource& source : problem_.sources) {
      volumes.push_back(0);
      if (!source.bought) continue;
      const Stock& stock = order_.stock[static_cast<std::size_t>(source.source)];
      volumes.back() = volume_of(order_.sections[static_cast<std::size_t>(stock.section)], stock.length);
      unit = gcd(unit, volumes.back());
      most = std::max(most, volumes.back());
    }
    if (unit == 0 || most / unit > most_units) unit = mm3;
    for (std::size_t s = 0; s < volumes.size(); ++s)
      problem_.cover.sources[s].cost = static_cast<Money>((volumes[s] + unit - 1) / unit);
    problem_.unit = static_cast<double>(unit) / static_cast<double>(mm3);
  }

  [[nodiscard]] Nanometres saved_by(int section, const Shape& shape) const {
    const Nanometres width = order_.sections[static_cast<std::size_t>(section)].width;
    const Nanometres twice = saved_by_meeting(width, order_.saw.kerf, shape.left) +
                             saved_by_meeting(width, order_.saw.kerf, shape.right);
    return (twice + 1) / 2;
  }

  void add_nestings() {
    std::map<int, std::vector<Shape>> of_section;
    std::set<int> leaning;
    for (const StickItem& item : problem_.items) {
      of_section[item.section].push_back(item.shape);
      if (item.shape.leans()) leaning.insert(item.section);
    }
    for (const int section : leaning)
      problem_.nestings[section] = std::make_shared<Nesting>(
          order_.sections[static_cast<std::size_t>(section)].width, order_.saw.kerf, of_section[section]);
  }

  struct Lumber {  // a board to be had
    int section = 0;
    Nanometres length = 0;
    std::vector<Stretch> defects;
  };

  void add_board(StickSource source, const Lumber& board, Money cost, std::optional<int> available) {
    const int section = board.section;
    const std::vector<Stretch> stretches = clear_stretches(board.length, board.defects, order_, section);
    const int group = available ? static_cast<int>(problem_.cover.group_limit.size()) : -1;
    const bool is_long = board.length - 2 * end_trim(order_, section) >= order_.saw.shortest_rip;
    const bool in_part =
        ripping_ == Ripping::parts && board.defects.empty() && is_long && shortest_.contains(section);
    std::vector<int> for_nothing;  // layouts that cost no work: a board may as well be taken for one of them
    for (std::size_t l = 0; in_part && l < problem_.layouts.size(); ++l) {
      const RipLayout& layout = problem_.layouts[l];
      if (layout.from == section && (by_volume_ || layout.work == 0))
        for_nothing.push_back(static_cast<int>(l));
    }
    bool used = add_source(source, cost, {section}, for_nothing, stretches, group);
    for (std::size_t l = 0; l < problem_.layouts.size(); ++l) {
      const RipLayout& layout = problem_.layouts[l];
      const Money work = by_volume_ ? 0 : layout.work;
      if (layout.from != section || !is_long || (in_part && work == 0)) continue;
      source.work = work;
      if (in_part) {
        used |= add_source(source, cost + work, {section}, {static_cast<int>(l)}, stretches, group);
        continue;
      }
      source.ripped = layout;
      used |= add_source(source, cost + work, layout.strips, {}, stretches, group);
      source.ripped.reset();
    }
    if (used && available) problem_.cover.group_limit.push_back(*available);
  }

  // The shortest piece that could be cut from a blank, if there is any.
  [[nodiscard]] std::optional<Nanometres> shortest_of(int section, const std::vector<int>& rips) const {
    std::optional<Nanometres> shortest;
    const auto look = [&](int of) {
      const auto found = shortest_.find(of);
      if (found != shortest_.end() && (!shortest || found->second < *shortest)) shortest = found->second;
    };
    look(section);
    for (const int rip : rips)
      for (const int strip : problem_.layouts[static_cast<std::size_t>(rip)].strips) look(strip);
    return shortest;
  }

  bool add_source(const StickSource& source, Money cost, const std::vector<int>& strips,
                  const std::vector<int>& rips, const std::vector<Stretch>& stretches, int group) {
    Blanks blanks;
    for (int strip : strips) {
      const std::optional<Nanometres> shortest = shortest_of(strip, rips);
      if (!shortest) continue;
      for (const Stretch& stretch : stretches) {
        const Nanometres length = stretch.to - stretch.from;
        if (length >= *shortest) ++blanks[{strip, rips, length, {}}];
      }
    }
    if (blanks.empty()) return false;
    problem_.sources.push_back(source);
    problem_.cover.sources.push_back({cost, {}, group});
    blanks_.push_back(std::move(blanks));
    return true;
  }

  // Boards bought of one section and used in one way, and where some may be ripped in part also in any way: how many, and
  // how long together.
  void measure() {
    struct Sort {
      int section = 0;
      std::vector<int> strips, rips;
      auto operator<=>(const Sort&) const = default;
    };
    std::map<int, std::vector<std::size_t>> sections;
    std::map<Sort, std::vector<std::size_t>> sorts;
    for (std::size_t s = 0; s < problem_.sources.size(); ++s) {
      const StickSource& source = problem_.sources[s];
      if (!source.bought) continue;
      const int section = order_.stock[static_cast<std::size_t>(source.source)].section;
      sections[section].push_back(s);
      sorts[{section, source.ripped ? source.ripped->strips : std::vector<int>{},
             blanks_[s].begin()->first.rips}]
          .push_back(s);
    }
    const bool in_parts = ripping_ == Ripping::parts;
    for (const auto& [section, sources] : sections)
      if (in_parts) measure(sources);
    for (const auto& [sort, sources] : sorts)
      if (!in_parts || sources.size() < sections.at(sort.section).size()) measure(sources);
  }

  void measure(const std::vector<std::size_t>& sources) {
    if (sources.size() < 2) return;
    const auto length = [&](std::size_t s) {
      return order_.stock[static_cast<std::size_t>(problem_.sources[s].source)].length;
    };
    Nanometres unit = 0;
    for (std::size_t s : sources) unit = std::gcd(unit, length(s));
    std::vector<int> count(problem_.sources.size());
    std::vector<int> together(problem_.sources.size());
    for (std::size_t s : sources) {
      count[s] = 1;
      together[s] = static_cast<int>(std::min<Nanometres>(length(s) / unit, longest_in_units + 1));
    }
    problem_.cover.measures.push_back(count);
    if (*std::max_element(together.begin(), together.end()) <= longest_in_units)
      problem_.cover.measures.push_back(together);
  }

  const StickOrder& order_;
  const std::vector<Shape>& shapes_;
  bool by_volume_;
  Ripping ripping_;
  int family_ = 0;
  StickProblem problem_;
  std::map<int, Nanometres> shortest_;  // by section, of the pieces asked for
  std::vector<Blanks> blanks_;          // by source
};

}  // namespace

Nanometres end_trim(const StickOrder& order, int section) {
  return order.sections[static_cast<std::size_t>(section)].ends_kept ? 0 : order.saw.end_trim;
}

std::vector<Stretch> clear_stretches(Nanometres length, const std::vector<Stretch>& defects,
                                     const StickOrder& order, int section) {
  const Nanometres trim = end_trim(order, section);
  std::vector<Stretch> sorted = defects;
  std::sort(sorted.begin(), sorted.end(), [](const Stretch& a, const Stretch& b) { return a.from < b.from; });
  std::vector<Stretch> clear;
  Nanometres from = trim;
  const Nanometres end = length - trim;
  for (const Stretch& defect : sorted) {
    const Nanometres to = std::min(defect.from, end);
    if (to > from) clear.push_back({from, to});
    from = std::max({from, defect.to, defect.from + order.saw.kerf});
  }
  if (end > from) clear.push_back({from, end});
  return clear;
}

Money cost_of(const StickOrder& order, const Stock& stock, bool by_volume) {
  if (!by_volume) return stock.price.value_or(0);
  const Wide volume = volume_of(order.sections[static_cast<std::size_t>(stock.section)], stock.length);
  return static_cast<Money>((volume + mm3 - 1) / mm3);
}

bool lacks_prices(const StickOrder& order) {
  std::set<int> wanted;
  for (const Piece& piece : order.pieces) {
    if (piece.count > 0) wanted.insert(piece.section);
  }
  const std::set<int> asked = wanted;
  for (const RipRule& rule : order.rips) {
    if (asked.count(rule.to) != 0) wanted.insert(rule.from);
  }
  return std::any_of(order.stock.begin(), order.stock.end(), [&](const Stock& stock) {
    return wanted.count(stock.section) != 0 && stock.available.value_or(1) > 0 && !stock.price;
  });
}

namespace {

// Fewer rules than those that the order was found sound with: there are layouts.
std::vector<RipLayout> layouts_asked_for(const StickOrder& order, const std::set<int>& asked) {
  std::vector<RipRule> rules;
  for (const RipRule& rule : order.rips) {
    if (asked.count(rule.to) != 0) rules.push_back(rule);
  }
  return rip_layouts(order.sections, rules, order.saw).value();
}

std::set<int> sections_asked_for(const StickOrder& order) {
  std::set<int> asked;
  for (const Piece& piece : order.pieces) {
    if (piece.count > 0) asked.insert(piece.section);
  }
  return asked;
}

}  // namespace

std::vector<std::set<int>> tied_sections(const StickOrder& order) {
  const std::set<int> asked = sections_asked_for(order);
  Tied tied(order.sections.size());
  for (const RipLayout& layout : layouts_asked_for(order, asked)) {
    for (int strip : layout.strips) tied.tie(layout.from, strip);
  }
  std::map<int, std::set<int>> parts;
  for (int section : asked) parts[tied.of(section)];
  for (int section = 0; section < static_cast<int>(order.sections.size()); ++section) {
    const auto part = parts.find(tied.of(section));
    if (part != parts.end()) part->second.insert(section);
  }
  std::vector<std::set<int>> sets;
  for (const auto& [root, sections] : parts) sets.push_back(sections);
  return sets;
}

std::vector<StickProblem> stick_problems(const StickOrder& order, const std::vector<Shape>& shapes,
                                         bool by_volume, Ripping ripping) {
  const std::vector<RipLayout> layouts = layouts_asked_for(order, sections_asked_for(order));
  std::vector<StickProblem> problems;
  for (const std::set<int>& sections : tied_sections(order))
    problems.push_back(Builder(order, shapes, by_volume, ripping).build(sections, layouts));
  return problems;
}

bool may_rip_parts(const StickProblem& problem) {
  return std::any_of(problem.kinds.begin(), problem.kinds.end(),
                     [](const StickKind& kind) { return !kind.rips.empty(); });
}

std::vector<Cut> length_cuts(const StickProblem& problem, Nanometres kerf) {
  std::map<int, Wide> asked;  // by section
  Wide longest = 1;           // that a source gives of one section
  for (std::size_t i = 0; i < problem.items.size(); ++i) {
    asked[problem.items[i].section] += static_cast<Wide>(problem.cover.demand[i]) *
                                       (problem.items[i].length - problem.items[i].saved + kerf);
  }
  std::vector<std::map<int, Wide>> given;  // by source and section
  for (const Source& source : problem.cover.sources) {
    given.emplace_back();
    for (const Supply& supply : source.supplies) {
      const StickKind& kind = problem.kinds[static_cast<std::size_t>(supply.kind)];
      std::map<int, int> most{{kind.section, 1}};  // lengths of a section side by side
      for (const int rip : kind.rips) {
        std::map<int, int> strips;
        for (const int strip : problem.layouts[static_cast<std::size_t>(rip)].strips) ++strips[strip];
        for (const auto& [strip, count] : strips) most[strip] = std::max(most[strip], count);
      }
      for (const auto& [section, side_by_side] : most) {
        Wide& length = given.back()[section];
        length += static_cast<Wide>(supply.count) * side_by_side * (kind.length + kerf);
        longest = std::max(longest, length);
      }
    }
  }
  std::vector<Cut> cuts;
  for (const auto& [section, length] : asked) {
    Cut cut;
    cut.least = static_cast<std::int64_t>(length * Cut::whole_part / longest);
    for (const auto& of_source : given) {
      const auto found = of_source.find(section);
      const Wide gives = found == of_source.end() ? 0 : found->second;
      cut.coefficient.push_back(static_cast<std::int64_t>((gives * Cut::whole_part + longest - 1) / longest));
    }
    cuts.push_back(std::move(cut));
  }
  return cuts;
}

}  // namespace models::cutting
