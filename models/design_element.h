// An element of the design file together with what the format says about it: its values come out checked,
// with the defaults filled in, and whatever is wrong is written down rather than thrown.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "models/design_format.h"
#include "models/problem.h"
#include "models/stock.h"
#include "models/value_text.h"

namespace tinyxml2 {
class XMLElement;
}

namespace models {

// What one reading of a file gathers.
struct Reading {
  std::string file;
  Units units = Units::in;
  bool units_known = true;  // when not, a bare number is taken to be right
  bool newer_format = false;
  Stock stock;
  std::vector<Problem> problems;
  std::vector<Problem> remarks;
  // Attributes whose value was set from outside, by element and name.
  std::vector<std::pair<const tinyxml2::XMLElement*, std::string>> set_from_outside;
};

class Element {
 public:
  // `xml` is null for an element that the file leaves out: all of its values are the defaults.
  Element(Reading& reading, const ElementFormat& format, const tinyxml2::XMLElement* xml, std::string path,
          int line);

  [[nodiscard]] bool given() const { return xml_ != nullptr; }
  [[nodiscard]] const tinyxml2::XMLElement* xml() const { return xml_; }
  [[nodiscard]] const ElementFormat& format() const { return *format_; }
  [[nodiscard]] int line() const { return line_; }  // the parent's when not given
  [[nodiscard]] const std::string& path() const { return path_; }
  [[nodiscard]] Reading& reading() const { return *reading_; }

  // The first child of the name, given or not.
  [[nodiscard]] Element child(std::string_view name) const;
  // The given children of the name, no more than the format allows.
  [[nodiscard]] std::vector<Element> children(std::string_view name) const;

  // Whether no problem has been written down yet about it or anything in it.
  [[nodiscard]] bool sound() const;
  // The same about the element itself, these attributes of it and any that are not known (which may be these,
  // misspelt), whatever its other attributes and its children are like.
  [[nodiscard]] bool sound(std::initializer_list<std::string_view> attributes) const;

  [[nodiscard]] bool has(std::string_view attribute) const;

  // Values by the attribute's name. One that is wrong is written down and replaced by one in range. The
  // optional forms are empty when the attribute is left out.
  [[nodiscard]] int whole(std::string_view attribute) const;
  [[nodiscard]] double number(std::string_view attribute) const;
  [[nodiscard]] Length length(std::string_view attribute) const;
  [[nodiscard]] std::optional<Length> given_length(std::string_view attribute) const;
  [[nodiscard]] Pitch pitch(std::string_view attribute) const;
  [[nodiscard]] Angle angle(std::string_view attribute) const;
  [[nodiscard]] Measure volume(std::string_view attribute) const;
  // Cleaned; a triangle when something is wrong with it.
  [[nodiscard]] geometry::Outline outline(std::string_view attribute) const;
  [[nodiscard]] std::optional<std::string> given_text(std::string_view attribute) const;
  [[nodiscard]] std::string text(std::string_view attribute) const;
  [[nodiscard]] Lumber lumber(std::string_view attribute) const;
  [[nodiscard]] Sheet sheet(std::string_view attribute) const;
  [[nodiscard]] Mesh mesh(std::string_view attribute) const;
  // The mesh and the sheet that are taken where the file names neither them nor what stands for them.
  [[nodiscard]] Mesh default_mesh() const;
  [[nodiscard]] Sheet default_sheet() const;
  [[nodiscard]] std::optional<Lumber> given_lumber(std::string_view attribute) const;
  [[nodiscard]] std::optional<Sheet> given_sheet(std::string_view attribute) const;
  [[nodiscard]] std::optional<Mesh> given_mesh(std::string_view attribute) const;
  // The place of the word among the choices.
  [[nodiscard]] int choice(std::string_view attribute) const;
  template <typename Enum>
  [[nodiscard]] Enum choice(std::string_view attribute) const {
    return static_cast<Enum>(choice(attribute));
  }

  // Writes down what is wrong with the element, or with one attribute of it.
  void problem(std::string message) const;
  void problem(std::string_view attribute, std::string message) const;
  // The same for what is in it and not known, or not wanted: `step` is its name as the file has it.
  void problem_inside(std::string_view step, int line, std::string message) const;
  void remark_inside(std::string_view step, int line, std::string message) const;
  void remark(std::string message) const;
  // An attribute whose value does not go with others: what is wrong, and the nearest value that would do.
  void must_be_at_most(std::string_view attribute, Length most, const std::string& why) const;
  void must_be_at_least(std::string_view attribute, Length least, const std::string& why) const;

  // At most one of the children may stand in it: `why` says so of the second, by its own line.
  void one_of(std::initializer_list<std::string_view> names, const std::string& why) const;

  // What an attribute may be: "length, 12\" to 98'-5\"".
  [[nodiscard]] std::string expected(const AttributeFormat& attribute) const;

  // Lengths as messages show them. The second and third forms round so that the bound itself holds.
  [[nodiscard]] std::string shown(Length length) const;
  [[nodiscard]] std::string shown_at_least(Length length) const;
  [[nodiscard]] std::string shown_at_most(Length length) const;

 private:
  [[nodiscard]] const AttributeFormat& format_of(std::string_view attribute) const;
  [[nodiscard]] std::optional<std::string> given_value(std::string_view attribute) const;
  [[nodiscard]] std::string value_or_default(const AttributeFormat& attribute) const;
  [[nodiscard]] std::string range_of(const AttributeFormat& attribute) const;
  [[nodiscard]] Length checked_length(const AttributeFormat& attribute, const std::string& text) const;
  [[nodiscard]] Problem at(std::string_view attribute, std::string message) const;

  Reading* reading_;
  const ElementFormat* format_;
  const tinyxml2::XMLElement* xml_;
  std::string path_;
  int line_;
};

// The element's path from the root, with a number wherever siblings share a name: "coop/wall[2]/door".
[[nodiscard]] std::string path_of(const tinyxml2::XMLElement& xml);

}  // namespace models
