#include "corpus-demo/truth.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <string>
#include <vector>

#include "corpus-demo/generator.hpp"

namespace shoplore {
namespace {

const World& world() {
  static const World made = demo_world();
  return made;
}

const Vocabulary& vocabulary() {
  static const Vocabulary loaded = *Vocabulary::built_in();
  return loaded;
}

// Closed cases of the demo, seed 1.
const std::vector<DemoCase>& closed() {
  static const std::vector<DemoCase> cases = [] {
    std::vector<DemoCase> kept;
    generate_workshop(world(), vocabulary(), {2'400, 1}, [&](const DemoCase& drawn) {
      if (drawn.record.state == CaseState::kClosed && drawn.pattern) kept.push_back(drawn);
    });
    return kept;
  }();
  return cases;
}

// Probability of a count as far from n p, or farther, on its side: summed term by term.
double binomial_tail(int n, int count, double p) {
  if (p <= 0) return count > 0 ? 0 : 1;
  if (p >= 1) return count < n ? 0 : 1;
  const auto term = [&](int k) {
    return std::exp(std::lgamma(n + 1.0) - std::lgamma(k + 1.0) - std::lgamma(n - k + 1.0) +
                    k * std::log(p) + (n - k) * std::log1p(-p));
  };
  double sum = 0;
  if (count > n * p) {
    for (int k = count; k <= n; ++k) sum += term(k);
  } else {
    for (int k = 0; k <= count; ++k) sum += term(k);
  }
  return sum;
}

struct Observed {
  int count = 0, of = 0;
  void add(bool holds) {
    count += holds ? 1 : 0;
    ++of;
  }
};

// Some thousand rates are looked at, so each gets 1 in 1,000,000.
void expect_rate(const Observed& seen, double rate, const std::string& what) {
  EXPECT_GT(binomial_tail(seen.of, seen.count, rate), 1e-6)
      << what << ": " << seen.count << " of " << seen.of << ", true rate " << rate;
}

template <class Visit>
void for_cases_of(std::size_t pattern, const Visit& visit) {
  for (const DemoCase& each : closed()) {
    if (each.pattern == pattern) visit(each.record);
  }
}

void expect_rates(const std::vector<EvidenceRate>& rates, double highest) {
  for (const EvidenceRate& rate : rates) {
    EXPECT_GE(rate.probability, 0) << rate.id;
    EXPECT_LE(rate.probability, highest) << rate.id;
  }
}

TEST(Truth, PriorsAddToOneAndLieBetweenOneAndNinePercent) {
  double sum = 0;
  for (std::size_t i = 0; i < world().patterns.size(); ++i) {
    sum += prior_of(world(), i);
    EXPECT_GT(prior_of(world(), i), 0.01) << world().patterns[i].id;
    EXPECT_LT(prior_of(world(), i), 0.09) << world().patterns[i].id;
  }
  EXPECT_NEAR(sum, 1, 1e-12);
}

TEST(Truth, EveryRateIsAProbabilityAndEveryPlanShareAddsUp) {
  for (const FailurePattern& pattern : world().patterns) {
    for (const auto* rates : {&pattern.symptoms, &pattern.codes, &pattern.conditions,
                              &pattern.checks, &pattern.signs, &pattern.families}) {
      expect_rates(*rates, 1);
    }
    double shares = 0;
    for (const FixPlan& plan : pattern.plans) shares += plan.share;
    EXPECT_NEAR(shares, 1, 1e-9) << pattern.id;
    const double bands = std::accumulate(pattern.mileage.begin(), pattern.mileage.end(), 0.0);
    EXPECT_NEAR(bands, 1, 1e-9) << pattern.id;
  }
}

TEST(Truth, PatternIsTheRecordedMainCause) {
  for (const DemoCase& each : closed()) {
    ASSERT_EQ(pattern_of(world(), each.record), each.pattern) << each.record.ref;
  }
}

TEST(Truth, PatternsComeInTheirTrueShares) {
  for (std::size_t i = 0; i < world().patterns.size(); ++i) {
    Observed seen;
    for (const DemoCase& each : closed()) seen.add(each.pattern == i);
    expect_rate(seen, prior_of(world(), i), std::string(world().patterns[i].id));
  }
}

// Where a symptom is asked about it is listed present or absent alike, so the listed ones show
// its true rate.
TEST(Truth, SymptomsComeAtTheirTrueRates) {
  for (std::size_t i = 0; i < world().patterns.size(); ++i) {
    const FailurePattern& pattern = world().patterns[i];
    for (const SymptomHabit& habit : world().symptoms) {
      if (std::count(habit.asked_in.begin(), habit.asked_in.end(), pattern.group) == 0) continue;
      Observed seen;
      for_cases_of(i, [&](const Case& record) {
        for (const Symptom& symptom : record.symptoms) {
          if (symptom.id == habit.id) seen.add(symptom.state == Presence::kPresent);
        }
      });
      expect_rate(seen, symptom_rate(pattern, habit), fmt::format("{} {}", pattern.id, habit.id));
    }
  }
}

TEST(Truth, CodesComeAtTheirTrueRates) {
  for (std::size_t i = 0; i < world().patterns.size(); ++i) {
    const FailurePattern& pattern = world().patterns[i];
    for (const std::string_view id : world().codes) {
      Observed seen;
      for_cases_of(i, [&](const Case& record) {
        if (record.scanned != YesNo::kYes) return;
        seen.add(std::any_of(record.codes.begin(), record.codes.end(),
                             [&](const Code& code) { return code.code == id; }));
      });
      expect_rate(seen, rate_of(pattern.codes, id, kStrayCode),
                  fmt::format("{} {}", pattern.id, id));
    }
  }
}

TEST(Truth, ChecksFailAtTheirTrueRates) {
  for (std::size_t i = 0; i < world().patterns.size(); ++i) {
    const FailurePattern& pattern = world().patterns[i];
    for (const CheckHabit& habit : world().checks) {
      Observed seen;
      for_cases_of(i, [&](const Case& record) {
        for (const Check& check : record.checks) {
          if (check.id != habit.id || check.verdict == Verdict::kUnclear) continue;
          seen.add(check.verdict == Verdict::kFail);
        }
      });
      expect_rate(seen, rate_of(pattern.checks, habit.id, kStrayCheckFail),
                  fmt::format("{} {}", pattern.id, habit.id));
    }
  }
}

TEST(Truth, FactsComeAtTheirTrueShares) {
  for (std::size_t i = 0; i < world().patterns.size(); ++i) {
    const FailurePattern& pattern = world().patterns[i];
    for (const FactRates& fact : world().facts) {
      for (const EvidenceRate& value : fact_rates(world(), pattern, fact.name)) {
        Observed seen;
        for_cases_of(i, [&](const Case& record) {
          const auto stated = record.facts.find(std::string(fact.name));
          if (stated != record.facts.end()) seen.add(stated->second == value.id);
        });
        expect_rate(seen, value.probability, fmt::format("{} {}", pattern.id, value.id));
      }
    }
  }
}

TEST(Truth, FamiliesAndMileageBandsComeAtTheirTrueShares) {
  for (std::size_t i = 0; i < world().patterns.size(); ++i) {
    const FailurePattern& pattern = world().patterns[i];
    for (const EvidenceRate& family : pattern.families) {
      Observed seen;
      for_cases_of(i, [&](const Case& record) {
        const std::string& named = record.vehicle.engine_family;
        if (!named.empty()) seen.add(named == family.id);
      });
      expect_rate(seen, family.probability, fmt::format("{} {}", pattern.id, family.id));
    }
    for (std::size_t band = 0; band < pattern.mileage.size(); ++band) {
      Observed seen;
      for_cases_of(i, [&](const Case& record) {
        const auto& km = record.vehicle.mileage_km;
        if (km)
          seen.add(static_cast<std::size_t>(std::min<std::int64_t>(km->value / 50'000, 5)) == band);
      });
      expect_rate(seen, pattern.mileage[band], fmt::format("{} band {}", pattern.id, band));
    }
  }
}

TEST(Truth, FixesAreChosenAtTheirTrueShares) {
  for (std::size_t i = 0; i < world().patterns.size(); ++i) {
    const FailurePattern& pattern = world().patterns[i];
    for (const FixPlan& plan : pattern.plans) {
      Observed seen;
      for_cases_of(i, [&](const Case& record) {
        const auto& fixes = record.correction->fixes;
        seen.add(std::equal(fixes.begin(), fixes.end(), plan.fixes.begin(), plan.fixes.end(),
                            [](const Fix& done, const FixName& planned) {
                              return done.action == planned.action &&
                                     done.component == planned.component;
                            }));
      });
      expect_rate(seen, plan.share, fmt::format("{} {}", pattern.id, plan.fixes[0].component));
    }
  }
}

TEST(Truth, BestPossibleAccuracyLeavesRoomForDoubt) {
  Observed right;
  for (const DemoCase& each : closed()) right.add(best_guess(world(), each.record) == each.pattern);
  const double accuracy = static_cast<double>(right.count) / right.of;
  RecordProperty("best_possible", fmt::format("{:.4f}", accuracy));
  EXPECT_GE(accuracy, 0.80);
  EXPECT_LE(accuracy, 0.92);
}

// Were the formula and the draws to disagree, what the posterior claims would not come true.
TEST(Truth, PosteriorComesTrueAsOftenAsItSays) {
  double claimed = 0, variance = 0;
  int right = 0;
  for (const DemoCase& each : closed()) {
    const auto posterior = true_posterior(world(), each.record);
    const auto top = std::max_element(posterior.begin(), posterior.end());
    claimed += *top;
    variance += *top * (1 - *top);
    right += static_cast<std::size_t>(top - posterior.begin()) == each.pattern ? 1 : 0;
    ASSERT_NEAR(std::accumulate(posterior.begin(), posterior.end(), 0.0), 1, 1e-9);
  }
  EXPECT_NEAR(right, claimed, 4 * std::sqrt(variance));
}

TEST(Truth, PosteriorReadsNeitherTextsNorCauseNorOutcome) {
  for (std::size_t i = 0; i < 50; ++i) {
    Case bare = closed()[i].record;
    bare.complaint.clear();
    bare.notes.clear();
    bare.cause.reset();
    bare.correction.reset();
    bare.outcome.reset();
    bare.follows.clear();
    EXPECT_EQ(true_posterior(world(), bare), true_posterior(world(), closed()[i].record));
  }
}

// Two patterns, one code with rates 0.8 and 0.1, shares 1 and 3, scanned whenever anybody looks:
// P(first | code) = 1 x 0.8 / (1 x 0.8 + 3 x 0.1) = 8/11; without it 1 x 0.2 / (0.2 + 3 x 0.9).
World two_patterns() {
  World small;
  FailurePattern first;
  first.id = "first";
  first.component = "ignition_coil";
  first.failure = "cracked";
  first.share = 1;
  first.codes = {{"P0301", 0.8}};
  first.families = {{"F", 1}};
  first.mileage = {1, 1, 1, 1, 1, 1};
  FailurePattern second = first;
  second.id = "second";
  second.component = "injector";
  second.share = 3;
  second.codes = {{"P0301", 0.1}};
  small.patterns = {first, second};
  small.families = {{"F", "Arlune", Fuel::kPetrol, Transmission::kManual, 2008, {"Skerry"}}};
  small.scanned = {{ComplaintGroup::kPower, 0.5}};
  small.codes = {"P0301"};
  return small;
}

TEST(Truth, PosteriorOfASmallWorldIsTheOneWorkedOutByHand) {
  Case record;
  record.scanned = YesNo::kYes;
  EXPECT_NEAR(true_posterior(two_patterns(), record)[0], 0.2 / 2.9, 1e-12);
  record.codes.push_back({});
  record.codes.back().code = "P0301";
  EXPECT_NEAR(true_posterior(two_patterns(), record)[0], 8.0 / 11, 1e-12);
  record.codes.clear();
  record.scanned = YesNo::kNo;
  EXPECT_NEAR(true_posterior(two_patterns(), record)[0], 0.25, 1e-12);
}

TEST(Truth, LinesNameRefAndPattern) {
  EXPECT_EQ(truth_line(two_patterns(), "demo-000001", 1),
            R"({"ref":"demo-000001","pattern":"second"})");
}

// The fact of a vehicle: half of the first pattern's stand on the quay, one in ten of the second's.
TEST(Truth, AFactWeighsAsItsRatesSay) {
  World small = two_patterns();
  small.facts = {{"kept", {{"quay", 0.1}, {"inland", 0.9}}}};
  small.patterns[0].facts = {{"kept", {{"quay", 0.5}, {"inland", 0.5}}}};
  Case record;
  EXPECT_NEAR(true_posterior(small, record)[0], 0.25, 1e-12);
  record.facts["kept"] = "quay";
  EXPECT_NEAR(true_posterior(small, record)[0], 0.5 / (0.5 + 3 * 0.1), 1e-12);
  record.facts["kept"] = "on the moon";
  EXPECT_NEAR(true_posterior(small, record)[0], 0.25, 1e-12);
}

}  // namespace
}  // namespace shoplore
