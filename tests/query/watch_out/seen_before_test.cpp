// This very vehicle: its visits in order, and whether this may be a comeback.
#include "query/watch_out/seen_before.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>

#include "indexer/records.hpp"
#include "tests/query/watch_out/watch_shop.hpp"

namespace shoplore::testing {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;

const EvidenceItem kFlat{"symptom:lack_of_power", "present"}, kLoud{"symptom:wheel_hum", "present"};
constexpr const char* kPlate = "AB 12 CD";

class SeenBefore : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string pattern =
        (std::filesystem::temp_directory_path() / "shoplore-seen-XXXXXX").string();
    home_ = mkdtemp(pattern.data());
    records_ = std::make_unique<Records>(*Records::create({home_ / "shop"}));
    token_ = records_->token_of({"", kPlate, ""}).value();
    record(R"({"ref":"one","state":"closed","opened":"2024-03-01","closed":"2024-03-02",
      "vehicle":{"mileage_km":120500},"symptoms":[{"id":"lack_of_power","state":"present"}],
      "codes":[{"code":"P0299"}],"cause":{"component":"charge_air_hose","failure":"split"},
      "correction":{"fixes":[{"action":"replace","component":"charge_air_hose"}]},
      "outcome":{"status":"stayed_fixed","as_of":"2024-03-20"}})");
    record(R"({"ref":"two","state":"no_complaint","opened":"2024-09-01",
      "visit":{"kind":"service"},"vehicle":{"mileage_km":131000}})");
  }
  void TearDown() override { std::filesystem::remove_all(home_); }

  void record(const std::string& json, const char* plate = kPlate) {
    auto intake = intake_from_json(json);
    ASSERT_TRUE(intake) << describe(intake.error());
    intake->identity.plate = plate;
    const auto added = records_->add(std::move(*intake), Role::kTechnician);
    ASSERT_TRUE(added) << describe(added.error());
  }

  // Asked on that day; a day of "" is not known.
  std::optional<Warning> warned(const std::string& day, const std::vector<EvidenceItem>& items,
                                const std::string& ref = "",
                                const std::vector<LikelyCause>& causes = {},
                                const std::string& follows = "",
                                std::optional<Kilometres> km = {}) {
    const std::vector<std::string> known;
    const WatchQuestion question{items,           known,   causes,        filter_,
                                 shop_.counter(), words(), shop_.basis(), shop_.figures()};
    const auto when = day.empty() ? std::nullopt : std::optional(parse_date(day).value());
    return warn_of_visits_before({token_, ref, when, follows, km}, question, records_->store())
        .value();
  }

  std::filesystem::path home_;
  std::unique_ptr<Records> records_;
  std::string token_;
  // The hose's cases make its cause known to the counter.
  WatchShop shop_{std::vector<PlainCase>{{"charge_air_hose:split", {}}}};
  Filter filter_;
};

TEST_F(SeenBefore, AnOdometerThatStoodHigherIsPointedOut) {
  const auto lower = warned("2025-01-10", {kLoud}, "", {}, "", Kilometres{130'999});
  EXPECT_THAT(lower->text,
              StartsWith("The odometer stands at 130,999 km, lower than the 131,000 km of "
                         "2024-09-01 (two): one reading is wrong, it was changed, or this is "
                         "another vehicle. This vehicle was here 2 times before"));
  EXPECT_EQ(lower->how_often, 1);
  const auto equal = warned("2025-01-10", {kLoud}, "", {}, "", Kilometres{131'000});
  EXPECT_THAT(equal->text, Not(HasSubstr("odometer")));
  EXPECT_LT(equal->how_often, 1);
  EXPECT_THAT(warned("2025-01-10", {kLoud})->text, Not(HasSubstr("odometer")));
}

TEST_F(SeenBefore, ItsVisitsAreToldInTheirOrder) {
  const auto warning = warned("2025-01-10", {kLoud});
  ASSERT_TRUE(warning);
  EXPECT_EQ(warning->kind, WarningKind::kSeenBefore);
  EXPECT_EQ(warning->text,
            "This vehicle was here 2 times before: 2024-03-01 at 120,500 km lack of power, P0299: "
            "charge-air hose, split; replace charge-air hose; stayed fixed (one). 2024-09-01 at "
            "131,000 km service, no complaint (two)");
  EXPECT_EQ(warning->about, "two");
  EXPECT_EQ(warning->share.out_of, 0U);
  EXPECT_LT(warning->how_often, 1);
}

TEST_F(SeenBefore, TheSameComplaintWithinTwoYearsMayBeAComeback) {
  const struct {
    const char* name;
    std::string day;
    std::vector<EvidenceItem> items;
    bool comeback;
  } table[] = {{"same symptom", "2024-04-01", {kFlat}, true},
               {"same code", "2024-04-01", {{"code:P0299", "present"}}, true},
               {"symptom denied", "2024-04-01", {{kFlat.attribute, "absent"}}, false},
               {"another complaint", "2024-04-01", {kLoud}, false},
               {"730 days after", "2026-03-02", {kFlat}, true},
               {"731 days after", "2026-03-03", {kFlat}, false},
               {"vouched for later", "2024-03-15", {kFlat}, false},
               {"no day known", "", {kFlat}, false}};
  for (const auto& each : table) {
    const auto warning = warned(each.day, each.items);
    ASSERT_TRUE(warning) << each.name;
    EXPECT_EQ(warning->text.find("This may be one coming back") != std::string::npos, each.comeback)
        << each.name << ": " << warning->text;
    EXPECT_EQ(warning->about, each.comeback ? "one" : "two") << each.name;
    EXPECT_EQ(warning->how_often == 1, each.comeback) << each.name;
  }
  EXPECT_THAT(warned("2024-04-01", {kFlat})->text,
              HasSubstr("This may be one coming back, 30 days after: replace charge-air hose"));
}

TEST_F(SeenBefore, TheCauseFoundThenBeingLikelyNowMayBeAComebackToo) {
  EXPECT_THAT(warned("2024-04-01", {kLoud}, "", {shop_.row("charge_air_hose:split")})->text,
              HasSubstr("may be one coming back"));
}

TEST_F(SeenBefore, AComebackThatIsLinkedIsNotPointedOutAgain) {
  const auto warning = warned("2024-04-01", {kFlat}, "now", {}, "one");
  ASSERT_TRUE(warning);
  EXPECT_THAT(warning->text, ::testing::Not(HasSubstr("coming back")));
}

TEST_F(SeenBefore, TheCaseAskedAboutAndWhatCameAfterItAreNoPast) {
  record(R"({"ref":"now","state":"open","opened":"2024-06-01",
    "symptoms":[{"id":"lack_of_power","state":"present"}]})");
  const auto warning = warned("2024-06-01", {kFlat}, "now");
  ASSERT_TRUE(warning);
  EXPECT_THAT(warning->text, HasSubstr("was here once before"));
  EXPECT_THAT(warning->text, Not(HasSubstr("(now)")));
  EXPECT_THAT(warning->text, Not(HasSubstr("(two)")));
}

TEST_F(SeenBefore, OfManyVisitsTheLastSixAreTold) {
  for (int i = 1; i <= 8; ++i) {
    record(R"({"ref":"s)" + std::to_string(i) + R"(","state":"no_complaint","opened":"2025-01-0)" +
           std::to_string(i) + R"(","visit":{"kind":"service"}})");
  }
  const auto warning = warned("2025-02-01", {kLoud});
  ASSERT_TRUE(warning);
  EXPECT_THAT(warning->text, HasSubstr("was here 10 times before; the last 6: 2025-01-03"));
  EXPECT_EQ(warning->cases.size(), 10U);
}

TEST_F(SeenBefore, AnotherVehicleHasNoPastHere) {
  token_ = records_->token_of({"", "ZZ 99 ZZ", ""}).value();
  EXPECT_FALSE(warned("2025-01-01", {kFlat}));
}

TEST_F(SeenBefore, OfAPlateOnlyThePseudonymIsMade) {
  EXPECT_EQ(token_.size(), 32U);
  EXPECT_EQ(records_->token_of({"", "ab-12 cd", ""}).value(), token_);
  EXPECT_EQ(records_->token_of({}).value(), "");
  EXPECT_EQ(records_->token_of({"no vin", "", ""}).error().place, "/identity/vin");
  EXPECT_EQ(records_->store().case_count().value(), 2);
}

}  // namespace
}  // namespace shoplore::testing
