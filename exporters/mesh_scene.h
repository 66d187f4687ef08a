// From the building's bodies to the scenes that the mesh formats are written from.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include <assimp/scene.h>

#include "geometry/mesh.h"
#include "models/building.h"

namespace exporters {

// How far triangles may stand off a curved face. At 1/200 mm the volume of every part, the thinnest rounded
// bar included, is within 1e-4 of the solid's.
inline constexpr geometry::Length chord = geometry::mm(0.005);

// The triangles of each mark's body, once, in its local coordinates.
[[nodiscard]] std::vector<geometry::Mesh> mark_meshes(const models::Building& building);

// The triangles with flat shading: a corner of a board is sharp. Each keeps three points of its own.
[[nodiscard]] std::unique_ptr<aiMesh> flat_mesh(const geometry::Mesh& mesh, const std::string& name,
                                                double scale);

// A scene takes over its parts as bare arrays.
template <class T>
void hand_over(std::vector<std::unique_ptr<T>>&& from, T**& array, unsigned& count) {
  count = static_cast<unsigned>(from.size());
  array = new T*[count];
  for (unsigned i = 0; i < count; ++i) array[i] = from[i].release();
}

// The scene as a file of the format, as the library calls it. Throws WriteError.
[[nodiscard]] std::string encode(const aiScene& scene, const char* format);

}  // namespace exporters
