#include "models/cutting/sheet_sets.h"

#include <algorithm>
#include <limits>

namespace models::cutting {

namespace {

constexpr std::size_t most_sets = 2'000'000;

}  // namespace

SheetSets::SheetSets(const SheetProblem& problem, std::int64_t most_pairs)
    : problem_(problem), most_pairs_(most_pairs) {
  Key digit = 1;
  for (int demand : problem.cover.demand) {
    digit_.push_back(digit);
    if (digit > std::numeric_limits<Key>::max() / static_cast<Key>(demand + 1))
      return;  // far too many to list
    digit *= static_cast<Key>(demand + 1);
  }
  for (const SheetKind& kind : problem.kinds) largest_ = std::max(largest_, area(kind.x, kind.y));
  for (std::size_t i = 0; i < problem.items.size(); ++i) add_single(i);
  std::size_t from = 0;
  while (from < sets_.size()) {
    const std::size_t to = sets_.size();
    grow(from, to);
    if (pairs_ > most_pairs_ || sets_.size() > most_sets) return;
    from = to;
  }
  complete_ = true;
}

bool SheetSets::fits_some(Nanometres x, Nanometres y) const {
  return std::any_of(problem_.kinds.begin(), problem_.kinds.end(),
                     [&](const SheetKind& kind) { return holds(kind, x, y); });
}

bool SheetSets::fits(const Set& set, const SheetKind& kind) const {
  return std::any_of(set.boxes.begin(), set.boxes.end(),
                     [&](const Box& box) { return holds(kind, box.x, box.y); });
}

void SheetSets::keep(std::vector<Box>& boxes, const Box& box) {
  for (const Box& other : boxes) {
    if (other.x <= box.x && other.y <= box.y) return;
  }
  std::erase_if(boxes, [&](const Box& other) { return box.x <= other.x && box.y <= other.y; });
  boxes.push_back(box);
}

void SheetSets::add_single(std::size_t item) {
  Set set;
  set.key = digit_[item];
  set.last = static_cast<std::int32_t>(item);
  set.area = area(problem_.items[item].x, problem_.items[item].y);
  for (const Block& way : ways_to_lie(problem_.items[item], static_cast<int>(item))) {
    Box box;
    box.x = way.x;
    box.y = way.y;
    box.single = true;
    box.turned = way.turned;
    if (fits_some(box.x, box.y)) keep(set.boxes, box);
  }
  if (set.boxes.empty()) return;
  index_[set.key] = static_cast<std::int32_t>(sets_.size());
  sets_.push_back(std::move(set));
}

// Adds to each set of one size every item that is not before its last.
void SheetSets::grow(std::size_t from, std::size_t to) {
  for (std::size_t s = from; s < to; ++s) {
    for (auto item = static_cast<std::size_t>(sets_[s].last); item < digit_.size(); ++item) {
      if (count(sets_[s].key, item) == problem_.cover.demand[item]) continue;
      Set set;
      set.key = sets_[s].key + digit_[item];
      set.last = static_cast<std::int32_t>(item);
      set.area = sets_[s].area + area(problem_.items[item].x, problem_.items[item].y);
      // A hair more for the rounding of sums.
      if (set.area > largest_ * (1 + 1e-9)) continue;
      if (!all_parts_fit(set.key)) continue;
      combine(set);
      if (pairs_ > most_pairs_ || sets_.size() > most_sets) return;
      if (set.boxes.empty()) continue;
      index_[set.key] = static_cast<std::int32_t>(sets_.size());
      sets_.push_back(std::move(set));
    }
  }
}

bool SheetSets::all_parts_fit(Key key) const {
  for (std::size_t item = 0; item < digit_.size(); ++item) {
    if (count(key, item) > 0 && index_.count(key - digit_[item]) == 0) return false;
  }
  return true;
}

void SheetSets::combine(Set& set) {
  std::vector<std::size_t> items;
  for (std::size_t item = 0; item < digit_.size(); ++item) {
    if (count(set.key, item) > 0) items.push_back(item);
  }
  // Every part of the set by its digits, and the rest; each pair once.
  const auto split = [&](auto&& self, std::size_t i, Key part) -> void {
    if (pairs_ > most_pairs_) return;
    if (i == items.size()) {
      const Key rest = set.key - part;
      if (part == 0 || part > rest) return;
      const std::int32_t a = index_.at(part);
      const std::int32_t b = index_.at(rest);
      const Set& first = sets_[static_cast<std::size_t>(a)];
      const Set& second = sets_[static_cast<std::size_t>(b)];
      pairs_ += static_cast<std::int64_t>(first.boxes.size() * second.boxes.size());
      for (std::size_t f = 0; f < first.boxes.size(); ++f) {
        for (std::size_t g = 0; g < second.boxes.size(); ++g) {
          for (const bool side_by_side : {true, false}) {
            const Box& one = first.boxes[f];
            const Box& other = second.boxes[g];
            Box box;
            box.side_by_side = side_by_side;
            box.x = side_by_side ? one.x + problem_.kerf + other.x : std::max(one.x, other.x);
            box.y = side_by_side ? std::max(one.y, other.y) : one.y + problem_.kerf + other.y;
            if (!fits_some(box.x, box.y)) continue;
            box.set[0] = a;
            box.set[1] = b;
            box.box[0] = static_cast<std::int32_t>(f);
            box.box[1] = static_cast<std::int32_t>(g);
            keep(set.boxes, box);
          }
        }
      }
      return;
    }
    const int most = count(set.key, items[i]);
    for (int n = 0; n <= most; ++n) self(self, i + 1, part + static_cast<Key>(n) * digit_[items[i]]);
  };
  split(split, 0, 0);
}

std::vector<Pattern> SheetSets::full_patterns() const {
  std::vector<Pattern> patterns;
  for (std::size_t k = 0; k < problem_.kinds.size(); ++k) {
    std::vector<bool> fit;
    for (const Set& set : sets_) fit.push_back(fits(set, problem_.kinds[k]));
    for (std::size_t s = 0; s < sets_.size(); ++s) {
      if (!fit[s]) continue;
      bool full = true;
      Pattern pattern{static_cast<int>(k), {}};
      for (std::size_t item = 0; item < digit_.size(); ++item) {
        const int here = count(sets_[s].key, item);
        if (here > 0) pattern.items.push_back({static_cast<int>(item), here});
        if (here == problem_.cover.demand[item]) continue;
        const auto more = index_.find(sets_[s].key + digit_[item]);
        full = full && (more == index_.end() || !fit[static_cast<std::size_t>(more->second)]);
      }
      if (full) patterns.push_back(std::move(pattern));
    }
  }
  return patterns;
}

Block SheetSets::block(const Pattern& pattern) const {
  Key key = 0;
  for (const ItemCount& part : pattern.items) {
    key += static_cast<Key>(part.count) * digit_[static_cast<std::size_t>(part.item)];
  }
  const std::int32_t set = index_.at(key);
  const auto& boxes = sets_[static_cast<std::size_t>(set)].boxes;
  std::int32_t box = 0;
  while (!holds(problem_.kinds[static_cast<std::size_t>(pattern.kind)],
                boxes[static_cast<std::size_t>(box)].x, boxes[static_cast<std::size_t>(box)].y)) {
    ++box;
  }
  return block(set, box);
}

Block SheetSets::block(std::int32_t set, std::int32_t box) const {
  const Set& of = sets_[static_cast<std::size_t>(set)];
  const Box& at = of.boxes[static_cast<std::size_t>(box)];
  if (!at.single) {
    return join(block(at.set[0], at.box[0]), block(at.set[1], at.box[1]), at.side_by_side, problem_.kerf);
  }
  Block piece;
  piece.x = at.x;
  piece.y = at.y;
  piece.item = of.last;
  piece.turned = at.turned;
  return piece;
}

}  // namespace models::cutting
