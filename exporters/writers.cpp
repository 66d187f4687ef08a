#include "exporters/cut/cut_sheets.h"
#include "exporters/findings/finding_pictures.h"
#include "exporters/glb.h"
#include "exporters/plan.h"
#include "exporters/plan_json.h"
#include "exporters/sheets/sheets.h"
#include "exporters/step.h"
#include "exporters/stl.h"
#include "exporters/templates/templates.h"

namespace exporters {

// One row a writer, in the order they run. The last lists what the others wrote.
const std::vector<Writer>& writers() {
  static const std::vector<Writer> table{
      {"step", "the whole as exact solids, solid/NAME.step", write_step},
      {"glb", "the whole for viewers, solid/NAME.glb", write_glb},
      {"stl", "the whole as triangles, solid/NAME.stl", write_stl},
      {"parts", "each mark as triangles, solid/parts/MARK.stl", write_part_stl},
      {"sheets", "the whole and a dimensioned drawing of each frame, sheets/*.svg", write_sheets},
      {"findings", "a picture of the spot of each error and warning, findings/*.svg", write_finding_pictures},
      {"templates", "a full-size pattern of each mark that is notched or cut at an angle, templates/MARK.svg",
       write_templates},
      {"cut", "cut list, boards, sheets and what to buy, cut/*.csv, cut/*.svg", write_cut},
      {"plan", "all of it for programs, plan.json", write_plan_json},
  };
  return table;
}

}  // namespace exporters
