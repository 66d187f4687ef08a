// The search for the least sources that hold all pieces.
//
// It branches on how many of each source are taken, in a relaxation of the sources alone (Purchase) that the families'
// cutters (Cutter) teach by cuts what the pieces need. Where all pieces are of one family and a fitter is given, each node
// is taken by its cutter's relaxation instead: what lies between the sources is then known at once.
#pragma once

#include <algorithm>
#include <limits>
#include <map>
#include <memory>
#include <optional>
#include <set>

#include "models/cutting/cover.h"
#include "models/cutting/cutter.h"
#include "models/cutting/purchase.h"

namespace models::cutting {

class Search {
 public:
  // The problem and the pricer must outlive the search. `known` are cuts that all plans meet.
  Search(const CoverProblem& problem, Pricer& pricer, const Limits& limits, std::vector<Cut> known = {},
         Fitter* fitter = nullptr);

  // The plan of least value, beginning from one that is known. May be called again with another objective: what was
  // learnt about the pieces stays.
  [[nodiscard]] CoverResult minimise(const Objective& objective, const std::optional<CoverPlan>& start,
                                     std::int64_t most_nodes);

  // The patterns of the families' relaxations, with sources at their cost and as many as one likes.
  [[nodiscard]] std::vector<Pattern> relaxed_patterns();
  // Patterns to begin with.
  void add(const std::vector<Pattern>& patterns);

 private:
  struct Branch {  // what a node came by: a column that was moved, and what the relaxation cost before
    std::size_t column = 0;
    double at = 0;
    bool up = false;
    double value = 0;
  };
  struct Node {
    PurchaseBounds bounds;
    std::int64_t bound = 0;
    int depth = 0;
    std::int64_t number = 0;
    std::optional<Branch> by;
    // What a plan of it costs at least, as far as is known, and as likely as not.
    [[nodiscard]] double likely() const {
      return by ? std::max(static_cast<double>(bound), by->value) : static_cast<double>(bound);
    }
    // Best first; of equals the deepest, then the newest, which is nearest to a plan.
    bool operator<(const Node& other) const;
  };
  class Run;

  bool learn(const std::vector<double>& taken, double depth, Purchase& purchase);
  [[nodiscard]] std::int64_t iterations() const;

  const CoverProblem& problem_;
  Pricer& pricer_;
  Limits limits_;
  std::vector<std::unique_ptr<Cutter>> cutters_;  // one a family
  bool relaxes_ = false;                          // nodes by the one cutter's relaxation
  std::vector<int> most_;                         // of each source
  std::vector<Cut> learnt_;                       // from the cutters, and known before
  std::int64_t steps_before_;
};

}  // namespace models::cutting
