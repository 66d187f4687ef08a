#include <csignal>
#include <filesystem>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/stat.h>

#include "exporters/plan.h"
#include "support/temporary_folder.h"
#include "support/unprivileged.h"

namespace fs = std::filesystem;
using exporters::write_file;
using exporters::WriteError;
using support::read_bytes;
using testing::AllOf;
using testing::HasSubstr;

namespace {

std::string error_of(const fs::path& path, std::string_view bytes) {
  try {
    write_file(path, bytes);
  } catch (const WriteError& error) {
    return error.what();
  }
  return "written";
}

std::size_t entries(const fs::path& folder) {
  return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
}

// The largest file that may be written, as on a disk that is all but full.
class FileSizeLimit {
 public:
  explicit FileSizeLimit(rlim_t bytes) {
    std::signal(SIGXFSZ, SIG_IGN);
    getrlimit(RLIMIT_FSIZE, &before_);
    const rlimit limit{bytes, before_.rlim_max};
    setrlimit(RLIMIT_FSIZE, &limit);
  }
  ~FileSizeLimit() {
    setrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, SIG_DFL);
  }

 private:
  rlimit before_{};
};

}  // namespace

TEST(WriteFile, WritesEveryByteAndMakesTheFolders) {
  const support::TemporaryFolder folder;
  const std::string bytes("a\0b\r\n\xFF", 6);
  write_file(folder.path() / "new" / "deep" / "file", bytes);
  EXPECT_EQ(read_bytes(folder.path() / "new" / "deep" / "file"), bytes);
  EXPECT_EQ(entries(folder.path() / "new" / "deep"), 1u);
}

TEST(WriteFile, ReplacesAFile) {
  const support::TemporaryFolder folder;
  write_file(folder.path() / "file", "a long text that stood there before");
  write_file(folder.path() / "file", "short");
  EXPECT_EQ(read_bytes(folder.path() / "file"), "short");
  EXPECT_EQ(entries(folder.path()), 1u);
}

TEST(WriteFile, NamesThePathAndTheReason) {
  const support::TemporaryFolder folder;
  fs::create_directory(folder.path() / "taken");
  write_file(folder.path() / "taken" / "inside", "x");
  EXPECT_THAT(error_of(folder.path() / "taken", "x"),
              AllOf(HasSubstr((folder.path() / "taken").string()), HasSubstr("Is a directory")));
  EXPECT_THAT(error_of(folder.path() / "taken" / "inside" / "file", "x"), HasSubstr("Not a directory"));
  EXPECT_THAT(error_of(folder.path() / std::string(300, 'n'), "x"), HasSubstr("File name too long"));
  EXPECT_EQ(entries(folder.path()), 1u);
}

TEST(WriteFile, SaysWhenItMayNot) {
  const support::TemporaryFolder folder;
  chmod(folder.path().c_str(), 0555);
  const support::Unprivileged somebody;
  EXPECT_THAT(error_of(folder.path() / "file", "x"), HasSubstr("Permission denied"));
}

TEST(WriteFile, KeepsTheOldFileWhenTheDiskIsFull) {
  const support::TemporaryFolder folder;
  write_file(folder.path() / "file", "old");
  std::string error;
  {
    const FileSizeLimit limit(1000);
    error = error_of(folder.path() / "file", std::string(100000, 'n'));
  }
  EXPECT_THAT(error, HasSubstr("File too large"));
  EXPECT_EQ(read_bytes(folder.path() / "file"), "old");
  EXPECT_EQ(entries(folder.path()), 1u);
}

TEST(WriteFile, DoesNotWriteThroughALinkLaidInItsWay) {
  const support::TemporaryFolder folder;
  write_file(folder.path() / "precious", "kept");
  fs::create_symlink("precious", folder.path() / "file.partial");
  write_file(folder.path() / "file", "new");
  EXPECT_EQ(read_bytes(folder.path() / "precious"), "kept");
  EXPECT_EQ(read_bytes(folder.path() / "file"), "new");
}
