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

}  // namespace models::practice
