// Comma-separated values as RFC 4180 has them.
#pragma once

#include <string>
#include <vector>

namespace exporters {

// Cells that hold a comma, a quotation mark or a line break are quoted. A text that a spreadsheet would take for a
// formula (it starts with = + - @) gets a ' in front: designs are handed on, and their names with them.
[[nodiscard]] std::string csv(const std::vector<std::string>& head,
                              const std::vector<std::vector<std::string>>& rows);

}  // namespace exporters
