// Sizes that the trade settles by habit. Each is common practice unless a source stands beside it.
#pragma once

#include "geometry/units.h"

namespace models::practice {

// Room left where a board is cut round a rafter or the ridge, so that it can be slipped over: common
// practice.
inline constexpr geometry::Length cut_round = geometry::mm(1.5);

// How far the strip in front of a sliding leaf's edge laps over it: common practice.
inline constexpr geometry::Length keeper_lap = geometry::mm(20);

// Room behind a door to put a hand or a bucket through: common practice.
inline constexpr geometry::Length free_behind_door = geometry::mm(150);

// How far a hinge's pin stands out from the leaf's face: half the knuckle of a small butt hinge; common practice.
inline constexpr geometry::Length pin_stands_out = geometry::mm(5);

// How far the plate of a small butt hinge reaches from its pin: common practice.
inline constexpr geometry::Length hinge_plate = geometry::mm(22);

// The width of a hand that lifts a leaf off: common practice.
inline constexpr geometry::Length hand = geometry::mm(100);

// Between the upper end of an outside nest's lid and the wall: common practice.
inline constexpr geometry::Length lid_reveal = geometry::mm(3);

// The least of a board's width that has to lie on what it is screwed to: common practice.
inline constexpr geometry::Length least_hold = geometry::mm(15);

// Beside a nest box that is drawn out, so that it runs: common practice.
inline constexpr geometry::Length box_play = geometry::mm(5);

// A gap between two faces that is meant to be one is wider than this; anything less is a part cut short: common
// practice. Under the lesser size it is what a saw leaves.
inline constexpr geometry::Length widest_misfit = geometry::mm(3), narrowest_misfit = geometry::mm(0.05);

// The narrowest strip of a sheet that is guided safely along a fence: common practice. Of lumber it is a third of the
// stock's width, as balanced cladding keeps it.
inline constexpr geometry::Length narrowest_strip = geometry::mm(20);

// Pieces that differ by less than this can't be told apart at the bench: common practice.
inline constexpr geometry::Length least_difference = geometry::mm(1);

// How far a grown person reaches in through an opening with one arm: common practice.
inline constexpr geometry::Length arm = geometry::mm(700);

// The least opening that a person steps in by to clean, or leans in by with head and shoulders: common practice.
inline constexpr geometry::Length doorway_width = geometry::mm(500), doorway_height = geometry::mm(850);

// Over where birds stand and sleep: headroom of usable area, Council Directive 1999/74/EC, Art. 2.
inline constexpr geometry::Length headroom = geometry::mm(450);

// Of a bird door's sill over the litter, so that it stays in: common practice.
inline constexpr geometry::Length sill_over_litter = geometry::mm(25);

// What is left between the diagonals of a small frame that was squared up with a tape: common practice; it agrees with
// the squareness of a panel 8 ft long by PS 1-19.
inline constexpr geometry::Length racking = geometry::mm(3);

// From a bar's end at the wall to where a bird's back is: common practice.
inline constexpr geometry::Length off_the_wall = geometry::mm(75);

}  // namespace models::practice
