// Text that people wrote, for formats that don't take every byte.
#pragma once

#include <string>
#include <string_view>

namespace exporters {

// The characters of UTF-8 text. Bytes that are not UTF-8 become U+FFFD, one each; so do surrogates and
// overlong forms.
[[nodiscard]] std::u32string code_points(std::string_view utf8);

}  // namespace exporters
