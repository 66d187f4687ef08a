// A table on a drawing: as wide as its texts need.
#pragma once

#include <string>
#include <vector>

#include "exporters/drawing.h"

namespace exporters {

struct Table {
  std::string title;  // above it; may be empty
  std::vector<std::string> head;
  std::vector<std::vector<std::string>> rows;  // each as long as head
};

inline constexpr double table_row_height = 5;
inline constexpr double widest_column = 100;  // longer texts are cut

// Rows first..last of the table (last not included) with its title and head, the upper left corner at the
// origin. Lettering 2.5 mm.
[[nodiscard]] Drawing table_drawing(const Table& table, std::size_t first, std::size_t last);
[[nodiscard]] Drawing table_drawing(const Table& table);

// The text in lines that fit into a width, broken at spaces.
[[nodiscard]] std::vector<std::string> wrapped(const std::string& text, double cap_height, double width);
// The text cut to what fits into a width, "..." at its end.
[[nodiscard]] std::string fitted(const std::string& text, double cap_height, double width);

}  // namespace exporters
