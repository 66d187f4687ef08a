#include "exporters/plan_json.h"

#include <numbers>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "support/json_schema.h"
#include "support/sample_plan.h"
#include "support/temporary_folder.h"

using nlohmann::json;

namespace {

json parsed(const exporters::Plan& plan) { return json::parse(exporters::plan_json(plan, {"plan.json"})); }

std::vector<bool> judged(const std::vector<std::string>& texts) {
  return support::obeys_schema(texts, PROJECT_DIR "/docs/plan.schema.json");
}

}  // namespace

TEST(PlanJson, ObeysItsSchema) {
  exporters::Plan bare;
  bare.design.has_house = false;
  EXPECT_THAT(judged({exporters::plan_json(support::sample_plan(), {"plan.json", "solid/sample.step"}),
                      exporters::plan_json(bare, {"plan.json"})}),
              testing::ElementsAre(true, true));
}

TEST(PlanJson, SchemaRefusesBrokenPlans) {
  const json good = parsed(support::sample_plan());
  std::vector<std::string> texts{good.dump()};
  const auto broken = [&](auto&& change) {
    json plan = good;
    change(plan);
    texts.push_back(plan.dump());
  };
  broken([](json& p) { p["generator"] = "other"; });
  broken([](json& p) { p.erase("parts"); });
  broken([](json& p) { p["extra"] = 1; });
  broken([](json& p) { p["parts"][0]["placement"]["x"][0] = 2; });
  broken([](json& p) { p["marks"][0]["group"] = "feather"; });
  broken([](json& p) { p["movers"][0].erase("axis"); });
  broken([](json& p) { p["tree"]["assemblies"][0]["parts"][0] = -1; });
  EXPECT_THAT(judged(texts), testing::ElementsAre(true, false, false, false, false, false, false, false));
}

TEST(PlanJson, DescribesMarksByTheirSizes) {
  const json plan = parsed(support::sample_plan());
  ASSERT_EQ(plan["marks"].size(), 7u);
  for (int i = 0; i < support::sample_marks; ++i)
    EXPECT_NEAR(plan["marks"][i]["volume"].get<double>(), support::sample_volume[i], 1e-3) << i;
  EXPECT_EQ(plan["marks"][0]["count"], 4);
  EXPECT_EQ(plan["marks"][0]["blank"], json({900, 38, 38}));
  EXPECT_EQ(plan["marks"][1]["bores"][1]["centre"], json({1024, 19}));
  EXPECT_EQ(plan["marks"][1]["bores"][1]["diameter"], 8);
  EXPECT_EQ(plan["marks"][2]["bevels"][0]["point"], json({500, 0, 0}));
  EXPECT_EQ(plan["marks"][3]["outline"]["outer"][2], json({474, 24}));
  EXPECT_EQ(plan["marks"][4]["outline"]["holes"][0].size(), 4u);
  EXPECT_EQ(plan["marks"][5]["rounding"], 6);
  EXPECT_EQ(plan["marks"][6]["mesh_opening"], 12.7);
}

TEST(PlanJson, PlacesPartsInTheHouse) {
  const json plan = parsed(support::sample_plan());
  ASSERT_EQ(plan["parts"].size(), 12u);
  const json& rafter = plan["parts"][8];
  EXPECT_EQ(rafter["mark"], "R1");
  EXPECT_TRUE(rafter["wall"].is_null());
  EXPECT_EQ(rafter["placement"]["origin"], json({300, -100, 800}));
  EXPECT_NEAR(rafter["placement"]["x"][1].get<double>(), std::numbers::sqrt2 / 2, 1e-12);
  EXPECT_EQ(plan["tree"]["assemblies"][1]["parts"], json({5, 6, 7, 11}));
  EXPECT_EQ(plan["movers"][0]["opens"], 110);
  EXPECT_EQ(plan["movers"][1]["travel"], json({250, 0, 0}));
  EXPECT_EQ(plan["movers"][2]["kind"], "lift_off");
  EXPECT_EQ(plan["design"]["walls"][2]["openings"][0]["door"], "hinged");
  EXPECT_TRUE(plan["design"]["walls"][2]["openings"][1]["door"].is_null());
  EXPECT_EQ(plan["findings"][0]["parts"], json({2, 4}));
}

TEST(PlanJson, RoundsAwayTheLastBits) {
  exporters::Plan plan;
  plan.design.house.width = geometry::mm(0.1 + 0.2);
  EXPECT_NE(exporters::plan_json(plan, {}).find("\"width\":0.3,"), std::string::npos);
}

TEST(PlanJson, StaysJsonWhateverTheTextHolds) {
  exporters::Plan plan;
  plan.name = "a\"\\\n\x01";
  plan.design.name = "broken \xC3( bytes \xFF";
  const json result = parsed(plan);
  EXPECT_EQ(result["name"], plan.name);
  EXPECT_EQ(result["design"]["name"], "broken \uFFFD( bytes \uFFFD");
}

TEST(PlanJson, ListsTheFilesOfThePack) {
  const support::TemporaryFolder folder;
  exporters::write_file(folder.path() / "solid/b", "");
  exporters::write_file(folder.path() / "a", "");
  exporters::write_plan_json(exporters::Plan(), folder.path());
  EXPECT_EQ(json::parse(support::read_bytes(folder.path() / "plan.json"))["files"],
            json({"a", "plan.json", "solid/b"}));
}
