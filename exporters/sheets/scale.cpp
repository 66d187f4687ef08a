#include "exporters/sheets/scale.h"

namespace exporters {

const std::vector<Scale>& scales(geometry::Units units) {
  static const std::vector<Scale> metric = [] {
    std::vector<Scale> out;
    for (const int factor : {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000})
      out.push_back({1.0 / factor, "1:" + std::to_string(factor)});
    return out;
  }();
  static const std::vector<Scale> imperial = [] {
    const std::pair<double, const char*> per_foot[] = {
        {12, "12\" = 1'-0\" (full size)"}, {6, "6\" = 1'-0\""},       {3, "3\" = 1'-0\""},
        {1.5, "1 1/2\" = 1'-0\""},         {1, "1\" = 1'-0\""},       {0.75, "3/4\" = 1'-0\""},
        {0.5, "1/2\" = 1'-0\""},           {0.375, "3/8\" = 1'-0\""}, {0.25, "1/4\" = 1'-0\""},
        {0.1875, "3/16\" = 1'-0\""},       {0.125, "1/8\" = 1'-0\""}, {0.09375, "3/32\" = 1'-0\""},
        {0.0625, "1/16\" = 1'-0\""}};
    std::vector<Scale> out;
    for (const auto& [inches, label] : per_foot) out.push_back({inches / 12, label});
    return out;
  }();
  return units == geometry::Units::in ? imperial : metric;
}

}  // namespace exporters
