#include "exporters/mesh_scene.h"

#include <assimp/Exporter.hpp>

#include "exporters/plan.h"

namespace exporters {

std::vector<geometry::Mesh> mark_meshes(const models::Building& building) {
  std::vector<geometry::Mesh> meshes;
  for (const models::Mark& mark : building.marks) meshes.push_back(geometry::mesh(mark.solid, chord));
  return meshes;
}

std::unique_ptr<aiMesh> flat_mesh(const geometry::Mesh& mesh, const std::string& name, double scale) {
  auto result = std::make_unique<aiMesh>();
  result->mName = name;
  result->mPrimitiveTypes = aiPrimitiveType_TRIANGLE;
  result->mNumFaces = static_cast<unsigned>(mesh.triangles.size());
  result->mNumVertices = 3 * result->mNumFaces;
  result->mFaces = new aiFace[result->mNumFaces];
  result->mVertices = new aiVector3D[result->mNumVertices];
  result->mNormals = new aiVector3D[result->mNumVertices];
  const auto vector = [](geometry::Vec3 v) {
    return aiVector3D(static_cast<ai_real>(v.x), static_cast<ai_real>(v.y), static_cast<ai_real>(v.z));
  };
  unsigned vertex = 0;
  for (unsigned face = 0; face < result->mNumFaces; ++face) {
    const auto& [a, b, c] = mesh.triangles[face];
    const geometry::Vec3 p = mesh.points[a], q = mesh.points[b], r = mesh.points[c];
    const geometry::Vec3 normal = normalized(cross(q - p, r - p));
    result->mFaces[face].mNumIndices = 3;
    result->mFaces[face].mIndices = new unsigned[3]{vertex, vertex + 1, vertex + 2};
    for (const geometry::Vec3 corner : {p, q, r}) {
      result->mVertices[vertex] = vector(corner * scale);
      result->mNormals[vertex++] = vector(normal);
    }
  }
  return result;
}

std::string encode(const aiScene& scene, const char* format) {
  Assimp::Exporter exporter;
  const aiExportDataBlob* blob = exporter.ExportToBlob(&scene, format);
  if (!blob) throw WriteError(std::string("cannot write ") + format + ": " + exporter.GetErrorString());
  return {static_cast<const char*>(blob->data), blob->size};
}

}  // namespace exporters
