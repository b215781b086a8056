// Finished cases are written up more fully for some causes than for others, while vehicles are
// booked in with the same few findings whatever their cause will turn out to be: does the ranking
// take the fullness of past records for evidence? Half of the demo's causes lose every check, every
// fact and three in four of the symptoms that were not there. Questions are cases of the same world
// with what is found at booking in: the vehicle, conditions, and up to so many symptoms and codes.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>
#include <map>
#include <random>

#include "query/ranking/scores.hpp"
#include "tests/query/demo_shop.hpp"

namespace shoplore::testing {
namespace {

constexpr std::uint64_t kSeed = 20'261'126;
constexpr std::size_t kQuestions = 6'000;

bool is_thinned(const DemoCase& drawn) {
  return drawn.pattern && *drawn.pattern % 2 == 0;
}

void thin_out(DemoCase& drawn, std::mt19937_64& random) {
  if (!is_thinned(drawn)) return;
  drawn.record.checks.clear();
  drawn.record.facts.clear();
  std::erase_if(drawn.record.symptoms, [&](const auto& symptom) {
    return symptom.state == Presence::kAbsent && random() % 4 != 0;
  });
}

std::vector<EvidenceItem> at_booking_in(std::vector<EvidenceItem> items, std::size_t most,
                                        std::mt19937_64& random) {
  std::shuffle(items.begin(), items.end(), random);
  std::vector<EvidenceItem> kept;
  std::size_t found = 0;
  for (const EvidenceItem& item : items) {
    const std::string_view kind = kind_of_attribute(item.attribute);
    const bool is_there = (kind == "symptom" || kind == "code") && item.value == "present";
    const bool is_known = kind == "condition" || id_of_attribute(item.attribute).empty();
    if (is_known || (is_there && found++ < most)) kept.push_back(item);
  }
  std::sort(kept.begin(), kept.end());
  return kept;
}

struct Said {
  Scores scores;
  double of_thinned = 0, thinned_came = 0;  // shares of all questions
};

class UnequalRecords : public ::testing::Test {
 protected:
  UnequalRecords()
      : shop_(2'400, Showcases::kOut, [this](DemoCase& drawn) { thin_out(drawn, random_); }),
        unseen_(shop_.unseen(kQuestions, 2)) {
    for (const auto& [id, drawn] : shop_.closed()) {
      const bool is_thin = is_thinned(drawn);
      const auto [entry, is_new] = thinned_.emplace(*shop_.cause_of(drawn), is_thin);
      EXPECT_TRUE(is_new || entry->second == is_thin) << "a cause is thinned out in part";
    }
  }

  Said ask(const RankingModel& model, std::size_t most) const {
    std::mt19937_64 random(kSeed);
    std::vector<Judged> judged;
    Said said;
    for (const DemoCase& drawn : unseen_) {
      const CauseNumber truth = *shop_.cause_of(drawn);
      const auto items =
          at_booking_in(ranking_items(evidence_of(drawn.record, shop_.vocabulary())), most, random);
      const auto p = model.probabilities(items, {}).value();
      judged.push_back(judge(p, truth));
      for (const auto& [cause, is_thin] : thinned_) said.of_thinned += is_thin ? p[cause] : 0;
      said.thinned_came += thinned_.at(truth) ? 1 : 0;
    }
    said.scores = scores_of(judged);
    said.of_thinned /= static_cast<double>(judged.size());
    said.thinned_came /= static_cast<double>(judged.size());
    return said;
  }

  static void print(const char* name, const Said& said) {
    std::cout << fmt::format(
        "{:12} first {:.3f}, log loss {:.3f}, calibration error {:.3f}; causes with thin records "
        "said {:.3f}, came {:.3f}\n",
        name, said.scores.first, said.scores.log_loss, said.scores.calibration_error,
        said.of_thinned, said.thinned_came);
  }

  std::mt19937_64 random_{kSeed};
  DemoShop shop_;
  std::vector<DemoCase> unseen_;
  std::map<CauseNumber, bool> thinned_;
};

// The likeness charges what a past case does not know, scarcity makes up for it: both are fitted to
// past cases with part of their evidence hidden, and both must do no harm here.
TEST_F(UnequalRecords, AreHardlyTakenForEvidenceAtBookingIn) {
  RankingModel model = shop_.fitted(1);
  const RankingKnobs fitted = model.knobs();
  for (const std::size_t most : {1U, 2U, 4U}) {
    std::cout << "symptoms and codes: up to " << most << "\n";
    model.set_knobs(fitted);
    const Said with = ask(model, most);
    print("fitted", with);
    RankingKnobs knobs = fitted;
    knobs.scarcity = 0;
    model.set_knobs(knobs);
    const Said without = ask(model, most);
    print("no scarcity", without);
    knobs.eta = 0;
    model.set_knobs(knobs);
    const Said no_likeness = ask(model, most);
    print("nor likeness", no_likeness);
    EXPECT_LT(with.scores.log_loss, without.scores.log_loss + .01);
    EXPECT_LT(with.scores.log_loss, no_likeness.scores.log_loss);
    EXPECT_GT(with.scores.first, without.scores.first - .01);
    EXPECT_NEAR(with.of_thinned, with.thinned_came, .04);
    EXPECT_GT(with.of_thinned, without.of_thinned + .01) << "scarcity does nothing";
  }
}

}  // namespace
}  // namespace shoplore::testing
