// Random counts and exposures, compared here and by R's poisson.test and binom.test, beside each
// other. R runs once for all; without Rscript this test fails.
#include <fmt/format.h>
#include <gtest/gtest.h>
#include <stdlib.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <random>
#include <string>
#include <vector>

#include "query/lately/poisson_rates.hpp"
#include "tests/api/process.hpp"

namespace shoplore {
namespace {

namespace fs = std::filesystem;

constexpr std::uint64_t kSeed = 20261126;
constexpr std::size_t kSamples = 400;

struct Sample {
  std::uint64_t first, second;
  double exposure1, exposure2, chance;
};

// Few and many events, exposures alike and far apart; never none at all, which R refuses.
std::vector<Sample> draw_samples() {
  std::mt19937_64 random(kSeed);
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  std::vector<Sample> samples;
  for (std::size_t i = 0; i < kSamples; ++i) {
    const double most = i % 2 == 0 ? 8 : 400;
    Sample sample{static_cast<std::uint64_t>(between(0, most)),
                  static_cast<std::uint64_t>(between(1, most)), 0, 0, 0};
    // Binary fractions: their decimals say exactly the same to R.
    sample.exposure1 = std::ceil(between(1, 50)) / 8;
    sample.exposure2 = std::ceil(between(1, 500)) / 8;
    sample.chance = std::ceil(between(1, 1023)) / 1024;
    samples.push_back(sample);
  }
  return samples;
}

TEST(PoissonAgainstR, RatiosIntervalsAndPValuesAreThoseOfR) {
  const std::vector<Sample> samples = draw_samples();
  std::string folder = (fs::temp_directory_path() / "shoplore-poisson-XXXXXX").string();
  ASSERT_NE(mkdtemp(folder.data()), nullptr);
  std::ofstream file(folder + "/samples.csv");
  file << "first,second,exposure1,exposure2,chance\n";
  for (const Sample& s : samples) {
    file << fmt::format("{},{},{},{},{}\n", s.first, s.second, s.exposure1, s.exposure2, s.chance);
  }
  file.close();
  const testing::Ended ended =
      testing::run_program({{"Rscript", "--vanilla", SHOPLORE_POISSON_REFERENCE,
                             folder + "/samples.csv", folder + "/out"},
                            {}});
  ASSERT_EQ(ended.exit_code, 0) << "Rscript is needed: " << ended.err;
  std::ifstream out(folder + "/out");
  for (std::size_t i = 0; i < samples.size(); ++i) {
    const Sample& s = samples[i];
    SCOPED_TRACE(fmt::format("seed {}, sample {}: {} in {} against {} in {}", kSeed, i, s.first,
                             s.exposure1, s.second, s.exposure2));
    double low = 0, high = 0, p = 0, mean_low = 0, mean_high = 0, binomial_p = 0;
    ASSERT_TRUE(out >> low >> high >> p >> mean_low >> mean_high >> binomial_p);
    const RateRatio ratio =
        rate_ratio({s.first, s.exposure1}, {s.second, s.exposure2}, kShownConfidence);
    EXPECT_NEAR(ratio.low, low, 1e-9 * (1 + low));
    EXPECT_NEAR(ratio.high, high, 1e-9 * (1 + high));
    EXPECT_NEAR(ratio.p, p, 1e-9);
    const Interval mean = poisson_mean_interval(s.first, kShownConfidence);
    EXPECT_NEAR(mean.low, mean_low, 1e-9 * (1 + mean_low));
    EXPECT_NEAR(mean.high, mean_high, 1e-9 * (1 + mean_high));
    EXPECT_NEAR(two_sided_binomial_p(s.first, s.first + s.second, s.chance), binomial_p, 1e-9);
  }
  fs::remove_all(folder);
}

}  // namespace
}  // namespace shoplore
