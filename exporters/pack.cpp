#include "exporters/pack.h"

#include <algorithm>
#include <fstream>
#include <set>

#include <nlohmann/json.hpp>

namespace exporters {

namespace {

namespace fs = std::filesystem;

// Folders made on the way to a pack, taken away again unless kept.
class NewFolders {
 public:
  explicit NewFolders(const fs::path& wanted) {
    for (fs::path p = wanted; !p.empty() && !fs::exists(p); p = p.parent_path()) made_.push_back(p);
    fs::create_directories(wanted);
  }
  ~NewFolders() {
    std::error_code ignored;
    for (const fs::path& folder : made_) fs::remove(folder, ignored);  // the innermost first; empty ones only
  }
  NewFolders(const NewFolders&) = delete;
  NewFolders& operator=(const NewFolders&) = delete;
  void keep() { made_.clear(); }

 private:
  std::vector<fs::path> made_;
};

// Makes an empty folder of an unused name beside the pack's.
fs::path new_sibling(const fs::path& target, const std::string& purpose) {
  std::string name(".");
  name.append(target.filename().string()).append(".").append(purpose).append("-");
  for (int n = 0;; ++n) {
    fs::path path = target.parent_path() / (name + std::to_string(n));
    if (fs::create_directory(path)) return path;
  }
}

// The folder a pack is put together in; with all that is still in it, it goes with this object.
class Staging {
 public:
  explicit Staging(const fs::path& target) : path_(new_sibling(target, "new")) {}
  ~Staging() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  Staging(const Staging&) = delete;
  Staging& operator=(const Staging&) = delete;
  [[nodiscard]] const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

[[noreturn]] void refuse(const fs::path& path, const std::string& why) {
  throw WriteError("cannot write the plan pack to " + path.string() + ": " + why);
}

// Absolute, links followed, no slash at the end.
fs::path real_path(const fs::path& out) {
  if (out.empty()) refuse(out, "the folder has no name");
  // Absolute first: of a relative path nothing of which exists, weakly_canonical() leaves a relative one.
  fs::path path = fs::weakly_canonical(fs::absolute(out));
  if (!path.has_filename()) path = path.parent_path();
  if (!path.has_filename()) refuse(out, "it is the root of the file system");
  if (fs::is_symlink(fs::symlink_status(path))) refuse(out, "it is a link that leads nowhere");
  return path;
}

// The files that the pack in this folder consists of; empty when it isn't one of coopwright's.
std::set<std::string> files_of_pack(const fs::path& folder) {
  constexpr std::uintmax_t largest = 256u << 20;  // more than any plan; keeps a stranger's file out of memory
  const fs::path file = folder / "plan.json";
  if (!fs::is_regular_file(file) || fs::file_size(file) > largest) return {};
  std::ifstream stream(file, std::ios::binary);
  const auto json = nlohmann::json::parse(stream, nullptr, false);
  if (!json.is_object() || json.value("generator", nlohmann::json()) != "coopwright") return {};
  std::set<std::string> files;
  for (const auto& name : json.value("files", nlohmann::json::array()))
    if (name.is_string()) files.insert(name.get<std::string>());
  return files;
}

void check_replaceable(const fs::path& target) {
  if (!fs::exists(target)) return;
  if (!fs::is_directory(target)) refuse(target, "it is a file");
  if (fs::is_empty(target)) return;
  const std::set<std::string> ours = files_of_pack(target);
  if (ours.empty()) refuse(target, "the folder is there already and coopwright did not write it");
  for (const auto& entry : fs::recursive_directory_iterator(target)) {
    const std::string name = entry.path().lexically_relative(target).generic_string();
    const bool folder = entry.is_directory() && !entry.is_symlink();
    if (!folder && !ours.contains(name))
      refuse(target,
             "the folder holds " + name + ", which coopwright did not write; move it elsewhere first");
  }
}

void put_in_place(const fs::path& complete, const fs::path& target) {
  if (!fs::exists(target)) return fs::rename(complete, target);
  const fs::path old = new_sibling(target, "old");
  std::error_code error, no_way_back;
  fs::rename(target, old, error);  // over the empty folder
  if (error) {
    fs::remove(old, no_way_back);
    refuse(target, error.message());
  }
  fs::rename(complete, target, error);
  if (error) {
    fs::rename(old, target, no_way_back);
    refuse(target, error.message() + (no_way_back ? "; the pack that was there is now " + old.string() : ""));
  }
  fs::remove_all(old, error);
  if (error)
    throw WriteError("the plan pack is complete, but the old one is still in part in " + old.string());
}

std::vector<Writer> chosen(const std::vector<std::string>& only) {
  const std::vector<Writer>& all = writers();
  const auto wanted = [&](std::string_view name) { return std::ranges::find(only, name) != only.end(); };
  for (const std::string& name : only)
    if (std::ranges::find(all, name, &Writer::name) == all.end())
      throw std::invalid_argument("no writer is called " + name);
  if (only.empty()) return all;
  std::vector<Writer> rows;
  for (const Writer& row : all)
    if (wanted(row.name) || row.name == "plan") rows.push_back(row);
  return rows;
}

}  // namespace

void write_pack(const Plan& plan, const fs::path& out, const std::vector<std::string>& only,
                const Progress& progress) {
  write_pack(plan, out, chosen(only), progress);
}

void write_pack(const Plan& plan, const fs::path& out, const std::vector<Writer>& rows,
                const Progress& progress) try {
  const fs::path target = real_path(out);
  check_replaceable(target);
  NewFolders parents(target.parent_path());
  const Staging staging(target);
  for (const Writer& row : rows) {
    if (progress) progress(row.name);
    row.write(plan, staging.path());
  }
  put_in_place(staging.path(), target);
  parents.keep();
} catch (const fs::filesystem_error& error) {
  refuse(error.path1().empty() ? out : error.path1(), error.code().message());
}

}  // namespace exporters
