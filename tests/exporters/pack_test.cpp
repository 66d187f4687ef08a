#include "exporters/pack.h"

#include <set>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/stat.h>

#include "exporters/plan_json.h"
#include "support/sample_plan.h"
#include "support/temporary_folder.h"
#include "support/unprivileged.h"

namespace fs = std::filesystem;
using exporters::Plan;
using exporters::write_file;
using exporters::write_pack;
using exporters::Writer;
using support::read_bytes;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;

namespace {

// Writers that need no kernel: what a file holds says which plan it is of.
const std::vector<Writer> rows{
    {"note", "a file", [](const Plan& plan, const fs::path& out) { write_file(out / "note", plan.name); }},
    {"deep", "a file", [](const Plan& plan, const fs::path& out) { write_file(out / "a/b", plan.name); }},
    {"plan", "plan.json", exporters::write_plan_json},
};
const std::vector<Writer> failing_rows{
    rows[0],
    {"bad", "nothing", [](const Plan&, const fs::path&) { throw exporters::WriteError("no ink"); }},
    rows[2],
};

Plan named(const std::string& name) {
  Plan plan;
  plan.name = name;
  return plan;
}

// Everything under the folder, links not followed.
std::set<std::string> tree(const fs::path& folder) {
  std::set<std::string> found;
  for (const auto& entry : fs::recursive_directory_iterator(folder))
    found.insert(entry.path().lexically_relative(folder).generic_string());
  return found;
}

std::string error_of(const Plan& plan, const fs::path& out, const std::vector<Writer>& table = rows) {
  try {
    write_pack(plan, out, table, {});
  } catch (const exporters::WriteError& error) {
    return error.what();
  }
  return "written";
}

class Pack : public testing::Test {
 protected:
  support::TemporaryFolder folder;
  fs::path out = folder.path() / "out";
};

}  // namespace

TEST_F(Pack, WritesEveryRowInOrderAndNothingElse) {
  std::vector<std::string> told;
  write_pack(named("one"), out, rows, [&](std::string_view row) { told.emplace_back(row); });
  EXPECT_THAT(told, ElementsAre("note", "deep", "plan"));
  EXPECT_THAT(tree(folder.path()), ElementsAre("out", "out/a", "out/a/b", "out/note", "out/plan.json"));
  EXPECT_EQ(read_bytes(out / "a/b"), "one");
}

TEST_F(Pack, ReplacesOneOfItsOwnWithAllThatWasInIt) {
  write_pack(named("one"), out, rows, {});
  write_pack(named("two"), out, {rows[0], rows[2]}, {});
  EXPECT_THAT(tree(folder.path()), ElementsAre("out", "out/note", "out/plan.json"));
  EXPECT_EQ(read_bytes(out / "note"), "two");
}

TEST_F(Pack, FillsAnEmptyFolder) {
  fs::create_directory(out);
  write_pack(named("one"), out, rows, {});
  EXPECT_EQ(read_bytes(out / "note"), "one");
}

TEST_F(Pack, LeavesAStrangersFolderAlone) {
  write_file(out / "letter", "dear");
  EXPECT_THAT(error_of(named("one"), out),
              AllOf(HasSubstr(out.string()), HasSubstr("coopwright did not write it")));
  EXPECT_THAT(tree(folder.path()), ElementsAre("out", "out/letter"));
}

TEST_F(Pack, IsNotFooledByAnotherPlanJson) {
  for (const char* text : {"", "[1]", "{", "{\"generator\":\"other\",\"files\":[\"plan.json\"]}",
                           "{\"generator\":7}", "{\"generator\":\"coopwright\",\"files\":3}"}) {
    write_file(out / "plan.json", text);
    EXPECT_THAT(error_of(named("one"), out), HasSubstr("coopwright did not write it")) << text;
    EXPECT_EQ(read_bytes(out / "plan.json"), text);
  }
  write_file(out / "plan.json", std::string(100000, '['));
  EXPECT_THAT(error_of(named("one"), out), HasSubstr("coopwright did not write it"));
}

TEST_F(Pack, KeepsWhatSomebodyPutIntoAPack) {
  write_pack(named("one"), out, rows, {});
  write_file(out / "a/photo", "hens");
  EXPECT_THAT(error_of(named("two"), out), HasSubstr("a/photo, which coopwright did not write"));
  EXPECT_EQ(read_bytes(out / "a/photo"), "hens");
  EXPECT_EQ(read_bytes(out / "note"), "one");

  fs::remove(out / "a/photo");
  fs::create_directory_symlink("/", out / "a/link");
  EXPECT_THAT(error_of(named("two"), out), HasSubstr("a/link, which"));
}

TEST_F(Pack, DoesNotReplaceAFile) {
  write_file(out, "text");
  EXPECT_THAT(error_of(named("one"), out), HasSubstr("it is a file"));
  EXPECT_EQ(read_bytes(out), "text");
  EXPECT_THAT(error_of(named("one"), out / "below"), HasSubstr("Not a directory"));
  EXPECT_THAT(tree(folder.path()), ElementsAre("out"));
}

TEST_F(Pack, LeavesNothingBehindWhenAWriterFails) {
  EXPECT_EQ(error_of(named("one"), folder.path() / "x/y/out", failing_rows), "no ink");
  EXPECT_TRUE(tree(folder.path()).empty());
}

TEST_F(Pack, KeepsTheOldPackWhenAWriterFails) {
  write_pack(named("one"), out, rows, {});
  const std::set<std::string> before = tree(folder.path());
  EXPECT_EQ(error_of(named("two"), out, failing_rows), "no ink");
  EXPECT_EQ(tree(folder.path()), before);
  EXPECT_EQ(read_bytes(out / "note"), "one");
}

// The new pack is gone by the time it should be moved: the old one has stepped aside by then.
TEST_F(Pack, PutsTheOldPackBackWhenTheNewOneCannotTakeItsPlace) {
  write_pack(named("one"), out, rows, {});
  const std::set<std::string> before = tree(folder.path());
  std::vector<Writer> vanishing = rows;
  vanishing.push_back(
      {"vanish", "nothing", [](const Plan&, const fs::path& staging) { fs::remove_all(staging); }});
  EXPECT_THAT(error_of(named("two"), out, vanishing), HasSubstr("No such file"));
  EXPECT_EQ(tree(folder.path()), before);
  EXPECT_EQ(read_bytes(out / "note"), "one");
}

TEST_F(Pack, SaysWhenItMayNotWriteThere) {
  chmod(folder.path().c_str(), 0555);
  {
    const support::Unprivileged somebody;
    EXPECT_THAT(error_of(named("one"), out),
                AllOf(HasSubstr(folder.path().string()), HasSubstr("Permission denied")));
  }
  EXPECT_TRUE(tree(folder.path()).empty());
}

TEST_F(Pack, TakesASlashAtTheEnd) {
  write_pack(named("one"), out.string() + "/", rows, {});
  write_pack(named("two"), out.string() + "///", rows, {});
  EXPECT_EQ(read_bytes(out / "note"), "two");
  EXPECT_EQ(fs::directory_iterator(folder.path())->path(), out);
}

TEST_F(Pack, FollowsALinkToAFolder) {
  write_pack(named("one"), folder.path() / "real", rows, {});
  fs::create_directory_symlink("real", out);
  write_pack(named("two"), out, rows, {});
  EXPECT_TRUE(fs::is_symlink(out));
  EXPECT_EQ(read_bytes(folder.path() / "real/note"), "two");
}

TEST_F(Pack, RefusesALinkThatLeadsNowhere) {
  fs::create_directory_symlink("nowhere", out);
  EXPECT_THAT(error_of(named("one"), out), HasSubstr("leads nowhere"));
  EXPECT_THAT(tree(folder.path()), ElementsAre("out"));
}

TEST_F(Pack, RefusesTheRootAndNothing) {
  EXPECT_THAT(error_of(named("one"), "/"), HasSubstr("root of the file system"));
  EXPECT_THAT(error_of(named("one"), ""), HasSubstr("no name"));
}

TEST_F(Pack, StandsBesideLeftoversOfARunThatWasKilled) {
  write_file(folder.path() / ".out.new-0/half", "x");
  write_pack(named("one"), out, rows, {});
  EXPECT_EQ(read_bytes(out / "note"), "one");
  EXPECT_EQ(read_bytes(folder.path() / ".out.new-0/half"), "x");
}

TEST_F(Pack, WritesThePartsAskedForAndAlwaysPlanJson) {
  std::vector<std::string> told;
  write_pack(support::sample_plan(), out, {std::string("stl")},
             [&](std::string_view row) { told.emplace_back(row); });
  EXPECT_THAT(told, ElementsAre("stl", "plan"));
  EXPECT_THAT(tree(out), ElementsAre("plan.json", "solid", "solid/sample.stl"));
  EXPECT_THROW(write_pack(named("one"), out, {std::string("papyrus")}), std::invalid_argument);
}

TEST(Writers, HaveNamesOfTheirOwnAndEndWithThePlan) {
  std::set<std::string_view> names;
  for (const Writer& row : exporters::writers()) EXPECT_TRUE(names.insert(row.name).second) << row.name;
  EXPECT_EQ(exporters::writers().back().name, "plan");
}
