#include "models/cutting/nesting.h"

#include <algorithm>
#include <cstdlib>
#include <set>

namespace models::cutting {

namespace {

constexpr int touched = 1;
constexpr int odd = 2;
constexpr int open = 4;
constexpr int first_of = 8;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

}  // namespace

Nesting::Nesting(Nanometres width, Nanometres kerf, const std::vector<Shape>& shapes)
    : width_(width), kerf_(kerf), shapes_(shapes) {
  std::sort(shapes_.begin(), shapes_.end());
  shapes_.erase(std::unique(shapes_.begin(), shapes_.end()), shapes_.end());
  senses_apart_ =
      std::any_of(shapes_.begin(), shapes_.end(), [](const Shape& s) { return !s.may_turn_over; });
  std::set<Nanometres> leans;
  for (const Shape& shape : shapes_)
    for (const Nanometres lean : {shape.left, shape.right}) {
      if (lean == 0) continue;
      leans.insert(senses_apart_ ? lean : std::abs(lean));
      if (senses_apart_ && shape.may_turn_over) leans.insert(-lean);
    }
  lean_.assign(leans.begin(), leans.end());
  for (const Nanometres lean : lean_) saved_.push_back(saved_by_meeting(width, kerf, lean));
  for (const Shape& shape : shapes_) {
    const auto saved = [&](Nanometres lean) { return saved_by_meeting(width, kerf, lean); };
    twice_taken_.push_back(2 * (shape.length + kerf) - saved(shape.left) - saved(shape.right));
    edges_.push_back(edges_of(shape));
  }
  numbered({Ends(lean_.size())});
}

std::size_t Nesting::index_of(const Shape& shape) const {
  return static_cast<std::size_t>(std::lower_bound(shapes_.begin(), shapes_.end(), shape) - shapes_.begin());
}

int Nesting::node_of(Nanometres lean) const {
  if (lean == 0) return square;
  const Nanometres sought = senses_apart_ ? lean : std::abs(lean);
  return static_cast<int>(std::lower_bound(lean_.begin(), lean_.end(), sought) - lean_.begin());
}

std::vector<Nesting::Edge> Nesting::edges_of(const Shape& shape) const {
  std::vector<Edge> edges{{node_of(shape.left), node_of(shape.right)}};
  if (senses_apart_ && shape.may_turn_over && shape.leans() && shape.left != -shape.right)
    edges.push_back({node_of(-shape.left), node_of(-shape.right)});
  return edges;
}

Nesting::Ends Nesting::with(Ends ends, const Edge& edge) {
  for (const int node : {edge.left, edge.right}) {
    if (node == square) continue;
    if (ends[at(node)] == 0) ends[at(node)] = touched | first_of * node;
    ends[at(node)] ^= odd;
  }
  if (edge.left == square && edge.right == square) return ends;
  const bool is_open = edge.left == square || edge.right == square;
  const int one = ends[at(edge.left == square ? edge.right : edge.left)];
  const int other = ends[at(edge.right == square ? edge.left : edge.right)];
  const int first = std::min(one / first_of, other / first_of);
  const int shared = ((one | other) & open) | (is_open ? open : 0);
  for (int& end : ends)
    if (end != 0 && (end / first_of == one / first_of || end / first_of == other / first_of))
      end = touched | (end & odd) | shared | first_of * first;
  return ends;
}

Nanometres Nesting::twice_lost(const Ends& ends) const {
  Nanometres lost = 0;
  for (std::size_t first = 0; first < ends.size(); ++first) {
    if (ends[first] == 0 || at(ends[first] / first_of) != first) continue;
    bool ring = (ends[first] & open) == 0;
    Nanometres least = saved_[first];
    for (std::size_t n = first; n < ends.size(); ++n) {
      if (ends[n] == 0 || at(ends[n] / first_of) != first) continue;
      if ((ends[n] & odd) != 0) {
        ring = false;
        lost += saved_[n];
      }
      least = std::min(least, saved_[n]);
    }
    if (ring) lost += 2 * least;
  }
  return lost;
}

int Nesting::numbered(std::vector<Ends> ends) {
  const auto [found, is_new] = number_.try_emplace(std::move(ends), static_cast<int>(states_.size()));
  if (!is_new) return found->second;
  states_.push_back(found->first);
  next_.emplace_back(shapes_.size(), -1);
  Nanometres least = twice_lost(states_.back().front());
  for (const Ends& may_be : states_.back()) least = std::min(least, twice_lost(may_be));
  twice_lost_.push_back(least);
  return found->second;
}

int Nesting::after(int state, std::size_t shape, int count) {
  for (; count > 0; --count) {
    if (next_[at(state)][shape] < 0) {
      std::vector<Ends> ends;
      for (const Ends& before : states_[at(state)])
        for (const Edge& edge : edges_[shape]) ends.push_back(with(before, edge));
      std::sort(ends.begin(), ends.end());
      ends.erase(std::unique(ends.begin(), ends.end()), ends.end());
      steps_ += static_cast<std::int64_t>(60 * ends.size());
      const int next = numbered(std::move(ends));
      next_[at(state)][shape] = next;
    }
    state = next_[at(state)][shape];
  }
  return state;
}

Nanometres Nesting::taken(const std::map<Shape, int>& pieces) {
  int state = 0;
  Nanometres twice = 0;
  for (const auto& [shape, count] : pieces) {
    const std::size_t index = index_of(shape);
    twice += count * twice_taken_[index];
    state = after(state, index, count);
  }
  return (twice + twice_lost(state)) / 2;
}

Nanometres Nesting::between(const Laid& piece, const Laid& next) const {
  return kerf_ - (piece.right == next.left ? saved_by_meeting(width_, kerf_, piece.right) : 0);
}

}  // namespace models::cutting
