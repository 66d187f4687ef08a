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
  const std::filesystem::path folder = out / "templates";
  std::error_code error;
  std::filesystem::create_directories(folder, error);
  if (error) throw WriteError("cannot create " + folder.string() + ": " + error.message());
  for (const TemplateFile& file : templates(plan)) write_file(folder / file.file, svg(file.page.drawing));
}

}  // namespace exporters
