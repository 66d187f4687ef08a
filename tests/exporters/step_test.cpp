#include "exporters/step.h"

#include <cmath>
#include <map>
#include <set>

#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>
#include <Quantity_ColorRGBA.hxx>
#include <STEPCAFControl_Reader.hxx>
#include <TColStd_HSequenceOfExtendedString.hxx>
#include <TDF_LabelSequence.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <XCAFDoc_Centroid.hxx>
#include <XCAFDoc_ColorTool.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_LayerTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <XCAFDoc_Volume.hxx>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "exporters/colour.h"
#include "geometry/kernel/guard.h"
#include "geometry/kernel/make.h"
#include "support/part21.h"
#include "support/sample_plan.h"
#include "support/temporary_folder.h"

namespace part21 = support::part21;
using geometry::Vec3;
using testing::ElementsAre;

namespace {

std::string name_of(const TDF_Label& label) {
  Handle(TDataStd_Name) name;
  if (!label.FindAttribute(TDataStd_Name::GetID(), name)) return "";
  return TCollection_AsciiString(name->Get()).ToCString();
}

// The file as the kernel's reader sees it.
class ReadBack {
 public:
  explicit ReadBack(const std::filesystem::path& path) {
    geometry::kernel::silence();
    XCAFDoc_DocumentTool::Set(document_->Main(), false);
    STEPCAFControl_Reader reader;
    reader.SetPropsMode(true);
    if (reader.ReadFile(path.c_str()) != IFSelect_RetDone || !reader.Transfer(document_))
      throw std::runtime_error("the kernel cannot read the file");
    shapes = XCAFDoc_DocumentTool::ShapeTool(document_->Main());
    colours = XCAFDoc_DocumentTool::ColorTool(document_->Main());
    layers = XCAFDoc_DocumentTool::LayerTool(document_->Main());
    TDF_LabelSequence free;
    shapes->GetFreeShapes(free);
    if (free.Length() != 1) throw std::runtime_error("not one root");
    root = free.First();
  }

  Handle(XCAFDoc_ShapeTool) shapes;
  Handle(XCAFDoc_ColorTool) colours;
  Handle(XCAFDoc_LayerTool) layers;
  TDF_Label root;

 private:
  Handle(TDocStd_Document) document_ = new TDocStd_Document("XCAF");
};

double volume_of(const TopoDS_Shape& shape) {
  GProp_GProps properties;
  BRepGProp::VolumeProperties(shape, properties);
  return properties.Mass();
}

class StepFile : public testing::Test {
 protected:
  StepFile() { exporters::write_step(plan, folder.path()); }
  [[nodiscard]] std::filesystem::path path() const { return folder.path() / "solid" / "sample.step"; }

  support::TemporaryFolder folder;
  exporters::Plan plan = support::sample_plan();
};

// Walks the file's tree and the building's side by side. Components come in the order they were added.
void expect_same(const ReadBack& file, const TDF_Label& label, const models::Building& building,
                 const models::Assembly& assembly, std::map<std::size_t, TDF_Label>& product_of_mark) {
  EXPECT_EQ(name_of(label), assembly.name);
  TDF_LabelSequence components;
  XCAFDoc_ShapeTool::GetComponents(label, components);
  ASSERT_EQ(static_cast<std::size_t>(components.Length()),
            assembly.assemblies.size() + assembly.parts.size());
  int next = 1;
  for (const models::Assembly& child : assembly.assemblies) {
    TDF_Label product;
    ASSERT_TRUE(XCAFDoc_ShapeTool::GetReferredShape(components.Value(next++), product));
    expect_same(file, product, building, child, product_of_mark);
  }
  for (const std::size_t index : assembly.parts) {
    const models::Part& part = building.parts[index];
    const models::Mark& mark = building.marks[part.mark];
    SCOPED_TRACE(part.name);
    const TDF_Label component = components.Value(next++);
    EXPECT_THAT(name_of(component), testing::StartsWith(mark.label + " " + part.name + " #"));
    TDF_Label product;
    ASSERT_TRUE(XCAFDoc_ShapeTool::GetReferredShape(component, product));
    EXPECT_EQ(name_of(product), mark.label + " " + mark.name);
    // One product a mark.
    EXPECT_EQ(product_of_mark.emplace(part.mark, product).first->second, product);

    const TopoDS_Shape shape = XCAFDoc_ShapeTool::GetShape(component);
    EXPECT_EQ(shape.ShapeType(), TopAbs_SOLID);
    EXPECT_NEAR(volume_of(shape), support::sample_volume[part.mark],
                1e-6 * support::sample_volume[part.mark]);
    const gp_Trsf place = XCAFDoc_ShapeTool::GetLocation(component).Transformation();
    for (const Vec3 p : {Vec3{0, 0, 0}, Vec3{1000, 0, 0}, Vec3{0, 1000, 0}, Vec3{0, 0, 1000}}) {
      const Vec3 there = geometry::kernel::from(geometry::kernel::point(p).Transformed(place));
      EXPECT_LT(norm(there - part.placement.point(p)), 1e-9);
    }
  }
}

}  // namespace

TEST_F(StepFile, ComesBackWithTheSameTreeNamesVolumesAndPlaces) {
  const ReadBack file(path());
  std::map<std::size_t, TDF_Label> product_of_mark;
  expect_same(file, file.root, plan.building, plan.building.tree, product_of_mark);
  EXPECT_EQ(product_of_mark.size(), static_cast<std::size_t>(support::sample_marks));
}

TEST_F(StepFile, ColoursAndLayersByGroup) {
  const ReadBack file(path());
  std::map<std::size_t, TDF_Label> product_of_mark;
  expect_same(file, file.root, plan.building, plan.building.tree, product_of_mark);
  for (const auto& [index, product] : product_of_mark) {
    const models::Mark& mark = plan.building.marks[index];
    SCOPED_TRACE(mark.label);
    Quantity_ColorRGBA found;
    ASSERT_TRUE(file.colours->GetColor(product, XCAFDoc_ColorSurf, found));
    EXPECT_NEAR(found.Alpha(), mark.group == models::Group::mesh ? 0.35 : 1, 1e-6);
    double red = 0, green = 0, blue = 0;
    found.GetRGB().Values(red, green, blue, Quantity_TOC_sRGB);
    const exporters::Colour expected = exporters::colour(mark.group);
    EXPECT_NEAR(red * 255, expected.red, 0.1);
    EXPECT_NEAR(green * 255, expected.green, 0.1);
    EXPECT_NEAR(blue * 255, expected.blue, 0.1);

    const Handle(TColStd_HSequenceOfExtendedString) layers = file.layers->GetLayers(product);
    ASSERT_FALSE(layers.IsNull());
    ASSERT_EQ(layers->Length(), 1);
    EXPECT_EQ(TCollection_AsciiString(layers->First()).ToCString(), std::string(name(mark.group)));
  }
}

TEST_F(StepFile, CarriesVolumesAndCentroidsToCheckAReaderBy) {
  const ReadBack file(path());
  std::map<std::size_t, TDF_Label> product_of_mark;
  expect_same(file, file.root, plan.building, plan.building.tree, product_of_mark);
  for (const auto& [index, product] : product_of_mark) {
    double volume = 0;
    gp_Pnt centroid;
    ASSERT_TRUE(XCAFDoc_Volume::Get(product, volume));
    ASSERT_TRUE(XCAFDoc_Centroid::Get(product, centroid));
    EXPECT_NEAR(volume, support::sample_volume[index], 1e-6 * volume);
    if (index == 0) {
      EXPECT_LT(norm(geometry::kernel::from(centroid) - Vec3{450, 19, 19}), 1e-6);
    }
  }
}

TEST_F(StepFile, KeepsToTheGrammar) {
  const part21::Exchange file = part21::read(support::read_bytes(path()));
  EXPECT_EQ(file.header.at(0).parameters.at(1).text, "2;1");
  EXPECT_EQ(file.header.at(1).parameters.at(0).text, "sample");
  EXPECT_THAT(file.header.at(1).parameters.at(5).text, testing::StartsWith("coopwright "));
  EXPECT_THAT(file.header.at(2).parameters.at(0).values.at(0).text,
              testing::StartsWith("AP242_MANAGED_MODEL_BASED_3D_ENGINEERING_MIM_LF {"));
}

// The tree once more, by the grammar alone: uses of product definitions lead to products.
TEST_F(StepFile, HasOneProductAMarkAndOneUseAPart) {
  const part21::Exchange file = part21::read(support::read_bytes(path()));
  const auto target = [&](const part21::Value& reference) -> const part21::Record& {
    return file.data.at(reference.instance).front();
  };
  std::multiset<std::string> products, uses;
  for (const part21::Record* product : records(file, "PRODUCT"))
    products.insert(product->parameters.at(1).text);
  for (const part21::Record* use : records(file, "NEXT_ASSEMBLY_USAGE_OCCURRENCE")) {
    const auto product = [&](std::size_t parameter) {
      const part21::Record& definition = target(use->parameters.at(parameter));
      return target(target(definition.parameters.at(2)).parameters.at(2)).parameters.at(1).text;
    };
    uses.insert(product(3) + " > " + product(4));
  }
  const std::string root = plan.building.tree.name;
  EXPECT_THAT(products,
              testing::UnorderedElementsAre(root, "front wall", "back wall", "roof", "F1 post", "F2 rail",
                                            "F3 brace", "R1 rafter", "P1 panel", "B1 perch", "M1 mesh"));
  EXPECT_THAT(
      uses, testing::UnorderedElementsAre(
                root + " > front wall", root + " > back wall", root + " > roof", root + " > B1 perch",
                "front wall > F1 post", "front wall > F1 post", "front wall > F2 rail",
                "front wall > F2 rail", "front wall > F3 brace", "back wall > F1 post", "back wall > F1 post",
                "back wall > P1 panel", "back wall > M1 mesh", "roof > R1 rafter", "roof > R1 rafter"));
}

TEST_F(StepFile, IsInMillimetres) {
  const part21::Exchange file = part21::read(support::read_bytes(path()));
  int length_units = 0;
  for (const auto& [number, instance] : file.data)
    if (instance.size() > 1 && instance.front().keyword == "LENGTH_UNIT") {
      ++length_units;
      EXPECT_EQ(instance.at(2).keyword, "SI_UNIT");
      EXPECT_EQ(instance.at(2).parameters.at(0).text, "MILLI");
      EXPECT_EQ(instance.at(2).parameters.at(1).text, "METRE");
    }
  EXPECT_GT(length_units, 0);
}

// Names that the format can't hold as they are. Long ones are broken over lines.
TEST(Step, HoldsNamesOfAnyText) {
  const support::TemporaryFolder folder;
  exporters::Plan plan = support::sample_plan();
  const auto root_name = [&](const std::string& name) {
    plan.building.tree.name = name;
    exporters::write_step(plan, folder.path());
    const part21::Exchange file = part21::read(support::read_bytes(folder.path() / "solid" / "sample.step"));
    return records(file, "PRODUCT").front()->parameters.at(1).text;
  };
  EXPECT_EQ(root_name("a\\b 'c' \"d\" #1;/*"), "a\\b 'c' \"d\" #1;/*");
  EXPECT_EQ(root_name("\xE2\x82\xAC \xF0\x9F\x90\x94"), "\xE2\x82\xAC \xF0\x9F\x90\x94");
  EXPECT_EQ(root_name("tab\tline\nend\xFF"), "tab line end\xEF\xBF\xBD");
  EXPECT_EQ(root_name(""), "unnamed");
  for (std::size_t shift = 0; shift < 4; ++shift) {
    std::string name(shift, 'x');
    for (int i = 0; i < 100; ++i) name += "\xE2\x82\xAC";
    EXPECT_EQ(root_name(name), name);
  }
}

TEST(Step, LeavesOutMarksThatNoPartHas) {
  const support::TemporaryFolder folder;
  exporters::Plan plan = support::sample_plan();
  plan.building.tree.parts.clear();  // the perch
  exporters::write_step(plan, folder.path());
  const part21::Exchange file = part21::read(support::read_bytes(folder.path() / "solid" / "sample.step"));
  EXPECT_EQ(records(file, "PRODUCT").size(), 10u);
}
