// The sizes that lumber and sheets are sold in, and the list that a design chooses from.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "models/design.h"

namespace models {

// Sizes that come from one publication, or from one custom of the trade.
struct LumberGroup {
  std::string_view title;
  std::string_view source;
  std::vector<Lumber> sizes;
};
struct SheetGroup {
  std::string_view title;
  std::string_view source;
  std::vector<Sheet> sizes;
};

struct MeshGroup {
  std::string_view title;
  std::string_view source;
  std::vector<Mesh> sizes;
};

// US softwood is named by its nominal inches ("2x4", "5/4x6") and has its dressed, dry size. Metric sections
// are named by their millimetres, the lesser first ("38x63").
[[nodiscard]] std::vector<LumberGroup> standard_lumber();
// Named by thickness and kind: "1/2 plywood", "12mm plywood".
[[nodiscard]] std::vector<SheetGroup> standard_sheets();
// Named by the distance from wire to wire: "1/2 hardware cloth", "13mm mesh".
[[nodiscard]] std::vector<MeshGroup> standard_meshes();

// The lengths that boards are commonly sold in: 8 to 16 ft, or 2.4 to 4.8 m; common practice.
[[nodiscard]] std::vector<Length> usual_lengths(Units units);

// What a design may be made of. Names are unique.
struct Stock {
  std::vector<Lumber> lumber;
  std::vector<Sheet> sheets;
  std::vector<Mesh> meshes;
};
// Every standard size, of both unit systems.
[[nodiscard]] Stock standard_stock();

// Found by name, whatever its case and spaces, with × read as x: "2 X 4" is "2x4". Null when there is none.
[[nodiscard]] const Lumber* find_lumber(const Stock& stock, std::string_view name);
[[nodiscard]] const Sheet* find_sheet(const Stock& stock, std::string_view name);
[[nodiscard]] const Mesh* find_mesh(const Stock& stock, std::string_view name);

// The name in the list that comes closest to one that is not in it: the same section turned round where
// there is one ("4x2" for 2x4), else the nearest width of that thickness ("2x7" for 2x6), else the least edit
// distance.
[[nodiscard]] std::string nearest_lumber(const Stock& stock, std::string_view name);
[[nodiscard]] std::string nearest_sheet(const Stock& stock, std::string_view name);
[[nodiscard]] std::string nearest_mesh(const Stock& stock, std::string_view name);

// Adds the size, or puts it in the place of the one with the same name.
void set_lumber(Stock& stock, const Lumber& lumber);
void set_sheet(Stock& stock, const Sheet& sheet);
void set_mesh(Stock& stock, const Mesh& mesh);

}  // namespace models
