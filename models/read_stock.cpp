#include <cmath>
#include <map>

#include "models/read_parts.h"

namespace models {
namespace {

using geometry::abs;

// A name may stand once under <stock>; `lines` holds those seen.
bool is_first(const Element& size, const std::string& name, std::map<std::string, int>& lines) {
  const auto [found, fresh] = lines.emplace(name, size.line());
  if (!fresh)
    size.problem("name",
                 in_quotes(name) + " is given twice: the first is in line " + std::to_string(found->second));
  return fresh;
}

// A slip of the tape or of a unit shows as a size far from the one sold under the name.
void compare_with_standard(const Element& size, const Lumber& own, const Lumber* standard) {
  const Length usual = size.reading().units == Units::in ? geometry::inches(0.125) : geometry::mm(3);
  if (standard == nullptr) return;
  if (abs(own.thickness - standard->thickness) <= usual && abs(own.width - standard->width) <= usual) return;
  size.remark(in_quotes(own.name) + " is " + size.shown(own.thickness) + " by " + size.shown(own.width) +
              " here, and " + size.shown(standard->thickness) + " by " + size.shown(standard->width) +
              " as it is sold");
}

}  // namespace

Stock read_stock(const Element& coop) {
  const Stock standard = standard_stock();
  Stock stock = standard;
  const Element element = coop.child("stock");
  std::map<std::string, int> lumber_lines, sheet_lines, mesh_lines;
  for (const auto& size : element.children("lumber")) {
    const Lumber lumber{size.text("name"), size.length("thickness"), size.length("width")};
    if (!size.sound() || !is_first(size, lumber.name, lumber_lines)) continue;
    if (lumber.thickness > lumber.width) {
      size.must_be_at_most("thickness", lumber.width, "the thickness is the lesser of the two sizes");
      continue;
    }
    compare_with_standard(size, lumber, find_lumber(standard, lumber.name));
    set_lumber(stock, lumber);
  }
  for (const auto& size : element.children("sheet")) {
    const Sheet sheet{size.text("name"), size.length("thickness"), size.length("width"),
                      size.length("length")};
    if (size.sound() && is_first(size, sheet.name, sheet_lines)) set_sheet(stock, sheet);
  }
  for (const auto& size : element.children("mesh")) {
    const Mesh mesh{size.text("name"), size.length("opening"), size.length("wire"), size.length("roll-width"),
                    size.length("roll-length")};
    if (size.sound() && is_first(size, mesh.name, mesh_lines)) set_mesh(stock, mesh);
  }
  return stock;
}

}  // namespace models
