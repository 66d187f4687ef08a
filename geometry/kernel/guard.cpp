#include "geometry/kernel/guard.h"

#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_Printer.hxx>

namespace geometry::kernel {

void silence() {
  static const bool done = [] {
    for (const auto& printer : Message::DefaultMessenger()->Printers()) printer->SetTraceLevel(Message_Fail);
    return true;
  }();
  static_cast<void>(done);
}

void fail(const char* operation, const std::string& why) {
  throw KernelError(std::string("the solid-modelling kernel could not ") + operation + ": " + why);
}

}  // namespace geometry::kernel
