// Whether JSON obeys a schema, as python3-jsonschema says: an implementation of JSON Schema 2020-12 that knows
// nothing of this program.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace support {

// One verdict a text. Throws std::runtime_error when the judge itself fails.
[[nodiscard]] std::vector<bool> obeys_schema(const std::vector<std::string>& texts,
                                             const std::filesystem::path& schema);

}  // namespace support
