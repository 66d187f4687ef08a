// Whether boards of which is known which are ripped, and which of them in part, hold all pieces: by trying places for the
// crosscuts. Where a crosscut is known each section is cut for itself.
#include <algorithm>

#include "models/cutting/nested_pricer.h"
#include "models/cutting/part_fitter.h"
#include "models/cutting/stepped_boards.h"

namespace models::cutting {

namespace {

constexpr int most_ranges = 60;      // of one crosscut
constexpr int most_shifts = 9;       // of several
constexpr int most_whole_tries = 4;  // with whole patterns
constexpr Limits of_one_try{0, 3'000, 10'000'000};
// Of pricing, in other steps: there are many lengths of blanks, and each state is looked at for all.
constexpr std::int64_t dear_step = 2;
constexpr double near_all = 0.95;  // of the depth of a cut: so deep that it is sought with samples first
constexpr double nothing = 1e-9;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

std::vector<int> all_of(const CoverProblem& cover) {
  std::vector<int> all;
  for (const Source& source : cover.sources) all.push_back(cover.group_limit[at(source.group)]);
  return all;
}

}  // namespace

PartFitter::Box PartFitter::anywhere(const std::vector<int>& used) const {
  Box box;
  for (std::size_t u = 0; u < used.size(); ++u) {
    const BoardUses::Use& use = uses_.uses[u];
    if (!use.part) continue;
    const StickKind& kind = problem_.kinds[at(problem_.cover.sources[at(use.source)].supplies[0].kind)];
    const CrosscutRange range = crosscut_range(problem_, kind, use.rip, shortest_pieces_, saw_);
    box.from.insert(box.from.end(), static_cast<std::size_t>(used[u]), range.from);
    box.to.insert(box.to.end(), static_cast<std::size_t>(used[u]), range.to);
  }
  return box;
}

// Each board ripped in part is a source of its own.
PartFitter::Stepped PartFitter::boards_at(const std::vector<int>& used, const Box& box) const {
  Stepped there(problem_);
  std::size_t next = 0;
  for (std::size_t u = 0; u < used.size(); ++u) {
    if (used[u] == 0) continue;
    const BoardUses::Use& use = uses_.uses[u];
    const Source& source = problem_.cover.sources[at(use.source)];
    const int k = source.supplies[0].kind;
    const StickKind& kind = problem_.kinds[at(k)];
    const auto add = [&](const Stretch& crosscut, int count, Blanks gives) {
      there.add({k, use.rip, use.part, crosscut.from, crosscut.to, use.source}, 0, std::move(gives));
      there.problem.cover.group_limit.push_back(count);
    };
    if (use.rip < 0) {
      add({}, used[u], Stepped::as_it_is(problem_, source));
    } else if (!use.part) {
      add({}, used[u], Stepped::ripped(problem_, use.rip, kind.length));
    } else {
      for (int n = 0; n < used[u]; ++n, ++next) {
        const Stretch crosscut{box.from[next], box.to[next]};
        add(crosscut, 1, Stepped::ripped_in_part(problem_, kind, use.rip, crosscut, kerf_));
      }
    }
  }
  there.number_kinds();
  return there;
}

// By the relaxation alone or, where `wholly`, by whole patterns. A no is proven.
Fit PartFitter::hold(const Stepped& boards, int section, bool wholly, std::vector<PatternUse>& patterns) {
  NestedPricer pricer(boards.problem, kerf_);
  Cutter cutter(boards.problem.cover, section, pricer, of_one_try);
  std::set<std::vector<ItemCount>>& sets = piece_sets_[section];
  for (const std::vector<ItemCount>& items : sets) {
    const Nanometres length = pricer_.taken(section, items);
    const auto shortest = std::find_if(
        boards.problem.kinds.begin(), boards.problem.kinds.end(),
        [&](const StickKind& kind) { return kind.section == section && kind.length + kerf_ >= length; });
    if (shortest != boards.problem.kinds.end())
      cutter.add({static_cast<int>(shortest - boards.problem.kinds.begin()), items});
  }
  const std::vector<int> all = all_of(boards.problem.cover);
  const std::vector<Cut> lacks = cutter.lacking({all.begin(), all.end()}, near_all);
  Fit fit = Fit::unknown;
  if (std::any_of(lacks.begin(), lacks.end(), [&](const Cut& cut) { return !meets(cut, all); }))
    fit = Fit::no;
  else if (lacks.empty() && !cutter.worked_out())
    fit = Fit::yes;
  if (wholly && fit == Fit::yes) {
    fit = cutter.fit(all);
    patterns.insert(patterns.end(), cutter.patterns().begin(), cutter.patterns().end());
  }
  work_ += {0, cutter.iterations(), dear_step * pricer.steps()};
  for (const auto& [pattern, often] : cutter.uses()) sets.insert(pattern.items);
  return fit;
}

bool PartFitter::may_hold(const Stepped& boards, int section) {
  std::map<Nanometres, int> lengths;
  for (std::size_t s = 0; s < boards.blanks.size(); ++s)
    for (const auto& [blank, count] : boards.blanks[s])
      if (blank.section == section)
        lengths[blank.length] +=
            count * boards.problem.cover.group_limit[at(boards.problem.cover.sources[s].group)];
  const auto [known, is_new] = may_hold_.try_emplace({section, lengths}, true);
  std::vector<PatternUse> none;
  if (is_new) known->second = hold(boards, section, false, none) != Fit::no;
  return known->second;
}

PartFitter::Tried PartFitter::try_at(const std::vector<int>& used, const std::vector<Nanometres>& places,
                                     int& whole_tries) {
  const Stepped boards = boards_at(used, {places, places});
  std::set<int> of_strips;
  for (const Stepped::Source& source : boards.sources)
    if (source.part)
      for (const int strip : problem_.layouts[at(source.rip)].strips) of_strips.insert(strip);
  const std::set<int> sections(boards.problem.cover.item_family.begin(),
                               boards.problem.cover.item_family.end());
  Tried tried;
  const auto lacks = [&](int section) {
    (of_strips.contains(section) ? tried.strips_fit : tried.rests_fit) = false;
  };
  for (const int section : sections)
    if (!may_hold(boards, section)) lacks(section);
  if (!tried.strips_fit || !tried.rests_fit || whole_tries >= most_whole_tries) return tried;
  ++whole_tries;
  CoverPlan cut{all_of(boards.problem.cover), {}};
  for (const int section : sections) {
    if (hold(boards, section, true, cut.patterns) == Fit::yes) continue;
    lacks(section);
    return tried;
  }
  std::vector<Parted> parted;
  tried.patterns = real_boards(boards, cut, parted);
  return tried;
}

Fit PartFitter::crosscut(const std::vector<int>& used, std::vector<PatternUse>& patterns) {
  const Box box = anywhere(used);
  return box.from.size() <= 1 ? crosscut_one(used, box, patterns) : crosscut_some(used, box, patterns);
}

// By halves. A half falls away where the strips would not fit if they ended at its end, or the rest if it began at its
// beginning.
Fit PartFitter::crosscut_one(const std::vector<int>& used, const Box& anywhere,
                             std::vector<PatternUse>& patterns) {
  std::vector<Box> open{anywhere};
  int whole_tries = 0;
  bool all_proven = true;
  for (int n = 0; n < most_ranges && !open.empty(); ++n) {
    const Box box = std::move(open.back());
    open.pop_back();
    const Stepped most = boards_at(used, box);
    const std::set<int> sections(most.problem.cover.item_family.begin(),
                                 most.problem.cover.item_family.end());
    if (std::any_of(sections.begin(), sections.end(), [&](int section) { return !may_hold(most, section); }))
      continue;
    std::vector<Nanometres> middle;
    for (std::size_t i = 0; i < box.from.size(); ++i) middle.push_back((box.from[i] + box.to[i]) / 2);
    Tried tried = try_at(used, middle, whole_tries);
    if (!tried.patterns.empty()) {
      patterns = std::move(tried.patterns);
      return Fit::yes;
    }
    if (box.from == box.to) {
      all_proven = false;
      continue;
    }
    open.push_back({box.from, middle});
    open.push_back({{middle[0] + 1}, box.to});
  }
  return open.empty() && all_proven ? Fit::no : Fit::unknown;
}

// Where the relaxation has them in the mean; and from there all of them shifted, by halves, until strips and rests fit.
Fit PartFitter::crosscut_some(const std::vector<int>& used, const Box& anywhere,
                              std::vector<PatternUse>& patterns) {
  const std::vector<double> base = relaxed_crosscuts(used);
  int whole_tries = 0;
  double least = -1, most = 1;  // shares of the way to the ends
  for (int n = 0; n < most_shifts; ++n) {
    const double share = (least + most) / 2;
    std::vector<Nanometres> places;
    for (std::size_t i = 0; i < base.size(); ++i) {
      const double end = static_cast<double>(share < 0 ? anywhere.from[i] : anywhere.to[i]);
      const auto place = static_cast<Nanometres>(base[i] + std::abs(share) * (end - base[i]));
      places.push_back(std::clamp(place, anywhere.from[i], anywhere.to[i]));
    }
    Tried tried = try_at(used, places, whole_tries);
    if (!tried.patterns.empty()) {
      patterns = std::move(tried.patterns);
      return Fit::yes;
    }
    if (tried.strips_fit == tried.rests_fit) break;
    (tried.strips_fit ? most : least) = share;
  }
  return Fit::unknown;
}

// The relaxation's crosscuts of each use, in as many equal parts as boards are used so: the mean of each.
std::vector<double> PartFitter::relaxed_crosscuts(const std::vector<int>& used) const {
  using Share = std::pair<double, double>;  // place, how often
  std::map<int, std::vector<Share>> of_kind;
  for (const auto& [pattern, often] : uses_cutter_.uses()) {
    const StickKind& kind = uses_.problem.kinds[at(pattern.kind)];
    if (kind.least_rest == 0) continue;
    const RippedPattern& lies = uses_pricer_.lying(pattern);
    const Nanometres first = uses_pricer_.ripped_length(lies);
    const Nanometres last = kind.length + kerf_ - uses_pricer_.taken(kind.section, lies.rest);
    of_kind[pattern.kind].emplace_back(static_cast<double>(first + last) / 2, often);
  }
  std::vector<double> places;
  for (std::size_t u = 0; u < used.size(); ++u) {
    if (used[u] == 0 || !uses_.uses[u].part) continue;
    std::vector<Share>& shares = of_kind[uses_.problem.cover.sources[u].supplies[0].kind];
    std::sort(shares.begin(), shares.end());
    double all = 0;
    for (const Share& share : shares) all += share.second;
    auto share = shares.begin();
    for (int n = 0; n < used[u]; ++n) {
      double sum = 0, taken = 0;
      while (share != shares.end() && all / used[u] - taken > nothing) {
        const double take = std::min(all / used[u] - taken, share->second);
        sum += take * share->first;
        taken += take;
        share->second -= take;
        if (share->second <= nothing) ++share;
      }
      places.push_back(taken > nothing ? sum / taken : 0);
    }
  }
  return places;
}

}  // namespace models::cutting
