// The whole program as a function, so that it can be tested.
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

namespace cli {

enum ExitStatus { done = 0, findings = 1, wrong_input = 2, not_written = 3 };

// `arguments` without the program's name. Results go to `out`, progress and diagnostics to `err`.
[[nodiscard]] int run(const std::vector<std::string>& arguments, std::ostream& out, std::ostream& err);

}  // namespace cli
