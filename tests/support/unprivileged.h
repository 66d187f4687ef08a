// File permissions don't bind the superuser; a test of them acts as somebody else.
#pragma once

#include <unistd.h>

namespace support {

class Unprivileged {
 public:
  Unprivileged() {
    if (geteuid() == 0 && seteuid(nobody) == 0) dropped_ = true;
  }
  ~Unprivileged() {
    if (dropped_) static_cast<void>(!seteuid(0));
  }
  Unprivileged(const Unprivileged&) = delete;
  Unprivileged& operator=(const Unprivileged&) = delete;

 private:
  static constexpr uid_t nobody = 65534;
  bool dropped_ = false;
};

}  // namespace support
