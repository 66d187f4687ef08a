#include "exporters/templates/templates.h"

#include "exporters/cut_text.h"
#include "exporters/file_name.h"

namespace exporters {

std::vector<TemplateFile> templates(const Plan& plan) {
  std::vector<TemplateFile> out;
  const geometry::LengthStyle style{plan.design.units};
  for (std::size_t i = 0; i < plan.building.marks.size(); ++i) {
    const models::Mark& mark = plan.building.marks[i];
    if (!needs_template(models::cuts(mark.body))) continue;
    out.push_back({file_name(mark.label) + ".svg", i, template_page(plan.building, i, style)});
  }
  return out;
}

void write_templates(const Plan& plan, const std::filesystem::path& out) {
  for (const TemplateFile& file : templates(plan))
    write_file(out / "templates" / file.file, svg(file.page.drawing));
}

}  // namespace exporters
