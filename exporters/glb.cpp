#include "exporters/glb.h"

#include <map>
#include <set>

#include <assimp/GltfMaterial.h>
#include <assimp/material.h>

#include "exporters/colour.h"
#include "exporters/mesh_scene.h"
#include "exporters/names.h"

namespace exporters {

namespace {

constexpr double metres = 1e-3;

aiMatrix4x4 matrix(const geometry::Placement& p) {
  const geometry::Vec3 o = p.origin * metres;
  const auto real = [](double v) { return static_cast<ai_real>(v); };
  return {real(p.x.x), real(p.y.x), real(p.z.x), real(o.x),  //
          real(p.x.y), real(p.y.y), real(p.z.y), real(o.y),  //
          real(p.x.z), real(p.y.z), real(p.z.z), real(o.z),  //
          0,           0,           0,           1};
}

std::unique_ptr<aiMaterial> material(models::Group group) {
  const Colour c = colour(group);
  const auto channel = [](std::uint8_t value) { return static_cast<ai_real>(linear(value)); };
  const aiString name{std::string(models::name(group))};
  const aiColor4D base(channel(c.red), channel(c.green), channel(c.blue),
                       static_cast<ai_real>(opacity(group)));
  const ai_real metallic = 0, roughness = 1;  // bare wood: no shine
  auto result = std::make_unique<aiMaterial>();
  result->AddProperty(&name, AI_MATKEY_NAME);
  result->AddProperty(&base, 1, AI_MATKEY_BASE_COLOR);
  if (opacity(group) < 1) {
    const aiString blend("BLEND");
    result->AddProperty(&blend, AI_MATKEY_GLTF_ALPHAMODE);
  }
  result->AddProperty(&metallic, 1, AI_MATKEY_METALLIC_FACTOR);
  result->AddProperty(&roughness, 1, AI_MATKEY_ROUGHNESS_FACTOR);
  return result;
}

// Builds the scene's nodes, and the meshes and materials that they use, in the order of the tree.
class SceneBuilder {
 public:
  explicit SceneBuilder(const models::Building& building)
      : building_(building), part_names_(part_names(building)), bodies_(mark_meshes(building)) {}

  [[nodiscard]] std::unique_ptr<aiScene> build() {
    auto scene = std::make_unique<aiScene>();
    scene->mRootNode = node(building_.tree).release();
    // The house's x, y, z are right, back, up; the format's are right, up, front.
    scene->mRootNode->mTransformation = matrix({{0, 0, 0}, {1, 0, 0}, {0, 0, -1}, {0, 1, 0}});
    hand_over(std::move(meshes_), scene->mMeshes, scene->mNumMeshes);
    hand_over(std::move(materials_), scene->mMaterials, scene->mNumMaterials);
    return scene;
  }

 private:
  std::unique_ptr<aiNode> node(const models::Assembly& assembly) {
    auto result = std::make_unique<aiNode>(unique(assembly.name));
    std::vector<std::unique_ptr<aiNode>> children;
    for (const models::Assembly& child : assembly.assemblies) children.push_back(node(child));
    for (const std::size_t part : assembly.parts) children.push_back(node(part));
    for (const auto& child : children) child->mParent = result.get();
    hand_over(std::move(children), result->mChildren, result->mNumChildren);
    return result;
  }

  std::unique_ptr<aiNode> node(std::size_t part) {
    const models::Part& p = building_.parts[part];
    auto result = std::make_unique<aiNode>(unique(part_names_[part]));
    result->mTransformation = matrix(p.placement);
    result->mNumMeshes = 1;
    result->mMeshes = new unsigned[1]{mesh(p.mark, p.group)};
    return result;
  }

  // Parts of one mark may belong to different groups; the colour is the mesh's, so each group has its own.
  unsigned mesh(std::size_t mark, models::Group group) {
    const auto [at, fresh] = mesh_of_.try_emplace({mark, group}, static_cast<unsigned>(meshes_.size()));
    if (fresh) {
      std::string name = mark_name(building_.marks[mark]);
      if (group != building_.marks[mark].group) name.append(", ").append(models::name(group));
      meshes_.push_back(flat_mesh(bodies_[mark], name, metres));
      meshes_.back()->mMaterialIndex = material_index(group);
    }
    return at->second;
  }

  unsigned material_index(models::Group group) {
    const auto [at, fresh] = material_of_.try_emplace(group, static_cast<unsigned>(materials_.size()));
    if (fresh) materials_.push_back(material(group));
    return at->second;
  }

  std::string unique(const std::string& name) {
    std::string result = name;
    for (int n = 2; !used_.insert(result).second; ++n) result = name + " (" + std::to_string(n) + ")";
    return result;
  }

  const models::Building& building_;
  std::vector<std::string> part_names_;
  std::vector<geometry::Mesh> bodies_;  // by mark
  std::vector<std::unique_ptr<aiMesh>> meshes_;
  std::vector<std::unique_ptr<aiMaterial>> materials_;
  std::map<std::pair<std::size_t, models::Group>, unsigned> mesh_of_;
  std::map<models::Group, unsigned> material_of_;
  std::set<std::string> used_;
};

}  // namespace

void write_glb(const Plan& plan, const std::filesystem::path& out) {
  write_file(out / "solid" / (plan.name + ".glb"), encode(*SceneBuilder(plan.building).build(), "glb2"));
}

}  // namespace exporters
