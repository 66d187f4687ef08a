#include "support/glb.h"

#include <array>
#include <cstring>
#include <stdexcept>

namespace support {

namespace {

using Matrix = std::array<double, 16>;  // column by column, as the format has it
constexpr Matrix identity{1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1};

Matrix operator*(const Matrix& a, const Matrix& b) {
  Matrix result{};
  for (std::size_t column = 0; column < 4; ++column)
    for (std::size_t row = 0; row < 4; ++row)
      for (std::size_t k = 0; k < 4; ++k) result[column * 4 + row] += a[k * 4 + row] * b[column * 4 + k];
  return result;
}

geometry::Vec3 apply(const Matrix& m, geometry::Vec3 p) {
  return {m[0] * p.x + m[4] * p.y + m[8] * p.z + m[12], m[1] * p.x + m[5] * p.y + m[9] * p.z + m[13],
          m[2] * p.x + m[6] * p.y + m[10] * p.z + m[14]};
}

[[noreturn]] void fail(const std::string& why) { throw std::runtime_error("glb: " + why); }

std::uint32_t word(std::string_view bytes, std::size_t at) {
  if (at + 4 > bytes.size()) fail("cut short");
  const auto byte = [&](std::size_t i) { return std::uint32_t{static_cast<unsigned char>(bytes[at + i])}; };
  return byte(0) | byte(1) << 8 | byte(2) << 16 | byte(3) << 24;
}

float real(std::string_view bytes, std::size_t at) {
  const std::uint32_t bits = word(bytes, at);
  float value = 0;
  std::memcpy(&value, &bits, 4);
  return value;
}

// The bytes of element 0 of an accessor, and its count; elements must be closely packed.
std::pair<std::string_view, std::size_t> elements(const Glb& glb, std::size_t accessor, int type,
                                                  std::size_t size) {
  const auto& a = glb.json.at("accessors").at(accessor);
  const auto& view = glb.json.at("bufferViews").at(a.at("bufferView").get<std::size_t>());
  if (a.at("componentType") != type || view.contains("byteStride")) fail("an accessor of another layout");
  const std::size_t count = a.at("count");
  const std::size_t start = view.value("byteOffset", 0u) + a.value("byteOffset", 0u);
  if (start + count * size > glb.binary.size()) fail("an accessor beyond the buffer");
  return {std::string_view(glb.binary).substr(start, count * size), count};
}

void visit(const Glb& glb, std::size_t index, const Matrix& parent, const std::vector<std::string>& ancestors,
           std::vector<PlacedMesh>& found) {
  if (ancestors.size() > 20) fail("nodes nested without end");
  const auto& node = glb.json.at("nodes").at(index);
  const Matrix place = parent * (node.contains("matrix") ? node["matrix"].get<Matrix>() : identity);
  if (node.contains("mesh")) {
    PlacedMesh placed{node.at("name"), ancestors, node["mesh"], mesh_of(glb, node["mesh"])};
    for (geometry::Vec3& p : placed.triangles.points) p = apply(place, p);
    found.push_back(std::move(placed));
  }
  std::vector<std::string> line = ancestors;
  line.push_back(node.at("name"));
  for (const std::size_t child : node.value("children", std::vector<std::size_t>()))
    visit(glb, child, place, line, found);
}

}  // namespace

Glb read_glb(std::string_view file) {
  constexpr std::uint32_t magic = 0x46546C67, json_chunk = 0x4E4F534A, binary_chunk = 0x004E4942;
  if (word(file, 0) != magic || word(file, 4) != 2 || word(file, 8) != file.size()) fail("a wrong header");
  const std::uint32_t json_length = word(file, 12);
  if (word(file, 16) != json_chunk || json_length % 4 != 0) fail("no JSON chunk");
  const std::size_t second = 20 + std::size_t{json_length};
  const std::uint32_t binary_length = word(file, second);
  if (word(file, second + 4) != binary_chunk || second + 8 + binary_length != file.size())
    fail("no binary chunk to the end of the file");
  return {nlohmann::json::parse(file.substr(20, json_length)), std::string(file.substr(second + 8))};
}

geometry::Mesh mesh_of(const Glb& glb, std::size_t mesh) {
  constexpr int float_type = 5126, unsigned_type = 5125, triangles = 4;
  geometry::Mesh result;
  for (const auto& primitive : glb.json.at("meshes").at(mesh).at("primitives")) {
    if (primitive.value("mode", triangles) != triangles) fail("something else than triangles");
    const auto [points, count] = elements(glb, primitive.at("attributes").at("POSITION"), float_type, 12);
    const auto [indices, corners] = elements(glb, primitive.at("indices"), unsigned_type, 4);
    const auto first = static_cast<std::uint32_t>(result.points.size());
    for (std::size_t i = 0; i < count; ++i)
      result.points.push_back({real(points, 12 * i), real(points, 12 * i + 4), real(points, 12 * i + 8)});
    const auto corner = [&, indices = indices, count = count](std::size_t i) {
      const std::uint32_t index = word(indices, 4 * i);
      if (index >= count) fail("an index beyond the points");
      return first + index;
    };
    if (corners % 3 != 0) fail("a triangle cut short");
    for (std::size_t i = 0; i < corners; i += 3)
      result.triangles.push_back({corner(i), corner(i + 1), corner(i + 2)});
  }
  return result;
}

std::vector<PlacedMesh> placed_meshes(const Glb& glb) {
  std::vector<PlacedMesh> found;
  const std::size_t scene = glb.json.value("scene", 0u);
  for (const std::size_t root : glb.json.at("scenes").at(scene).at("nodes"))
    visit(glb, root, identity, {}, found);
  return found;
}

geometry::Box box_of(const std::vector<PlacedMesh>& meshes) {
  geometry::Box box;
  for (const PlacedMesh& mesh : meshes)
    for (const geometry::Vec3 p : mesh.triangles.points) box.add(p);
  return box;
}

double volume_of(const geometry::Mesh& mesh) {
  double six = 0;
  for (const auto& [a, b, c] : mesh.triangles)
    six += dot(mesh.points[a], cross(mesh.points[b], mesh.points[c]));
  return six / 6;
}

}  // namespace support
