// A template's page: the pattern at true size with all that the person at the bench needs beside it.
#pragma once

#include "exporters/drawing.h"
#include "geometry/length_text.h"
#include "models/building.h"

namespace exporters {

struct TemplatePage {
  Drawing drawing;
  Vec2 origin;  // where on the page the blank's lower left corner lies; true size, upper edge up
};

// The page is as large as its content and a margin, whatever the length of the stick.
[[nodiscard]] TemplatePage template_page(const models::Building& building, std::size_t mark,
                                         const geometry::LengthStyle& style);

}  // namespace exporters
