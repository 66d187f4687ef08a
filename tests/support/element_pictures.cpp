#include "support/element_pictures.h"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <map>
#include <sstream>
#include <stdexcept>

#include "exporters/pictures/whole.h"
#include "support/example_plan.h"

namespace support {
namespace {

using exporters::Drawing;
using exporters::DrawnMarks;
using exporters::PictureView;
using exporters::Shown;
using exporters::Space;
using exporters::Weight;
using geometry::Vec2;
using geometry::Vec3;

constexpr double widest = 110, highest = 80, margin = 2;  // mm

// A line of the list.
struct Row {
  std::string name, design, from, without, heavy, near;
};

std::vector<Row> rows_of(const std::string& file) {
  std::ifstream in(file);
  std::vector<Row> out;
  for (std::string line; std::getline(in, line);) {
    if (line.empty() || line[0] == '#') continue;
    std::vector<std::string> cells(1);
    for (const char c : line) {
      if (c == '|') {
        cells.emplace_back();
      } else {
        cells.back() += c;
      }
    }
    for (std::string& cell : cells) {
      cell.erase(0, cell.find_first_not_of(' '));
      cell.erase(cell.find_last_not_of(' ') + 1);
    }
    if (cells.size() != 6) throw std::runtime_error("not six cells: " + line);
    out.push_back({cells[0], cells[1], cells[2], cells[3], cells[4], cells[5]});
  }
  return out;
}

Vec3 direction_of(const std::string& from) {
  static const std::map<std::string, Vec3> directions{{"front right", {0.62, -1, 0.45}},
                                                      {"front left", {-0.62, -1, 0.45}},
                                                      {"back right", {0.62, 1, 0.45}},
                                                      {"back left", {-0.62, 1, 0.45}},
                                                      {"right front", {1, -0.62, 0.45}},
                                                      {"left front", {-1, -0.62, 0.45}},
                                                      {"right back", {1, 0.62, 0.45}},
                                                      {"left back", {-1, 0.62, 0.45}},
                                                      {"front", {0, -1, 0}},
                                                      {"right", {1, 0, 0}},
                                                      {"front right high", {0.62, -1, 0.9}},
                                                      {"front right below", {0.62, -1, -0.4}}};
  const auto found = directions.find(from);
  if (found == directions.end()) throw std::runtime_error("no such direction: " + from);
  return found->second;
}

// Whether a part is meant by one of the words: its name, or its group as "@roof", either with "/front" for
// those of one wall.
bool meant(const models::Part& part, const std::string& words) {
  std::istringstream in(words);
  for (std::string word; std::getline(in, word, ',');) {
    word.erase(0, word.find_first_not_of(' '));
    const std::size_t slash = word.find('/');
    if (slash != std::string::npos) {
      if (!part.wall || models::name(*part.wall) != word.substr(slash + 1)) continue;
      word.resize(slash);
    }
    if (word == part.name || (!word.empty() && word[0] == '@' && word.substr(1) == models::name(part.group)))
      return true;
  }
  return false;
}

Space around(const Space& space, double by) { return {space.low - Vec2{by, by}, space.high + Vec2{by, by}}; }

Drawing drawing_of(const Row& row, const exporters::Plan& plan, const DrawnMarks& marks) {
  const models::Building& building = plan.building;
  std::vector<Shown> shown, heavy;
  for (std::size_t i = 0; i < building.parts.size(); ++i) {
    const models::Part& part = building.parts[i];
    if (meant(part, row.without)) continue;
    const bool is_heavy = meant(part, row.heavy);
    shown.push_back({i, is_heavy ? Weight::heavy : row.heavy == "-" ? Weight::normal : Weight::light});
    if (is_heavy) heavy.push_back(shown.back());
  }
  if (row.heavy != "-" && heavy.empty()) throw std::runtime_error(row.name + ": no part is " + row.heavy);
  PictureView view{geometry::view_from(direction_of(row.from)), 1, {}, false};
  Space space = extent_in_view(marks, building, shown, view.view);
  if (row.near != "-") {
    const Space all = space;
    space = around(extent_in_view(marks, building, heavy, view.view), std::stod(row.near));
    space = {{std::fmax(space.low.x, all.low.x), std::fmax(space.low.y, all.low.y)},
             {std::fmin(space.high.x, all.high.x), std::fmin(space.high.y, all.high.y)}};
    view.window = space;
  }
  view.scale = std::min(widest / space.width(), highest / space.height());
  Drawing out;
  out.width = std::ceil(space.width() * view.scale + 2 * margin);
  out.height = std::ceil(space.height() * view.scale + 2 * margin);
  out.title = row.name;
  append(out, picture(building, marks, shown, view),
         Vec2{margin - space.low.x * view.scale, margin + space.high.y * view.scale});
  return out;
}

}  // namespace

std::vector<ElementPicture> element_pictures(const std::string& project) {
  std::map<std::string, std::pair<exporters::Plan, DrawnMarks>> plans;
  std::vector<ElementPicture> out;
  for (const Row& row : rows_of(project + "/docs/images/elements.txt")) {
    auto found = plans.find(row.design);
    if (found == plans.end()) {
      exporters::Plan plan = plan_of_file(project + "/docs/images/designs/" + row.design + ".xml");
      DrawnMarks marks = exporters::drawn_marks(plan.building);
      found = plans.emplace(row.design, std::pair(std::move(plan), std::move(marks))).first;
    }
    out.push_back({row.name, drawing_of(row, found->second.first, found->second.second)});
  }
  return out;
}

}  // namespace support
