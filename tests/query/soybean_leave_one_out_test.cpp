// Every soybean case asked as if new, at fixed knobs and fixed masks, against an independent
// implementation of the same formulas (tests/query/data/soybean_loo_reference.json; a prototype,
// not a publication: "cached" variant, tree weights over all cases).
#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <iostream>
#include <nlohmann/json.hpp>

#include "query/ranking/scores.hpp"
#include "tests/query/soybean.hpp"

namespace shoplore::testing {
namespace {

using Json = nlohmann::json;

Json reference() {
  std::ifstream file(SHOPLORE_SOYBEAN_REFERENCE);
  return Json::parse(file).at("results");
}

// Position of an item's attribute in the file: facts are named "00 date".
std::size_t attribute_number(const EvidenceItem& item) {
  return std::stoul(item.attribute.substr(std::string_view("fact:").size(), 2));
}

// Case i keeps attribute a where (a + i) is a multiple of `every`.
std::vector<EvidenceItem> masked(const PastCase& past, std::size_t i, std::size_t every) {
  std::vector<EvidenceItem> kept;
  for (const EvidenceItem& item : past.questions) {
    if ((attribute_number(item) + i) % every == 0) kept.push_back(item);
  }
  return kept;
}

std::string plain(std::string disease) {
  for (char& c : disease) c = std::isalnum(static_cast<unsigned char>(c)) ? c : '_';
  return disease;
}

void expect_first_cases(const Json& first, const SoybeanShop& shop, const RankingModel& model,
                        std::size_t every) {
  for (const Json& expected : first) {
    const auto i = expected.at("case").get<std::size_t>();
    const PastCase& past = shop.cases()[i];
    const auto items = masked(past, i, every);
    ASSERT_EQ(items.size(), expected.at("k").get<std::size_t>());
    const Ranking ranking = model.rank(items, {}, past.stated).value();
    for (std::size_t r = 0; r < 3; ++r) {
      const Json& row = expected.at("top3")[r];
      EXPECT_EQ(shop.disease(ranking.causes[r].cause), plain(row[0].get<std::string>()));
      EXPECT_NEAR(ranking.causes[r].probability, row[1].get<double>(), 1e-4);
    }
    const Json& explained = expected.at("explain_top1");
    double lines = 0;
    for (const WhyLine& line : ranking.causes[0].why) lines += line.weight;
    EXPECT_NEAR(lines, explained.at("items").get<double>(), 1e-4);
    EXPECT_NEAR(ranking.causes[0].pairs, explained.at("pairs").get<double>(), 1e-4);
    EXPECT_NEAR(ranking.causes[0].likeness, explained.at("case").get<double>(), 1e-4);
  }
}

TEST(SoybeanLeaveOneOut, AgreesWithTheReference) {
  const SoybeanShop shop;
  ASSERT_EQ(shop.cases().size(), 683U);
  const Json expected = reference();
  const RankingModel model = RankingModel::of(shop.ledger(), {}).value();
  for (const auto& [level, every] :
       {std::pair("all", 1U), std::pair("half", 2U), std::pair("quarter", 4U)}) {
    const Json& of_level = expected.at(std::string("general/cached/") + level);
    expect_first_cases(of_level.at("first"), shop, model, every);
    std::vector<Judged> judged;
    for (std::size_t i = 0; i < shop.cases().size(); ++i) {
      const PastCase& past = shop.cases()[i];
      const auto items = masked(past, i, every);
      judged.push_back(
          judge(model.probabilities(items, {}, past.stated).value(), past.stated.cause));
    }
    const Scores scores = scores_of(judged);
    const Json& metrics = of_level.at("metrics");
    std::cout << level << ": first " << scores.first << " (" << metrics.at("top1") << "), log loss "
              << scores.log_loss << " (" << metrics.at("ll") << "), Brier " << scores.brier << " ("
              << metrics.at("brier") << "), calibration " << scores.calibration_error << " ("
              << metrics.at("ece") << ")\n";
    EXPECT_NEAR(scores.first, metrics.at("top1").get<double>(), .002);
    EXPECT_NEAR(scores.first_three, metrics.at("top3").get<double>(), .002);
    EXPECT_NEAR(scores.mean_reciprocal_rank, metrics.at("mrr").get<double>(), .002);
    EXPECT_NEAR(scores.log_loss, metrics.at("ll").get<double>(), .002);
    EXPECT_NEAR(scores.brier, metrics.at("brier").get<double>(), .002);
    EXPECT_NEAR(scores.calibration_error, metrics.at("ece").get<double>(), .002);
  }
}

}  // namespace
}  // namespace shoplore::testing
