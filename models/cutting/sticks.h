// Least-cost cutting of lumber: which boards to buy, which to rip, which pieces on hand to use, and how to cut each.
//
// Lengths are whole nanometres, so that 1/64 in (396 875 nm) and 0.1 mm are both exact. Money is in the smallest unit
// that prices are given in (cents). Nothing here knows of a building.
//
// A board is laid along x from its left end; `across` runs over its width from the near edge to the far one. A piece
// takes its length and, unless it ends the stick, one kerf. Two pieces whose facing ends slope alike may lie tip to tip:
// one slanted cut frees both, and between their ends there is the kerf, measured along the stick. A board that is ripped
// is ripped over its whole length first, or crosscut once and its left part ripped; each strip is then cut like a stick.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "models/cutting/work.h"

namespace models::cutting {

using Nanometres = std::int64_t;
using Money = std::int64_t;

struct Section {
  std::string name;  // "2x4"
  Nanometres width = 0;
  Nanometres thickness = 0;
  bool ends_kept = false;  // what is sold of it is used to its ends: nothing is trimmed off
};

struct Piece {
  std::string mark;
  int section = 0;        // index into StickOrder::sections
  Nanometres length = 0;  // from long point to long point
  int count = 1;
  // How much further right an end meets the far edge than the near one, the piece face up and as it is drawn: width times
  // the tangent of the mitre. 0 for a square end, and for any other that is not one straight mitre through the whole
  // section.
  Nanometres left_lean = 0;
  Nanometres right_lean = 0;
  bool may_turn_over = true;  // it may lie face down; end for end every piece may lie
};

// No saw's mitre is steeper: a lean of three widths is 71.6 degrees from square.
inline constexpr Nanometres most_lean_in_widths = 3;

struct Stock {
  int section = 0;
  Nanometres length = 0;
  std::optional<Money> price;    // for one board
  std::optional<int> available;  // how many can be had; none: as many as one likes
};

// A stretch of a board, from its left end.
struct Stretch {
  Nanometres from = 0;
  Nanometres to = 0;
  auto operator<=>(const Stretch&) const = default;
};

struct OnHand {
  std::string label;
  int section = 0;
  Nanometres length = 0;
  int count = 1;
  Money value = 0;               // what using one is reckoned at
  std::vector<Stretch> defects;  // no piece touches these; each takes at least a kerf
};

// Boards of one section may be ripped into strips of another of the same thickness. How many strips there are follows
// from the widths; strips of several sections may come out of one board where each has a rule.
struct RipRule {
  int from = 0;
  int to = 0;
  Money work = 0;  // for each cut along one board that frees a strip of this section
};

// Whether a board is ripped over its whole length or not at all, or may also be crosscut once and its left part ripped.
enum class Ripping { whole, parts };

struct Saw {
  Nanometres kerf = 0;
  Nanometres rip_kerf = 0;
  Nanometres end_trim = 0;   // lost at each end of a board, its cut included
  Nanometres edge_trim = 0;  // lost at each edge of a board that is ripped, its cut included
  // No part to be ripped is cut off shorter, its trimmed end not counted: short boards are not safe to rip.
  Nanometres shortest_rip = 0;
};

struct StickOrder {
  std::vector<Section> sections;
  std::vector<Piece> pieces;
  std::vector<Stock> stock;
  std::vector<OnHand> on_hand;
  std::vector<RipRule> rips;
  Ripping ripping = Ripping::parts;
  Saw saw;
  Limits limits;
};

// What is lost at each end of this section's boards.
[[nodiscard]] Nanometres end_trim(const StickOrder& order, int section);

struct CutPiece {
  int piece = 0;           // index into StickOrder::pieces
  Nanometres at = 0;       // its left long point, from the board's left end
  bool turned = false;     // end for end, by half a turn on its face
  bool face_down = false;  // then rolled over its long edge, which leaves its ends where they are
};

// One stick cut across: the whole board, or one of its strips.
struct Stick {
  int section = 0;
  Nanometres across = 0;           // its lower edge, from the board's lower edge
  std::vector<CutPiece> pieces;    // in cutting order, from the left
  std::vector<Stretch> leftovers;  // clear lengths that remain, from the left
};

struct Board {
  bool bought = true;
  int source = 0;  // index into StickOrder::stock, or on_hand where not bought
  Money cost = 0;  // its price or value, with the work of ripping it
  // By `across`; a strip with no piece is left over whole. Where only a part is ripped, the rest comes last, as a stick
  // of the board's own section.
  std::vector<Stick> sticks;
  // Where a crosscut parts a board before its left part is ripped, from the left end; the rest begins a kerf behind.
  // 0: it is ripped over its whole length, or not at all.
  Nanometres ripped_to = 0;
  Nanometres leftover_width =
      0;  // of the strip that is left along a ripped board's upper edge, kerf taken off
};

enum class PlanStatus {
  optimal,     // the least cost, proven
  best_found,  // a plan and a lower bound on what any plan costs
  not_found,   // the limits of work were reached before there was a plan
  impossible,  // no plan exists; `problems` says why
  refused,     // the order itself is wrong; `problems` says where
};

// The least cost comes first; of plans that cost the same, fewest boards bought; then few stop set-ups; then a long
// leftover. The first two are proven where the plan says so; the others are sought by exchanging pieces.
struct StickPlan {
  PlanStatus status = PlanStatus::refused;
  std::vector<std::string> problems;
  bool by_volume = false;  // some price is missing: cost and bound are volumes bought, in cubic millimetres
  std::vector<Board> boards;  // in an order of cutting; boards cut alike stand together
  Money cost = 0;
  Money bound = 0;  // no plan costs less
  Money whole_rips_bound =
      0;           // nor less than this if it rips every board whole or not at all; at least the bound
  int bought = 0;  // boards
  bool fewest_boards = false;  // proven: no plan of this cost buys fewer
  int set_ups = 0;  // how often the length stop is set: for each piece as long as none cut just before it
  Nanometres longest_leftover = 0;
  Work work;
};

[[nodiscard]] StickPlan plan_sticks(const StickOrder& order);

}  // namespace models::cutting
