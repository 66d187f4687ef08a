#include <cerrno>
#include <cstdio>
#include <memory>
#include <system_error>

#include "exporters/plan.h"

namespace exporters {

namespace {

namespace fs = std::filesystem;

struct Close {
  void operator()(std::FILE* file) const { std::fclose(file); }
};

[[noreturn]] void fail(const fs::path& path, const std::error_code& reason) {
  throw WriteError("cannot write " + path.string() + ": " + reason.message());
}

std::error_code last_error() { return {errno, std::generic_category()}; }

// Throws away the neighbour unless it was renamed into place.
struct Discard {
  const fs::path& path;
  ~Discard() {
    std::error_code ignored;
    fs::remove(path, ignored);
  }
};

}  // namespace

void write_file(const fs::path& path, std::string_view bytes) {
  std::error_code error;
  if (path.has_parent_path()) fs::create_directories(path.parent_path(), error);
  if (error) fail(path, error);

  fs::path neighbour = path;
  neighbour += ".partial";
  fs::remove(neighbour, error);  // left by a run that was killed
  // "x": never through a link that someone laid there.
  std::unique_ptr<std::FILE, Close> file(std::fopen(neighbour.c_str(), "wbx"));
  if (!file) fail(path, last_error());
  const Discard discard{neighbour};

  if (std::fwrite(bytes.data(), 1, bytes.size(), file.get()) != bytes.size()) fail(path, last_error());
  // A full disk may show only when the last buffer goes out.
  if (std::fclose(file.release()) != 0) fail(path, last_error());
  fs::rename(neighbour, path, error);
  if (error) fail(path, error);
}

}  // namespace exporters
