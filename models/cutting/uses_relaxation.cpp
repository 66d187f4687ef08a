#include "models/cutting/uses_relaxation.h"

#include <algorithm>
#include <limits>
#include <utility>

namespace models::cutting {

namespace {

constexpr double nothing = 1e-5;      // pieces
constexpr double dear_piece = 1'000;  // uncut, in boards ripped in part
constexpr double any_value = std::numeric_limits<double>::infinity();

std::size_t at(int index) { return static_cast<std::size_t>(index); }

}  // namespace

UsesRelaxation::UsesRelaxation(const StickProblem& problem, std::vector<BoardUse> of, const Saw& saw,
                               const Limits& limits)
    : whole_(problem),
      uses_(board_uses(problem, std::move(of), saw)),
      pricer_(uses_.problem, saw),
      cutter_(uses_.problem.cover, uses_.problem.cover.item_family[0], pricer_, limits),
      worths_(uses_.uses),
      kerf_(saw.kerf) {
  Objective parts;
  for (const BoardUse& use : uses_.uses) parts.weight.push_back(use.part ? 1 : 0);
  cutter_.set_goal(parts, dear_piece);
}

void UsesRelaxation::add(int section, Nanometres length, const RippedPattern& lies) {
  const auto add_stick = [&](int of, const std::vector<ItemCount>& items) {
    if (items.empty()) return;
    const Nanometres least = pricer_.taken(of, items) - kerf_;
    for (std::size_t k = 0; k < uses_.problem.kinds.size(); ++k) {  // the shortest that holds it
      const StickKind& kind = uses_.problem.kinds[k];
      if (kind.section != of || !kind.rips.empty() || kind.length < least) continue;
      cutter_.add(pricer_.pattern_of(static_cast<int>(k), {-1, {}, items}));
      return;
    }
  };
  if (lies.rip < 0) {
    add_stick(section, lies.rest);
    return;
  }
  const std::vector<int>& strips = whole_.layouts[at(lies.rip)].strips;
  if (lies.rest.empty()) {
    for (std::size_t i = 0; i < lies.strips.size(); ++i) add_stick(strips[i], lies.strips[i]);
    return;
  }
  for (std::size_t k = 0; k < uses_.problem.kinds.size(); ++k) {
    const StickKind& kind = uses_.problem.kinds[k];
    if (kind.section == section && kind.length == length && kind.rips == std::vector<int>{lies.rip} &&
        pricer_.fits(static_cast<int>(k), lies))
      cutter_.add(pricer_.pattern_of(static_cast<int>(k), lies));
  }
}

void UsesRelaxation::add(const UsesRelaxation& other) {
  for (const Pattern& pattern : other.cutter_.known_patterns()) {
    const StickKind& kind = other.uses_.problem.kinds[at(pattern.kind)];
    add(kind.section, kind.length, other.pricer_.lying(pattern));
  }
}

UsesRelaxation::End UsesRelaxation::solve(const UseBounds& bounds, const std::vector<int>& counts, bool all) {
  if (worths_.lack(bounds, counts)) return End::none;
  std::vector<std::int64_t> least = bounds.least, most = bounds.most;
  for (const int count : counts) {
    least.push_back(all ? count : 0);
    most.push_back(count);
  }
  Cutter::Relaxed relaxed = cutter_.relax(least, most, any_value);
  // Where that leaves pieces uncut: as few of them as may be.
  while (relaxed.uncut > nothing && !cutter_.worked_out()) {
    relaxed = cutter_.relax(least, most, 0, Aim::uncut);
    if (relaxed.cut) {
      worths_.add(relaxed.worth, relaxed.asked);
      if (worths_.lack(bounds, counts)) return End::none;
    }
    if (relaxed.uncut < nothing) relaxed = cutter_.relax(least, most, any_value);
    if (!relaxed.more) break;
  }
  used_ = std::move(relaxed.taken);
  return used_.empty() || relaxed.uncut > nothing ? End::unknown : End::solved;
}

int UsesRelaxation::kind_of(std::size_t use) const {
  return uses_.problem.cover.sources[use].supplies[0].kind;
}

std::map<int, std::vector<UsesRelaxation::Placed>> UsesRelaxation::crosscuts() const {
  std::map<int, std::vector<Placed>> crosscuts;
  for (const auto& [pattern, often] : cutter_.uses()) {
    const StickKind& kind = uses_.problem.kinds[at(pattern.kind)];
    if (kind.crosscut.to == 0) continue;
    const RippedPattern& lies = pricer_.lying(pattern);
    const Nanometres room = kind.length + kerf_;
    const Stretch anywhere{std::max(pricer_.ripped_length(lies), kind.crosscut.from),
                           std::min(room - pricer_.taken(kind.section, lies.rest), kind.crosscut.to)};
    crosscuts[pattern.kind].push_back({anywhere, often});
  }
  for (auto& [kind, of] : crosscuts)
    std::stable_sort(of.begin(), of.end(), [](const Placed& a, const Placed& b) {
      return a.anywhere.from + a.anywhere.to < b.anywhere.from + b.anywhere.to;
    });
  return crosscuts;
}

}  // namespace models::cutting
