#include "query/checks/check_advice.hpp"

#include <gtest/gtest.h>

#include "tests/query/plain_cases.hpp"

namespace shoplore::testing {
namespace {

Vocabulary words() {
  return *Vocabulary::parse({{"cautions.json", R"({"kind":"caution","entries":[
         {"id":"brake_dust","name":"brake dust","how":"Mask on."}]})"},
                             {"components.json", R"({"kind":"component","entries":[
         {"id":"hose","name":"hose"},{"id":"clip","name":"clip"},
         {"id":"control_unit","name":"control unit"},
         {"id":"brake_pad","name":"brake pad","cautions":["brake_dust"]}]})"},
                             {"checks.json", R"({"kind":"check","entries":[
         {"id":"look","name":"look at it","minutes":60,"components":["hose"],
          "where":"under the tray","how":"Engine off.","removals":["tray"]}]})"},
                             {"removals.json", R"({"kind":"removal","entries":[
         {"id":"tray","name":"tray","minutes":10}]})"}});
}

// The check tells the two causes apart without fail; nine in ten are the first.
std::vector<PlainCase> twenty_cases(const std::string& often, const std::string& seldom) {
  std::vector<PlainCase> cases;
  for (int i = 0; i < 20; ++i) {
    const bool is_often = i % 10 != 0;
    cases.push_back({is_often ? often : seldom,
                     {{"check:look", is_often ? "fail" : "pass"}, {"symptom:hums", "present"}}});
  }
  return cases;
}

struct Advised {
  CheckAdvice advice;
  Advised(const std::vector<PlainCase>& cases, const WorkFigures& figures, AgreedToTry agreed) {
    const Vocabulary vocabulary = words();
    const PlainCounter counter(cases);
    const RankingModel model = RankingModel::of(counter, {}).value();
    const auto rates = answer_rates(counter, 2).value();
    const std::vector<EvidenceItem> items{{"symptom:hums", "present"}};
    const Ranking ranking = model.rank(items, {}).value();
    advice = advise({ranking, items, {}, agreed}, counter, {rates, figures, vocabulary}).value();
  }
};

// Both repairs 20 minutes: trying the likelier first takes about 22, looking alone takes 70.
WorkFigures quick_repairs(const std::string& often, const std::string& seldom) {
  WorkFigures figures;
  figures.repairs[often] = {20, 0, {}, 9};
  figures.repairs[seldom] = {20, 0, {}, 9};
  return figures;
}

TEST(CheckAdvice, SaysWhereAndHowWithWhatComesOff) {
  const Advised advised(twenty_cases("hose:split", "clip:loose"), {}, AgreedToTry::kNo);
  ASSERT_EQ(advised.advice.checks.size(), 1U);
  const AdvisedCheck& check = advised.advice.checks[0];
  EXPECT_EQ(check.where, "under the tray");
  EXPECT_EQ(check.how, "Engine off.");
  EXPECT_EQ(check.removals, std::vector<std::string>{"tray"});
  EXPECT_EQ(check.minutes + check.removal_minutes, 70);
  // By the plain rule of check_trust: every fail was borne out, a pass on the clip too.
  EXPECT_EQ(check.fail_misled.out_of, 18U);
  EXPECT_EQ(check.fail_misled.count, 0U);
}

TEST(CheckAdvice, ProposesToRepairOnlyWhereThatIsAgreedAndCheaper) {
  const auto cases = twenty_cases("hose:split", "clip:loose");
  const WorkFigures quick = quick_repairs("hose:split", "clip:loose");
  EXPECT_FALSE(Advised(cases, quick, AgreedToTry::kNo).advice.repair);
  const auto repair = Advised(cases, quick, AgreedToTry::kYes).advice.repair;
  ASSERT_TRUE(repair);
  EXPECT_EQ(repair->order[0].component, "hose");
  EXPECT_EQ(repair->order[0].minutes, 20);
  EXPECT_EQ(repair->order[1].component, "clip");
  EXPECT_NEAR(repair->expected_minutes, 20 + (1 - repair->order[0].probability) * 20, 1e-9);
  EXPECT_GT(repair->expected_minutes_checked, 70);
}

TEST(CheckAdvice, LooksFirstWhereAWrongPartIsDear) {
  WorkFigures dear = quick_repairs("hose:split", "clip:loose");
  dear.repairs["hose:split"].parts = dear.repairs["clip:loose"].parts = 3'000;
  // Without the cost of an hour a price cannot be weighed.
  const auto cases = twenty_cases("hose:split", "clip:loose");
  EXPECT_TRUE(Advised(cases, dear, AgreedToTry::kYes).advice.repair);
  dear.hour_costs = 60;
  EXPECT_FALSE(Advised(cases, dear, AgreedToTry::kYes).advice.repair);
}

TEST(CheckAdvice, NeverTriesBrakesOrCodedParts) {
  for (const char* component : {"brake_pad:worn", "control_unit:dead", "never_heard_of:broken"}) {
    const auto repair = Advised(twenty_cases(component, "clip:loose"),
                                quick_repairs(component, "clip:loose"), AgreedToTry::kYes)
                            .advice.repair;
    EXPECT_FALSE(repair) << component;
  }
  // As a second choice it ends the order.
  const auto repair = Advised(twenty_cases("hose:split", "brake_pad:worn"),
                              quick_repairs("hose:split", "brake_pad:worn"), AgreedToTry::kYes)
                          .advice.repair;
  ASSERT_TRUE(repair);
  EXPECT_EQ(repair->order.size(), 1U);
}

TEST(CheckAdvice, NeedsASuspicionAndACheckToWeighItAgainst) {
  // Even chances: nothing is likelier than not.
  std::vector<PlainCase> even;
  for (int i = 0; i < 20; ++i) {
    even.push_back({i % 3 == 0   ? "hose:split"
                    : i % 3 == 1 ? "clip:loose"
                                 : "clip:lost",
                    {{"check:look", i % 3 == 0 ? "fail" : "pass"}, {"symptom:hums", "present"}}});
  }
  const WorkFigures quick = quick_repairs("hose:split", "clip:loose");
  EXPECT_FALSE(Advised(even, quick, AgreedToTry::kYes).advice.repair);
  // Sure, but no check left that would tell anything.
  std::vector<PlainCase> one;
  for (int i = 0; i < 3; ++i) one.push_back({"hose:split", {{"symptom:hums", "present"}}});
  EXPECT_FALSE(Advised(one, quick, AgreedToTry::kYes).advice.repair);
}

TEST(CheckAdvice, AStepHoldsWhatComesOffForIt) {
  WorkFigures figures = quick_repairs("hose:split", "clip:loose");
  figures.repairs["hose:split"] = {35, 0, {"tray"}, 9};  // clocked with the tray's 10 minutes
  const auto repair =
      Advised(twenty_cases("hose:split", "clip:loose"), figures, AgreedToTry::kYes).advice.repair;
  ASSERT_TRUE(repair);
  ASSERT_EQ(repair->order[0].component, "hose");
  EXPECT_EQ(repair->order[0].minutes, 35);
}

TEST(CheckAdvice, KnowsTheBuiltInPartsThatAreNeverTried) {
  const Vocabulary built_in = Vocabulary::built_in().value();
  // Whatever the names say of brakes, steering, airbags and high voltage.
  for (const auto& [id, entry] : built_in.entries(EntryKind::kComponent)) {
    for (const char* word : {"brake_", "steering_", "airbag", "traction_", "inverter",
                             "high_voltage", "caliper", "track_rod", "gateway", "injector"}) {
      if (id.find(word) == id.npos) continue;
      EXPECT_TRUE(is_never_tried(id, built_in)) << id;
    }
  }
  for (const char* component : {"brake_disc", "brake_caliper", "airbag_unit", "abs_unit",
                                "traction_battery", "gearbox_control_unit"}) {
    EXPECT_TRUE(is_never_tried(component, built_in)) << component;
  }
  for (const char* component : {"wastegate_linkage", "spark_plug", "charge_air_hose"}) {
    EXPECT_FALSE(is_never_tried(component, built_in)) << component;
  }
}

}  // namespace
}  // namespace shoplore::testing
