#include "models/design_element.h"

#include <algorithm>
#include <cassert>
#include <cmath>

#include <tinyxml2.h>

#include "geometry/tolerance.h"
#include "models/nearest_name.h"
#include "models/outline_text.h"
#include "models/utf8.h"

namespace models {
namespace {

using geometry::mm;
using geometry::read_length;

geometry::LengthStyle style_of(Units units) { return {units, 16}; }

std::string with_unit(Length length, Units units) {
  return geometry::print_length(length, style_of(units)) + (units == Units::mm ? "mm" : "");
}

// One step of what is printed.
Length step_of(Units units) { return units == Units::in ? geometry::inches(1.0 / 16) : mm(0.5); }

// A name from the file, fit to stand in a path.
std::string shortened(std::string_view name) {
  const std::string text = in_quotes(name);
  return text.substr(1, text.size() - 2);
}

}  // namespace

Element::Element(Reading& reading, const ElementFormat& format, const tinyxml2::XMLElement* xml,
                 std::string path, int line)
    : reading_(&reading), format_(&format), xml_(xml), path_(std::move(path)), line_(line) {}

Element Element::child(std::string_view name) const {
  const ElementFormat& format = element_format(name);
  const std::string word(name);
  if (xml_ != nullptr)
    if (const auto* found = xml_->FirstChildElement(word.c_str()))
      return {*reading_, format, found, path_of(*found), found->GetLineNum()};
  return {*reading_, format, nullptr, path_ + "/" + word, line_};
}

std::vector<Element> Element::children(std::string_view name) const {
  std::vector<Element> found;
  if (xml_ == nullptr) return found;
  const std::string word(name);
  const ElementFormat& format = element_format(name);
  for (const auto* xml = xml_->FirstChildElement(word.c_str());
       xml != nullptr && found.size() < static_cast<std::size_t>(format.most);
       xml = xml->NextSiblingElement(word.c_str()))
    found.emplace_back(*reading_, format, xml, path_of(*xml), xml->GetLineNum());
  return found;
}

bool Element::sound() const {
  const auto& problems = reading_->problems;
  return std::none_of(problems.begin(), problems.end(), [&](const Problem& problem) {
    return problem.element.starts_with(path_) &&
           (problem.element.size() == path_.size() || problem.element[path_.size()] == '/');
  });
}

bool Element::sound(std::initializer_list<std::string_view> attributes) const {
  const auto& problems = reading_->problems;
  const std::string prefix = path_ + "/@";
  return std::none_of(problems.begin(), problems.end(), [&](const Problem& problem) {
    if (problem.element == path_) return true;
    if (!problem.element.starts_with(prefix)) return false;
    const std::string_view name = std::string_view(problem.element).substr(prefix.size());
    return find_attribute(*format_, name) == nullptr ||
           std::find(attributes.begin(), attributes.end(), name) != attributes.end();
  });
}

bool Element::has(std::string_view attribute) const { return given_value(attribute).has_value(); }

const AttributeFormat& Element::format_of(std::string_view attribute) const {
  const auto* found = find_attribute(*format_, attribute);
  assert(found != nullptr);
  return *found;
}

std::optional<std::string> Element::given_value(std::string_view attribute) const {
  assert(find_attribute(*format_, attribute) != nullptr);
  if (xml_ == nullptr) return std::nullopt;
  const char* value = xml_->Attribute(std::string(attribute).c_str());
  if (value == nullptr) return std::nullopt;
  return value;
}

std::string Element::value_or_default(const AttributeFormat& attribute) const {
  if (auto value = given_value(attribute.name)) return *value;
  return std::string(default_text(attribute, reading_->units));
}

std::string Element::range_of(const AttributeFormat& attribute) const {
  if (attribute.kind != ValueKind::length && attribute.kind != ValueKind::offset)
    return describe_range(attribute);
  return shown_at_least(mm(attribute.least)) + " to " + shown_at_most(mm(attribute.most));
}

std::string Element::expected(const AttributeFormat& attribute) const {
  const std::string range = range_of(attribute);
  return describe_value(attribute) + (range.empty() ? "" : ", " + range);
}

int Element::whole(std::string_view name) const {
  const auto& attribute = format_of(name);
  const auto least = static_cast<int>(attribute.least), most = static_cast<int>(attribute.most);
  const std::string text = value_or_default(attribute);
  if (text.empty() && !has(name)) return least;  // required, and missing: reported with the format
  const auto value = read_whole(text);
  if (value && *value >= least && *value <= most) return *value;
  std::string message = in_quotes(text) + (value ? " is out of range" : " is no whole number") +
                        ": expected " + range_of(attribute);
  const int nearest = value && *value > most ? most : least;
  if (value) message += "; nearest: " + std::to_string(nearest);
  problem(name, std::move(message));
  return nearest;
}

double Element::number(std::string_view name) const {
  const auto& attribute = format_of(name);
  const std::string text = value_or_default(attribute);
  const auto value = read_number(text);
  if (value && *value >= attribute.least && *value <= attribute.most) return *value;
  problem(name, in_quotes(text) + (value ? " is out of range" : " is no number") + ": expected " +
                    range_of(attribute));
  return attribute.least;
}

Length Element::checked_length(const AttributeFormat& attribute, const std::string& text) const {
  const Length least = mm(attribute.least), most = mm(attribute.most);
  const auto read = read_length(text, reading_->units);
  if (const auto* error = std::get_if<std::string>(&read)) {
    problem(attribute.name, in_quotes(text) + " is no length: " + *error);
    return least;
  }
  const Length value = std::get<Length>(read);
  const Length room = mm(geometry::same_place);
  if (value >= least - room && value <= most + room) return value;
  const Length nearest = value < least ? least : most;
  if (!reading_->units_known && read_length(text, Units::in) != read_length(text, Units::mm)) return nearest;
  problem(attribute.name, in_quotes(text) + " is out of range: expected " + range_of(attribute) +
                              "; nearest: " + (value < least ? shown_at_least(least) : shown_at_most(most)));
  return nearest;
}

Length Element::length(std::string_view name) const {
  const auto& attribute = format_of(name);
  const std::string text = value_or_default(attribute);
  if (text.empty() && !has(name)) return mm(attribute.least);
  return checked_length(attribute, text);
}

std::optional<Length> Element::given_length(std::string_view name) const {
  if (const auto value = given_value(name)) return checked_length(format_of(name), *value);
  return std::nullopt;
}

Pitch Element::pitch(std::string_view name) const {
  const auto& attribute = format_of(name);
  const std::string text = value_or_default(attribute);
  const auto value = read_pitch(text);
  if (!value) {
    problem(name, in_quotes(text) +
                      " is no pitch: expected a rise in a run such as 8:12, or degrees such as 33.7deg");
    return *read_pitch(default_text(attribute, reading_->units));
  }
  if (value->rise_in_12 >= attribute.least - 1e-9 && value->rise_in_12 <= attribute.most + 1e-9)
    return *value;
  const double nearest = value->rise_in_12 < attribute.least ? attribute.least : attribute.most;
  problem(name, in_quotes(text) + " is out of range: expected " + range_of(attribute) +
                    "; nearest: " + std::to_string(static_cast<int>(nearest)) + ":12");
  return {nearest, geometry::radians(std::atan2(nearest, 12))};
}

Angle Element::angle(std::string_view name) const {
  const auto& attribute = format_of(name);
  const std::string text = value_or_default(attribute);
  const Angle least = geometry::degrees(attribute.least), most = geometry::degrees(attribute.most);
  const bool negative = attribute.kind == ValueKind::turn && text.starts_with("-");
  auto value = read_angle(std::string_view(text).substr(negative ? 1 : 0));
  if (value && negative) value = -*value;
  if (!value) {
    problem(name, in_quotes(text) + " is no angle: expected degrees such as 110deg");
    return least;
  }
  if (*value >= least && *value <= most) return *value;
  const bool low = *value < least;
  problem(name, in_quotes(text) + " is out of range: expected " + range_of(attribute) + "; nearest: " +
                    std::to_string(static_cast<int>(low ? attribute.least : attribute.most)) + "deg");
  return low ? least : most;
}

Measure Element::volume(std::string_view name) const {
  const auto& attribute = format_of(name);
  const std::string text = value_or_default(attribute);
  const auto value = read_volume(text);
  if (!value) {
    problem(name, in_quotes(text) +
                      " is no volume: expected a number and ml, L, m3, fl oz, gal, ft3 or yd3, as in 40L");
    return {attribute.least / 1e6, "L"};
  }
  const double mm3 = volume_of(*value).mm3;
  if (mm3 >= attribute.least * (1 - 1e-9) && mm3 <= attribute.most * (1 + 1e-9)) return *value;
  problem(name, in_quotes(text) + " is out of range: expected " + range_of(attribute));
  return {(mm3 < attribute.least ? attribute.least : attribute.most) / 1e6, "L"};
}

geometry::Outline Element::outline(std::string_view name) const {
  const geometry::Outline fallback{{{0, 0}, {100, 0}, {0, 100}}, {}};
  const auto text = given_value(name);
  if (!text) return fallback;
  const auto& attribute = format_of(name);
  auto read = read_outline(*text, reading_->units, static_cast<std::size_t>(attribute.most));
  if (auto* outline = std::get_if<geometry::Outline>(&read)) return std::move(*outline);
  problem(name,
          std::get<std::string>(read) +
              ": expected 3 to 100 points, each x,y, going once round a panel, as in 0,0 300,0 300,200");
  return fallback;
}

std::optional<std::string> Element::given_text(std::string_view name) const {
  constexpr std::size_t most = 80;
  auto value = given_value(name);
  if (!value) return std::nullopt;
  const bool blank = value->find_first_not_of(' ') == std::string::npos;
  if (!blank && is_printable(*value) && character_count(*value) <= most) return value;
  problem(name, in_quotes(*value) + " can't be used: expected 1 to " + std::to_string(most) +
                    " characters, not all spaces, on one line");
  return std::nullopt;
}

std::string Element::text(std::string_view name) const {
  if (auto value = given_text(name)) return *value;
  return std::string(default_text(format_of(name), reading_->units));
}

Lumber Element::lumber(std::string_view name) const {
  const auto& attribute = format_of(name);
  const std::string text = value_or_default(attribute);
  const Stock& stock = reading_->stock;
  if (const auto* found = find_lumber(stock, text)) return *found;
  problem(name,
          in_quotes(text) +
              " is no lumber of the stock: expected a standard size or a <lumber> of <stock>; nearest: " +
              in_quotes(nearest_lumber(stock, text)));
  return stock.lumber.front();
}

Sheet Element::sheet(std::string_view name) const {
  const auto& attribute = format_of(name);
  const std::string text = value_or_default(attribute);
  const Stock& stock = reading_->stock;
  if (const auto* found = find_sheet(stock, text)) return *found;
  problem(name, in_quotes(text) +
                    " is no sheet of the stock: expected a standard size or a <sheet> of <stock>; nearest: " +
                    in_quotes(nearest_sheet(stock, text)));
  return stock.sheets.front();
}

Mesh Element::mesh(std::string_view name) const {
  const auto& attribute = format_of(name);
  const std::string text = value_or_default(attribute);
  const Stock& stock = reading_->stock;
  if (const auto* found = find_mesh(stock, text)) return *found;
  problem(name, in_quotes(text) +
                    " is no mesh of the stock: expected a standard size or a <mesh> of <stock>; nearest: " +
                    in_quotes(nearest_mesh(stock, text)));
  return stock.meshes.front();
}

Mesh Element::default_mesh() const {
  return *find_mesh(reading_->stock, reading_->units == Units::in ? "1/2 hardware cloth" : "13mm mesh");
}

Sheet Element::default_sheet() const {
  return *find_sheet(reading_->stock, reading_->units == Units::in ? "1/2 plywood" : "12mm plywood");
}

std::optional<Lumber> Element::given_lumber(std::string_view name) const {
  return has(name) ? std::optional(lumber(name)) : std::nullopt;
}
std::optional<Sheet> Element::given_sheet(std::string_view name) const {
  return has(name) ? std::optional(sheet(name)) : std::nullopt;
}
std::optional<Mesh> Element::given_mesh(std::string_view name) const {
  return has(name) ? std::optional(mesh(name)) : std::nullopt;
}

int Element::choice(std::string_view name) const {
  const auto& attribute = format_of(name);
  const std::string text = value_or_default(attribute);
  const auto& choices = attribute.choices;
  const auto found = std::find(choices.begin(), choices.end(), text);
  if (found != choices.end()) return static_cast<int>(found - choices.begin());
  if (text.empty() && !has(name)) return 0;
  problem(name, in_quotes(text) + " is not known: expected " + list_of(choices) + "; nearest: " +
                    nearest_name(text, std::vector<std::string>(choices.begin(), choices.end())));
  return 0;
}

Problem Element::at(std::string_view attribute, std::string message) const {
  const std::string name(attribute);
  Problem problem{reading_->file, line_, path_ + "/@" + name, std::move(message)};
  if (xml_ == nullptr) return problem;
  const auto& outside = reading_->set_from_outside;
  if (std::find(outside.begin(), outside.end(), std::pair(xml_, name)) != outside.end())
    problem.message += " (the value was set from outside the file)";
  else if (const auto* found = xml_->FindAttribute(name.c_str()))
    problem.line = found->GetLineNum();
  return problem;
}

void Element::problem(std::string message) const {
  reading_->problems.push_back({reading_->file, line_, path_, std::move(message)});
}
void Element::problem(std::string_view attribute, std::string message) const {
  reading_->problems.push_back(at(attribute, std::move(message)));
}
void Element::problem_inside(std::string_view step, int line, std::string message) const {
  reading_->problems.push_back({reading_->file, line, path_ + "/" + shortened(step), std::move(message)});
}
void Element::remark_inside(std::string_view step, int line, std::string message) const {
  reading_->remarks.push_back({reading_->file, line, path_ + "/" + shortened(step), std::move(message)});
}
void Element::remark(std::string message) const {
  reading_->remarks.push_back({reading_->file, line_, path_, std::move(message)});
}

void Element::must_be_at_most(std::string_view attribute, Length most, const std::string& why) const {
  problem(attribute, why + ": expected at most " + shown_at_most(most));
}
void Element::must_be_at_least(std::string_view attribute, Length least, const std::string& why) const {
  problem(attribute, why + ": expected at least " + shown_at_least(least));
}

void Element::one_of(std::initializer_list<std::string_view> names, const std::string& why) const {
  std::optional<Element> first;
  for (const std::string_view name : names) {
    const Element element = child(name);
    if (!element.given()) continue;
    if (!first) {
      first = element;
      continue;
    }
    const auto tag = [](const Element& e) { return "<" + std::string(e.format().name) + ">"; };
    element.problem(why + ": expected " + tag(*first) + " or " + tag(element) + ", not both; " + tag(*first) +
                    " is in line " + std::to_string(first->line()));
  }
}

std::string Element::shown(Length length) const { return with_unit(length, reading_->units); }

std::string Element::shown_at_least(Length length) const {
  const Length rounded = geometry::rounded(length, style_of(reading_->units));
  const bool short_of = rounded < length - mm(geometry::same_place);
  return shown(short_of ? rounded + step_of(reading_->units) : rounded);
}

std::string Element::shown_at_most(Length length) const {
  const Length rounded = geometry::rounded(length, style_of(reading_->units));
  const bool beyond = rounded > length + mm(geometry::same_place);
  return shown(beyond ? rounded - step_of(reading_->units) : rounded);
}

std::string path_of(const tinyxml2::XMLElement& xml) {
  std::string step = xml.Name();
  int before = 0;
  for (const auto* other = xml.PreviousSiblingElement(xml.Name()); other != nullptr;
       other = other->PreviousSiblingElement(xml.Name()))
    ++before;
  if (before > 0 || xml.NextSiblingElement(xml.Name()) != nullptr)
    step.append("[").append(std::to_string(before + 1)).append("]");
  const auto* parent = xml.Parent() == nullptr ? nullptr : xml.Parent()->ToElement();
  return parent == nullptr ? step : path_of(*parent) + "/" + step;
}

}  // namespace models
