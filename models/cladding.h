// Slats over a flat area: balanced, split at openings, cut to the area's edges.
#pragma once

#include <vector>

#include "geometry/outline.h"
#include "models/assembler.h"

namespace models {

struct Strip {
  double from, to;
};
// Strips of `width` with `gap` between that fill from..to; the first and the last are ripped to one equal
// width, so that none is narrower than half of (width - gap). All sizes in mm; from < to, width > 0, 0 <=
// gap.
[[nodiscard]] std::vector<Strip> balanced_strips(double from, double to, double width, double gap);

// A corner of cladding smaller than this (mm2, a thumbnail) is not cut at all: common practice.
inline constexpr double least_piece = 100;

// The least rectangle round an area that is not empty.
struct Limits {
  geometry::Vec2 low, high;
};
[[nodiscard]] Limits limits_of(const geometry::Region& area);

// One piece of cladding: its outline in the area's plane and the way its grain runs.
struct Slat {
  geometry::Outline outline;
  Run run = Run::upright;
};
// A flat body drawn in a plane, without bores, turned so that its grain, along x, runs up the plane's y; and what it is then
// placed by within the plane.
[[nodiscard]] Body upright(Body body);
[[nodiscard]] Placement upright_turn();

// The slats that cover `area` (plane coordinates, x right, y up) once, `openings` left free. Upright slats
// start anew at every opening's edge, so that their edges line up with it; what is left over or under an
// opening and no higher than a slat is wide becomes one level piece, not a row of blocks.
[[nodiscard]] std::vector<Slat> slats_over(const geometry::Region& area,
                                           const std::vector<geometry::Outline>& openings,
                                           const Cladding& cladding);

// Adds slats as parts, their backs in the plane z = 0 of `plane`. Returns the parts' indices.
std::vector<std::size_t> add_slats(Assembler& assembler, const std::vector<Slat>& slats, const Lumber& lumber,
                                   Group group, const Placement& plane, std::optional<Side> wall,
                                   const std::vector<std::string>& path);

// The area that a wall's cladding covers, in wall coordinates, before openings: from the ground to the roof's
// upper edge; under a gable past the corners over the neighbours' cladding, under an eave cut round the
// rafters.
[[nodiscard]] geometry::Region wall_area(const Design& design, Side side);

// Lapped boards over `area` less the openings, and the strips that they butt against. Called by add_wall_cladding().
void add_lapped_boards(Assembler& assembler, const Design& design, const Wall& wall,
                       const geometry::Region& area, const std::vector<geometry::Outline>& openings);

void add_wall_cladding(Assembler& assembler, const Design& design, const Wall& wall);

// Short uprights on the top rail beside each rafter, where boards of an eave wall lie too high to be screwed to the rail.
// Called when the wall's cladding is there.
void add_slat_cleats(Assembler& assembler, const Design& design, const Wall& wall);

}  // namespace models
