#include "exporters/sheets/sheets.h"

#include "exporters/file_name.h"
#include "exporters/sheets/frame_sheet.h"
#include "exporters/sheets/general_view.h"

namespace exporters {

std::vector<SheetPage> sheets(const Plan& plan) {
  const Paper paper = paper_for(plan.design.units);
  const geometry::LengthStyle style{plan.design.units};
  std::vector<OpenSheet> open = general_sheets(plan, paper);
  for (const models::FrameView& frame : plan.building.frames) {
    for (OpenSheet& sheet : frame_sheets(frame_subject(plan.building, frame, style), paper, plan.design.name))
      open.push_back(std::move(sheet));
  }
  std::vector<SheetPage> out;
  for (std::size_t i = 0; i < open.size(); ++i) {
    TitleBlock& block = open[i].block;
    block.sheet = static_cast<int>(i + 1);
    block.sheets = static_cast<int>(open.size());
    std::string number = i + 1 < 10 ? "0" : "";
    number += std::to_string(i + 1);
    block.number = plan.name + "-" + number;
    add_title_block(open[i].drawing, paper, block);
    out.push_back({number + "-" + file_name(block.subtitle) + ".svg", std::move(open[i].drawing)});
  }
  return out;
}

void write_sheets(const Plan& plan, const std::filesystem::path& out) {
  for (const SheetPage& page : sheets(plan)) write_file(out / "sheets" / page.file, svg(page.drawing));
}

}  // namespace exporters
