// Turns what the kernel throws into our one error, and keeps it from printing.
#pragma once

#include <string>
#include <utility>

#include <Standard_Failure.hxx>

#include "geometry/error.h"

namespace geometry::kernel {

// Once per process, on first use: the kernel's messages go nowhere instead of to standard output.
void silence();

[[noreturn]] void fail(const char* operation, const std::string& why);

// Runs `work`; `operation` names it in the error: "drill a hole".
template <class Work>
auto guarded(const char* operation, Work&& work) {
  silence();
  try {
    return std::forward<Work>(work)();
  } catch (const Standard_Failure& failure) {
    const char* message = failure.GetMessageString();
    fail(operation, message && *message ? message : failure.DynamicType()->Name());
  }
}

}  // namespace geometry::kernel
