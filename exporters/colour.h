// The colour each group of parts is shown in, the same in every file.
#pragma once

#include <cstdint>

#include "models/building.h"

namespace exporters {

// sRGB, as a screen takes it.
struct Colour {
  std::uint8_t red = 0, green = 0, blue = 0;
  bool operator==(const Colour&) const = default;
};
[[nodiscard]] Colour colour(models::Group group);
// 1 for what hides what is behind it. Wire mesh is a plain sheet in these files, and must be seen through.
[[nodiscard]] double opacity(models::Group group);

// The light one channel stands for, from 0 to 1 (IEC 61966-2-1): what formats that light a scene ask for.
[[nodiscard]] double linear(std::uint8_t channel);

}  // namespace exporters
