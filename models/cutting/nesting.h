// How much of a stick pieces take whose ends may meet tip to tip, and in which order and turn they lie then.
//
// Every end that leans is a place that another end of the same lean can meet; a stick is a row of pieces, in which each
// end meets at most one other. Seen as a graph, leans are its nodes and pieces its edges, and a row in which all facing
// ends meet is a trail. So of n ends of one lean at most n / 2, rounded down, meet, and that many do, but for leans and
// pieces that hang together and have no odd end: they would close into a ring, which is cut open once, where that loses
// least. What a set of pieces takes is known exactly from how many ends of each lean it has, odd or even, and from what
// hangs together: its state.
#pragma once

#include <map>
#include <vector>

#include "models/cutting/shape.h"

namespace models::cutting {

// A piece as it lies in the row.
struct Laid {
  Shape shape;
  Nanometres left = 0;  // leans, as it lies
  Nanometres right = 0;
};

class Nesting {
 public:
  // For pieces of these shapes, which come from shapes_of().
  Nesting(Nanometres width, Nanometres kerf, const std::vector<Shape>& shapes);

  [[nodiscard]] const std::vector<Shape>& shapes() const { return shapes_; }
  [[nodiscard]] std::size_t index_of(const Shape& shape) const;

  // Twice what a piece takes with a kerf when both its ends meet others: over 0.
  [[nodiscard]] Nanometres twice_taken(std::size_t shape) const { return twice_taken_[shape]; }
  // States are numbers; that of no pieces is 0.
  [[nodiscard]] int after(int state, std::size_t shape, int count = 1);
  // Twice what is lost in a state because ends meet none.
  [[nodiscard]] Nanometres twice_lost(int state) const {
    return twice_lost_[static_cast<std::size_t>(state)];
  }

  // How much has been done to find the states.
  [[nodiscard]] std::int64_t steps() const { return steps_; }

  // From the first long point to a kerf behind the last one, at the least.
  [[nodiscard]] Nanometres taken(const std::map<Shape, int>& pieces);
  // Those that lean in a row: with the others before or behind it, all take just so much.
  [[nodiscard]] std::vector<Laid> arrange(const std::map<Shape, int>& pieces) const;
  // From the long point of one piece to that of the next; less than nothing where they meet.
  [[nodiscard]] Nanometres between(const Laid& piece, const Laid& next) const;

 private:
  static constexpr int square = -1;
  struct Edge {
    int left = square;  // nodes
    int right = square;
  };
  // Of each node: 0 while no end has it; else 1, with 2 for an odd number of ends, 4 where a square end hangs together
  // with it, 8 times the first node that hangs together with it.
  using Ends = std::vector<int>;

  [[nodiscard]] int node_of(Nanometres lean) const;
  [[nodiscard]] std::vector<Edge> edges_of(const Shape& shape) const;
  [[nodiscard]] static Ends with(Ends ends, const Edge& edge);
  [[nodiscard]] Nanometres twice_lost(const Ends& ends) const;
  int numbered(std::vector<Ends> ends);
  [[nodiscard]] std::vector<Edge> chosen_edges(const std::vector<Shape>& pieces) const;
  class Row;

  Nanometres width_;
  Nanometres kerf_;
  std::vector<Shape> shapes_;
  std::vector<Nanometres> twice_taken_;
  // Where every piece may be turned over, leans of both senses are one node: a piece that comes after another can always
  // be turned to suit it. Else each sense is a node, and a piece that may be turned over is one of two edges.
  bool senses_apart_ = false;
  std::vector<Nanometres> lean_;           // by node
  std::vector<Nanometres> saved_;          // by node
  std::vector<std::vector<Edge>> edges_;   // by shape
  std::vector<std::vector<Ends>> states_;  // what the ends may be, by state
  std::map<std::vector<Ends>, int> number_;
  std::vector<Nanometres> twice_lost_;  // by state
  std::int64_t steps_ = 0;
  std::vector<std::vector<int>> next_;  // by state and shape; -1: not known yet
};

}  // namespace models::cutting
