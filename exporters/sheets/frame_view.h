// One frame drawn to scale with all that is needed to lay it out: members and their marks, dimensions,
// openings, diagonals.
#pragma once

#include <string>
#include <vector>

#include "exporters/drawing.h"
#include "exporters/sheets/linework.h"
#include "geometry/length_text.h"

namespace exporters {

// What a view is drawn from, worked out once for all scales that are tried.
struct FrameSubject {
  const models::Building& building;
  const models::FrameView& frame;
  geometry::LengthStyle style;
  Scene scene;
  Linework lines;
};
[[nodiscard]] FrameSubject frame_subject(const models::Building& building, const models::FrameView& frame,
                                         const geometry::LengthStyle& style);

struct FrameDrawing {
  Drawing drawing;  // the frame's lower left corner at the origin, so most of it lies at negative y
  std::vector<std::string> notes;       // what had no room on the drawing, to be printed beside it
  std::vector<std::string> unlabelled;  // marks of members that had none for their label
};
[[nodiscard]] FrameDrawing frame_view(const FrameSubject& subject, double scale);

}  // namespace exporters
