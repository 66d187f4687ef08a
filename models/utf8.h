// What is well-formed UTF-8 (RFC 3629), and which of it people can see.
#pragma once

#include <cstddef>
#include <string_view>

namespace models {

// Bytes of the well-formed character that `text` begins with; 0 when it begins with none.
[[nodiscard]] std::size_t character_bytes(std::string_view text);

// Whether a byte is a control character (including line ends and tabs), none of which can be seen.
[[nodiscard]] bool is_control(char byte);

// Whether all of the text is well-formed and free of control characters.
[[nodiscard]] bool is_printable(std::string_view text);

// How many characters well-formed text has.
[[nodiscard]] std::size_t character_count(std::string_view text);

}  // namespace models
