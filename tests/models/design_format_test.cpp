// The table that the reader works from, the reference page and the schema say the same of every element and attribute.
#include "models/design_format.h"

#include <map>
#include <set>
#include <sstream>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <tinyxml2.h>

#include "models/buildable.h"
#include "models/read_design.h"
#include "models/stock.h"
#include "tests/models/design_text.h"
#include "tests/support/temporary_folder.h"

namespace {

using models::AttributeFormat;
using models::design_format;
using models::ElementFormat;
using models::ValueKind;

std::vector<std::string> strings(const std::vector<std::string_view>& views) {
  return {views.begin(), views.end()};
}

std::vector<std::string> attribute_names(const ElementFormat& element) {
  std::vector<std::string> names;
  for (const auto& attribute : element.attributes) names.emplace_back(attribute.name);
  return names;
}

std::vector<std::string> parents_of(const ElementFormat& element) {
  std::vector<std::string> names;
  for (const auto& other : design_format())
    for (const auto& child : other.children)
      if (child == element.name) names.emplace_back(other.name);
  return names;
}

TEST(DesignFormat, IsATreeUnderOneRoot) {
  std::set<std::string_view> seen;
  for (const auto& element : design_format()) {
    EXPECT_TRUE(seen.insert(element.name).second) << element.name;
    EXPECT_EQ(parents_of(element).empty(), &element == &design_format().front()) << element.name;
    for (const auto& child : element.children) EXPECT_EQ(models::element_format(child).name, child);
  }
}

TEST(DesignFormat, EveryAttributeIsRequiredOrSaysWhatHoldsWithoutIt) {
  for (const auto& element : design_format())
    for (const auto& attribute : element.attributes) {
      const bool has_default = !attribute.default_in.empty(), computed = !attribute.otherwise.empty();
      EXPECT_EQ(attribute.default_in.empty(), attribute.default_mm.empty())
          << element.name << "/@" << attribute.name;
      EXPECT_EQ(attribute.required + has_default + computed, 1) << element.name << "/@" << attribute.name;
      EXPECT_LE(attribute.least, attribute.most) << element.name << "/@" << attribute.name;
    }
}

// --- the reference page ------------------------------------------------------------------------------------------

const std::string& page() {
  static const std::string text = support::read_bytes(PROJECT_DIR "/docs/design-file.md");
  return text;
}

// The text under the element's heading, up to the next heading.
std::string section(const std::string& element) {
  const std::string heading = "\n## `" + element + "`\n";
  const auto from = page().find(heading);
  if (from == std::string::npos) return "";
  const std::string rest = page().substr(from + heading.size());
  return rest.substr(0, rest.find("\n#"));
}

// The cells of every row of a table, heading and rule left out.
std::vector<std::vector<std::string>> rows(const std::string& text) {
  std::vector<std::vector<std::string>> found;
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) {
    if (!line.starts_with("| `")) continue;
    std::vector<std::string> cells;
    for (std::size_t at = 0; line.find(" |", at + 1) != std::string::npos;) {
      const auto end = line.find(" |", at + 1);
      cells.push_back(end > at + 2 ? line.substr(at + 2, end - at - 2) : "");
      at = end + 1;
    }
    found.push_back(cells);
  }
  return found;
}

TEST(DesignPage, HasASectionForEveryElementAndNoOther) {
  std::vector<std::string> headings, expected;
  std::istringstream lines(page());
  for (std::string line; std::getline(lines, line);)
    if (line.starts_with("## `")) headings.push_back(line.substr(4, line.size() - 5));
  for (const auto& element : design_format()) expected.emplace_back(element.name);
  EXPECT_EQ(headings, expected);
}

TEST(DesignPage, SaysWhereAnElementStandsHowOftenAndWhatItHolds) {
  for (const auto& element : design_format()) {
    std::string where = "The root element.";
    const auto parents = parents_of(element);
    for (std::size_t i = 0; i < parents.size(); ++i)
      where = (i == 0 ? "In `" : where + " or `") + parents[i] + "`";
    if (!parents.empty())
      where += element.required
                   ? ", once."
                   : ", at most " + (element.most == 1 ? std::string("once.")
                                                       : std::to_string(element.most) + " times.");
    EXPECT_TRUE(section(std::string(element.name)).starts_with("\n" + where + "\n"))
        << element.name << ": " << where;

    std::string holds;
    for (const auto& child : element.children)
      holds += (holds.empty() ? "\nHolds: `" : ", `") + std::string(child) + "`";
    if (holds.empty())
      EXPECT_EQ(section(std::string(element.name)).find("\nHolds: "), std::string::npos) << element.name;
    else
      EXPECT_NE(section(std::string(element.name)).find(holds + ".\n"), std::string::npos)
          << element.name << ": " << holds;
  }
}

TEST(DesignPage, HasARowForEveryAttributeWithItsValueRangeAndDefault) {
  for (const auto& element : design_format()) {
    std::vector<std::string> names;
    for (const auto& cells : rows(section(std::string(element.name)))) {
      ASSERT_EQ(cells.size(), 5u) << element.name << " " << cells[0];
      names.push_back(cells[0].substr(1, cells[0].size() - 2));
      const auto* attribute = find_attribute(element, names.back());
      if (attribute == nullptr) continue;  // the lists differ, which is said below
      EXPECT_NE(cells[1], "") << element.name << "/@" << attribute->name;
      EXPECT_EQ(cells[2], describe_value(*attribute)) << element.name << "/@" << attribute->name;
      EXPECT_EQ(cells[3], describe_range(*attribute)) << element.name << "/@" << attribute->name;
      EXPECT_EQ(cells[4], describe_default(*attribute)) << element.name << "/@" << attribute->name;
    }
    EXPECT_EQ(names, attribute_names(element)) << element.name;
  }
}

TEST(DesignPage, ListsTheStandardStock) {
  const auto expect_row = [](std::string_view title, std::string_view source, const auto& sizes) {
    std::string row = "| " + std::string(title) + " | ";
    for (const auto& size : sizes) row += (&size == &sizes.front() ? "" : ", ") + size.name;
    row += " | " + std::string(source) + " |\n";
    EXPECT_NE(page().find(row), std::string::npos) << row;
  };
  for (const auto& group : models::standard_lumber()) expect_row(group.title, group.source, group.sizes);
  for (const auto& group : models::standard_sheets()) expect_row(group.title, group.source, group.sizes);
  for (const auto& group : models::standard_meshes()) expect_row(group.title, group.source, group.sizes);
}

TEST(DesignPage, ItsExampleIsAGoodDesign) {
  const auto from = page().find("```xml\n") + 7, to = page().find("```", from);
  const auto result = models::read_design(page().substr(from, to - from), "f.xml");
  EXPECT_THAT(test::printed(result.problems), testing::IsEmpty());
  EXPECT_THAT(test::printed(models::unbuildable(result.design)), testing::IsEmpty());
}

// --- the schema --------------------------------------------------------------------------------------------------

using Xml = tinyxml2::XMLElement;

std::string attribute_of(const Xml& xml, const char* name) {
  const char* value = xml.Attribute(name);
  return value == nullptr ? "" : value;
}

// Everything of a name under an element, at any depth.
void collect(const Xml& under, const std::string& name, std::vector<const Xml*>& found) {
  for (const auto* xml = under.FirstChildElement(); xml != nullptr; xml = xml->NextSiblingElement()) {
    if (name == xml->Name()) found.push_back(xml);
    collect(*xml, name, found);
  }
}
std::vector<const Xml*> all(const Xml& under, const std::string& name) {
  std::vector<const Xml*> found;
  collect(under, name, found);
  return found;
}

class DesignSchemaTable : public testing::Test {
 protected:
  void SetUp() override {
    ASSERT_EQ(document_.LoadFile(PROJECT_DIR "/docs/design.xsd"), tinyxml2::XML_SUCCESS);
    root_ = document_.RootElement();
    for (const auto* type : all(*root_, "xs:complexType")) types_[attribute_of(*type, "name")] = type;
    for (const auto* type : all(*root_, "xs:simpleType"))
      if (type->Attribute("name") != nullptr) simple_[attribute_of(*type, "name")] = type;
    for (const auto* element : all(*root_, "xs:element")) {
      const std::string name = attribute_of(*element, "name"), type = attribute_of(*element, "type");
      EXPECT_TRUE(elements_.emplace(name, type).second || elements_[name] == type)
          << name << " has two types";
    }
  }

  // What an attribute may be: its named type, or the one written in it.
  const Xml& type_of(const Xml& attribute) {
    const std::string name = attribute_of(attribute, "type");
    return name.empty() ? *attribute.FirstChildElement("xs:simpleType") : *simple_.at(name);
  }

  tinyxml2::XMLDocument document_;
  const Xml* root_ = nullptr;
  std::map<std::string, const Xml*> types_, simple_;
  std::map<std::string, std::string> elements_;  // name to type
};

TEST_F(DesignSchemaTable, HasEveryElementWithItsChildren) {
  std::set<std::string> expected, found;
  for (const auto& element : design_format()) expected.emplace(element.name);
  for (const auto& [name, type] : elements_) found.insert(name);
  ASSERT_EQ(found, expected);
  for (const auto& element : design_format()) {
    std::vector<std::string> children;
    for (const auto* child : all(*types_.at(elements_.at(std::string(element.name))), "xs:element"))
      children.push_back(attribute_of(*child, "name"));
    EXPECT_EQ(children, strings(element.children)) << element.name;
  }
}

TEST_F(DesignSchemaTable, HasEveryAttributeWithItsKind) {
  const std::map<ValueKind, std::string> named = {
      {ValueKind::length, "length"},   {ValueKind::pitch, "pitch"},       {ValueKind::angle, "angle"},
      {ValueKind::text, "text"},       {ValueKind::lumber, "stock-name"}, {ValueKind::sheet, "stock-name"},
      {ValueKind::mesh, "stock-name"}, {ValueKind::number, "number"},     {ValueKind::offset, "offset"},
      {ValueKind::turn, "turn"},       {ValueKind::points, "points"},     {ValueKind::volume, "volume"}};
  for (const auto& element : design_format()) {
    std::vector<std::string> names;
    for (const auto* xml : all(*types_.at(elements_.at(std::string(element.name))), "xs:attribute")) {
      names.push_back(attribute_of(*xml, "name"));
      const auto* attribute = find_attribute(element, names.back());
      if (attribute == nullptr) continue;  // the lists differ, which is said below
      const std::string path = std::string(element.name) + "/@" + names.back();
      EXPECT_EQ(attribute_of(*xml, "use") == "required", attribute->required) << path;
      std::vector<std::string> words;
      for (const auto* word : all(type_of(*xml), "xs:enumeration"))
        words.push_back(attribute_of(*word, "value"));
      EXPECT_EQ(words, strings(attribute->choices)) << path;
      if (attribute->kind == ValueKind::whole) {
        const auto least = all(type_of(*xml), "xs:minInclusive"),
                   most = all(type_of(*xml), "xs:maxInclusive");
        ASSERT_TRUE(least.size() == 1 && most.size() == 1) << path;
        EXPECT_EQ(least[0]->IntAttribute("value"), attribute->least) << path;
        EXPECT_EQ(most[0]->IntAttribute("value"), attribute->most) << path;
      } else if (attribute->kind != ValueKind::choice) {
        EXPECT_EQ(attribute_of(*xml, "type"), named.at(attribute->kind)) << path;
      }
    }
    EXPECT_EQ(names, attribute_names(element)) << element.name;
  }
}

}  // namespace
