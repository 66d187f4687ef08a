#include "models/check_format.h"

#include <algorithm>
#include <string>
#include <vector>

#include <tinyxml2.h>

#include "models/nearest_name.h"
#include "models/read_parts.h"

namespace models {
namespace {

std::string known_names(const std::string& name, const std::vector<std::string_view>& known) {
  if (known.empty()) return "expected none";
  return "expected " + list_of(known) +
         "; nearest: " + nearest_name(name, std::vector<std::string>(known.begin(), known.end()));
}

void unknown(const Element& element, const std::string& step, int line, const std::string& message) {
  if (element.reading().newer_format)
    element.remark_inside(step, line, message);
  else
    element.problem_inside(step, line, message);
}

// What editors write at the root to find the schema.
bool belongs_to_schema(const std::string& attribute) {
  return attribute.starts_with("xmlns:") || attribute.starts_with("xsi:");
}

void check_attributes(const Element& element) {
  const ElementFormat& format = element.format();
  std::vector<std::string_view> known;
  for (const auto& attribute : format.attributes) {
    known.push_back(attribute.name);
    if (attribute.required && !element.has(attribute.name))
      element.problem(attribute.name, "is missing: expected " + element.expected(attribute));
  }
  const bool is_root = &format == &design_format().front();
  for (const auto* attribute = element.xml()->FirstAttribute(); attribute != nullptr;
       attribute = attribute->Next()) {
    const std::string name = attribute->Name();
    if (find_attribute(format, name) != nullptr || (is_root && belongs_to_schema(name))) continue;
    unknown(element, "@" + name, attribute->GetLineNum(), "is not known here: " + known_names(name, known));
  }
}

// Elements of a known name are visited only as often as they may stand here.
void check_children(const Element& element) {
  const auto& known = element.format().children;
  std::vector<int> counts(known.size());
  std::vector<int> first_lines(known.size());
  for (const auto* xml = element.xml()->FirstChildElement(); xml != nullptr;
       xml = xml->NextSiblingElement()) {
    const std::string name = xml->Name();
    const auto place = static_cast<std::size_t>(std::find(known.begin(), known.end(), name) - known.begin());
    if (place == known.size()) {
      unknown(element, name, xml->GetLineNum(), "is not known here: " + known_names(name, known));
      continue;
    }
    const int most = element_format(name).most;
    if (++counts[place] == 1) first_lines[place] = xml->GetLineNum();
    if (counts[place] != most + 1) continue;
    element.problem_inside(name, xml->GetLineNum(),
                           "stands here too often: expected at most " + std::to_string(most) +
                               "; the first is in line " + std::to_string(first_lines[place]));
  }
  const bool is_root = &element.format() == &design_format().front();
  const bool without_house = is_root && only_extra_parts(element);
  for (std::size_t i = 0; i < known.size(); ++i) {
    if (element_format(known[i]).required && !without_house && counts[i] == 0)
      element.child(known[i]).problem("is missing: every design has one");
    for (const auto& child : element.children(known[i])) check_format(child);
  }
}

void check_text(const Element& element) {
  constexpr std::string_view space = " \t\r\n";
  for (const auto* node = element.xml()->FirstChild(); node != nullptr; node = node->NextSibling()) {
    const auto* text = node->ToText();
    if (text == nullptr) continue;
    std::string_view words = text->Value();
    const auto first = words.find_first_not_of(space);
    if (first == std::string_view::npos) continue;
    words = words.substr(first, words.find_last_not_of(space) - first + 1);
    element.problem_inside("text()", text->GetLineNum(),
                           in_quotes(words) + " has no place here: expected attributes and elements only");
  }
}

}  // namespace

void check_format(const Element& element) {
  check_attributes(element);
  check_children(element);
  check_text(element);
}

}  // namespace models
