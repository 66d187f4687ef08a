// What the sheets of the whole have in common.
#pragma once

#include <string>

#include "exporters/plan.h"
#include "exporters/sheets/frame_sheet.h"

namespace exporters {

inline constexpr double block_gap = 5;     // between blocks, and from them to the frame
inline constexpr double caption_room = 8;  // under a view

// An empty sheet: its name, what it shows ("views and dimensions over all"), its scale as the title block has it.
[[nodiscard]] OpenSheet whole_sheet(const Plan& plan, const Paper& paper, const std::string& name,
                                    const std::string& shows, const std::string& scale);
// Under all that is drawn, within caption_room.
void add_caption(Drawing& drawing, const std::string& text);

}  // namespace exporters
