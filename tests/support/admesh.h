// What admesh, a program that judges STL files, says of one. It counts what it would have to mend.
#pragma once

#include <filesystem>

namespace support {

struct MeshJudgement {
  long facets = 0;
  long disconnected = 0;  // facets with an edge that no other facet has
  long degenerate = 0;
  long mended = 0;  // edges fixed, facets removed, added or reversed, backwards edges, normals fixed
  long parts = 0;   // closed surfaces
  double volume = 0;
};
// Throws std::runtime_error when admesh can't be run or says something else than expected.
[[nodiscard]] MeshJudgement judge_stl(const std::filesystem::path& path);

}  // namespace support
