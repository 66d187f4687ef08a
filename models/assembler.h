// Collects parts into a Building: finds congruent ones, gives marks, makes each distinct body's solid once.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "models/building.h"

namespace models {

// A part as its maker describes it. The body may lie anywhere in its own coordinates.
struct NewPart {
  std::string name;
  Group group = Group::frame;
  Material material;
  Body body;
  Placement placement;
  std::optional<Side> wall;
};

class Assembler {
 public:
  // `path` is the assembly's place in the tree, outermost first, without the root: {"front wall", "frame"}.
  // Returns the part's index.
  std::size_t add(NewPart part, const std::vector<std::string>& path);

  [[nodiscard]] const Building& building() const { return building_; }
  void add(Mover mover) { building_.movers.push_back(std::move(mover)); }
  void add(LooseBox box) { building_.loose_boxes.push_back(std::move(box)); }
  void add(FrameView frame) { building_.frames.push_back(std::move(frame)); }
  [[nodiscard]] Building finish(const std::string& root_name);

 private:
  std::size_t mark_for(const NewPart& part, Placement& placement);

  Building building_;
  std::map<Group, int> numbers_;  // last number given, by group
};

// The stick's material, and its body: length along x, width along y, thickness along z.
[[nodiscard]] Material stick_of(const Lumber& lumber);
[[nodiscard]] Material sheet_of(const Sheet& sheet);
[[nodiscard]] Material mesh_of(const Mesh& mesh);
[[nodiscard]] Material panel_of(const Corrugated& sheet);

}  // namespace models
