#include "models/cutting/blanks.h"

namespace models::cutting {

void number_kinds(StickProblem& problem, const std::vector<Blanks>& by_source,
                  const std::function<int(int section)>& family_of) {
  std::map<Blank, int> kinds;
  for (const Blanks& blanks : by_source)
    for (const auto& [blank, count] : blanks) kinds[blank] = 0;
  for (auto& [blank, kind] : kinds) {
    kind = static_cast<int>(problem.kinds.size());
    const bool same = !problem.kinds.empty() && problem.kinds.back().section == blank.section &&
                      problem.kinds.back().rips == blank.rips && blank.crosscut.to == 0;
    problem.cover.next_smaller.push_back(same ? kind - 1 : -1);
    problem.cover.kind_family.push_back(family_of(blank.section));
    problem.kinds.push_back({blank.section, blank.length, blank.rips, blank.crosscut});
  }
  for (std::size_t s = 0; s < by_source.size(); ++s)
    for (const auto& [blank, count] : by_source[s])
      problem.cover.sources[s].supplies.push_back({kinds.at(blank), count});
}

}  // namespace models::cutting
