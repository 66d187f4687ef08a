// Boards, of which some are ripped in part, as a problem in which each crosscut is known in steps only.
#pragma once

#include <map>
#include <utility>
#include <vector>

#include "models/cutting/part_fitter.h"

namespace models::cutting {

// The boards as a problem in which sections are families of their own.
struct PartFitter::Stepped {
  StickProblem problem;
  struct Source {
    int kind = 0;                 // of the whole problem, that the board is
    int rip = -1;                 // layout; -1: not ripped
    bool part = false;            // else over its whole length
    Nanometres from = 0, to = 0;  // a point where they are one
    int whole = -1;  // source of the whole problem that gives several blanks, none of which is ripped in part
  };
  std::vector<Source> sources;

  using Blank = std::pair<int, Nanometres>;  // section, clear length
  std::vector<std::map<Blank, int>> blanks;  // by source

  explicit Stepped(const StickProblem& of) {
    problem.items = of.items;
    problem.nestings = of.nestings;
    problem.cover.demand = of.cover.demand;
    for (const StickItem& item : problem.items) problem.cover.item_family.push_back(item.section);
  }
  void add(const Source& source, std::int64_t cost, std::map<Blank, int> gives) {
    sources.push_back(source);
    problem.cover.sources.push_back({cost, {}, static_cast<int>(problem.cover.group_limit.size())});
    blanks.push_back(std::move(gives));
  }
  void number_kinds() {
    std::map<Blank, int> kinds;
    for (const auto& of : blanks)
      for (const auto& [blank, count] : of) kinds[blank] = 0;
    for (auto& [blank, kind] : kinds) {
      kind = static_cast<int>(problem.kinds.size());
      const bool same = !problem.kinds.empty() && problem.kinds.back().section == blank.first;
      problem.cover.next_smaller.push_back(same ? kind - 1 : -1);
      problem.cover.kind_family.push_back(blank.first);
      problem.kinds.push_back({blank.first, blank.second, {}, 0});
    }
    for (std::size_t s = 0; s < blanks.size(); ++s)
      for (const auto& [blank, count] : blanks[s])
        problem.cover.sources[s].supplies.push_back({kinds.at(blank), count});
  }
};

}  // namespace models::cutting
