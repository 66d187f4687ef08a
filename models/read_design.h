// From a design file's text to a Design, or to everything that is wrong with it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "models/design.h"
#include "models/problem.h"

namespace models {

struct ReadResult {
  Design design;                  // meaningful only when there are no problems
  std::vector<Problem> problems;  // in the order of the file's lines
  std::vector<Problem> remarks;   // worth a word on standard error, none of them fatal
};

// One value of the design file replaced before it is read: `path` names an element or attribute as XPath
// does, without its leading root ("roof/@pitch", "wall[2]/door/@left").
struct Override {
  std::string path;
  std::string value;
};

// `file` is only named in the problems. Never throws on account of the text, whatever it holds.
[[nodiscard]] ReadResult read_design(std::string_view text, const std::string& file,
                                     const std::vector<Override>& overrides = {});

}  // namespace models
