// The one exception of the geometry floor: the solid-modelling kernel could not do what it was asked.
#pragma once

#include <stdexcept>
#include <string>

namespace geometry {

// Thrown at the bridge to the kernel and caught once, in cli. The message names the operation.
class KernelError : public std::runtime_error {
 public:
  explicit KernelError(const std::string& what) : std::runtime_error(what) {}
};

}  // namespace geometry
