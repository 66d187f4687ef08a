#include "models/design_overrides.h"

#include <algorithm>
#include <optional>

#include <tinyxml2.h>

#include "models/nearest_name.h"
#include "models/utf8.h"

namespace models {
namespace {

using tinyxml2::XMLElement;

// name, name[2], name[@side='front']
struct Step {
  std::string name;
  std::optional<int> number;
  std::string key;  // attribute that must have `value`; empty when none
  std::string value;

  [[nodiscard]] bool fits(const XMLElement& xml) const {
    if (name != xml.Name()) return false;
    return key.empty() || xml.Attribute(key.c_str(), value.c_str()) != nullptr;
  }
};

std::optional<Step> read_step(std::string_view text) {
  Step step;
  const auto bracket = text.find('[');
  step.name = text.substr(0, bracket);
  if (step.name.empty()) return std::nullopt;
  if (bracket == std::string_view::npos) return step;
  if (text.back() != ']') return std::nullopt;
  const std::string_view inside = text.substr(bracket + 1, text.size() - bracket - 2);
  if (inside.starts_with("@")) {
    const auto equals = inside.find('=');
    if (equals == std::string_view::npos || equals + 3 > inside.size()) return std::nullopt;
    const char quote = inside[equals + 1];
    if ((quote != '\'' && quote != '"') || inside.back() != quote) return std::nullopt;
    step.key = inside.substr(1, equals - 1);
    step.value = inside.substr(equals + 2, inside.size() - equals - 3);
    return step.key.empty() ? std::nullopt : std::optional(step);
  }
  step.number = read_whole(inside);
  return step.number && *step.number > 0 ? std::optional(step) : std::nullopt;
}

// Steps are parted by "/" outside of brackets.
std::vector<std::string_view> split(std::string_view path) {
  std::vector<std::string_view> steps;
  bool inside = false;
  std::size_t from = 0;
  for (std::size_t i = 0; i <= path.size(); ++i) {
    if (i < path.size() && path[i] == '[') inside = true;
    if (i < path.size() && path[i] == ']') inside = false;
    if (i < path.size() && (inside || path[i] != '/')) continue;
    steps.push_back(path.substr(from, i - from));
    from = i + 1;
  }
  return steps;
}

std::vector<XMLElement*> children_that_fit(XMLElement& parent, const Step& step) {
  std::vector<XMLElement*> found;
  for (auto* xml = parent.FirstChildElement(); xml != nullptr; xml = xml->NextSiblingElement())
    if (step.fits(*xml)) found.push_back(xml);
  if (!step.number) return found;
  const auto place = static_cast<std::size_t>(*step.number - 1);
  if (place >= found.size()) return {};
  return {found[place]};
}

// Whether the element's name and the attribute's are of the format; when not, what there is instead.
std::string why_not_known(const std::string& element, const std::string& attribute) {
  for (const auto& format : design_format()) {
    if (format.name != element) continue;
    if (find_attribute(format, attribute) != nullptr) return "";
    std::vector<std::string> known;
    for (const auto& candidate : format.attributes) known.emplace_back(candidate.name);
    return in_quotes(element) + " has no attribute " + in_quotes(attribute) + "; nearest: @" +
           nearest_name(attribute, known);
  }
  return in_quotes(element) + " is not known";
}

std::string what_there_is(const XMLElement& parent, const std::string& wanted) {
  std::vector<std::string> paths, names;
  const std::string root = "coop/";
  for (const auto* xml = parent.FirstChildElement(); xml != nullptr && paths.size() < 100;
       xml = xml->NextSiblingElement()) {
    names.emplace_back(xml->Name());
    const std::string path = path_of(*xml);
    paths.push_back(path.starts_with(root) ? path.substr(root.size()) : path);
  }
  if (names.empty()) return in_quotes(parent.Name()) + " holds no elements";
  const auto nearest = std::find(names.begin(), names.end(), nearest_name(wanted, names));
  return "nearest in the file: " + paths[static_cast<std::size_t>(nearest - names.begin())].substr(0, 200);
}

// Sets the attribute, or returns why not.
std::string apply(XMLElement& root, const Override& set, Reading& reading) {
  constexpr std::string_view form =
      "expected steps and an attribute, as in roof/@pitch or wall[2]/door/@left";
  if (set.path.size() > 1'000 || !is_printable(set.path)) return "is no path: " + std::string(form);
  std::string_view path = set.path;
  if (path.starts_with("/")) path.remove_prefix(1);
  const std::string root_step = std::string(root.Name()) + "/";
  if (path.starts_with(root_step)) path.remove_prefix(root_step.size());
  auto steps = split(path);
  std::string_view attribute_step = steps.back();
  if (!attribute_step.starts_with("@") || attribute_step.size() < 2)
    return "names no attribute: " + std::string(form);
  const std::string attribute(attribute_step.substr(1));
  steps.pop_back();

  XMLElement* place = &root;
  for (const auto& text : steps) {
    const auto step = read_step(text);
    if (!step) return in_quotes(text) + " is no step of a path: " + std::string(form);
    const auto found = children_that_fit(*place, *step);
    if (found.empty())
      return in_quotes(text) + " names nothing in the file; " + what_there_is(*place, step->name);
    if (found.size() > 1)
      return in_quotes(text) + " names " + std::to_string(found.size()) + " elements: expected one, as in " +
             std::string(text) + "[1]";
    place = found.front();
  }
  if (std::string why = why_not_known(place->Name(), attribute); !why.empty()) return why;
  if (!is_printable(set.value) || set.value.size() > 1'000)
    return "the value " + in_quotes(set.value) + " can't be used: expected text on one line";
  place->SetAttribute(attribute.c_str(), set.value.c_str());
  reading.set_from_outside.emplace_back(place, attribute);
  return "";
}

}  // namespace

void apply_overrides(XMLElement& root, const std::vector<Override>& overrides, Reading& reading) {
  for (const auto& set : overrides)
    if (const std::string why = apply(root, set, reading); !why.empty())
      reading.problems.push_back(
          {reading.file, 0, "", "value set from outside, " + in_quotes(set.path) + ": " + why});
}

}  // namespace models
