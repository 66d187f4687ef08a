// Names of files made from names that people chose.
#pragma once

#include <string>
#include <string_view>

namespace exporters {

// Letters and digits of ASCII stay; runs of anything else become one hyphen, none at either end. "part" when
// nothing is left.
[[nodiscard]] std::string file_name(std::string_view text);

}  // namespace exporters
