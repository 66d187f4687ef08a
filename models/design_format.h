// The design file's elements and attributes: one table that the reader works from, and that the reference
// page (docs/design-file.md) and the schema (docs/design.xsd) are held against.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/length_text.h"

namespace models {

// The version of the format that this program reads.
inline constexpr int design_format_version = 1;

enum class ValueKind {
  whole,   // whole number
  number,  // decimal number, its unit in the attribute's name
  length,  // see geometry::read_length()
  offset,  // length that may be negative
  pitch,   // 8:12 or 33.7deg
  angle,   // 110deg
  turn,    // angle that may be negative
  points,  // corners of an outline: "0,0 300,0 300,200"; the range counts them
  choice,  // one of a few words
  volume,  // 40L, see read_volume()
  text,    // free text of 1 to 80 characters
  lumber,  // name of a section in the stock
  sheet,   // name of a sheet in the stock
  mesh,    // name of a mesh in the stock
};

struct AttributeFormat {
  std::string_view name;
  ValueKind kind = ValueKind::text;
  // Both ends belong to the range: whole numbers, millimetres, cubic ones, degrees, or for a pitch the rise in 12.
  double least = 0;
  double most = 0;
  std::vector<std::string_view> choices = {};  // in the order of the enum that they stand for
  bool required = false;
  std::string_view default_in;  // as it would be written in the file, for a design in inches
  std::string_view default_mm;  // and for one in millimetres
  std::string_view otherwise;   // what holds when left out, where that is no fixed value
};

struct ElementFormat {
  std::string_view name;
  std::vector<std::string_view> children = {};
  std::vector<AttributeFormat> attributes = {};
  bool required = false;  // under its parent
  int most = 1;           // how often it may stand under one parent
};

// Every element, its parent before it; the first is the root. No two have the same name.
[[nodiscard]] const std::vector<ElementFormat>& design_format();
[[nodiscard]] const ElementFormat& element_format(std::string_view name);  // which must exist
[[nodiscard]] const AttributeFormat* find_attribute(const ElementFormat& element, std::string_view name);

[[nodiscard]] std::string_view default_text(const AttributeFormat& attribute, geometry::Units units);

// In words, for the reference page and for messages: "whole number", "left, right, top or bottom".
[[nodiscard]] std::string describe_value(const AttributeFormat& attribute);
// "1 to 200", "300 mm to 30 m", "1:12 to 24:12"; empty for kinds without a range.
[[nodiscard]] std::string describe_range(const AttributeFormat& attribute);
// "required", "1/8in or 3mm" (in a design in inches, in millimetres), "centred".
[[nodiscard]] std::string describe_default(const AttributeFormat& attribute);

// "a, b or c".
[[nodiscard]] std::string list_of(std::span<const std::string_view> words);

}  // namespace models
