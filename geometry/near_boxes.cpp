// A tree of boxes, halved at the median along the longest side; then each node against itself and its fellows.
#include "geometry/near_boxes.h"

#include <algorithm>
#include <array>

namespace geometry {
namespace {

constexpr std::size_t leaf_size = 4;  // boxes in a leaf: fewer make more nodes than they save

struct Node {
  Box box;
  std::size_t from = 0, to = 0;     // of order_
  std::size_t left = 0, right = 0;  // children; 0 for a leaf, since the root is nobody's child
};

double along(Vec3 v, int axis) { return axis == 0 ? v.x : axis == 1 ? v.y : v.z; }

class Tree {
 public:
  explicit Tree(const std::vector<Box>& boxes) : boxes_(boxes) {
    for (std::size_t i = 0; i < boxes.size(); ++i)
      if (boxes[i].low.x <= boxes[i].high.x) order_.push_back(i);
    if (!order_.empty()) grow(0, order_.size());
  }

  void pairs(double margin, std::vector<std::pair<std::size_t, std::size_t>>& found) const {
    if (nodes_.empty()) return;
    std::vector<std::pair<std::size_t, std::size_t>> open{{0, 0}};
    while (!open.empty()) {
      const auto [i, k] = open.back();
      open.pop_back();
      const Node &a = nodes_[i], &b = nodes_[k];
      if (!near(a.box, b.box, margin)) continue;
      if (i == k && a.left) {
        open.insert(open.end(), {{a.left, a.left}, {a.right, a.right}, {a.left, a.right}});
      } else if (a.left && (!b.left || a.to - a.from >= b.to - b.from)) {
        open.insert(open.end(), {{a.left, k}, {a.right, k}});
      } else if (b.left) {
        open.insert(open.end(), {{i, b.left}, {i, b.right}});
      } else {
        for (std::size_t p = a.from; p < a.to; ++p)
          for (std::size_t q = i == k ? p + 1 : b.from; q < b.to; ++q)
            if (near(boxes_[order_[p]], boxes_[order_[q]], margin))
              found.push_back(std::minmax(order_[p], order_[q]));
      }
    }
  }

 private:
  std::size_t grow(std::size_t from, std::size_t to) {
    const std::size_t own = nodes_.size();
    nodes_.push_back({{}, from, to, 0, 0});
    Box centres;
    for (std::size_t i = from; i < to; ++i) {
      nodes_[own].box.add(boxes_[order_[i]]);
      centres.add(boxes_[order_[i]].centre());
    }
    if (to - from <= leaf_size) return own;
    const Vec3 size = centres.size();
    const int axis = size.x >= size.y && size.x >= size.z ? 0 : size.y >= size.z ? 1 : 2;
    const std::size_t middle = (from + to) / 2;
    const auto at = [&](std::size_t i) { return order_.begin() + static_cast<std::ptrdiff_t>(i); };
    std::nth_element(at(from), at(middle), at(to), [&](std::size_t p, std::size_t q) {
      const double a = along(boxes_[p].centre(), axis), b = along(boxes_[q].centre(), axis);
      return a != b ? a < b : p < q;
    });
    const std::size_t left = grow(from, middle), right = grow(middle, to);
    nodes_[own].left = left;
    nodes_[own].right = right;
    return own;
  }

  const std::vector<Box>& boxes_;
  std::vector<std::size_t> order_;
  std::vector<Node> nodes_;
};

}  // namespace

std::vector<std::pair<std::size_t, std::size_t>> near_pairs(const std::vector<Box>& boxes, double margin) {
  std::vector<std::pair<std::size_t, std::size_t>> found;
  Tree(boxes).pairs(margin, found);
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace geometry
