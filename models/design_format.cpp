#include "models/design_format.h"

#include <algorithm>
#include <cassert>
#include <charconv>
#include <cmath>

#include "models/goods.h"

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

AttributeFormat number(std::string_view name, double least, double most) {
  AttributeFormat attribute = whole(name, least, most);
  attribute.kind = ValueKind::number;
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

AttributeFormat mesh(std::string_view name) { return plain(name, ValueKind::mesh); }

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

AttributeFormat offset(std::string_view name, double most_mm) {
  AttributeFormat attribute = whole(name, -most_mm, most_mm);
  attribute.kind = ValueKind::offset;
  return attribute;
}

AttributeFormat turn(std::string_view name, double most) {
  AttributeFormat attribute = whole(name, -most, most);
  attribute.kind = ValueKind::turn;
  return attribute;
}

AttributeFormat volume(std::string_view name, double least_mm3, double most_mm3) {
  AttributeFormat attribute = whole(name, least_mm3, most_mm3);
  attribute.kind = ValueKind::volume;
  return attribute;
}

AttributeFormat points(std::string_view name) {
  AttributeFormat attribute = whole(name, 3, 100);
  attribute.kind = ValueKind::points;
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

using Attributes = std::vector<AttributeFormat>;

// The attributes of every opening, with those of its kind after them.
Attributes opening(std::string_view default_name, std::string_view default_bottom, const Attributes& own) {
  Attributes all = {otherwise(text("name"), default_name),
                    otherwise(length("left", 0, longest_wall), "in the middle of the wall"),
                    otherwise(length("bottom", 0, highest_wall), default_bottom)};
  all.insert(all.end(), own.begin(), own.end());
  return all;
}

ElementFormat leaf(std::string_view name, std::string_view default_name, const Attributes& own) {
  Attributes all = {
      required(length("width", 50, longest_wall)),          required(length("height", 50, highest_wall)),
      defaults(length("reveal", 0, 50), "1/8in", "3mm"),    defaults(lumber("frame"), "1x3", "19x75"),
      otherwise(lumber("slats"), "as the wall's cladding"), otherwise(sheet("sheet"), "frame and slats")};
  all.insert(all.end(), own.begin(), own.end());
  return {.name = name,
          .children = {"hinges", "slides", "lifts-off"},
          .attributes = opening(default_name, "on the bottom rail; a slider a rail higher", all),
          .most = 40};
}

ElementFormat vent(std::string_view name, std::string_view default_name, const Attributes& size) {
  Attributes all = size;
  all.push_back(defaults(mesh("mesh"), "1/2 hardware cloth", "13mm mesh"));
  all.push_back(defaults(lumber("battens"), "1x2", "19x38"));
  return {.name = name, .attributes = opening(default_name, "under the top rail", all), .most = 40};
}

// A part placed by hand: what it is, and where.
ElementFormat placed_part(std::string_view name, const Attributes& own) {
  Attributes all = {required(text("name"))};
  all.insert(all.end(), own.begin(), own.end());
  for (const std::string_view axis : {"x", "y", "z"})
    all.push_back(defaults(offset(axis, longest_wall), "0"));
  for (const std::string_view axis : {"turn-x", "turn-y", "turn-z"})
    all.push_back(defaults(turn(axis, 360), "0deg"));
  return {.name = name, .attributes = std::move(all), .most = 200};
}

std::vector<ElementFormat> make_format() {
  return {
      {.name = "coop",
       .children = {"flock", "site", "stock", "house", "cladding", "wall", "roof", "nests", "roosts",
                    "litter", "floor", "base", "apron", "run", "extra"},
       .attributes = {defaults(whole("format", 1, 1), "1"), defaults(text("name"), "coop"),
                      required(choice("units", {"in", "mm"}))},
       .required = true},
      {.name = "flock",
       .attributes = {required(whole("birds", 0, 500)), defaults(whole("planned", 0, 500), "0"),
                      defaults(choice("size", {"bantam", "medium", "large"}), "medium")},
       .required = true},
      {.name = "site",
       .attributes = {defaults(number("snow-kpa", 0, 20), "0"), defaults(number("wind-m-s", 0, 100), "0"),
                      defaults(choice("exposure", {"B", "C", "D"}), "C"),
                      defaults(choice("climate", {"hot", "temperate", "cold"}), "temperate")}},
      {.name = "stock",
       .children = {"lumber", "sheet", "mesh", "saw", "sold", "pack", "spare", "cut-already"},
       .attributes = {otherwise(text("currency"), "none")}},
      {.name = "lumber",
       .attributes = {required(text("name")), required(length("thickness", 3, 300)),
                      required(length("width", 10, 600))},
       .most = 100},
      {.name = "sheet",
       .attributes = {required(text("name")), required(length("thickness", 0.3, 100)),
                      required(length("width", 100, 5'000)), required(length("length", 100, 10'000))},
       .most = 100},
      {.name = "mesh",
       .attributes = {required(text("name")), required(length("opening", 1, 100)),
                      required(length("wire", 0.2, 10)), required(length("roll-width", 100, 5'000)),
                      required(length("roll-length", 500, 200'000))},
       .most = 100},
      {.name = "saw",
       .attributes = {defaults(length("kerf", 0, 10), "1/8in", "3mm"),
                      defaults(length("rip-kerf", 0, 10), "1/8in", "3mm"),
                      defaults(length("end-trim", 0, 200), "1/4in", "5mm"),
                      defaults(length("edge-trim", 0, 50), "0"),
                      defaults(choice("rips", {"yes", "no"}), "yes"),
                      defaults(length("narrowest-strip", 1, 300), "3/4in", "18mm"),
                      defaults(length("shortest-rip", 0, 3'000), "12in", "300mm")}},
      {.name = "sold",
       .attributes = {otherwise(lumber("lumber"), "none"), otherwise(sheet("sheet"), "none"),
                      otherwise(mesh("mesh"), "none"),
                      otherwise(length("length", 100, 200'000),
                                "a sheet's or a roll's own; a board must have one"),
                      otherwise(number("price", 0, 1'000'000), "not known"),
                      otherwise(whole("at-most", 0, 10'000), "as many as are wanted")},
       .most = 300},
      {.name = "pack",
       .attributes = {required(choice("of", goods_names())),
                      otherwise(length("length", 5, 300), "any that has no pack of its own"),
                      otherwise(whole("count", 1, 100'000), "1 of hardware, 1000 staples, else 100"),
                      otherwise(volume("volume", 1e3, 1e10), "none; what comes by volume must have one"),
                      otherwise(number("price", 0, 1'000'000), "not known")},
       .most = 100},
      {.name = "spare",
       .children = {"flaw"},
       .attributes = {otherwise(text("label"), "\"spare\", numbered"), otherwise(lumber("lumber"), "none"),
                      otherwise(sheet("sheet"), "none"), required(length("length", 50, 20'000)),
                      otherwise(length("width", 50, 5'000), "the lumber's own; a sheet must have one"),
                      defaults(whole("count", 1, 1'000), "1"), defaults(number("value", 0, 1'000'000), "0")},
       .most = 200},
      {.name = "flaw",
       .attributes = {required(length("from", 0, 20'000)), required(length("to", 0, 20'000))},
       .most = 20},
      {.name = "cut-already",
       .attributes = {required(text("mark")), required(whole("count", 1, 10'000))},
       .most = 500},
      {.name = "house",
       .attributes =
           {required(length("width", 300, longest_wall)), required(length("depth", 300, longest_wall)),
            required(length("wall-height", 200, highest_wall)), defaults(lumber("framing"), "2x2", "38x38"),
            defaults(choice("corners", {"front-and-back-run", "left-and-right-run"}), "front-and-back-run"),
            defaults(length("post-spacing", 100, 3'000), "24in", "600mm"),
            otherwise(lumber("corner-trim"), "none")},
       .required = true},
      {.name = "cladding",
       .attributes = {defaults(choice("kind", {"slats", "lapped", "sheets"}), "slats"),
                      defaults(lumber("slats"), "1x4", "19x100"),
                      defaults(choice("run", {"upright", "level"}), "upright"),
                      defaults(length("gap", 0, 300), "1/8in", "3mm"),
                      defaults(length("lap", 0, 300), "1in", "25mm"),
                      defaults(sheet("sheet"), "1/2 plywood", "12mm plywood")}},
      {.name = "wall",
       .children = {"cladding", "door", "nest-door", "bird-door", "vent", "round-vent", "window",
                    "extra-post", "extra-rail"},
       .attributes = {required(choice("side", {"front", "right", "back", "left"}))},
       .most = 4},
      leaf("door", "the wall's side and \"door\", numbered from the second on", {}),
      leaf("nest-door", "the wall's side and \"nest door\", numbered from the second on", {}),
      leaf("bird-door", "the wall's side and \"bird door\", numbered from the second on",
           {otherwise(sheet("ramp"), "no ramp"),
            defaults(length("ramp-length", 100, 5'000), "24in", "600mm")}),
      vent("vent", "the wall's side and \"vent\", numbered from the second on",
           {required(length("width", 30, longest_wall)), required(length("height", 30, highest_wall))}),
      vent("round-vent", "the wall's side and \"round vent\", numbered from the second on",
           {required(length("diameter", 30, 1'000))}),
      {.name = "window",
       .attributes =
           opening("the wall's side and \"window\", numbered from the second on", "under the top rail",
                   {required(length("width", 50, longest_wall)), required(length("height", 50, highest_wall)),
                    otherwise(mesh("mesh"), "1/2 hardware cloth or 13mm mesh; none with a pane"),
                    otherwise(sheet("pane"), "none"), defaults(lumber("battens"), "1x2", "19x38")}),
       .most = 40},
      {.name = "extra-post", .attributes = {required(length("left", 0, longest_wall))}, .most = 40},
      {.name = "extra-rail", .attributes = {required(length("bottom", 0, highest_wall))}, .most = 40},
      {.name = "hinges",
       .attributes = {defaults(choice("edge", {"left", "right", "top", "bottom"}), "left"),
                      defaults(choice("swing", {"outward", "inward"}), "outward"),
                      defaults(angle("opens", 10, 180), "110deg")}},
      {.name = "slides",
       .attributes = {otherwise(choice("to", {"left", "right", "up"}), "left; up for a bird door"),
                      defaults(length("lap", 0, 300), "1in", "25mm")}},
      {.name = "lifts-off"},
      {.name = "roof",
       .children = {"tie", "gussets", "fascia", "barge", "boards", "sheets", "corrugated"},
       .attributes = {defaults(pitch("pitch"), "8:12", "35deg"),
                      defaults(choice("slopes", {"gable", "single"}), "gable"),
                      defaults(choice("ridge", {"front-to-back", "left-to-right"}), "front-to-back"),
                      defaults(choice("rises-to", {"front", "right", "back", "left"}), "front"),
                      defaults(choice("tails", {"plumb", "square"}), "plumb"),
                      defaults(length("eave-overhang", 0, 1'500), "6in", "150mm"),
                      defaults(length("gable-overhang", 0, 1'000), "4in", "100mm"),
                      defaults(lumber("rafters"), "2x4", "38x89"),
                      defaults(lumber("ridge-board"), "1x3", "19x75"),
                      defaults(length("spacing", 100, 3'000), "24in", "600mm"),
                      otherwise(length("seat", 5, 300), "the whole thickness of the top rail"),
                      defaults(length("eave-gap", 0, 100), "0"), defaults(length("ridge-gap", 0, 100), "0"),
                      otherwise(mesh("mesh"), "none; there must be one with a gap")}},
      {.name = "tie",
       .attributes = {defaults(lumber("size"), "1x3", "19x75"),
                      otherwise(length("height", 0, 10'000), "a third of the way up to the ridge")}},
      {.name = "gussets", .attributes = {defaults(sheet("sheet"), "1/2 plywood", "12mm plywood")}},
      {.name = "fascia", .attributes = {defaults(lumber("size"), "1x4", "19x100")}},
      {.name = "barge", .attributes = {defaults(lumber("size"), "1x4", "19x100")}},
      {.name = "boards", .attributes = {defaults(lumber("size"), "1x6", "22x150")}},
      {.name = "sheets", .attributes = {defaults(sheet("sheet"), "1/2 plywood", "12mm plywood")}},
      {.name = "corrugated",
       .attributes = {defaults(text("name"), "corrugated sheet"),
                      defaults(length("height", 5, 150), "3/4in", "18mm"),
                      defaults(length("width", 200, 2'000), "26in", "660mm"),
                      defaults(length("cover-width", 200, 2'000), "24in", "610mm"),
                      defaults(length("length", 600, 15'000), "8ft", "2400mm"),
                      defaults(length("end-lap", 0, 500), "6in", "150mm"),
                      otherwise(number("price", 0, 1'000'000), "not known")}},
      {.name = "nests",
       .attributes = {defaults(choice("place", {"inside", "outside"}), "inside"),
                      defaults(choice("wall", {"front", "right", "back", "left"}), "back"),
                      required(whole("count", 1, 200)),
                      defaults(choice("boxes", {"fixed", "loose"}), "fixed"),
                      otherwise(length("left", 0, longest_wall), "in the middle of the wall"),
                      defaults(length("bottom", 0, highest_wall), "18in", "450mm"),
                      defaults(length("width", 100, 2'000), "12in", "300mm"),
                      defaults(length("depth", 100, 2'000), "12in", "300mm"),
                      defaults(length("height", 100, 2'000), "18in", "450mm"),
                      otherwise(length("lip", 0, 600), "the lip board's width"),
                      defaults(sheet("panel"), "1/2 plywood", "12mm plywood"),
                      defaults(lumber("ledges"), "2x2", "38x38"),
                      defaults(lumber("lip-board"), "1x6", "19x150"),
                      defaults(angle("lid-pitch", 5, 45), "15deg"),
                      defaults(length("lid-overhang", 0, 200), "1-1/2in", "40mm")}},
      {.name = "roosts",
       .attributes = {required(whole("count", 1, 50)),
                      defaults(choice("runs", {"left-to-right", "front-to-back"}), "left-to-right"),
                      defaults(length("first", 0, longest_wall), "18in", "450mm"),
                      defaults(length("spacing", 20, 3'000), "12in", "300mm"),
                      defaults(length("height", 50, highest_wall), "24in", "600mm"),
                      defaults(length("step", 0, 1'000), "0"), defaults(lumber("bars"), "2x2", "38x38"),
                      defaults(length("rounding", 0, 100), "1/2in", "12mm"),
                      defaults(lumber("ledges"), "2x2", "38x38"),
                      otherwise(sheet("droppings-board"), "none")}},
      {.name = "litter", .attributes = {defaults(length("depth", 0, 500), "4in", "100mm")}},
      {.name = "floor",
       .attributes = {defaults(length("clear", 50, 2'000), "12in", "300mm"),
                      defaults(lumber("bearers"), "2x4", "38x89"), defaults(lumber("joists"), "2x4", "38x89"),
                      defaults(lumber("legs"), "4x4", "100x100"),
                      defaults(length("joist-spacing", 100, 1'500), "16in", "400mm"),
                      otherwise(lumber("boards"), "none"),
                      otherwise(sheet("sheet"), "1/2 plywood or 12mm plywood; none with boards")}},
      {.name = "base",
       .attributes = {defaults(choice("kind", {"stone", "blocks", "skids"}), "stone"),
                      defaults(length("ring-width", 50, 1'500), "10in", "250mm"),
                      defaults(length("ring-depth", 20, 1'000), "6in", "150mm"),
                      defaults(length("block-length", 100, 1'000), "15-5/8in", "390mm"),
                      defaults(length("block-height", 50, 500), "7-5/8in", "190mm"),
                      defaults(lumber("skids"), "4x4", "100x100")}},
      {.name = "apron",
       .attributes = {defaults(mesh("mesh"), "1/2 hardware cloth", "13mm mesh"),
                      defaults(length("depth", 0, 500), "2in", "50mm"),
                      defaults(length("width", 50, 2'000), "12in", "300mm")}},
      {.name = "run",
       .attributes = {defaults(choice("wall", {"front", "right", "back", "left"}), "right"),
                      required(length("length", 300, longest_wall)),
                      otherwise(length("width", 300, longest_wall), "as long as the wall"),
                      defaults(length("height", 300, highest_wall), "4ft", "1200mm"),
                      defaults(lumber("framing"), "2x2", "38x38"),
                      defaults(length("post-spacing", 200, 3'000), "36in", "900mm"),
                      defaults(mesh("mesh"), "1/2 hardware cloth", "13mm mesh"),
                      defaults(choice("top", {"mesh", "open"}), "mesh"),
                      defaults(length("door-width", 0, 2'000), "24in", "600mm"),
                      defaults(number("joins-m2", 0, 10'000), "0")}},
      {.name = "extra", .children = {"stick", "panel"}},
      placed_part("stick",
                  {required(lumber("lumber")), required(length("length", 10, 10'000)),
                   defaults(turn("left-mitre", 75), "0deg"), defaults(turn("left-bevel", 75), "0deg"),
                   defaults(turn("right-mitre", 75), "0deg"), defaults(turn("right-bevel", 75), "0deg")}),
      placed_part("panel", {otherwise(sheet("sheet"), "1/2 plywood or 12mm plywood; none with mesh"),
                            otherwise(mesh("mesh"), "none"), required(points("outline"))}),
  };
}

std::string number_text(double value) {
  char buffer[32];
  const bool is_whole = value == std::floor(value) && std::fabs(value) < 1e9;  // never 1e+06
  const auto end = is_whole ? std::to_chars(buffer, buffer + sizeof buffer, static_cast<long long>(value)).ptr
                            : std::to_chars(buffer, buffer + sizeof buffer, value).ptr;
  return {buffer, end};
}

std::string volume_text(double mm3) {
  if (mm3 >= 1e9) return number_text(mm3 / 1e9) + " m3";
  return mm3 >= 1e6 ? number_text(mm3 / 1e6) + " L" : number_text(mm3 / 1e3) + " ml";
}

std::string length_text(double mm) {
  return std::abs(mm) >= 1'000 ? number_text(mm / 1'000) + " m" : number_text(mm) + " mm";
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
    case ValueKind::number:
      return "number";
    case ValueKind::length:
      return "length";
    case ValueKind::offset:
      return "length, either way";
    case ValueKind::pitch:
      return "pitch";
    case ValueKind::angle:
      return "angle";
    case ValueKind::turn:
      return "angle, either way";
    case ValueKind::points:
      return "points";
    case ValueKind::volume:
      return "volume";
    case ValueKind::choice:
      return list_of(attribute.choices);
    case ValueKind::text:
      return "text";
    case ValueKind::lumber:
      return "lumber";
    case ValueKind::sheet:
      return "sheet";
    case ValueKind::mesh:
      return "mesh";
  }
  return "";
}

std::string describe_range(const AttributeFormat& attribute) {
  const double least = attribute.least, most = attribute.most;
  switch (attribute.kind) {
    case ValueKind::whole:
    case ValueKind::number:
      return least == most ? number_text(least) : number_text(least) + " to " + number_text(most);
    case ValueKind::points:
      return number_text(least) + " to " + number_text(most) + " points";
    case ValueKind::volume:
      return volume_text(least) + " to " + volume_text(most);
    case ValueKind::length:
    case ValueKind::offset:
      return length_text(least) + " to " + length_text(most);
    case ValueKind::pitch:
      return number_text(least) + ":12 to " + number_text(most) + ":12";
    case ValueKind::angle:
    case ValueKind::turn:
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
