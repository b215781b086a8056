#include "query/failure_mileage/failure_lives.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <set>

#include "query/lives/weibull_fit.hpp"
#include "tests/query/failure_mileage/visit_lists.hpp"

namespace shoplore {
namespace {

using testing::kHose;
using testing::kLinkage;
using testing::Told;
using testing::vehicle_told;

const std::string kNewLinkage = "replace wastegate_linkage";

std::string shown(const std::vector<Life>& lives) {
  std::string text;
  for (const Life& life : lives) {
    text += (text.empty() ? "" : " ") + std::to_string(std::llround(life.entry.value_or(0))) +
            ".." + std::to_string(std::llround(life.exit)) + (life.failed ? "x" : "");
  }
  return text;
}

// A vehicle elsewhere that shows which family has the part, without a life of its own.
VehicleHistory witness() {
  return vehicle_told("bw16d", {{kLinkage, 150'000}});
}

struct LifeRow {
  const char* name;
  std::vector<Told> visits;
  const char* first;
  const char* since_replaced;
  std::uint32_t VehicleCounts::*became;
};

TEST(FailureLives, OneVehicle) {
  const std::vector<LifeRow> rows{
      {"never failed",
       {{"service", 40'000}, {"service", 90'000}},
       "40000..90000",
       "",
       &VehicleCounts::followed},
      {"failed later",
       {{"service", 40'000}, {kLinkage, 90'000}},
       "40000..90000x",
       "",
       &VehicleCounts::followed},
      {"watched from new",
       {{"service", 0}, {kLinkage, 90'000}},
       "0..90000x",
       "",
       &VehicleCounts::followed},
      {"came in with it",
       {{kLinkage, 90'000}, {"service", 99'000}},
       "",
       "",
       &VehicleCounts::failed_at_first},
      {"came in with it, seen again at that km",
       {{"service", 90'000}, {kLinkage, 90'000}},
       "",
       "",
       &VehicleCounts::failed_at_first},
      {"only its first failure ends the first life",
       {{"service", 40'000}, {kLinkage, 90'000}, {kLinkage, 120'000}},
       "40000..90000x",
       "",
       &VehicleCounts::followed},
      {"another cause shows it whole",
       {{kHose, 40'000}, {kHose, 70'000}},
       "40000..70000",
       "",
       &VehicleCounts::followed},
      {"also found counts",
       {{"service", 40'000}, {kHose, 70'000, {}, {kLinkage}}},
       "40000..70000x",
       "",
       &VehicleCounts::followed},
      {"open and ended cases tell nothing",
       {{"open", 10'000}, {"service", 40'000}, {"service", 60'000}, {"ended", 90'000}},
       "40000..60000",
       "",
       &VehicleCounts::followed},
      {"a failure without km",
       {{"service", 40'000}, {"service", 60'000}, {kLinkage, {}}, {"service", 90'000}},
       "40000..60000",
       "",
       &VehicleCounts::followed},
      {"a failure without km at first",
       {{kLinkage, {}}, {"service", 90'000}, {"service", 99'000}},
       "",
       "",
       &VehicleCounts::no_distance},
      {"a visit without km",
       {{"service", {}}, {"service", 40'000}, {"service", {}}, {"service", 60'000}},
       "40000..60000",
       "",
       &VehicleCounts::followed},
      {"seen once", {{"service", 40'000}}, "", "", &VehicleCounts::no_distance},
      {"no km at all", {{"service", {}}, {kLinkage, {}}}, "", "", &VehicleCounts::no_km},
      {"km run backwards",
       {{"service", 90'000}, {kLinkage, 40'000}},
       "",
       "",
       &VehicleCounts::backwards},
      {"replaced, then whole",
       {{"service", 40'000}, {kLinkage, 90'000, {kNewLinkage}}, {"service", 130'000}},
       "40000..90000x",
       "0..40000",
       &VehicleCounts::followed},
      {"replaced for another reason",
       {{"service", 40'000}, {kHose, 90'000, {kNewLinkage}}, {kLinkage, 130'000}},
       "40000..90000",
       "0..40000x",
       &VehicleCounts::followed},
      {"replaced twice",
       {{kLinkage, 90'000, {kNewLinkage}}, {kLinkage, 95'000, {kNewLinkage}}, {"service", 120'000}},
       "",
       "0..5000x 0..25000",
       &VehicleCounts::failed_at_first},
      {"replaced, km not written down",
       {{"service", 40'000}, {kLinkage, {}, {kNewLinkage}}, {"service", 130'000}},
       "",
       "",
       &VehicleCounts::no_distance},
      {"freed off is no new part",
       {{kLinkage, 90'000, {"free_off wastegate_linkage"}}, {kLinkage, 99'000}},
       "",
       "",
       &VehicleCounts::failed_at_first},
      {"nothing driven since it was replaced",
       {{kLinkage, 90'000, {kNewLinkage}}},
       "",
       "",
       &VehicleCounts::failed_at_first},
  };
  for (const LifeRow& row : rows) {
    SCOPED_TRACE(row.name);
    const FailureLives lives =
        failure_lives({witness(), vehicle_told("bw16d", row.visits)}, kLinkage, {});
    EXPECT_EQ(shown(lives.first), row.first);
    EXPECT_EQ(shown(lives.since_replaced), row.since_replaced);
    // The witness itself came in with it.
    const std::uint32_t own = row.became == &VehicleCounts::failed_at_first ? 1 : 0;
    EXPECT_EQ(lives.vehicles.*row.became, 1 + own);
    EXPECT_EQ(lives.vehicles.in_scope, 2U);
  }
}

TEST(FailureLives, OnlyFamiliesThatHaveThePart) {
  const std::vector<VehicleHistory> histories{
      witness(), vehicle_told("bw16d", {{"service", 1'000}, {"service", 2'000}}),
      vehicle_told("cm20p", {{"service", 1'000}, {"service", 3'000}}),
      vehicle_told("", {{"service", 1'000}, {"service", 4'000}}),
      vehicle_told("dm22d", {{kHose, 1'000, {"adjust wastegate_linkage"}}, {"service", 5'000}})};
  const FailureLives all = failure_lives(histories, kLinkage, {});
  EXPECT_EQ(all.families, (std::vector<std::string>{"bw16d", "dm22d"}));
  EXPECT_EQ(shown(all.first), "1000..2000 1000..5000");
  EXPECT_EQ(all.vehicles.without_part, 1U);
  EXPECT_EQ(all.vehicles.family_unknown, 1U);
  const FailureLives one = failure_lives(histories, kLinkage, {"", "DM22D"});
  EXPECT_EQ(one.families, std::vector<std::string>{"dm22d"});
  EXPECT_EQ(shown(one.first), "1000..5000");
  EXPECT_EQ(failure_lives(histories, kLinkage, {"Elvetia", ""}).vehicles.in_scope, 0U);
}

TEST(FailureLives, PartsReplacedAreCountedWhetherSeenAgainOrNot) {
  const FailureLives lives =
      failure_lives({vehicle_told("bw16d", {{kLinkage, 90'000, {kNewLinkage}}}),
                     vehicle_told("bw16d", {{kHose, 90'000, {kNewLinkage}}, {"service", 95'000}}),
                     vehicle_told("bw16d", {{kLinkage, {}, {kNewLinkage}}, {"service", 95'000}})},
                    kLinkage, {});
  EXPECT_EQ(lives.replaced, 2U);
  EXPECT_EQ(shown(lives.since_replaced), "0..5000");
}

TEST(FailureLives, AllVehiclesWhereNoCaseNamesItsFamily) {
  const FailureLives lives =
      failure_lives({vehicle_told("", {{"service", 1'000}, {kLinkage, 2'000}}),
                     vehicle_told("bw16d", {{"service", 1'000}, {"service", 3'000}})},
                    kLinkage, {});
  EXPECT_TRUE(lives.families.empty());
  EXPECT_EQ(shown(lives.first), "1000..2000x 1000..3000");
}

// The same rules, told the long way: for each vehicle, look for the first end of the part as found
// and for the next end after every replacement.
class LongWay {
 public:
  explicit LongWay(const VehicleHistory& vehicle) {
    for (const PastVisit& visit : vehicle.visits) {
      if (visit.state != CaseState::kOpen) visits_.push_back(visit);
    }
  }
  void add_to(std::vector<Life>& first, std::vector<Life>& since) const {
    std::size_t start = 0;
    while (start < visits_.size() && !visits_[start].km && !ends(start)) ++start;
    if (start < visits_.size() && visits_[start].km) add(start, start, first);
    for (std::size_t i = 0; i < visits_.size(); ++i) {
      if (replaces(i) && visits_[i].km) add(i, i + 1, since);
    }
  }

 private:
  bool fails(std::size_t i) const { return has_failure(visits_[i], kLinkage); }
  bool replaces(std::size_t i) const {
    return std::set(visits_[i].fixes.begin(), visits_[i].fixes.end()).contains(kNewLinkage);
  }
  bool ends(std::size_t i) const { return fails(i) || replaces(i); }
  void add(std::size_t begun, std::size_t from, std::vector<Life>& lives) const {
    const auto zero = static_cast<double>(visits_[begun].km->value);
    std::size_t end = from;
    while (end < visits_.size() && !ends(end)) ++end;
    double last = zero;
    for (std::size_t i = begun; i < std::min(end + 1, visits_.size()); ++i) {
      if (visits_[i].km) last = static_cast<double>(visits_[i].km->value);
    }
    const bool failed = end < visits_.size() && fails(end) && visits_[end].km;
    if (last <= zero) return;
    const bool renewed = from > begun;
    lives.push_back(renewed ? Life{last - zero, failed, {}}
                            : Life{last, failed, zero > 0 ? std::optional(zero) : std::nullopt});
  }
  std::vector<PastVisit> visits_;
};

TEST(FailureLives, RandomShopsAgreeWithTheLongWay) {
  constexpr unsigned kSeed = 20261126;
  SCOPED_TRACE("seed " + std::to_string(kSeed));
  std::mt19937_64 random(kSeed);
  const std::vector<std::string> whats{"service", "open", kLinkage, kHose, kHose};
  std::size_t lives_seen = 0, renewed_seen = 0;
  for (int shop = 0; shop < 400; ++shop) {
    std::vector<VehicleHistory> histories{witness()};
    for (int i = 0; i < 12; ++i) {
      std::vector<Told> visits;
      std::int64_t km = static_cast<std::int64_t>(random() % 3) * 20'000;
      for (std::size_t n = 1 + random() % 6; n > 0; --n) {
        Told told{whats[random() % whats.size()], {}, {}, {}};
        if (random() % 5 != 0) told.km = km;
        const bool closed = told.what == kLinkage || told.what == kHose;
        if (closed && random() % 3 == 0) told.fixes.push_back(kNewLinkage);
        if (closed && random() % 8 == 0) told.others.push_back(kLinkage);
        visits.push_back(told);
        km += static_cast<std::int64_t>(random() % 4) * 7'000;
      }
      histories.push_back(vehicle_told("bw16d", visits));
    }
    std::vector<Life> first, since;
    for (const VehicleHistory& vehicle : histories) LongWay(vehicle).add_to(first, since);
    const FailureLives lives = failure_lives(histories, kLinkage, {});
    ASSERT_EQ(shown(lives.first), shown(first)) << "shop " << shop;
    ASSERT_EQ(shown(lives.since_replaced), shown(since)) << "shop " << shop;
    const VehicleCounts& v = lives.vehicles;
    EXPECT_EQ(v.in_scope, histories.size());
    EXPECT_EQ(v.in_scope, v.without_part + v.family_unknown + v.no_km + v.backwards +
                              v.failed_at_first + v.no_distance + v.followed);
    EXPECT_EQ(v.followed, lives.first.size());
    EXPECT_GE(lives.replaced, lives.since_replaced.size());
    lives_seen += first.size();
    renewed_seen += since.size();
  }
  EXPECT_GT(lives_seen, 1'000U);
  EXPECT_GT(renewed_seen, 500U);
}

// A workshop whose customers come to it at any mileage, with the part as it left the works, and
// stay. Those whose part failed before had it mended elsewhere and are not in the sample: the
// shop cannot tell a part mended elsewhere, and says so.
struct Customers {
  double shape = 3, scale = 160'000;  // true life
  double service_every = 15'000;      // km
  int vehicles = 4'000;
  int by_failure_only = 0;  // more that are first seen when the part fails
};

std::vector<VehicleHistory> shop_of(const Customers& law, std::mt19937_64& random) {
  std::uniform_real_distribution<double> share(1e-12, 1);
  const auto life = [&] { return law.scale * std::pow(-std::log(share(random)), 1 / law.shape); };
  std::vector<VehicleHistory> histories;
  while (histories.size() < static_cast<std::size_t>(law.vehicles)) {
    const double fails = life(), comes = 150'000 * share(random);
    if (fails <= comes) continue;
    const double leaves = comes + 150'000 * share(random);
    std::vector<Told> visits;
    double km = comes;
    for (; km < std::min(fails, leaves); km += law.service_every) {
      visits.push_back({"service", std::llround(km), {}, {}});
    }
    if (fails < leaves) visits.push_back({kLinkage, std::llround(fails), {}, {}});
    histories.push_back(vehicle_told("bw16d", visits));
  }
  for (int i = 0; i < law.by_failure_only; ++i) {
    histories.push_back(vehicle_told("bw16d", {{kLinkage, std::llround(life()), {}, {}}}));
  }
  return histories;
}

TEST(FailureLives, LateEntryGivesBackTheLifeCustomersPartsHave) {
  constexpr unsigned kSeed = 7;
  SCOPED_TRACE("seed " + std::to_string(kSeed));
  std::mt19937_64 random(kSeed);
  Customers law;
  law.by_failure_only = 1'000;  // change nothing: they have no kilometres at risk
  const FailureLives lives = failure_lives(shop_of(law, random), kLinkage, {});
  EXPECT_EQ(lives.vehicles.failed_at_first, 1'000U);
  const auto fit = fit_weibull(lives.first);
  ASSERT_TRUE(fit) << describe(fit.error());
  // What a vehicle drives after its last visit (half a service on average) is unseen: lives look a
  // little shorter than they are.
  EXPECT_NEAR(fit->scale, law.scale, .03 * law.scale);
  EXPECT_NEAR(fit->shape, law.shape, .3);
  std::printf("late entry: scale %.0f, shape %.2f\n", fit->scale, fit->shape);
}

// Why vehicles are not counted from new: the answer would follow the mix of those that happen to
// come in, which says nothing of the part.
TEST(FailureLives, CountedFromNewTheAnswerDependsOnWhoHappensToComeIn) {
  const auto fit_from_new = [](int by_failure_only) {
    std::mt19937_64 random(7);
    Customers law;
    law.by_failure_only = by_failure_only;
    const auto histories = shop_of(law, random);
    std::vector<Life> lives = failure_lives(histories, kLinkage, {}).first;
    for (Life& life : lives) life.entry.reset();
    for (const VehicleHistory& vehicle : histories) {
      if (!has_failure(vehicle.visits.front(), kLinkage)) continue;
      lives.push_back({static_cast<double>(vehicle.visits.front().km->value), true, {}});
    }
    return *fit_weibull(lives);
  };
  const WeibullFit none = fit_from_new(0), many = fit_from_new(1'000);
  std::printf("from new: scale %.0f, shape %.2f; with 1,000 that came in failed: %.0f, %.2f\n",
              none.scale, none.shape, many.scale, many.shape);
  EXPECT_GT(none.shape, 3.8);  // the truth is 3
  EXPECT_LT(many.shape, none.shape - .3);
}

}  // namespace
}  // namespace shoplore
