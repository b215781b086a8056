#include "query/outcomes/same_complaint.hpp"

#include <gtest/gtest.h>

#include "tests/query/outcomes/visits.hpp"

namespace shoplore {
namespace {

using testing::complaint;
using testing::kTurbo;
using testing::repaired;
using testing::service;

struct Later {
  const char* name;
  PastVisit visit;
  SameComplaint expected;
};

PastVisit with_code(std::string code) {
  PastVisit visit = complaint("later", "2026-06-01", 130'000, {});
  visit.codes = {std::move(code)};
  return visit;
}

PastVisit closed(std::string cause, std::vector<std::string> other_causes,
                 std::vector<std::string> symptoms) {
  PastVisit visit = complaint("later", "2026-06-01", 130'000, std::move(symptoms));
  visit.state = CaseState::kClosed;
  visit.cause = std::move(cause);
  visit.other_causes = std::move(other_causes);
  return visit;
}

TEST(SameComplaint, IsToldByCauseElseBySymptomsAndCodes) {
  const PastVisit earlier = repaired("earlier", "2026-01-10", 120'000);
  const std::vector<Later> table{
      {"a service", service("2026-06-01", 130'000), SameComplaint::kNo},
      {"a symptom shared", complaint("later", "2026-06-01", 1, {"lack_of_power", "rough_idle"}),
       SameComplaint::kYes},
      {"a code shared", with_code("P0299"), SameComplaint::kYes},
      {"another symptom", complaint("later", "2026-06-01", 1, {"rough_idle"}), SameComplaint::kNo},
      {"another code", with_code("P0301"), SameComplaint::kNo},
      {"nothing written down", complaint("later", "2026-06-01", 1, {}), SameComplaint::kCannotTell},
      {"same cause, other symptom", closed(earlier.cause, {}, {"rough_idle"}), SameComplaint::kYes},
      {"cause also found", closed(kTurbo, {earlier.cause}, {"rough_idle"}), SameComplaint::kYes},
      {"other cause, same symptom", closed(kTurbo, {}, {"lack_of_power"}), SameComplaint::kNo}};
  for (const Later& row : table) {
    EXPECT_EQ(same_complaint(earlier, row.visit), row.expected) << row.name;
  }
}

TEST(SameComplaint, CannotBeToldOfARepairNobodyDescribed) {
  PastVisit earlier = repaired("earlier", "2026-01-10", 120'000);
  earlier.symptoms.clear();
  earlier.codes.clear();
  EXPECT_EQ(same_complaint(earlier, complaint("later", "2026-06-01", 1, {"lack_of_power"})),
            SameComplaint::kCannotTell);
  EXPECT_EQ(same_complaint(earlier, closed(kTurbo, {}, {"lack_of_power"})), SameComplaint::kNo);
}

TEST(SharedFindings, AreThoseBothHave) {
  const PastVisit earlier = repaired("earlier", "2026-01-10", 120'000);
  const auto shared = shared_findings(
      earlier, complaint("later", "2026-06-01", 1, {"lack_of_power", "rough_idle"}));
  EXPECT_EQ(shared.symptoms, std::vector<std::string>{"lack_of_power"});
  EXPECT_TRUE(shared.codes.empty());
  EXPECT_TRUE(shared_findings(earlier, service("2026-06-01", 1)).empty());
}

}  // namespace
}  // namespace shoplore
