// A small drawing of each finding that has a place: the parts concerned, what stands round them, the spot.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "exporters/drawing.h"
#include "exporters/plan.h"

namespace exporters {

struct FindingPicture {
  std::string file;  // name in the pack's folder findings/: "03-fit-overlap.svg"
  Drawing drawing;
};

// Of errors and warnings that are about parts, not of notes; of the first 99 in a design that has more. The number
// is the finding's place in Plan::findings, from 1. The parts concerned are drawn heavy, as if nothing stood before
// them, what of each other they hide dashed; the others within 300 mm of the spot light, but for those that stand
// before it, and a square of the ground where it is near. A distance between two parts has its dimension. Beneath
// stand message, figures and advice.
[[nodiscard]] std::vector<FindingPicture> finding_pictures(const Plan& plan);

// Writes findings/*.svg; nothing when there is none.
void write_finding_pictures(const Plan& plan, const std::filesystem::path& out);

}  // namespace exporters
