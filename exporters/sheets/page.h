// The sheet of paper: sizes, frame and title block.
#pragma once

#include <string>

#include "exporters/drawing.h"
#include "geometry/length_text.h"

namespace exporters {

struct Paper {
  std::string_view name;
  double width, height;  // landscape, mm
};
// Metric designs: A3 (ISO 216). Inch designs: B, 11 in x 17 in (ANSI Y14.1).
[[nodiscard]] Paper paper_for(geometry::Units units);

// Inside the frame: 20 mm from the left edge, 10 mm from the others (ISO 5457, from memory).
[[nodiscard]] Space drawing_space(const Paper& paper);

// The fields of ISO 7200 that the program can fill; the others stand empty for a pen.
struct TitleBlock {
  std::string title;     // of the design
  std::string subtitle;  // what the sheet shows
  std::string document;  // type of document
  std::string number;    // identification number
  std::string scale;     // "1:10"
  std::string units;     // "mm"
  int sheet = 0, sheets = 0;
};
inline constexpr double title_block_width = 180;  // ISO 7200
inline constexpr double title_block_height = 38;

// The drawing's page, with the frame, centring marks and reference grid of ISO 5457.
[[nodiscard]] Drawing start_sheet(const Paper& paper, const std::string& title,
                                  const std::string& description);
// In the lower right corner of the drawing space.
void add_title_block(Drawing& drawing, const Paper& paper, const TitleBlock& block);

}  // namespace exporters
