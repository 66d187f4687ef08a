// Every tolerance of the program, with its reason. No such number stands anywhere else.
#pragma once

namespace geometry {

// Two coordinates closer than this are the same place (mm). Placements are composed from exact sizes, so what
// is meant to touch agrees to about 1e-10 mm; a real gap is never this small.
inline constexpr double same_place = 1e-6;

// What is left of exact arithmetic on coordinates up to 10 m (mm): a double holds those to 2e-12, and some
// hundred operations later they still agree to this.
inline constexpr double rounding = 1e-9;

// Bodies whose outlines agree to this (mm) are congruent and cut as one mark. A thousandth of a millimetre is
// far below what any saw in a home workshop holds, far above rounding.
inline constexpr double same_shape = 1e-3;

// Parts that reach into each other by no more than this (mm) are in contact, not overlapping.
inline constexpr double contact = 1e-3;

}  // namespace geometry
