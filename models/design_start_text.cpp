// The file that a flock's house is written to.
#include <cmath>
#include <utility>

#include "models/design_start.h"
#include "models/flock.h"

namespace models {
namespace {

using geometry::inches;
using geometry::mm;

// Builds the text line by line; lengths as people write them: "6ft 6in", "1/2in", "1200".
class Writer {
 public:
  Writer(const StartChoices& choices, const StartSizes& sizes) : choices_(choices), s_(sizes) {}

  std::string text() {
    head();
    house();
    walls();
    roof();
    inside();
    outside();
    return text_ + "</coop>\n";
  }

 private:
  [[nodiscard]] bool in_inches() const { return choices_.units == Units::in; }
  [[nodiscard]] std::string pick(const char* in, const char* millimetres) const {
    return in_inches() ? in : millimetres;
  }
  [[nodiscard]] std::string said(Length length) const {
    if (!in_inches()) return std::to_string(std::lround(length.mm()));
    const int halves = static_cast<int>(std::lround(length.inches() * 2));
    const int feet = halves >= 72 ? halves / 24 : 0, whole = halves / 2 - feet * 12;
    std::string text = feet > 0 ? std::to_string(feet) + "ft" : "";
    if (whole == 0 && halves % 2 == 0 && feet > 0) return text;
    if (feet > 0) text += " ";
    if (whole > 0 || halves % 2 == 0) text += std::to_string(whole);
    if (halves % 2 != 0) text += whole > 0 ? " 1/2" : "1/2";
    return text + "in";
  }
  // A length as prose says it.
  [[nodiscard]] std::string spoken(Length length) const { return said(length) + (in_inches() ? "" : " mm"); }

  static std::string attribute(const char* name, const std::string& value) {
    return std::string(" ") + name + "=\"" + value + "\"";
  }
  [[nodiscard]] std::string attribute(const char* name, Length value) const {
    return attribute(name, said(value));
  }
  void line(const std::string& text) { text_ += text + "\n"; }
  void remark(const std::string& text, const char* indent = "  ") {
    line(std::string(indent) + "<!-- " + text + " -->");
  }

  void head() {
    constexpr const char* sizes[] = {"bantam", "medium", "large"};
    const std::string size = sizes[static_cast<int>(choices_.size)], birds = std::to_string(choices_.birds);
    line("<?xml version=\"1.0\" encoding=\"UTF-8\"?>");
    line("<!-- Written by coopwright for " + birds + " " + size +
         " birds, to be changed: docs/design-file.md tells each element and attribute.");
    line("     `coopwright check` says what a change breaks, and the nearest that would not. -->");
    line("<coop" + attribute("format", "1") + attribute("name", "House for " + birds + " birds") +
         attribute("units", in_inches() ? "in" : "mm") + ">");
    remark("Birds that may come later count too: planned=\"2\".");
    line("  <flock" + attribute("birds", birds) + attribute("size", size) + "/>");
    line("");
  }

  void house() {
    const FlockNeeds needs = flock_needs(choices_.size, Climate::temperate, choices_.units);
    const double ft2 = (geometry::feet(1) * geometry::feet(1)).mm2;
    const int tenths = static_cast<int>(
        std::lround(needs.floor.better / (in_inches() ? ft2 : 1e6) * (in_inches() ? 1 : 100)));
    remark("Over the outsides of the frames. " +
           (in_inches()
                ? std::to_string(tenths) + " square feet"
                : "0." + std::string(tenths < 10 ? "0" : "") + std::to_string(tenths) + " square metres") +
           " of floor a bird" +
           (choices_.roof == RoofKind::single_slope ? "; the wall height is the back wall's." : "."));
    line("  <house" + attribute("width", s_.width) + attribute("depth", s_.depth) +
         attribute("wall-height", s_.wall_height) +
         attribute("framing", s_.walk_in ? pick("2x3", "38x63") : pick("2x2", "38x38")) +
         attribute("post-spacing", pick("24in", "600")) + "/>");
    remark("Slats with a gap that no mouse gets through.");
    line("  <cladding" + attribute("slats", s_.walk_in ? pick("1x6", "19x150") : pick("1x4", "19x100")) +
         attribute("run", "upright") + attribute("gap", pick("1/8in", "3")) + "/>");
    line("");
  }

  void keepers_doors() {
    remark(s_.walk_in ? "To walk in by." : "To lean in through: nobody walks into a house this low.", "    ");
    for (int i = 0; i < s_.doors; ++i) {
      const bool right = i > 0;
      const std::string name = s_.doors == 1 ? "keeper's door" : right ? "right door" : "left door";
      line("    <door" + attribute("name", name) +
           attribute("left", s_.door_left + (s_.door_width + s_.frame_width) * i) +
           attribute("bottom", pick("5in", "130")) + attribute("width", s_.door_width) +
           attribute("height", s_.walk_in ? pick("6ft", "1800") : pick("3ft", "900")) + ">");
      line("      <hinges" + attribute("edge", right ? "right" : "left") + attribute("opens", "110deg") +
           "/>");
      line("    </door>");
    }
  }

  void bird_door() {
    const FlockNeeds needs = flock_needs(choices_.size, Climate::temperate, choices_.units);
    remark("Drawn up from outside; its sill holds the litter in.", "    ");
    line("    <bird-door" + attribute("name", "birds' door") +
         (s_.walk_in ? attribute("left", pick("8in", "200")) : "") + attribute("bottom", pick("6in", "150")) +
         attribute("width", mm(needs.bird_door_width.better)) +
         attribute("height", mm(needs.bird_door_height.better)) +
         attribute("sheet", pick("1/2 plywood", "12mm plywood")) + "/>");
  }

  void egg_door() {
    remark("Eggs are taken from outside.", "    ");
    const Length row = s_.box_side * s_.boxes + s_.box_wall * (s_.boxes + 1);
    const Length in = in_inches() ? inches(1.5) : mm(38);
    line("    <nest-door" + attribute("name", "egg door") + attribute("left", s_.nests_left + in) +
         attribute("bottom", pick("22in", "570")) + attribute("width", row - in * 2) +
         attribute("height", pick("9in", "230")) + attribute("sheet", pick("1/2 plywood", "12mm plywood")) +
         ">");
    line("      <hinges" + attribute("edge", "bottom") + attribute("opens", "160deg") + "/>");
    line("    </nest-door>");
  }

  void vents(Side wall) {
    for (const StartSizes::Vent& vent : s_.vents) {
      if (vent.wall != wall) continue;
      if (!std::exchange(said_air_, true))
        remark(
            "Air, under the top rail, behind mesh that keeps mice out: all vents together free a tenth of "
            "the floor.",
            "    ");
      line("    <vent" + attribute("left", vent.left) + attribute("width", s_.vent_width) +
           attribute("height", s_.vent_height) + attribute("mesh", s_.vent_mesh) + "/>");
    }
  }

  void walls() {
    const Side birds_out = s_.walk_in ? Side::back : Side::right;
    for (const Side side : {Side::front, Side::right, Side::back, Side::left}) {
      const std::size_t before = text_.size();
      const std::string opening = "  <wall" + attribute("side", std::string(name(side))) + ">\n";
      text_ += opening;
      if (side == Side::front) keepers_doors();
      if (side == birds_out) bird_door();
      if (side == Side::left && !s_.walk_in) egg_door();
      vents(side);
      if (text_.size() == before + opening.size())
        text_.resize(before);  // a closed wall needs no word
      else
        line("  </wall>");
    }
    line("");
  }

  void roof() {
    const bool single = choices_.roof == RoofKind::single_slope;
    const bool long_rafters = s_.depth > (in_inches() ? inches(single ? 96 : 144) : mm(single ? 2400 : 3600));
    remark(single ? "One slope, down to the back."
                  : "The ridge runs from left to right, so that rain falls before the front and the back.");
    line("  <roof" +
         (single ? attribute("slopes", "single") + attribute("rises-to", "front") + attribute("pitch", "1:6")
                 : attribute("ridge", "left-to-right") + attribute("pitch", "1:2")) +
         attribute("eave-overhang", pick("6in", "150")) + attribute("gable-overhang", pick("4in", "100")) +
         attribute("rafters", long_rafters ? pick("2x6", "38x140") : pick("2x4", "38x89")) +
         (single ? ""
                 : attribute("ridge-board", long_rafters ? pick("1x4", "19x100") : pick("1x3", "19x75"))) +
         attribute("spacing", pick("24in", "600")) + ">");
    if (!single) line("    <tie" + attribute("size", pick("1x4", "19x100")) + "/>");
    remark("Lay felt or metal over the sheets.", "    ");
    line("    <sheets" + attribute("sheet", pick("1/2 plywood", "12mm plywood")) + "/>");
    line("  </roof>");
    line("");
  }

  void inside() {
    remark("Lower than the roosts, so that nobody sleeps in the nests.");
    line("  <nests" + attribute("wall", s_.walk_in ? "back" : "left") +
         attribute("count", std::to_string(s_.boxes)) + attribute("left", s_.nests_left) +
         attribute("bottom", pick("20in", "520")) + attribute("width", s_.box_side) +
         attribute("depth", s_.box_side) + attribute("height", s_.box_height) + "/>");
    const bool deep = s_.depth > (in_inches() ? inches(96) : mm(2400));
    line("  <roosts" + attribute("runs", "front-to-back") + attribute("count", std::to_string(s_.bars)) +
         attribute("first", s_.first_bar) + attribute("spacing", s_.bar_spacing) +
         attribute("height", s_.walk_in ? pick("4ft", "1200") : pick("28in", "700")) +
         attribute("bars", deep         ? pick("4x4", "75x75")
                           : s_.walk_in ? pick("2x4", "38x89")
                                        : pick("2x2", "38x38")) +
         "/>");
    line("  <litter" + attribute("depth", pick("4in", "100")) + "/>");
    line("");
  }

  void outside() {
    remark("Mesh in the ground round all of it, against what digs.");
    line("  <apron" + attribute("width", pick("12in", "300")) + "/>");
    if (s_.run_length <= Length()) {
      remark(
          "No run: for this many birds it would be longer than boards are. Let them range, or fence a yard.");
      return;
    }
    if (!s_.run_has_top) remark("Too wide for mesh over the top: hang a net over it.");
    line("  <run" + attribute("wall", s_.walk_in ? "back" : "right") + attribute("length", s_.run_length) +
         attribute("height", s_.run_height) + (s_.run_has_top ? "" : attribute("top", "open")) + "/>");
  }

  const StartChoices& choices_;
  const StartSizes& s_;
  std::string text_;
  bool said_air_ = false;
};

}  // namespace

std::string start_design(const StartChoices& choices) {
  const StartSizes sizes = start_sizes(choices);
  return Writer(choices, sizes).text();
}

}  // namespace models
