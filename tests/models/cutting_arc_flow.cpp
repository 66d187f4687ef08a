#include "cutting_arc_flow.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <stdexcept>
#include <vector>

#include <Cbc_C_Interface.h>
#include <CoinFinite.hpp>

namespace tests {

namespace {

using namespace models::cutting;

struct Column {
  double cost = 0;
  double most = 0;
  std::vector<std::pair<int, double>> entries;  // row, coefficient
};

struct Model {
  std::vector<Column> columns;
  std::vector<double> least, most;  // of rows
  int add_row(double lowest, double highest) {
    least.push_back(lowest);
    most.push_back(highest);
    return static_cast<int>(least.size()) - 1;
  }
};

std::optional<double> solve(const Model& model) {
  std::vector<CoinBigIndex> start{0};
  std::vector<int> index;
  std::vector<double> value, low, high, cost;
  for (const Column& column : model.columns) {
    for (const auto& [row, coefficient] : column.entries) {
      index.push_back(row);
      value.push_back(coefficient);
    }
    start.push_back(static_cast<CoinBigIndex>(index.size()));
    low.push_back(0);
    high.push_back(column.most);
    cost.push_back(column.cost);
  }
  Cbc_Model* cbc = Cbc_newModel();
  Cbc_setLogLevel(cbc, 0);
  Cbc_loadProblem(cbc, static_cast<int>(model.columns.size()), static_cast<int>(model.least.size()),
                  start.data(), index.data(), value.data(), low.data(), high.data(), cost.data(),
                  model.least.data(), model.most.data());
  for (std::size_t c = 0; c < model.columns.size(); ++c) Cbc_setInteger(cbc, static_cast<int>(c));
  Cbc_solve(cbc);
  const bool optimal = Cbc_isProvenOptimal(cbc) != 0;
  const bool infeasible = Cbc_isProvenInfeasible(cbc) != 0;
  const double best = optimal ? Cbc_getObjValue(cbc) : 0;
  Cbc_deleteModel(cbc);
  if (!optimal && !infeasible) throw std::runtime_error("CBC came to no end");
  return optimal ? std::optional(best) : std::nullopt;
}

// One way of taking a board: how many blanks of each section and clear length it gives.
struct Way {
  Money cost = 0;
  int group = -1;  // a row for how many there are
  bool bought = true;
  std::map<std::pair<int, Nanometres>, int> blanks;
};

class ArcFlow {
 public:
  explicit ArcFlow(const StickOrder& order) : order_(order) {
    const bool parts = order.ripping == Ripping::parts;
    for (const Stock& stock : order.stock) {
      add_ways(stock.section, stock.price.value_or(0), true, stock.available, stock.length,
               {{order.saw.end_trim, stock.length - order.saw.end_trim}}, parts);
    }
    for (const OnHand& hand : order.on_hand) {
      add_ways(hand.section, hand.value, false, hand.count, hand.length, clear_of(hand),
               parts && hand.defects.empty());
    }
  }

  // Both goals in one sum: a board weighs less than the least unit of cost, however many there are.
  static constexpr Money weight = 1000;

  Model build() {
    Model model;
    std::vector<int> demand_row;
    int pieces = 0;
    for (const Piece& piece : order_.pieces) {
      demand_row.push_back(model.add_row(piece.count, COIN_DBL_MAX));
      pieces += piece.count;
    }
    std::vector<int> group_row;
    for (int limit : group_limits_) group_row.push_back(model.add_row(-COIN_DBL_MAX, limit));
    std::map<std::pair<int, Nanometres>, int> blank_row;  // blanks cut <= blanks that boards give
    for (const Way& way : ways_) {
      for (const auto& [blank, count] : way.blanks) {
        if (blank_row.count(blank) == 0) blank_row[blank] = model.add_row(-COIN_DBL_MAX, 0);
      }
    }
    for (const Way& way : ways_) {
      Column column{static_cast<double>(weight * way.cost + way.bought), static_cast<double>(pieces), {}};
      if (way.group >= 0) column.entries.emplace_back(group_row[static_cast<std::size_t>(way.group)], 1);
      for (const auto& [blank, count] : way.blanks) column.entries.emplace_back(blank_row.at(blank), -count);
      model.columns.push_back(column);
    }
    for (int section = 0; section < static_cast<int>(order_.sections.size()); ++section) {
      add_flow(model, section, demand_row, blank_row, pieces);
    }
    return model;
  }

 private:
  std::vector<Stretch> clear_of(const OnHand& hand) const {
    // Unit by unit: what lies in no trim and no defect.
    std::vector<Stretch> clear;
    const auto spoilt = [&](Nanometres x) {
      if (x < order_.saw.end_trim || x >= hand.length - order_.saw.end_trim) return true;
      return std::any_of(hand.defects.begin(), hand.defects.end(), [&](const Stretch& d) {
        return x >= d.from && x < std::max(d.to, d.from + order_.saw.kerf);
      });
    };
    for (Nanometres x = 0; x < hand.length; ++x) {
      if (spoilt(x)) continue;
      if (!clear.empty() && clear.back().to == x) {
        ++clear.back().to;
      } else {
        clear.push_back({x, x + 1});
      }
    }
    return clear;
  }

  void add_ways(int section, Money price, bool bought, std::optional<int> count, Nanometres length,
                const std::vector<Stretch>& clear, bool in_part) {
    int group = -1;
    if (count) {
      group = static_cast<int>(group_limits_.size());
      group_limits_.push_back(*count);
    }
    add_way({section}, price, group, bought, clear);
    // Every multiset of strips that fits the width, by trying all counts.
    std::vector<RipRule> rules;
    for (const RipRule& rule : order_.rips) {
      if (rule.from == section) rules.push_back(rule);
    }
    const Nanometres width =
        order_.sections[static_cast<std::size_t>(section)].width - 2 * order_.saw.edge_trim;
    std::vector<int> counts(rules.size());
    const auto go = [&](auto&& self, std::size_t r) -> void {
      if (r == rules.size()) {
        Nanometres taken = 0;
        int strips = 0;
        Money work = 0;
        Money cheapest_work = 0;
        std::vector<int> sections;
        for (std::size_t i = 0; i < rules.size(); ++i) {
          taken += counts[i] * order_.sections[static_cast<std::size_t>(rules[i].to)].width;
          strips += counts[i];
          work += counts[i] * rules[i].work;
          sections.insert(sections.end(), static_cast<std::size_t>(counts[i]), rules[i].to);
        }
        if (strips == 0) return;
        taken += (strips - 1) * order_.saw.rip_kerf;
        if (taken > width) return;
        if (taken == width) {
          // One strip needs no cut of its own; the optimiser lays the narrowest against the edge.
          Nanometres narrowest = width + 1;
          for (std::size_t i = 0; i < rules.size(); ++i) {
            const Nanometres w = order_.sections[static_cast<std::size_t>(rules[i].to)].width;
            if (counts[i] > 0 && w < narrowest) {
              narrowest = w;
              cheapest_work = rules[i].work;
            }
          }
          work -= cheapest_work;
        }
        add_way(sections, price + work, group, bought, clear);
        if (in_part && !clear.empty())
          add_parts(section, sections, price + work, group, bought, clear.front());
        return;
      }
      const Nanometres strip = order_.sections[static_cast<std::size_t>(rules[r].to)].width;
      for (counts[r] = 0; counts[r] * strip <= width; ++counts[r]) self(self, r + 1);
      counts[r] = 0;
    };
    if (!rules.empty() && length - 2 * order_.saw.end_trim >= order_.saw.shortest_rip) go(go, 0);
  }

  void add_way(const std::vector<int>& strips, Money cost, int group, bool bought,
               const std::vector<Stretch>& clear) {
    Way way{cost, group, bought, {}};
    for (int strip : strips) {
      for (const Stretch& stretch : clear) {
        if (stretch.to > stretch.from) ++way.blanks[{strip, stretch.to - stretch.from}];
      }
    }
    if (!way.blanks.empty()) ways_.push_back(way);
  }

  // A crosscut at every place that leaves something on either side of it.
  void add_parts(int section, const std::vector<int>& strips, Money cost, int group, bool bought,
                 const Stretch& clear) {
    const Nanometres length = clear.to - clear.from;
    const Nanometres shortest = std::max<Nanometres>(1, order_.saw.shortest_rip);
    for (Nanometres ripped = shortest; ripped + order_.saw.kerf < length; ++ripped) {
      Way way{cost, group, bought, {}};
      for (int strip : strips) ++way.blanks[{strip, ripped}];
      ++way.blanks[{section, length - ripped - order_.saw.kerf}];
      ways_.push_back(way);
    }
  }

  void add_flow(Model& model, int section, const std::vector<int>& demand_row,
                const std::map<std::pair<int, Nanometres>, int>& blank_row, int pieces) const {
    Nanometres longest = 0;
    for (const auto& [blank, row] : blank_row) {
      if (blank.first == section) longest = std::max(longest, blank.second + order_.saw.kerf);
    }
    std::vector<int> node;  // flow is kept at every position but the first
    for (Nanometres x = 0; x <= longest; ++x) node.push_back(x == 0 ? -1 : model.add_row(0, 0));
    const auto arc = [&](Nanometres from, Nanometres to, int demand, int blank) {
      Column column{0, static_cast<double>(pieces), {}};
      if (from > 0) column.entries.emplace_back(node[static_cast<std::size_t>(from)], -1);
      if (to > 0) column.entries.emplace_back(node[static_cast<std::size_t>(to)], 1);
      if (demand >= 0) column.entries.emplace_back(demand_row[static_cast<std::size_t>(demand)], 1);
      if (blank >= 0) column.entries.emplace_back(blank, 1);
      model.columns.push_back(column);
    };
    std::set<Nanometres> reached{0};
    for (Nanometres x = 0; x <= longest; ++x) {
      if (reached.count(x) == 0) continue;
      for (std::size_t p = 0; p < order_.pieces.size(); ++p) {
        const Nanometres to = x + order_.pieces[p].length + order_.saw.kerf;
        if (order_.pieces[p].section != section || to > longest) continue;
        arc(x, to, static_cast<int>(p), -1);
        reached.insert(to);
      }
      if (x > 0 && x < longest) {
        arc(x, x + 1, -1, -1);  // offcut
        reached.insert(x + 1);
      }
    }
    for (const auto& [blank, row] : blank_row) {
      if (blank.first == section) arc(blank.second + order_.saw.kerf, 0, -1, row);  // a blank's end
    }
  }

  const StickOrder& order_;
  std::vector<Way> ways_;
  std::vector<int> group_limits_;
};

}  // namespace

std::optional<LeastCost> least_cost(const StickOrder& order) {
  const auto sum = solve(ArcFlow(order).build());
  if (!sum) return std::nullopt;
  const Money value = std::llround(*sum);
  return LeastCost{value / ArcFlow::weight, static_cast<int>(value % ArcFlow::weight)};
}

}  // namespace tests
