// docs/elements.md: every element has its section, every excerpt holds what the format has, and every picture is the one
// that the program draws today.
#include "support/element_pictures.h"

#include <filesystem>
#include <set>
#include <sstream>

#include <gtest/gtest.h>
#include <tinyxml2.h>

#include "models/design_format.h"
#include "support/example_plan.h"
#include "support/temporary_folder.h"

namespace fs = std::filesystem;

namespace {

const fs::path docs = PROJECT_DIR "/docs";

const std::string& page() {
  static const std::string text = support::read_bytes(docs / "elements.md");
  return text;
}

// The text under an element's heading, up to the next heading.
std::string section(std::string_view element) {
  const std::string heading = "\n## `" + std::string(element) + "`\n";
  const auto from = page().find(heading);
  if (from == std::string::npos) return "";
  const std::string rest = page().substr(from + heading.size());
  return rest.substr(0, rest.find("\n## "));
}

// What stands between each pair of marks.
std::vector<std::string> between(const std::string& text, const std::string& open, const std::string& close) {
  std::vector<std::string> out;
  for (std::size_t at = text.find(open); at != std::string::npos; at = text.find(open, at)) {
    at += open.size();
    const std::size_t end = text.find(close, at);
    out.push_back(text.substr(at, end - at));
  }
  return out;
}

std::vector<std::string> excerpts(const std::string& text) { return between(text, "```xml\n", "```"); }
std::vector<std::string> pictures(const std::string& text) {
  return between(text, "](images/elements/", ")");
}

void expect_known(const tinyxml2::XMLElement& element) {
  std::set<std::string_view> names;
  for (const models::ElementFormat& format : models::design_format()) names.insert(format.name);
  ASSERT_TRUE(names.contains(element.Name())) << element.Name();
  const models::ElementFormat& format = models::element_format(element.Name());
  for (const auto* a = element.FirstAttribute(); a; a = a->Next())
    EXPECT_NE(models::find_attribute(format, a->Name()), nullptr) << element.Name() << "/@" << a->Name();
  for (const auto* child = element.FirstChildElement(); child; child = child->NextSiblingElement())
    expect_known(*child);
}

TEST(elements_page, describes_every_element_with_an_excerpt_and_a_picture) {
  std::size_t sections = 0;
  for (const models::ElementFormat& element : models::design_format()) {
    SCOPED_TRACE(element.name);
    const std::string text = section(element.name);
    ASSERT_FALSE(text.empty());
    ++sections;
    EXPECT_GE(pictures(text).size(), 1U);
    const std::vector<std::string> xml = excerpts(text);
    ASSERT_GE(xml.size(), 1U);
    bool shows_itself = false;
    for (const std::string& excerpt : xml)
      shows_itself = shows_itself || excerpt.find("<" + std::string(element.name)) != std::string::npos;
    EXPECT_TRUE(shows_itself);
  }
  EXPECT_EQ(between(page(), "\n## `", "`").size(), sections);
}

TEST(elements_page, has_excerpts_of_what_the_format_holds) {
  for (std::string excerpt : excerpts(page())) {
    SCOPED_TRACE(excerpt);
    if (excerpt.rfind("<coop", 0) == 0) excerpt += "</coop>";
    tinyxml2::XMLDocument document;
    ASSERT_EQ(document.Parse(excerpt.c_str()), tinyxml2::XML_SUCCESS);
    for (const auto* e = document.FirstChildElement(); e; e = e->NextSiblingElement()) expect_known(*e);
  }
}

TEST(elements_page, shows_the_pictures_that_the_program_draws) {
  std::set<std::string> drawn, shown, stored;
  for (const support::ElementPicture& picture : support::element_pictures(PROJECT_DIR)) {
    const std::string file = picture.name + ".svg";
    EXPECT_TRUE(drawn.insert(file).second) << file;
    const fs::path path = docs / "images/elements" / file;
    ASSERT_TRUE(fs::exists(path)) << path;
    const std::string bytes = svg(picture.drawing);
    EXPECT_TRUE(support::read_bytes(path) == bytes)
        << file << " is not what the program draws now: run build/tests/draw_element_pictures";
    EXPECT_LT(bytes.size(), 20'000U) << file;
  }
  for (const std::string& file : pictures(page())) shown.insert(file);
  for (const auto& entry : fs::directory_iterator(docs / "images/elements"))
    stored.insert(entry.path().filename().string());
  EXPECT_EQ(drawn, shown);
  EXPECT_EQ(drawn, stored);
}

TEST(elements_page, shows_designs_without_a_finding) {
  const std::vector<std::string> designs = support::designs_in(docs / "images/designs");
  EXPECT_GE(designs.size(), 7U);
  std::set<std::string> used;
  const auto gather = [&](const auto& self, const tinyxml2::XMLElement& element) -> void {
    used.insert(element.Name());
    for (const auto* child = element.FirstChildElement(); child; child = child->NextSiblingElement())
      self(self, *child);
  };
  for (const std::string& file : designs) {
    SCOPED_TRACE(file);
    const exporters::Plan plan = support::plan_of_file(file);
    EXPECT_GT(plan.building.parts.size(), 0U);
    for (const models::Finding& finding : plan.findings)
      EXPECT_NE(finding.severity, models::Severity::error) << finding.message;
    tinyxml2::XMLDocument document;
    ASSERT_EQ(document.LoadFile(file.c_str()), tinyxml2::XML_SUCCESS);
    gather(gather, *document.RootElement());
  }
  for (const models::ElementFormat& element : models::design_format())
    EXPECT_TRUE(used.contains(std::string(element.name))) << element.name << " is in none of them";
}

}  // namespace
