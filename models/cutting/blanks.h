// What boards give to be cut: clear lengths of sections, some of which may still be ripped in part.
#pragma once

#include <functional>
#include <map>
#include <vector>

#include "models/cutting/stick_problem.h"

namespace models::cutting {

struct Blank {
  int section = 0;
  std::vector<int> rips;  // as of a kind
  Nanometres length = 0;
  Stretch crosscut;  // as of a kind
  auto operator<=>(const Blank&) const = default;
};

using Blanks = std::map<Blank, int>;  // how many of each

// Makes a kind of each blank that a source gives. Those that differ in length alone follow each other, ascending.
void number_kinds(StickProblem& problem, const std::vector<Blanks>& by_source,
                  const std::function<int(int section)>& family_of);

}  // namespace models::cutting
