// Full-size paper templates: one SVG for each mark that is cut to more than square ends.
#pragma once

#include <string>
#include <vector>

#include "exporters/plan.h"
#include "exporters/templates/template_page.h"

namespace exporters {

struct TemplateFile {
  std::string file;  // name in the pack's folder templates/, "R1.svg"
  std::size_t mark = 0;
  TemplatePage page;
};
// In the order of the marks.
[[nodiscard]] std::vector<TemplateFile> templates(const Plan& plan);

// Writes templates/*.svg.
void write_templates(const Plan& plan, const std::filesystem::path& out);

}  // namespace exporters
