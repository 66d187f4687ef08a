// What is wrong with a design file. All of a file's problems are reported in one run.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace models {

// Printed as  FILE:LINE: ELEMENT-PATH: MESSAGE
struct Problem {
  std::string file;
  int line = 0;         // 0 when the file as a whole is meant
  std::string element;  // path from the root: "coop/roof/@pitch"
  std::string message;  // what was found, what was expected, the nearest valid choice
};

[[nodiscard]] std::string print(const Problem& problem);

// The text in quotation marks, fit to be shown: cut off after 60 bytes, with whatever is no printable UTF-8
// written as \xNN.
[[nodiscard]] std::string in_quotes(std::string_view text);

}  // namespace models
