// Random censored and late-entering lives, fitted here and by R's survival package, beside each
// other. R runs once for all; without Rscript or the package these tests fail.
//
// Left out on purpose: samples so poor that the fit is refused; the unit tests have those.
#include <fmt/format.h>
#include <gtest/gtest.h>
#include <stdlib.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <map>
#include <random>
#include <sstream>
#include <string>
#include <vector>

#include "query/lives/kaplan_meier.hpp"
#include "query/lives/log_rank.hpp"
#include "query/lives/lognormal_fit.hpp"
#include "query/lives/mean_cumulative.hpp"
#include "query/lives/weibull_fit.hpp"
#include "tests/api/process.hpp"

namespace shoplore {
namespace {

namespace fs = std::filesystem;

constexpr std::uint64_t kSeed = 20261126;
constexpr std::size_t kLifeSamples = 200, kRepeatSamples = 40;
constexpr std::size_t kFewestFailures = 3;
constexpr double kScale = 100;

class Random {
 public:
  explicit Random(std::uint64_t seed) : engine_(seed) {}
  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(engine_);
  }
  double normal() { return std::normal_distribution<double>()(engine_); }
  bool chance(double share) { return between(0, 1) < share; }

 private:
  std::mt19937_64 engine_;
};

// The law and the habits of one sample.
struct Law {
  bool lognormal, late, whole_numbers;
  double spread;  // shape of a Weibull or deviation of a lognormal
  double give_up;

  double draw(Random& random) const {
    if (lognormal) return kScale * std::exp(spread * random.normal());
    return kScale * std::pow(-std::log(random.between(1e-12, 1)), 1 / spread);
  }
};

Life draw_life(const Law& law, Random& random) {
  for (;;) {
    const double failure = law.draw(random), last = random.between(0, law.give_up * kScale);
    Life life{std::min(failure, last), failure <= last, {}};
    if (law.late && random.chance(.7)) life.entry = random.between(0, .6 * kScale);
    // Binary fractions at the finest: their decimals say exactly the same to R.
    const double unit = law.whole_numbers ? 1 : 1. / 1024;
    life.exit = std::ceil(life.exit / unit) * unit;
    if (life.entry) life.entry = std::floor(*life.entry / unit) * unit;
    if (life.exit > life.entry.value_or(0)) return life;  // else it was never seen
  }
}

std::vector<Life> draw_lives(std::size_t number, Random& random) {
  for (;;) {
    Law law{random.chance(.5), number % 2 == 1, number % 4 >= 2, 0, random.between(.6, 3)};
    law.spread = law.lognormal ? random.between(.3, 1.2) : random.between(.7, 4);
    std::vector<Life> lives(static_cast<std::size_t>(random.between(12, 150)));
    for (Life& life : lives) life = draw_life(law, random);
    if (law.late) lives.front().entry = lives.front().exit / 2;  // at least one, for R's sake
    if (count_failures(lives) >= kFewestFailures && check_lives_to_fit(lives)) return lives;
  }
}

std::vector<RepairHistory> draw_histories(Random& random) {
  std::vector<RepairHistory> histories(static_cast<std::size_t>(random.between(5, 40)));
  for (RepairHistory& history : histories) {
    const double from = random.chance(.4) ? std::floor(random.between(1, 50)) : 0;
    if (from > 0) history.entry = from;
    history.exit = std::ceil(random.between(from + 1, 200));
    const double rate = random.between(0, .05);  // its own: repairs of one vehicle depend
    for (double day = from + 1; day <= history.exit; ++day) {
      if (random.chance(rate)) history.events.push_back(day);
    }
  }
  histories.front() = {150, {20, 90}, {}};  // at least one event
  return histories;
}

std::string entry_text(const std::optional<double>& entry) {
  return entry ? fmt::format("{}", *entry) : "";
}

using Numbers = std::vector<double>;

// What R wrote, by name and sample: the numbers after them.
using Reference = std::map<std::string, std::map<std::size_t, std::vector<Numbers>>>;

class LivesAgainstR : public ::testing::Test {
 protected:
  static void SetUpTestSuite() {
    Random random(kSeed);
    for (std::size_t i = 0; i < kLifeSamples; ++i) lives.push_back(draw_lives(i, random));
    for (std::size_t i = 0; i < kRepeatSamples; ++i) histories.push_back(draw_histories(random));
    std::string folder = (fs::temp_directory_path() / "shoplore-lives-XXXXXX").string();
    ASSERT_NE(mkdtemp(folder.data()), nullptr);
    write_samples(folder);
    const testing::Ended ended =
        testing::run_program({{"Rscript", "--vanilla", SHOPLORE_LIVES_REFERENCE,
                               folder + "/lives.csv", folder + "/repeats.csv", folder + "/out"},
                              {}});
    read_reference(folder + "/out");
    fs::remove_all(folder);
    ASSERT_EQ(ended.exit_code, 0) << "Rscript with the package survival is needed: " << ended.err;
  }

  static void write_samples(const std::string& folder) {
    std::ofstream file(folder + "/lives.csv");
    file << "sample,entry,exit,failed\n";
    for (std::size_t i = 0; i < lives.size(); ++i) {
      for (const Life& life : lives[i]) {
        file << fmt::format("{},{},{},{}\n", i, entry_text(life.entry), life.exit,
                            life.failed ? 1 : 0);
      }
    }
    std::ofstream repeats(folder + "/repeats.csv");
    repeats << "sample,vehicle,entry,exit,events\n";
    for (std::size_t i = 0; i < histories.size(); ++i) {
      for (std::size_t j = 0; j < histories[i].size(); ++j) {
        const RepairHistory& each = histories[i][j];
        repeats << fmt::format("{},{},{},{},{}\n", i, j, entry_text(each.entry), each.exit,
                               fmt::join(each.events, " "));
      }
    }
  }

  static void read_reference(const std::string& path) {
    std::ifstream file(path);
    for (std::string line; std::getline(file, line);) {
      std::istringstream words(line);
      std::string name, word;
      words >> name >> word;
      const std::size_t sample = std::stoul(word);
      Numbers numbers;
      while (words >> word) numbers.push_back(word == "NA" ? std::nan("") : std::stod(word));
      reference[name][sample].push_back(numbers);
    }
  }

  static std::vector<std::vector<Life>> lives;
  static std::vector<std::vector<RepairHistory>> histories;
  static Reference reference;
};

std::vector<std::vector<Life>> LivesAgainstR::lives;
std::vector<std::vector<RepairHistory>> LivesAgainstR::histories;
Reference LivesAgainstR::reference;

void expect_close(double got, double want, double relative, const std::string& what) {
  EXPECT_NEAR(got, want, relative * std::max(std::abs(want), 1e-9)) << what << ", seed " << kSeed;
}

void expect_same_band(const SurvivalCurve& curve, SurvivalBand band, const Numbers& row,
                      std::size_t low, const std::string& what) {
  const auto at = survival_at(curve, row[0], band, .95);
  ASSERT_TRUE(at && at->interval) << what;
  expect_close(at->interval->low, row[low], 1e-8, what + " low");
  expect_close(at->interval->high, row[low + 1], 1e-8, what + " high");
}

TEST_F(LivesAgainstR, SurvivalCurvesAreSurvfits) {
  std::size_t compared = 0;
  for (std::size_t i = 0; i < lives.size(); ++i) {
    const SurvivalCurve curve = kaplan_meier(lives[i]).value();
    const auto& rows = reference["curve"][i];
    ASSERT_EQ(curve.steps.size(), rows.size()) << "sample " << i;
    for (std::size_t j = 0; j < rows.size(); ++j) {
      const SurvivalStep& step = curve.steps[j];
      const std::string what = fmt::format("sample {} at {}", i, step.time);
      EXPECT_EQ(step.time, rows[j][0]) << what;
      EXPECT_EQ(static_cast<double>(step.at_risk), rows[j][1]) << what;
      EXPECT_EQ(static_cast<double>(step.failed), rows[j][2]) << what;
      expect_close(step.survival, rows[j][3], 1e-10, what);
      if (step.survival <= 0) continue;  // R's error is NaN there
      expect_close(step.standard_error, rows[j][4], 1e-9, what);
      expect_same_band(curve, SurvivalBand::kLogLog, rows[j], 5, what);
      expect_same_band(curve, SurvivalBand::kLog, rows[j], 7, what);
      expect_same_band(curve, SurvivalBand::kPlain, rows[j], 9, what);
      ++compared;
    }
  }
  EXPECT_GT(compared, 20 * kLifeSamples);
}

void expect_same_age(const std::optional<double>& got, double want, const std::string& what) {
  EXPECT_EQ(got, std::isnan(want) ? std::nullopt : std::optional(want)) << what;
}

TEST_F(LivesAgainstR, QuantilesAreTheFirstAgesOfSurvfit) {
  for (std::size_t i = 0; i < lives.size(); ++i) {
    const SurvivalCurve curve = kaplan_meier(lives[i]).value();
    const auto& rows = reference["quantile"][i];
    ASSERT_EQ(rows.size(), 3U) << "sample " << i;
    for (const Numbers& row : rows) {
      const std::string what = fmt::format("sample {}, share {}", i, row[0]);
      const SurvivalQuantile got = survival_quantile(curve, row[0], SurvivalBand::kLogLog, .95);
      expect_same_age(got.time, row[1], what);
      expect_same_age(got.low, row[2], what + " low");
      expect_same_age(got.high, row[3], what + " high");
    }
  }
}

// In the order R writes them.
Numbers numbers_of(const WeibullFit& fit) {
  return {std::log(fit.scale),  std::log(fit.shape),   fit.log_likelihood,
          fit.covariance.first, fit.covariance.second, fit.covariance.between};
}

Numbers numbers_of(const LognormalFit& fit) {
  return {fit.log_mean,         std::log(fit.log_deviation), fit.log_likelihood,
          fit.covariance.first, fit.covariance.second,       fit.covariance.between};
}

// Parameters within a millionth of their standard error, the rest relative to what it is made of.
void expect_same_fit(const Numbers& got, const Numbers& want, const std::string& what) {
  ASSERT_EQ(want.size(), 6U) << what;
  const double first = std::sqrt(want[3]), second = std::sqrt(want[4]);
  EXPECT_NEAR(got[0], want[0], 1e-6 * first) << what << ", seed " << kSeed;
  EXPECT_NEAR(got[1], want[1], 1e-6 * second) << what << ", seed " << kSeed;
  expect_close(got[2], want[2], 1e-9, what + " log-likelihood");
  expect_close(got[3], want[3], 1e-6, what + " first variance");
  expect_close(got[4], want[4], 1e-6, what + " second variance");
  EXPECT_NEAR(got[5], want[5], 1e-6 * first * second) << what << ", seed " << kSeed;
}

// B10 and the median, with the error of their logarithm.
template <class Fit>
void expect_same_ages(const Fit& fit, const std::vector<Numbers>& rows, const std::string& what) {
  for (const Numbers& row : rows) {
    const Estimate age = failed_by(fit, row[0], .95);
    const double half = two_sided_z(.95) * row[2];
    EXPECT_NEAR(std::log(age.value), row[1], 1e-6 * row[2]) << what;
    EXPECT_NEAR(std::log(age.low), row[1] - half, 1e-5 * row[2]) << what;
    EXPECT_NEAR(std::log(age.high), row[1] + half, 1e-5 * row[2]) << what;
  }
}

TEST_F(LivesAgainstR, AgesByWhichAShareFailedAreSurvregs) {
  for (auto& [sample, rows] : reference["failed_by_weibull"]) {
    expect_same_ages(fit_weibull(lives[sample]).value(), rows, fmt::format("sample {}", sample));
  }
  for (auto& [sample, rows] : reference["failed_by_lognormal"]) {
    expect_same_ages(fit_lognormal(lives[sample]).value(), rows, fmt::format("sample {}", sample));
  }
  // All without late entries but those that survreg gave up on.
  EXPECT_GT(reference["failed_by_weibull"].size(), kLifeSamples * 4 / 10);
  EXPECT_GT(reference["failed_by_lognormal"].size(), kLifeSamples * 4 / 10);
}

TEST_F(LivesAgainstR, WeibullFitsAreRs) {
  for (std::size_t i = 0; i < lives.size(); ++i) {
    const auto fit = fit_weibull(lives[i]);
    ASSERT_TRUE(fit) << "sample " << i;
    const auto& rows = reference["weibull"][i];
    ASSERT_EQ(rows.size(), 1U) << "sample " << i;
    expect_same_fit(numbers_of(*fit), rows[0], fmt::format("Weibull of sample {}", i));
  }
}

TEST_F(LivesAgainstR, LognormalFitsAreRs) {
  for (std::size_t i = 0; i < lives.size(); ++i) {
    const auto fit = fit_lognormal(lives[i]);
    ASSERT_TRUE(fit) << "sample " << i;
    const auto& rows = reference["lognormal"][i];
    ASSERT_EQ(rows.size(), 1U) << "sample " << i;
    expect_same_fit(numbers_of(*fit), rows[0], fmt::format("lognormal of sample {}", i));
  }
}

TEST_F(LivesAgainstR, LogRankOfNeighboursIsRs) {
  for (std::size_t i = 0; i + 2 < lives.size(); ++i) {
    const auto test = log_rank(lives[i], lives[i + 2]);
    ASSERT_TRUE(test) << "sample " << i;
    const auto& rows = reference["logrank"][i];
    ASSERT_EQ(rows.size(), 1U) << "sample " << i;
    const std::string what = fmt::format("log-rank of {} and {}", i, i + 2);
    // The score test of coxph, which late entries need, is only as exact as its chi-squared.
    EXPECT_NEAR(test->chi_squared, rows[0][0], 1e-8 * (1 + rows[0][0])) << what;
    EXPECT_NEAR(test->p, rows[0][1], 1e-7) << what;
    if (std::isnan(rows[0][2])) continue;
    expect_close(test->first_expected, rows[0][2], 1e-10, what);
    expect_close(test->second_expected, rows[0][3], 1e-10, what);
  }
}

TEST_F(LivesAgainstR, MeanRepairsAndTheirErrorAreSurvfits) {
  std::size_t compared = 0;
  for (std::size_t i = 0; i < histories.size(); ++i) {
    const MeanCumulative curve = mean_cumulative(histories[i]).value();
    const auto& rows = reference["repeats"][i];
    ASSERT_EQ(curve.steps.size(), rows.size()) << "sample " << i;
    for (std::size_t j = 0; j < rows.size(); ++j) {
      const MeanCumulativeStep& step = curve.steps[j];
      const std::string what = fmt::format("repeats {} at {}", i, step.time);
      EXPECT_EQ(step.time, rows[j][0]) << what;
      EXPECT_EQ(static_cast<double>(step.at_risk), rows[j][1]) << what;
      EXPECT_EQ(static_cast<double>(step.events), rows[j][2]) << what;
      expect_close(step.mean, rows[j][3], 1e-10, what);
      EXPECT_NEAR(std::sqrt(step.variance), rows[j][4], 1e-9 * step.mean) << what;
      ++compared;
    }
  }
  EXPECT_GT(compared, 10 * kRepeatSamples);
}

}  // namespace
}  // namespace shoplore
