#include "models/read_design.h"

#include <algorithm>

#include <tinyxml2.h>

#include "models/check_format.h"
#include "models/design_overrides.h"
#include "models/read_parts.h"
#include "models/xml_text.h"

namespace models {
namespace {

// More problems than this are counted, not listed.
constexpr std::size_t most_listed = 500;

std::string sentence(tinyxml2::XMLError error) {
  switch (error) {
    case tinyxml2::XML_ERROR_MISMATCHED_ELEMENT:
      return "an end tag does not belong to the element that is open";
    case tinyxml2::XML_ERROR_PARSING_ELEMENT:
      return "an element's tag is malformed";
    case tinyxml2::XML_ERROR_PARSING_ATTRIBUTE:
      return "an attribute is malformed, stands twice, or its value lacks its quotation marks";
    default:
      return "malformed";
  }
}

XmlFault fault_of(const tinyxml2::XMLDocument& document) {
  std::string text = "not XML: " + sentence(document.ErrorID()) + " (the parser says " +
                     tinyxml2::XMLDocument::ErrorIDToName(document.ErrorID());
  // The parser appends the name it was at, which comes from the file.
  const std::string_view words = document.ErrorStr() == nullptr ? "" : document.ErrorStr();
  if (const auto name = words.find("name="); name != std::string_view::npos)
    text += " at " + in_quotes(words.substr(name + 5));
  return {document.ErrorLineNum(), text + ")"};
}

// The root, or a problem.
tinyxml2::XMLElement* parse(tinyxml2::XMLDocument& document, std::string text, Reading& reading) {
  auto fault = check_xml(text);
  if (!fault && document.Parse(text.data(), text.size()) != tinyxml2::XML_SUCCESS) fault = fault_of(document);
  auto* root = fault ? nullptr : document.RootElement();
  if (!fault && root == nullptr) fault = XmlFault{0, "the file holds no element: expected <coop>"};
  if (!fault && std::string_view(root->Name()) != "coop")
    fault =
        XmlFault{root->GetLineNum(), "the root element is " + in_quotes(root->Name()) + ": expected <coop>"};
  if (!fault) return root;
  reading.problems.push_back({reading.file, fault->line, "", fault->message});
  return nullptr;
}

// A file for a later program is read as far as this one understands it, and refused.
void read_version(const Element& coop) {
  Reading& reading = coop.reading();
  const tinyxml2::XMLElement& xml = *coop.xml();
  const char* text = xml.Attribute("format");
  const auto version = read_whole(text == nullptr ? "" : text);
  if (!version || *version <= design_format_version) return;
  reading.newer_format = true;
  const std::string read = std::to_string(design_format_version);
  coop.problem("format",
               "the file is of format " + std::to_string(*version) + ", and this program reads format " +
                   read + ": what it does not know in it may be meant for a newer program; expected " + read);
}

void read_units(const Element& coop) {
  Reading& reading = coop.reading();
  reading.units = coop.choice<Units>("units");
  reading.units_known = coop.has("units") && coop.sound({"units"});
}

void sort_by_line(std::vector<Problem>& problems) {
  std::stable_sort(problems.begin(), problems.end(),
                   [](const Problem& a, const Problem& b) { return a.line < b.line; });
}

void read(const tinyxml2::XMLElement& root, Design& design, Reading& reading) {
  const Element coop(reading, element_format("coop"), &root, "coop", root.GetLineNum());
  read_version(coop);
  read_units(coop);
  check_format(coop);
  if (!reading.newer_format) static_cast<void>(coop.whole("format"));
  design.name = coop.text("name");
  design.units = reading.units;
  reading.stock = read_stock(coop);
  design.shop = read_shop(coop);
  design.extra_sticks = read_extra_sticks(coop);
  design.extra_panels = read_extra_panels(coop);
  design.site = read_site(coop);
  design.has_house = !only_extra_parts(coop);
  if (!design.has_house && !coop.child("flock").given()) return;
  design.flock = read_flock(coop);
  if (!design.has_house) return;
  design.house = read_house(coop);
  design.roof = read_roof(coop, design.house);
  design.walls = read_walls(coop, design.house, design.roof);
  design.nests = read_nests(coop, design.house);
  design.roosts = read_roosts(coop);
  design.litter = read_litter(coop);
  design.floor = read_floor(coop);
  design.base = read_base(coop);
  design.apron = read_apron(coop);
  design.run = read_run(coop, design.house);
}

}  // namespace

ReadResult read_design(std::string_view text, const std::string& file,
                       const std::vector<Override>& overrides) {
  ReadResult result;
  Reading reading;
  reading.file = file;
  result.design.file = file;
  tinyxml2::XMLDocument document;
  if (auto* root = parse(document, std::string(text), reading)) {
    apply_overrides(*root, overrides, reading);
    read(*root, result.design, reading);
  }
  sort_by_line(reading.problems);
  sort_by_line(reading.remarks);
  if (const std::size_t count = reading.problems.size(); count > most_listed) {
    reading.problems.resize(most_listed);
    reading.problems.push_back(
        {file, 0, "", std::to_string(count - most_listed) + " more problems are not listed"});
  }
  result.problems = std::move(reading.problems);
  result.remarks = std::move(reading.remarks);
  return result;
}

}  // namespace models
