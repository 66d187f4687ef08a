// XML as text: read once from end to end before the parser gets it, so that nothing in it can make the parser
// slow, deep or silent. The parser used is small; it passes over some faults (a stray end tag, text after the
// root, a NUL) and takes time with the square of an element's attributes.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace models {

struct XmlLimits {
  std::size_t bytes = std::size_t{4} << 20;
  std::size_t depth = 32;
  int elements = 20'000;
  int attributes = 64;  // of one element
};

struct XmlFault {
  int line = 0;  // 0 when the text as a whole is meant
  std::string message;
};

// Checks that the text is UTF-8, is one element with nothing but comments, processing instructions and a
// declaration round it, has no document type and no entities but the five of XML and numbered characters, and
// keeps to the limits. Returns the first fault. `text` is left as it was but for its processing instructions,
// which become spaces.
[[nodiscard]] std::optional<XmlFault> check_xml(std::string& text, const XmlLimits& limits = {});

}  // namespace models
