// A plain reader of comma-separated values (RFC 4180), sharing nothing with what writes them.
#pragma once

#include <map>
#include <string>
#include <vector>

namespace support {

// The rows of a text, the head first; as lenient as readers are (a lone line feed ends a row). Nothing when a quotation
// mark is not closed.
[[nodiscard]] std::vector<std::vector<std::string>> read_csv(const std::string& text);

// The rows below the head, each by the names of the columns. Throws std::runtime_error where a row has more cells than the
// head, or fewer.
[[nodiscard]] std::vector<std::map<std::string, std::string>> records(const std::string& text);

}  // namespace support
