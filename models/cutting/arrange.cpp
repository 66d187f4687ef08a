// Pieces in a row in which as many ends meet as can: Euler's trails through the graph of leans (nesting.h).
#include <algorithm>
#include <functional>

#include "models/cutting/nesting.h"

namespace models::cutting {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

}  // namespace

// The graph made even: square ends, and a node's odd end, are led to one more node, the outside.
class Nesting::Row {
 public:
  Row(const Nesting& nesting, const std::vector<Shape>& pieces, const std::vector<Edge>& edges)
      : nesting_(nesting), pieces_(pieces), outside_(static_cast<int>(nesting.lean_.size())) {
    edges_at_.resize(nesting.lean_.size() + 1);
    next_at_.resize(edges_at_.size());
    for (std::size_t i = 0; i < edges.size(); ++i)
      add({inside(edges[i].left), inside(edges[i].right), static_cast<int>(i)});
    for (int node = 0; node < outside_; ++node)
      if (degree(node) % 2 != 0) add({node, outside_, -1});
  }

  std::vector<Laid> run() {
    walk(outside_);
    // What is left closes into rings: each is cut open where that loses least.
    for (int node = 0; node < outside_; ++node) {
      if (!has_more(node)) continue;
      int first = node;
      for (const int other : hanging_together(node))
        if (nesting_.saved_[at(other)] < nesting_.saved_[at(first)]) first = other;
      walk(first);
    }
    return std::move(row_);
  }

 private:
  struct Link {
    int left, right;
    int piece;  // -1: only leads outside
    bool used = false;
  };
  struct Step {
    int node;  // where it leads
    int link;  // by which; -1 at the start
  };

  [[nodiscard]] int inside(int node) const { return node == square ? outside_ : node; }
  void add(const Link& link) {
    edges_at_[at(link.left)].push_back(static_cast<int>(links_.size()));
    edges_at_[at(link.right)].push_back(static_cast<int>(links_.size()));
    links_.push_back(link);
  }
  [[nodiscard]] std::size_t degree(int node) const { return edges_at_[at(node)].size(); }
  bool has_more(int node) {
    std::size_t& next = next_at_[at(node)];
    while (next < degree(node) && links_[at(edges_at_[at(node)][next])].used) ++next;
    return next < degree(node);
  }

  [[nodiscard]] std::vector<int> hanging_together(int node) const {
    std::vector<int> found{node};
    for (std::size_t i = 0; i < found.size(); ++i)
      for (const int link : edges_at_[at(found[i])])
        for (const int other : {links_[at(link)].left, links_[at(link)].right})
          if (std::find(found.begin(), found.end(), other) == found.end()) found.push_back(other);
    return found;
  }

  // Every link that can be reached from the node, once, and back to it (Hierholzer).
  void walk(int start) {
    std::vector<Step> stack{{start, -1}}, steps;
    while (!stack.empty()) {
      const int node = stack.back().node;
      if (!has_more(node)) {
        steps.push_back(stack.back());
        stack.pop_back();
        continue;
      }
      const int link = edges_at_[at(node)][next_at_[at(node)]];
      links_[at(link)].used = true;
      stack.push_back({links_[at(link)].left == node ? links_[at(link)].right : links_[at(link)].left, link});
    }
    std::reverse(steps.begin(), steps.end());
    bool meets = false;  // whether the next piece's left end meets the last one's right end
    for (std::size_t i = 1; i < steps.size(); ++i) {
      const Link& link = links_[at(steps[i].link)];
      if (link.piece >= 0) lay(link, steps[i - 1].node, steps[i].node, meets);
      meets = link.piece >= 0 && steps[i].node != outside_;
    }
  }

  void lay(const Link& link, int from, int to, bool meets) {
    const Shape& shape = pieces_[at(link.piece)];
    Laid laid{shape, shape.left, shape.right};
    if (nesting_.senses_apart_) {
      laid.left = from == outside_ ? 0 : nesting_.lean_[at(from)];
      laid.right = to == outside_ ? 0 : nesting_.lean_[at(to)];
    } else {
      if (link.left != from) std::swap(laid.left, laid.right);
      if (meets && laid.left != row_.back().right) {
        laid.left = -laid.left;
        laid.right = -laid.right;
      }
    }
    row_.push_back(laid);
  }

  const Nesting& nesting_;
  const std::vector<Shape>& pieces_;
  int outside_;
  std::vector<Link> links_;
  std::vector<std::vector<int>> edges_at_;  // by node
  std::vector<std::size_t> next_at_;
  std::vector<Laid> row_;
};

std::vector<Nesting::Edge> Nesting::chosen_edges(const std::vector<Shape>& pieces) const {
  // For every piece that can be turned over, the way that leaves least lost in the end.
  struct Way {
    Ends before;
    Edge edge;
  };
  std::vector<std::map<Ends, Way>> ways{{{Ends(lean_.size()), {}}}};
  for (const Shape& piece : pieces) {
    std::map<Ends, Way> next;
    for (const auto& [ends, way] : ways.back())
      for (const Edge& edge : edges_[index_of(piece)]) next.try_emplace(with(ends, edge), Way{ends, edge});
    ways.push_back(std::move(next));
  }
  Ends ends = std::min_element(ways.back().begin(), ways.back().end(), [&](const auto& a, const auto& b) {
                return twice_lost(a.first) < twice_lost(b.first);
              })->first;
  std::vector<Edge> chosen;
  for (std::size_t i = pieces.size(); i > 0; --i) {
    const Way& way = ways[i].at(ends);
    chosen.push_back(way.edge);
    ends = way.before;
  }
  std::reverse(chosen.begin(), chosen.end());
  return chosen;
}

std::vector<Laid> Nesting::arrange(const std::map<Shape, int>& pieces) const {
  std::vector<Shape> leaning;
  for (auto part = pieces.rbegin(); part != pieces.rend(); ++part)
    if (part->first.leans())
      leaning.insert(leaning.end(), static_cast<std::size_t>(part->second), part->first);
  return Row(*this, leaning, chosen_edges(leaning)).run();
}

}  // namespace models::cutting
