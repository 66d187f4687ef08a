#include "exporters/step.h"

#include <array>
#include <cstdio>
#include <map>
#include <sstream>

#include <APIHeaderSection_MakeHeader.hxx>
#include <Interface_Static.hxx>
#include <STEPCAFControl_Controller.hxx>
#include <STEPCAFControl_Writer.hxx>
#include <STEPConstruct_Styles.hxx>
#include <StepData_Protocol.hxx>
#include <StepData_StepModel.hxx>
#include <StepData_StepWriter.hxx>
#include <StepRepr_NextAssemblyUsageOccurrence.hxx>
#include <StepVisual_ColourRgb.hxx>
#include <StepVisual_MechanicalDesignGeometricPresentationRepresentation.hxx>
#include <StepVisual_PresentationStyleAssignment.hxx>
#include <StepVisual_StyledItem.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <XCAFDoc_Centroid.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_LayerTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <XCAFDoc_Volume.hxx>
#include <XSControl_WorkSession.hxx>

#include "exporters/colour.h"
#include "exporters/names.h"
#include "exporters/unicode.h"
#include "geometry/kernel/guard.h"
#include "geometry/kernel/make.h"
#include "geometry/kernel/shape.h"

namespace exporters {

namespace {

using geometry::kernel::shape_of;

// For the kernel: valid, free of control characters, never empty (it would put a count of its own there).
TCollection_ExtendedString kernel_text(const std::string& name) {
  std::u16string text;
  for (const char32_t c : code_points(name)) {
    if (c >= 0x10000) {
      text += static_cast<char16_t>(0xD800 + ((c - 0x10000) >> 10));
      text += static_cast<char16_t>(0xDC00 + ((c - 0x10000) & 0x3FF));
    } else {
      text += c < 0x20 || c == 0x7F ? u' ' : static_cast<char16_t>(c);
    }
  }
  return {text.empty() ? u"unnamed" : text.c_str()};
}

void set_name(const TDF_Label& label, const std::string& name) {
  TDataStd_Name::Set(label, kernel_text(name));
}

// A document of the kernel's that holds the building's tree. Attributes sit on the labels of the marks, not
// on their uses: readers look for layers there.
class Document {
 public:
  explicit Document(const Plan& plan)
      : building_(plan.building), names_(part_names(plan.building)), labels_(plan.building.marks.size()) {
    XCAFDoc_DocumentTool::Set(document_->Main(), false);
    shapes_ = XCAFDoc_DocumentTool::ShapeTool(document_->Main());
    layers_ = XCAFDoc_DocumentTool::LayerTool(document_->Main());
    add(building_.tree);
    shapes_->UpdateAssemblies();
  }
  [[nodiscard]] const Handle(TDocStd_Document) & document() const { return document_; }

 private:
  TDF_Label add(const models::Assembly& assembly) {
    const TDF_Label label = shapes_->NewShape();
    set_name(label, assembly.name);
    for (const models::Assembly& child : assembly.assemblies)
      set_name(shapes_->AddComponent(label, add(child), TopLoc_Location()), child.name);
    for (const std::size_t part : assembly.parts) {
      const TopLoc_Location place(geometry::kernel::transformation(building_.parts[part].placement));
      set_name(shapes_->AddComponent(label, mark(building_.parts[part].mark), place), names_[part]);
    }
    return label;
  }

  TDF_Label mark(std::size_t index) {
    TDF_Label& label = labels_[index];
    if (!label.IsNull()) return label;
    const models::Mark& mark = building_.marks[index];
    label = shapes_->AddShape(shape_of(mark.solid), false);
    set_name(label, mark_name(mark));
    layers_->SetLayer(label, kernel_text(std::string(models::name(mark.group))));
    XCAFDoc_Volume::Set(label, geometry::volume(mark.solid).mm3);
    XCAFDoc_Centroid::Set(label, geometry::kernel::point(geometry::centre_of_mass(mark.solid)));
    return label;
  }

  Handle(TDocStd_Document) document_ = new TDocStd_Document("XCAF");
  Handle(XCAFDoc_ShapeTool) shapes_;
  Handle(XCAFDoc_LayerTool) layers_;
  const models::Building& building_;
  std::vector<std::string> names_;
  std::vector<TDF_Label> labels_;  // by mark; null until first used
};

Handle(TCollection_HAsciiString) text(const std::string& s) {
  return new TCollection_HAsciiString(s.c_str());
}

// The kernel's own writer of colours goes through a map of pointers, whose order changes from run to run; so
// they are added here, mark by mark.
void add_colours(const models::Building& building, const Handle(XSControl_WorkSession) & session) {
  STEPConstruct_Styles styles(session);
  std::map<models::Group, Handle(StepVisual_ColourRgb)> colours;
  for (const models::Mark& mark : building.marks) {
    const TopoDS_Shape& shape = shape_of(mark.solid);
    const Handle(StepRepr_RepresentationContext) context = styles.FindContext(shape);
    if (context.IsNull()) continue;  // no part has this mark
    Handle(StepVisual_ColourRgb)& rgb = colours[mark.group];
    if (rgb.IsNull()) {
      const Colour c = colour(mark.group);
      rgb = new StepVisual_ColourRgb;
      rgb->Init(text(std::string(models::name(mark.group))), c.red / 255.0, c.green / 255.0, c.blue / 255.0);
    }
    const double transparency = 1 - opacity(mark.group);
    const Handle(StepVisual_Colour) rendered = transparency > 0 ? rgb : nullptr;
    styles.ClearStyles();
    styles.AddStyle(shape, styles.MakeColorPSA(nullptr, rgb, rgb, rendered, transparency), nullptr);
    Handle(StepVisual_MechanicalDesignGeometricPresentationRepresentation) representation;
    styles.CreateMDGPR(context, representation);
    session->Model()->AddWithRefs(representation);
  }
}

// The kernel counts uses up through the whole process; the file counts its own.
void number_uses(const Handle(Interface_InterfaceModel) & model) {
  int count = 0;
  for (int i = 1; i <= model->NbEntities(); ++i) {
    const auto use = Handle(StepRepr_NextAssemblyUsageOccurrence)::DownCast(model->Value(i));
    if (!use.IsNull()) use->SetId(new TCollection_HAsciiString(++count));
  }
}

// No clock and no machine's name, so that the same plan gives the same bytes.
void set_header(const Plan& plan, const Handle(StepData_StepModel) & model) {
  const std::string program = std::string("coopwright ") + COOPWRIGHT_VERSION;
  APIHeaderSection_MakeHeader header(model);
  header.SetName(text(TCollection_AsciiString(kernel_text(plan.name)).ToCString()));
  header.SetTimeStamp(text("1970-01-01T00:00:00"));
  header.SetAuthorValue(1, text(""));
  header.SetOrganizationValue(1, text(""));
  header.SetPreprocessorVersion(text(program));
  header.SetOriginatingSystem(text(program));
  header.SetAuthorisation(text(""));
  header.SetDescriptionValue(1, text("timber-framed poultry housing"));
  // As ISO/TS 10303-442 registers it; the kernel's own spelling has a stray full stop.
  header.SetSchemaIdentifiersValue(
      1, text("AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF { 1 0 10303 442 1 1 4 }"));
  header.Apply(model);
}

// The kernel lets UTF-8 through; a STEP file of this level holds printable ASCII, and other characters of its
// strings by their numbers (ISO 10303-21, string control directives).
std::string encoded(const std::string& file) {
  // The kernel breaks its lines between any two bytes, within a character too.
  std::string whole;
  for (std::size_t i = 0; i < file.size(); ++i)
    if (file[i] != '\n' || i + 1 == file.size() || (file[i + 1] & 0xC0) != 0x80) whole += file[i];

  std::string result;
  for (const char32_t c : code_points(whole)) {
    if (c < 0x80) {
      result += static_cast<char>(c);
      continue;
    }
    std::array<char, 9> hex{};
    std::snprintf(hex.data(), hex.size(), c < 0x10000 ? "%04X" : "%08X", static_cast<unsigned>(c));
    result.append(c < 0x10000 ? "\\X2\\" : "\\X4\\").append(hex.data()).append("\\X0\\");
  }
  return result;
}

std::string step(const Plan& plan) {
  const Document document(plan);
  // These settings are the kernel's own statics; a writer takes them over as it is made.
  STEPCAFControl_Controller::Init();
  Interface_Static::SetIVal("write.step.schema", 5);  // AP242
  Interface_Static::SetCVal("write.step.unit", "MM");
  Interface_Static::SetCVal("xstep.cascade.unit", "MM");
  Interface_Static::SetIVal("write.surfacecurve.mode", 0);  // a curve on a plane needs no second description

  STEPCAFControl_Writer writer;
  writer.SetColorMode(false);
  writer.SetPropsMode(true);
  if (!writer.Transfer(document.document(), STEPControl_AsIs))
    geometry::kernel::fail("write STEP", "the transfer failed");
  const Handle(XSControl_WorkSession) session = writer.Writer().WS();
  add_colours(plan.building, session);
  const auto model = Handle(StepData_StepModel)::DownCast(session->Model());
  number_uses(model);
  set_header(plan, model);

  StepData_StepWriter file(model);
  file.SendModel(Handle(StepData_Protocol)::DownCast(session->Protocol()));
  std::ostringstream bytes;
  bytes.imbue(std::locale::classic());
  file.Print(bytes);
  return encoded(bytes.str());
}

}  // namespace

void write_step(const Plan& plan, const std::filesystem::path& out) {
  const std::string bytes = geometry::kernel::guarded("write STEP", [&] { return step(plan); });
  write_file(out / "solid" / (plan.name + ".step"), bytes);
}

}  // namespace exporters
