#include "models/design_format.h"

#include <algorithm>
#include <cassert>
#include <charconv>

namespace models {
namespace {

using Choices = std::vector<std::string_view>;

AttributeFormat whole(std::string_view name, double least, double most) {
  AttributeFormat attribute;
  attribute.name = name;
  attribute.kind = ValueKind::whole;
  attribute.least = least;
  attribute.most = most;
  return attribute;
}

AttributeFormat length(std::string_view name, double least_mm, double most_mm) {
  AttributeFormat attribute = whole(name, least_mm, most_mm);
  attribute.kind = ValueKind::length;
  return attribute;
}

AttributeFormat choice(std::string_view name, Choices choices) {
  AttributeFormat attribute;
  attribute.name = name;
  attribute.kind = ValueKind::choice;
  attribute.choices = std::move(choices);
  return attribute;
}

AttributeFormat plain(std::string_view name, ValueKind kind) {
  AttributeFormat attribute;
  attribute.name = name;
  attribute.kind = kind;
  return attribute;
}
AttributeFormat text(std::string_view name) { return plain(name, ValueKind::text); }
AttributeFormat lumber(std::string_view name) { return plain(name, ValueKind::lumber); }
AttributeFormat sheet(std::string_view name) { return plain(name, ValueKind::sheet); }

AttributeFormat pitch(std::string_view name) {
  AttributeFormat attribute = whole(name, 1, 24);
  attribute.kind = ValueKind::pitch;
  return attribute;
}

AttributeFormat angle(std::string_view name, double least, double most) {
  AttributeFormat attribute = whole(name, least, most);
  attribute.kind = ValueKind::angle;
  return attribute;
}

AttributeFormat required(AttributeFormat attribute) {
  attribute.required = true;
  return attribute;
}
AttributeFormat defaults(AttributeFormat attribute, std::string_view in, std::string_view mm) {
  attribute.default_in = in;
  attribute.default_mm = mm;
  return attribute;
}
AttributeFormat defaults(AttributeFormat attribute, std::string_view both) {
  return defaults(std::move(attribute), both, both);
}
AttributeFormat otherwise(AttributeFormat attribute, std::string_view words) {
  attribute.otherwise = words;
  return attribute;
}

// Sizes in millimetres that no house of this kind goes beyond. They keep a slip of the keyboard (or a hostile
// file) from asking for thousands of parts.
constexpr double longest_wall = 30'000;
constexpr double highest_wall = 6'000;

ElementFormat opening(std::string_view name, std::string_view default_name) {
  return {.name = name,
          .children = {"hinges", "slides"},
          .attributes =
              {otherwise(text("name"), default_name),
               otherwise(length("left", 0, longest_wall), "in the middle of the wall"),
               otherwise(length("bottom", 0, highest_wall), "on the bottom rail; a slider a rail higher"),
               required(length("width", 50, longest_wall)), required(length("height", 50, highest_wall)),
               defaults(length("reveal", 0, 50), "1/8in", "3mm"), defaults(lumber("frame"), "1x3", "19x75"),
               otherwise(lumber("slats"), "as the wall's cladding")},
          .most = 40};
}

std::vector<ElementFormat> make_format() {
  return {
      {.name = "coop",
       .children = {"flock", "stock", "house", "cladding", "wall", "roof", "nests", "roosts"},
       .attributes = {defaults(whole("format", 1, 1), "1"), defaults(text("name"), "coop"),
                      required(choice("units", {"in", "mm"}))},
       .required = true},
      {.name = "flock",
       .attributes = {required(whole("birds", 0, 500)), defaults(whole("planned", 0, 500), "0"),
                      defaults(choice("size", {"bantam", "medium", "large"}), "medium")},
       .required = true},
      {.name = "stock", .children = {"lumber", "sheet"}},
      {.name = "lumber",
       .attributes = {required(text("name")), required(length("thickness", 3, 300)),
                      required(length("width", 10, 600))},
       .most = 100},
      {.name = "sheet",
       .attributes = {required(text("name")), required(length("thickness", 0.3, 100)),
                      required(length("width", 100, 5'000)), required(length("length", 100, 10'000))},
       .most = 100},
      {.name = "house",
       .attributes =
           {required(length("width", 300, longest_wall)), required(length("depth", 300, longest_wall)),
            required(length("wall-height", 200, highest_wall)), defaults(lumber("framing"), "2x2", "38x38"),
            defaults(choice("corners", {"front-and-back-run", "left-and-right-run"}), "front-and-back-run"),
            defaults(length("post-spacing", 100, 3'000), "24in", "600mm")},
       .required = true},
      {.name = "cladding",
       .attributes = {defaults(lumber("slats"), "1x4", "19x100"),
                      defaults(choice("run", {"upright", "level"}), "upright"),
                      defaults(length("gap", 0, 300), "1/8in", "3mm")}},
      {.name = "wall",
       .children = {"cladding", "door", "nest-door"},
       .attributes = {required(choice("side", {"front", "right", "back", "left"}))},
       .most = 4},
      opening("door", "the wall's side and \"door\", numbered from the second on"),
      opening("nest-door", "the wall's side and \"nest door\", numbered from the second on"),
      {.name = "hinges",
       .attributes = {defaults(choice("edge", {"left", "right", "top", "bottom"}), "left"),
                      defaults(choice("swing", {"outward", "inward"}), "outward"),
                      defaults(angle("opens", 10, 180), "110deg")}},
      {.name = "slides",
       .attributes = {defaults(choice("to", {"left", "right"}), "left"),
                      defaults(length("lap", 0, 300), "1in", "25mm")}},
      {.name = "roof",
       .children = {"tie", "gussets", "boards", "sheets"},
       .attributes = {defaults(pitch("pitch"), "8:12", "35deg"),
                      defaults(choice("ridge", {"front-to-back", "left-to-right"}), "front-to-back"),
                      defaults(length("eave-overhang", 0, 1'500), "6in", "150mm"),
                      defaults(length("gable-overhang", 0, 1'000), "4in", "100mm"),
                      defaults(lumber("rafters"), "2x4", "38x89"),
                      defaults(lumber("ridge-board"), "1x3", "19x75"),
                      defaults(length("spacing", 100, 3'000), "24in", "600mm"),
                      otherwise(length("seat", 5, 300), "the whole thickness of the top rail")}},
      {.name = "tie",
       .attributes = {defaults(lumber("size"), "1x3", "19x75"),
                      otherwise(length("height", 0, 10'000), "a third of the way up to the ridge")}},
      {.name = "gussets", .attributes = {defaults(sheet("sheet"), "1/2 plywood", "12mm plywood")}},
      {.name = "boards", .attributes = {defaults(lumber("size"), "1x6", "22x150")}},
      {.name = "sheets", .attributes = {defaults(sheet("sheet"), "1/2 plywood", "12mm plywood")}},
      {.name = "nests",
       .attributes = {defaults(choice("wall", {"front", "right", "back", "left"}), "back"),
                      required(whole("count", 1, 200)),
                      otherwise(length("left", 0, longest_wall), "in the middle of the wall"),
                      defaults(length("bottom", 0, highest_wall), "18in", "450mm"),
                      defaults(length("width", 100, 2'000), "12in", "300mm"),
                      defaults(length("depth", 100, 2'000), "12in", "300mm"),
                      defaults(length("height", 100, 2'000), "18in", "450mm"),
                      otherwise(length("lip", 0, 600), "the lip board's width"),
                      defaults(sheet("panel"), "1/2 plywood", "12mm plywood"),
                      defaults(lumber("ledges"), "2x2", "38x38"),
                      defaults(lumber("lip-board"), "1x6", "19x150")}},
      {.name = "roosts",
       .attributes = {required(whole("count", 1, 50)),
                      defaults(choice("runs", {"left-to-right", "front-to-back"}), "left-to-right"),
                      defaults(length("first", 0, longest_wall), "18in", "450mm"),
                      defaults(length("spacing", 20, 3'000), "12in", "300mm"),
                      defaults(length("height", 50, highest_wall), "24in", "600mm"),
                      defaults(length("step", 0, 1'000), "0"), defaults(lumber("bars"), "2x2", "38x38"),
                      defaults(length("rounding", 0, 100), "1/2in", "12mm"),
                      defaults(lumber("ledges"), "2x2", "38x38")}},
  };
}

std::string number_text(double value) {
  char buffer[32];
  const auto end = std::to_chars(buffer, buffer + sizeof buffer, value).ptr;
  return {buffer, end};
}

std::string length_text(double mm) {
  return mm >= 1'000 ? number_text(mm / 1'000) + " m" : number_text(mm) + " mm";
}

}  // namespace

const std::vector<ElementFormat>& design_format() {
  static const std::vector<ElementFormat> format = make_format();
  return format;
}

const ElementFormat& element_format(std::string_view name) {
  const auto& format = design_format();
  const auto found =
      std::find_if(format.begin(), format.end(), [&](const auto& element) { return element.name == name; });
  assert(found != format.end());
  return *found;
}

const AttributeFormat* find_attribute(const ElementFormat& element, std::string_view name) {
  for (const auto& attribute : element.attributes)
    if (attribute.name == name) return &attribute;
  return nullptr;
}

std::string_view default_text(const AttributeFormat& attribute, geometry::Units units) {
  return units == geometry::Units::in ? attribute.default_in : attribute.default_mm;
}

std::string describe_value(const AttributeFormat& attribute) {
  switch (attribute.kind) {
    case ValueKind::whole:
      return "whole number";
    case ValueKind::length:
      return "length";
    case ValueKind::pitch:
      return "pitch";
    case ValueKind::angle:
      return "angle";
    case ValueKind::choice:
      return list_of(attribute.choices);
    case ValueKind::text:
      return "text";
    case ValueKind::lumber:
      return "lumber";
    case ValueKind::sheet:
      return "sheet";
  }
  return "";
}

std::string describe_range(const AttributeFormat& attribute) {
  const double least = attribute.least, most = attribute.most;
  switch (attribute.kind) {
    case ValueKind::whole:
      return least == most ? number_text(least) : number_text(least) + " to " + number_text(most);
    case ValueKind::length:
      return length_text(least) + " to " + length_text(most);
    case ValueKind::pitch:
      return number_text(least) + ":12 to " + number_text(most) + ":12";
    case ValueKind::angle:
      return number_text(least) + "deg to " + number_text(most) + "deg";
    default:
      return "";
  }
}

std::string describe_default(const AttributeFormat& attribute) {
  if (attribute.required) return "required";
  if (!attribute.otherwise.empty()) return std::string(attribute.otherwise);
  if (attribute.default_in == attribute.default_mm) return std::string(attribute.default_in);
  return std::string(attribute.default_in).append(" or ").append(attribute.default_mm);
}

std::string list_of(std::span<const std::string_view> words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) text += i + 1 == words.size() ? " or " : ", ";
    text += words[i];
  }
  return text;
}

}  // namespace models
