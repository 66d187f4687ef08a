#include "exporters/stl.h"

#include "exporters/mesh_scene.h"

namespace exporters {

namespace {

std::string stl(const geometry::Mesh& mesh, const std::string& name) {
  std::vector<std::unique_ptr<aiMesh>> meshes;
  std::vector<std::unique_ptr<aiMaterial>> materials;
  meshes.push_back(flat_mesh(mesh, name, 1));
  materials.push_back(std::make_unique<aiMaterial>());

  aiScene scene;
  hand_over(std::move(meshes), scene.mMeshes, scene.mNumMeshes);
  hand_over(std::move(materials), scene.mMaterials, scene.mNumMaterials);
  scene.mRootNode = new aiNode(name);
  scene.mRootNode->mNumMeshes = 1;
  scene.mRootNode->mMeshes = new unsigned[1]{0};
  return encode(scene, "stlb");
}

void append(geometry::Mesh& whole, const geometry::Mesh& mesh, const geometry::Placement& placement) {
  const auto first = static_cast<std::uint32_t>(whole.points.size());
  for (const geometry::Vec3& p : mesh.points) whole.points.push_back(placement.point(p));
  for (const auto& [a, b, c] : mesh.triangles) whole.triangles.push_back({first + a, first + b, first + c});
}

}  // namespace

void write_stl(const Plan& plan, const std::filesystem::path& out) {
  const std::vector<geometry::Mesh> meshes = mark_meshes(plan.building);
  geometry::Mesh whole;
  for (const models::Part& part : plan.building.parts) append(whole, meshes[part.mark], part.placement);
  write_file(out / "solid" / (plan.name + ".stl"), stl(whole, plan.name));
}

void write_part_stl(const Plan& plan, const std::filesystem::path& out) {
  const std::vector<geometry::Mesh> meshes = mark_meshes(plan.building);
  for (std::size_t i = 0; i < meshes.size(); ++i) {
    const std::string& label = plan.building.marks[i].label;
    write_file(out / "solid" / "parts" / (label + ".stl"), stl(meshes[i], label));
  }
}

}  // namespace exporters
