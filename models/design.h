// A design as its writer meant it: every default filled in, every length resolved, every name looked up.
// Made by read_design() from a design file; a plain value with no behaviour of its own.
#pragma once

#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/length_text.h"
#include "geometry/units.h"
#include "models/design_grounds.h"
#include "models/design_shop.h"
#include "models/stock_kinds.h"

namespace models {

using geometry::Angle;
using geometry::Length;
using geometry::Units;

enum class BodySize { bantam, medium, large };
struct Flock {
  int birds = 0;    // now
  int planned = 0;  // to come, on top of `birds`
  BodySize size = BodySize::medium;
};

// Which walls' frames run to the corners; the other two stand between them.
enum class Corners { front_and_back_run, left_and_right_run };

struct House {
  Length width;        // x, outside of the frames
  Length depth;        // y, outside of the frames
  Length wall_height;  // z, from the ground to the top of the top rails
  Lumber framing;      // posts and rails; laid with its width in the plane of the wall
  Corners corners = Corners::front_and_back_run;
  Length post_spacing;                     // greatest distance between posts, centre to centre
  std::optional<Lumber> corner_trim = {};  // boards that cover the cladding's edges at the corners
};

enum class Edge { left, right, top, bottom };
enum class Swing { outward, inward };
enum class DoorKind { hinged, sliding, lift_off };

// A leaf that closes an opening. Hinged leaves stand inside the opening, their outer face level with the
// cladding's; sliding leaves hang outside the cladding and lap over it.
struct Door {
  DoorKind kind = DoorKind::hinged;
  Edge edge = Edge::left;  // hinged: where the hinges are; sliding: the way it opens (left, right or top)
  Swing swing = Swing::outward;          // hinged only
  Angle opens = geometry::degrees(110);  // hinged only: how far it is meant to open
  Length reveal;  // gap all round; for a slider, between leaf and wall and between leaf and rails
  Length lap;     // sliding only: how far the leaf covers the wall beside the opening
  Lumber frame;   // stiles and rails of the leaf
  Lumber slats;   // cladding of the leaf
  std::optional<Sheet> sheet;  // the leaf is one sheet instead of frame and slats
};

// Doors have a leaf; vents are mesh on the inside, held by battens; windows mesh or a pane.
// A nest mouth is where outside nests open into the house; the design has none of its own.
enum class OpeningKind { door, nest_door, bird_door, vent, round_vent, window, nest_mouth };
[[nodiscard]] constexpr bool has_leaf(OpeningKind kind) {
  return kind == OpeningKind::door || kind == OpeningKind::nest_door || kind == OpeningKind::bird_door;
}

struct Opening {
  OpeningKind kind = OpeningKind::door;
  std::string name;  // unique in the design; "front door"
  int line = 0;      // where the design file says so
  Length left;       // from the house's corner at the wall's left, seen from outside, to the opening
  Length bottom;     // from the ground to the opening
  Length width;      // round_vent: the diameter, and the height likewise
  Length height;
  Door door;                  // meaningful when has_leaf(kind)
  std::optional<Mesh> mesh;   // vents always, windows with mesh
  std::optional<Sheet> pane;  // windows without mesh
  Lumber battens;             // that hold mesh or pane on the inside
  std::optional<Sheet> ramp;  // bird door: what its ramp is cut from
  Length ramp_length;
};

enum class Run { upright, level };
enum class CladdingKind { slats, lapped, sheets };
struct Cladding {
  Lumber slats;            // slats and lapped boards
  Run run = Run::upright;  // slats only; lapped boards always lie level
  Length gap;              // between slats
  CladdingKind kind = CladdingKind::slats;
  Length lap = {};  // lapped: of each board over the one below
  std::optional<Sheet> sheet = {};
  // How far the cladding stands out from the frame.
  [[nodiscard]] Length thickness() const {
    if (kind == CladdingKind::sheets) return sheet->thickness;
    if (kind != CladdingKind::lapped) return slats.thickness;
    // A leaning board's lower outer arris: width x sine of the lean + thickness x cosine.
    return slats.width * lean_sine() + slats.thickness * std::sqrt(1 - lean_sine() * lean_sine());
  }
  // How far what frames an opening stands out: lapped boards butt against strips as thick as themselves.
  [[nodiscard]] Length edge_thickness() const {
    return kind == CladdingKind::lapped ? slats.thickness : thickness();
  }
  // Lapped boards lean so that each lies flat on the one below over its whole lap: by the angle whose tangent is the
  // thickness over what a board leaves bare.
  [[nodiscard]] double lean_sine() const {
    return slats.thickness.mm() / std::hypot(slats.thickness.mm(), (slats.width - lap).mm());
  }
};

struct Wall {
  Side side = Side::front;
  Cladding cladding;
  std::vector<Opening> openings;         // by `left`
  std::vector<Length> extra_posts = {};  // left edges of further posts, from the wall's left corner
  std::vector<Length> extra_rails = {};  // lower edges of further rails, from the bottom of the wall
};

enum class RoofKind { gable, single_slope };
enum class RidgeRuns { front_to_back, left_to_right };  // along y, along x
enum class TailCut { plumb, square };

// A gable roof of notched trusses, or a single slope of rafters notched over two walls.
struct Roof {
  int line = 0;
  Angle pitch;
  double rise_in_12 = 0;  // the pitch as rise in 12, for printing
  RoofKind kind = RoofKind::gable;
  RidgeRuns ridge_runs = RidgeRuns::front_to_back;  // gable only
  Side rises_to = Side::front;                      // single slope only: the higher wall
  TailCut tails = TailCut::plumb;
  Length eave_overhang;   // level distance from the rail's outer face to the tail
  Length gable_overhang;  // from the end truss's outer face to the end of the cover
  Lumber rafters;
  Lumber ridge;
  Length spacing;                // greatest distance between trusses, centre to centre
  std::optional<Length> seat;    // level length of the notch's seat; the whole rail when not given
  std::optional<Lumber> tie;     // collar tie
  Length tie_height;             // from the top of the rails to the underside of the tie
  std::optional<Sheet> gussets;  // plates on both faces where the rafters meet
  std::optional<Lumber> fascia;  // board along the tails' ends
  std::optional<Lumber> barge;   // boards along the gable ends of the cover
  // Cover: exactly one of these is given.
  std::optional<Lumber> boards;  // along the ridge's direction
  std::optional<Sheet> sheets;
  std::optional<Corrugated> corrugated;
  Length eave_gap;   // left open under the cover at the eaves, for air, closed with mesh
  Length ridge_gap;  // each half of the cover stops this far short of the ridge's centre; closed with mesh
  std::optional<Mesh> mesh;  // that closes the gaps
};

// A row of boxes on ledges inside one wall, or hung outside it under a sloped lid.
struct Nests {
  bool outside = false;
  bool loose = false;   // inside: each box is one for itself, that is drawn out to be cleaned
  Angle lid_pitch;      // outside: of the lid, falling away from the wall
  Length lid_overhang;  // outside: past the front of the boxes
  Side wall = Side::back;
  int line = 0;
  int count = 0;
  Length left;    // from the house's corner at the wall's left, seen from outside, to the outside of the row
  Length bottom;  // from the ground to the top of the nests' floor
  Length width;   // clear, of one box, along the wall
  Length depth;   // clear, from the back of the box to the lip
  Length height;  // clear, from the floor to the lid
  Length lip;     // height of the board that holds the litter in, above the floor
  Sheet panel;    // floor, dividers, lid
  Lumber ledges;  // what the floor rests on
  Lumber lip_board;
};

// Bars for the birds to sleep on, running between two facing walls.
struct Roosts {
  int line = 0;
  int count = 0;
  bool along_x = true;  // bars run left to right, else front to back
  Length first;         // first bar's centre: distance from the inside of the back wall's frame (along_x) or
                        // of the right wall's frame
  Length spacing;       // between bars, centre to centre, level
  Length height;        // from the ground to the top of the first bar
  Length step;          // each further bar stands lower by this
  Lumber bars;
  Length rounding;                       // radius of the bars' long edges
  Lumber ledges;                         // what the bars' ends rest on
  std::optional<Sheet> droppings_board;  // under the bars
};

// Ground snow and wind as the local authority gives them; for screening only.
enum class Climate { hot, temperate, cold };
struct Site {
  double snow_kpa = 0;  // ground snow load
  double wind_m_s = 0;  // basic wind speed
  char exposure = 'C';  // B: sheltered, C: open, D: beside open water
  Climate climate = Climate::temperate;
};

struct Design {
  std::string name;
  std::string file;  // as given on the command line
  Units units = Units::mm;
  Flock flock;
  std::optional<Site> site;
  bool has_house = true;  // a design may hold only extra parts; then house, walls and roof mean nothing
  House house;
  std::vector<Wall> walls;  // always four, in the order of Side
  Roof roof;
  std::optional<Nests> nests;
  std::optional<Roosts> roosts;
  Length litter;  // depth, on an earth floor or a deck
  std::optional<RaisedFloor> floor;
  std::optional<Base> base;
  std::optional<Apron> apron;
  std::optional<RunPen> run;
  std::vector<ExtraStick> extra_sticks;
  std::vector<ExtraPanel> extra_panels;
  Shop shop;
};

}  // namespace models
