// A plain reader of glb files, written from the glTF 2.0 specification (ISO/IEC 12113), sharing nothing with
// the library that writes them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <nlohmann/json.hpp>

#include "geometry/mesh.h"
#include "geometry/vector.h"

namespace support {

struct Glb {
  nlohmann::json json;
  std::string binary;
};
// Checks the header, the two chunks and their lengths. Throws std::runtime_error.
[[nodiscard]] Glb read_glb(std::string_view file);

// The triangles of one mesh. Checks that they stay inside the buffer and the mesh's points.
[[nodiscard]] geometry::Mesh mesh_of(const Glb& glb, std::size_t mesh);

// A node that shows a mesh: its name, its ancestors' names from the root, and the mesh where it stands.
struct PlacedMesh {
  std::string name;
  std::vector<std::string> ancestors;
  std::size_t mesh = 0;
  geometry::Mesh triangles;
};
[[nodiscard]] std::vector<PlacedMesh> placed_meshes(const Glb& glb);

[[nodiscard]] geometry::Box box_of(const std::vector<PlacedMesh>& meshes);
// Positive when the triangles face outwards.
[[nodiscard]] double volume_of(const geometry::Mesh& mesh);

}  // namespace support
