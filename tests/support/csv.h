// A plain reader of comma-separated values (RFC 4180), sharing nothing with what writes them.
#pragma once

#include <string>
#include <vector>

namespace support {

// The rows of a text, the head first; as lenient as readers are (a lone line feed ends a row). Nothing when a quotation
// mark is not closed.
[[nodiscard]] std::vector<std::vector<std::string>> read_csv(const std::string& text);

}  // namespace support
