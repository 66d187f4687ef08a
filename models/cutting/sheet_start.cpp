#include <algorithm>
#include <map>
#include <numeric>
#include <random>

#include "models/cutting/sheet_problem.h"

namespace models::cutting {

namespace {

constexpr std::int64_t most_placings = 400'000;  // of a piece tried in a free part
constexpr int most_orders = 400;

// One sheet while it is filled: a tree of parts, of which those without a piece or a cut are free.
struct Part {
  Nanometres x = 0;
  Nanometres y = 0;
  Block piece;            // in its lower left corner
  std::size_t right = 0;  // the parts that are left of it, 0 for none
  std::size_t above = 0;
  bool right_is_tall = false;  // it runs up past the piece; else the one above runs over it to the right
  bool used = false;
};

struct Filling {
  std::size_t source = 0;
  std::vector<Part> parts;
};

class Filler {
 public:
  explicit Filler(const SheetProblem& problem) : problem_(problem) {
    for (std::size_t i = 0; i < problem.items.size(); ++i) {
      ways_.push_back(ways_to_lie(problem.items[i], static_cast<int>(i)));
    }
  }

  std::optional<std::vector<Filling>> fill(const std::vector<int>& items, std::size_t preferred,
                                           bool square_rests) {
    std::vector<Filling> sheets;
    std::vector<int> left = problem_.cover.group_limit;
    for (int item : items) {
      Place best;
      for (std::size_t s = 0; s < sheets.size(); ++s) look(item, sheets[s], s, best);
      if (!best.found) {
        const auto source = open(item, preferred, left);
        if (!source) return std::nullopt;
        const SheetKind& kind = kind_of(*source);
        Part whole;
        whole.x = kind.x;
        whole.y = kind.y;
        sheets.push_back({*source, {whole}});
        look(item, sheets.back(), sheets.size() - 1, best);
      }
      put(sheets[best.sheet], best, square_rests);
    }
    return sheets;
  }

  [[nodiscard]] std::int64_t placings() const { return placings_; }

  [[nodiscard]] std::optional<Block> block(const Filling& sheet, std::size_t part = 0) const {
    const Part& at = sheet.parts[part];
    if (!at.used) return std::nullopt;
    Block block = at.piece;
    const auto add = [&](std::size_t rest, bool side_by_side) {
      if (rest == 0) return;
      if (auto more = this->block(sheet, rest)) {
        block = join(std::move(block), std::move(*more), side_by_side, problem_.kerf);
      }
    };
    // What is joined first is cut apart last.
    if (at.right_is_tall) {
      add(at.above, false);
      add(at.right, true);
    } else {
      add(at.right, true);
      add(at.above, false);
    }
    return block;
  }

 private:
  struct Place {
    bool found = false;
    std::size_t sheet = 0;
    std::size_t part = 0;
    const Block* way = nullptr;
    Nanometres rest = 0;  // the shorter of what is left beside and above
  };

  [[nodiscard]] const SheetKind& kind_of(std::size_t source) const {
    return problem_.kinds[static_cast<std::size_t>(problem_.cover.sources[source].supplies.front().kind)];
  }

  void look(int item, const Filling& sheet, std::size_t index, Place& best) {
    for (std::size_t p = 0; p < sheet.parts.size(); ++p) {
      const Part& part = sheet.parts[p];
      if (part.used) continue;
      for (const Block& way : ways_[static_cast<std::size_t>(item)]) {
        ++placings_;
        if (way.x > part.x || way.y > part.y) continue;
        const Nanometres rest = std::min(part.x - way.x, part.y - way.y);
        if (!best.found || rest < best.rest) best = {true, index, p, &way, rest};
      }
    }
  }

  std::optional<std::size_t> open(int item, std::size_t preferred, std::vector<int>& left) const {
    std::optional<std::size_t> found;
    const auto consider = [&](std::size_t source) {
      const int group = problem_.cover.sources[source].group;
      if (found || (group >= 0 && left[static_cast<std::size_t>(group)] == 0)) return;
      const auto& ways = ways_[static_cast<std::size_t>(item)];
      if (std::any_of(ways.begin(), ways.end(),
                      [&](const Block& way) { return holds(kind_of(source), way.x, way.y); })) {
        found = source;
      }
    };
    consider(preferred);
    for (std::size_t s = 0; s < problem_.cover.sources.size(); ++s) consider(s);
    if (!found) return found;
    const int group = problem_.cover.sources[*found].group;
    if (group >= 0) --left[static_cast<std::size_t>(group)];
    return found;
  }

  void put(Filling& sheet, const Place& place, bool square_rests) const {
    const Part at = sheet.parts[place.part];
    const Nanometres beside = at.x - place.way->x - problem_.kerf;
    const Nanometres over = at.y - place.way->y - problem_.kerf;
    // Either rest may have the corner: the longer one, so that one large rest is left, or the shorter.
    const bool tall = (beside > over) == square_rests;
    Part& now = sheet.parts[place.part];
    now.used = true;
    now.piece = *place.way;
    now.right_is_tall = tall;
    Part right;
    right.x = beside;
    right.y = tall ? at.y : place.way->y;
    Part above;
    above.x = tall ? place.way->x : at.x;
    above.y = over;
    std::size_t next = sheet.parts.size();
    if (right.x > 0 && right.y > 0) now.right = next++;
    if (above.x > 0 && above.y > 0) now.above = next++;
    if (right.x > 0 && right.y > 0) sheet.parts.push_back(right);
    if (above.x > 0 && above.y > 0) sheet.parts.push_back(above);
  }

  const SheetProblem& problem_;
  std::vector<std::vector<Block>> ways_;
  std::int64_t placings_ = 0;
};

}  // namespace

std::optional<SheetStart> start_sheets(const SheetProblem& problem) {
  const CoverProblem& cover = problem.cover;
  Filler filler(problem);
  std::vector<int> items;
  for (std::size_t i = 0; i < problem.items.size(); ++i) {
    items.insert(items.end(), static_cast<std::size_t>(cover.demand[i]), static_cast<int>(i));
  }
  const auto size = [&](int item) { return problem.items[static_cast<std::size_t>(item)]; };
  std::stable_sort(items.begin(), items.end(), [&](int a, int b) {
    return static_cast<double>(size(a).x) * static_cast<double>(size(a).y) >
           static_cast<double>(size(b).x) * static_cast<double>(size(b).y);
  });
  std::vector<int> by_side = items;
  std::stable_sort(by_side.begin(), by_side.end(), [&](int a, int b) {
    return std::max(size(a).x, size(a).y) > std::max(size(b).x, size(b).y);
  });

  std::optional<std::vector<Filling>> best;
  std::int64_t least = 0;
  // Plans of the same cost are told apart by how little lies on their emptiest sheet.
  double least_held = 0;
  const auto attempt = [&](const std::vector<int>& order, std::size_t preferred, bool square_rests) {
    auto sheets = filler.fill(order, preferred, square_rests);
    if (!sheets) return false;
    std::int64_t cost = 0;
    double held = -1;
    for (const Filling& sheet : *sheets) {
      cost += cover.sources[sheet.source].cost;
      double area = 0;
      for (const Part& part : sheet.parts) {
        if (part.used) area += static_cast<double>(part.piece.x) * static_cast<double>(part.piece.y);
      }
      held = held < 0 ? area : std::min(held, area);
    }
    if (best && (cost > least || (cost == least && held > least_held))) return false;
    best = std::move(sheets);
    least = cost;
    least_held = held;
    return true;
  };
  std::size_t source = 0;
  bool square = true;
  std::vector<int> order = items;
  for (std::size_t s = 0; s < cover.sources.size(); ++s) {
    for (const std::vector<int>& sorted : {items, by_side}) {
      for (const bool square_rests : {true, false}) {
        if (best && filler.placings() > most_placings) break;
        if (!attempt(sorted, s, square_rests)) continue;
        source = s;
        square = square_rests;
        order = sorted;
      }
    }
  }
  // Then some pieces change places in the order, as long as it gets no worse.
  std::mt19937 engine(1);
  const auto draw = [&](std::size_t below) { return static_cast<std::size_t>(engine() % below); };
  for (int n = 0; n < most_orders && filler.placings() < most_placings && order.size() > 1; ++n) {
    std::vector<int> changed = order;
    for (std::size_t swaps = 1 + draw(3); swaps > 0; --swaps) {
      std::swap(changed[draw(changed.size())], changed[draw(changed.size())]);
    }
    const std::size_t preferred = draw(4) == 0 ? draw(cover.sources.size()) : source;
    const bool square_rests = draw(4) == 0 ? !square : square;
    if (!attempt(changed, preferred, square_rests)) continue;
    order = changed;
    source = preferred;
    square = square_rests;
  }
  if (!best) return std::nullopt;

  SheetStart start;
  start.plan.sources.assign(cover.sources.size(), 0);
  std::map<Pattern, int> uses;
  for (const Filling& sheet : *best) {
    ++start.plan.sources[sheet.source];
    Block block = filler.block(sheet).value();  // a sheet is opened for a piece
    Pattern pattern{cover.sources[sheet.source].supplies.front().kind, pieces_of(block)};
    if (uses[pattern]++ == 0) start.blocks.emplace_back(std::move(pattern), std::move(block));
  }
  for (const auto& [pattern, count] : uses) start.plan.patterns.push_back({pattern, count});
  return start;
}

}  // namespace models::cutting
