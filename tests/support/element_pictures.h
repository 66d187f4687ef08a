// The pictures of docs/elements.md: which design, seen from where, with what drawn heavy.
#pragma once

#include <string>
#include <vector>

#include "exporters/drawing.h"

namespace support {

struct ElementPicture {
  std::string name;  // docs/images/elements/NAME.svg
  exporters::Drawing drawing;
};

// One for each line of docs/images/elements.txt under `project`, in its order. Throws std::runtime_error with
// what is wrong with the list or a design.
[[nodiscard]] std::vector<ElementPicture> element_pictures(const std::string& project);

}  // namespace support
