// One minimisation of a search: its nodes, from the first on until none is left that could hold a better plan.
#pragma once

#include <algorithm>
#include <optional>

#include "models/cutting/search.h"

namespace models::cutting {

class Search::Run {
 public:
  Run(Search& search, const Objective& objective, std::int64_t most_nodes);
  void offer(const CoverPlan& plan);
  CoverResult run();

 private:
  struct Choice {
    std::size_t column = 0;  // a source, or after them a measure
    double at = 0;
  };
  struct Gains {  // of a column moved down and up, for each part of a whole
    double sum[2] = {0, 0};
    int count[2] = {0, 0};
    [[nodiscard]] double mean(int way) const { return count[way] > 0 ? sum[way] / count[way] : 0; }
  };
  // Sources of which it is not known whether they hold the pieces of a family, whatever else is taken.
  struct Undecided {
    std::int64_t bound = 0;
    std::vector<int> taken;
    const Cutter* lacks = nullptr;
  };
  static constexpr std::int64_t most_value = std::numeric_limits<std::int64_t>::max();

  [[nodiscard]] std::int64_t rounded_up(std::int64_t value) const {
    return (value + step_ - 1) / step_ * step_;
  }
  [[nodiscard]] std::int64_t cost_of(const std::vector<int>& sources) const;
  [[nodiscard]] bool worked_out() const;

  void explore(Node node);
  // The node's bound by the cuts known so far; false where the node is done with.
  bool bound_by_sources(Node& node);
  void give_up(const Node& node) { undecided_ = std::min(undecided_, node.bound); }

  // By the sources alone and cuts from the families (search_explore.cpp).
  void explore_sources(Node node);
  [[nodiscard]] std::vector<Choice> fractional() const;
  Choice best_of(const std::vector<Choice>& choices, const Node& node);
  double try_branch(const Node& node, const Choice& choice, bool up, double value);
  bool round_off();

  // By what the patterns cost within the node's bounds, where all pieces are of one family (search_relaxed.cpp).
  void explore_relaxed(Node node);
  [[nodiscard]] std::vector<Choice> fractional(const std::vector<double>& taken) const;
  Choice best_relaxed(std::vector<Choice> choices, const Node& node, double value);

  double learn_gain(const Choice& choice, bool up, double gain);

  // Where whole sources are taken and no cut is known to lack: settles whether they hold the pieces, and goes on.
  void decide(Node node, const std::vector<int>& taken);
  // Where the pieces do not fit, or none knows, `lacks` is the family whose pieces these are.
  Fit settle(const std::vector<int>& taken, const Cutter*& lacks);
  void ask_again();

  void add_node(const Node& parent, std::size_t column, std::int64_t least, std::int64_t most,
                const std::optional<Branch>& by = {});
  // `value` is what the relaxation costs at the node, where that is known.
  void branch_on(const Node& node, std::size_t column, double at, std::optional<double> value = {});
  void branch_from(Node node, const std::vector<int>& taken, const std::vector<int>& sources, Fit fit);
  void branch_anywhere(const Node& node);

  Search& search_;
  const CoverProblem& problem_;
  const Objective& objective_;
  std::int64_t most_nodes_;
  Purchase purchase_;
  std::vector<Gains> gains_;  // by column
  double objective_scale_ = 1;
  std::int64_t step_ = 1;  // every plan's value is a multiple of it
  std::int64_t nodes_ = 0;
  std::int64_t numbers_ = 0;
  std::set<Node> open_;
  bool plunging_ = false;
  std::optional<Node> next_;             // of a plunge; in open_ too
  std::int64_t undecided_ = most_value;  // least bound of nodes given up
  std::vector<Undecided> undecided_sets_;
  std::optional<CoverPlan> plan_;
  std::int64_t value_ = most_value;  // of the plan
};

}  // namespace models::cutting
