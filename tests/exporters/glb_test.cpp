#include "exporters/glb.h"

#include <map>
#include <set>

#include <assimp/Importer.hpp>
#include <assimp/scene.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "exporters/colour.h"
#include "support/glb.h"
#include "support/sample_plan.h"
#include "support/temporary_folder.h"

using geometry::Box;
using geometry::Vec3;
using testing::ElementsAre;

namespace {

// Where the building is, in the format's metres with y up: (x, z, -y) / 1000.
Box expected_box(const models::Building& building) {
  Box house;
  for (const models::Part& part : building.parts)
    house.add(geometry::bounds(geometry::placed(building.marks[part.mark].solid, part.placement)));
  return {{house.low.x / 1000, house.low.z / 1000, -house.high.y / 1000},
          {house.high.x / 1000, house.high.z / 1000, -house.low.y / 1000}};
}

// Coordinates are floats: 1 m is exact to about 0.1 micrometre.
void expect_equal(const Box& a, const Box& b) {
  EXPECT_LT(norm(a.low - b.low), 1e-6);
  EXPECT_LT(norm(a.high - b.high), 1e-6);
}

class GlbFile : public testing::Test {
 protected:
  GlbFile() { exporters::write_glb(plan, folder.path()); }

  support::TemporaryFolder folder;
  exporters::Plan plan = support::sample_plan();
  std::filesystem::path path() const { return folder.path() / "solid" / "sample.glb"; }
  support::Glb read() const { return support::read_glb(support::read_bytes(path())); }
};

void collect(const aiScene& scene, const aiNode& node, const aiMatrix4x4& parent,
             std::multiset<std::string>& names, Box& box) {
  const aiMatrix4x4 place = parent * node.mTransformation;
  names.insert(node.mName.C_Str());
  for (unsigned m = 0; m < node.mNumMeshes; ++m) {
    const aiMesh& mesh = *scene.mMeshes[node.mMeshes[m]];
    for (unsigned v = 0; v < mesh.mNumVertices; ++v) {
      const aiVector3D p = place * mesh.mVertices[v];
      box.add(Vec3{p.x, p.y, p.z});
    }
  }
  for (unsigned c = 0; c < node.mNumChildren; ++c) collect(scene, *node.mChildren[c], place, names, box);
}

}  // namespace

TEST_F(GlbFile, NamesEveryNodeOnce) {
  std::set<std::string> names;
  const support::Glb glb = read();
  for (const auto& node : glb.json["nodes"]) EXPECT_TRUE(names.insert(node["name"]).second) << node["name"];
  EXPECT_EQ(names.size(), 4u + support::sample_parts);
  EXPECT_TRUE(names.contains("F1 right post #2"));
  EXPECT_TRUE(names.contains("F1 prop #4"));
  std::set<std::string> meshes;
  for (const auto& mesh : glb.json["meshes"]) EXPECT_TRUE(meshes.insert(mesh["name"]).second) << mesh["name"];
}

TEST_F(GlbFile, KeepsTheTree) {
  std::map<std::string, std::vector<std::string>> ancestors;
  for (const auto& mesh : support::placed_meshes(read())) ancestors[mesh.name] = mesh.ancestors;
  ASSERT_EQ(ancestors.size(), static_cast<std::size_t>(support::sample_parts));
  const std::string root = plan.building.tree.name;
  EXPECT_THAT(ancestors["F3 brace #1"], ElementsAre(root, "front wall"));
  EXPECT_THAT(ancestors["R1 back rafter #2"], ElementsAre(root, "roof"));
  EXPECT_THAT(ancestors["B1 perch #1"], ElementsAre(root));
}

TEST_F(GlbFile, SharesOneMeshAmongPartsOfAMarkAndColour) {
  std::map<std::string, std::size_t> mesh_of;
  for (const auto& mesh : support::placed_meshes(read())) mesh_of[mesh.name] = mesh.mesh;
  EXPECT_EQ(mesh_of["F1 left post #1"], mesh_of["F1 right post #2"]);
  EXPECT_EQ(mesh_of["F2 bottom rail #1"], mesh_of["F2 top rail #2"]);
  EXPECT_NE(mesh_of["F1 left post #1"], mesh_of["F1 prop #4"]);
}

TEST_F(GlbFile, StandsUprightInMetres) {
  expect_equal(support::box_of(support::placed_meshes(read())), expected_box(plan.building));
}

TEST_F(GlbFile, FacesOutwardsAndHoldsEachPartsVolume) {
  const auto meshes = support::placed_meshes(read());
  std::map<std::string, double> volume;
  for (const auto& mesh : meshes) volume[mesh.name.substr(0, 2)] += support::volume_of(mesh.triangles);
  for (int i = 0; i < support::sample_marks; ++i) {
    const models::Mark& mark = plan.building.marks[static_cast<std::size_t>(i)];
    const double expected = mark.count * support::sample_volume[i] * 1e-9;
    EXPECT_NEAR(volume[mark.label], expected, 1e-4 * expected) << mark.label;
  }
}

TEST_F(GlbFile, ColoursByGroupInLinearLight) {
  const support::Glb glb = read();
  for (const auto& mesh : support::placed_meshes(glb)) {
    const models::Group group = mesh.name == "F1 prop #4"    ? models::Group::roost
                                : mesh.name.starts_with("F") ? models::Group::frame
                                : mesh.name.starts_with("R") ? models::Group::roof
                                : mesh.name.starts_with("P") ? models::Group::cladding
                                : mesh.name.starts_with("M") ? models::Group::mesh
                                                             : models::Group::roost;
    const auto& primitive = glb.json["meshes"][mesh.mesh]["primitives"][0];
    const auto& material = glb.json["materials"].at(primitive.at("material").get<std::size_t>());
    EXPECT_EQ(material["name"], name(group)) << mesh.name;
    const exporters::Colour c = exporters::colour(group);
    const auto& base = material["pbrMetallicRoughness"]["baseColorFactor"];
    EXPECT_NEAR(base[0].get<double>(), exporters::linear(c.red), 1e-6);
    EXPECT_NEAR(base[1].get<double>(), exporters::linear(c.green), 1e-6);
    EXPECT_NEAR(base[2].get<double>(), exporters::linear(c.blue), 1e-6);
    const bool mesh_wire = group == models::Group::mesh;
    EXPECT_EQ(base[3].get<double>() < 1, mesh_wire);
    EXPECT_EQ(material.value("alphaMode", "OPAQUE"), mesh_wire ? "BLEND" : "OPAQUE");
    EXPECT_EQ(material["pbrMetallicRoughness"]["metallicFactor"], 0.0);
  }
}

TEST_F(GlbFile, IsReadBackByAGeneralLibrary) {
  Assimp::Importer importer;
  const aiScene* scene = importer.ReadFile(path().string(), 0);
  ASSERT_NE(scene, nullptr) << importer.GetErrorString();
  std::multiset<std::string> names;
  Box box;
  collect(*scene, *scene->mRootNode, aiMatrix4x4(), names, box);
  for (const char* name : {"F1 left post #1", "F2 top rail #2", "P1 panel #1", "back wall"})
    EXPECT_EQ(names.count(name), 1u) << name;
  expect_equal(box, expected_box(plan.building));
  for (unsigned m = 0; m < scene->mNumMeshes; ++m) {
    aiColor4D base;
    EXPECT_EQ(scene->mMaterials[scene->mMeshes[m]->mMaterialIndex]->Get(AI_MATKEY_BASE_COLOR, base),
              aiReturn_SUCCESS);
  }
}

TEST(Glb, KeepsNamesApartThatWouldClash) {
  const support::TemporaryFolder folder;
  exporters::Plan plan = support::sample_plan();
  plan.building.tree.assemblies[1].name = "front wall";
  plan.building.tree.assemblies[2].name = "F1 left post #1";
  exporters::write_glb(plan, folder.path());
  const support::Glb glb = support::read_glb(support::read_bytes(folder.path() / "solid" / "sample.glb"));
  std::set<std::string> names;
  for (const auto& node : glb.json["nodes"]) EXPECT_TRUE(names.insert(node["name"]).second) << node["name"];
}
