// The small exercises: fault codes, vain repairs, trust in checks.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

#include "query/practice/code_question.hpp"
#include "query/practice/trust_question.hpp"
#include "query/practice/vain_repair_question.hpp"

namespace shoplore {
namespace {

// Who controls a code and what its third character says: openly readable descriptions of
// ISO 15031-6, as in tests/outside/fault_code_outside_test.cpp.
TEST(CodeQuestion, ClassifiesAsTheStandardsFormSays) {
  const std::vector<std::pair<const char*, const char*>> rows{
      {"P0299", "powertrain; standard; fuel and air, injector circuits"},
      {"P0143", "powertrain; standard; fuel and air"},
      {"P0301", "powertrain; standard; ignition or misfire"},
      {"P1234", "powertrain; manufacturer; the third character is the maker's own"},
      {"P3100", "powertrain; manufacturer; the third character is the maker's own"},
      {"C0031", "chassis; standard; the third character names no area"},
      {"B1000", "body; manufacturer; the third character is the maker's own"},
      {"U0073", "network; standard; the third character names no area"}};
  for (const auto& [code, classification] : rows) {
    EXPECT_EQ(classification_of(*parse_fault_code(code)), classification) << code;
  }
}

TEST(CodeQuestion, OneOfFourDifferentChoicesIsRightForEveryCode) {
  const std::uint64_t seed = 7;
  SCOPED_TRACE(seed);
  std::mt19937_64 random(seed);
  for (std::uint32_t bytes = 0; bytes < 0x10000; bytes += 251) {
    const FaultCode code = fault_code_from_bytes(static_cast<std::uint16_t>(bytes));
    const auto choices = classifications_offered(code, random);
    EXPECT_EQ(std::set<std::string>(choices.begin(), choices.end()).size(), 4U) << code.text();
    int right = 0;
    for (const std::string& each : choices) {
      const double points = points_of_classification(each, code);
      right += points == 100 ? 1 : 0;
      EXPECT_EQ(points == 100, each == classification_of(code)) << each;
    }
    EXPECT_EQ(right, 1) << code.text();
  }
}

TEST(CodeQuestion, EveryRightPartCountsAThird) {
  const FaultCode code = *parse_fault_code("P0301");
  EXPECT_DOUBLE_EQ(points_of_classification("powertrain; standard; ignition or misfire", code),
                   100);
  EXPECT_NEAR(points_of_classification("powertrain; manufacturer; ignition or misfire", code),
              200.0 / 3, 1e-12);
  EXPECT_NEAR(points_of_classification("body; manufacturer; ignition or misfire", code), 100.0 / 3,
              1e-12);
  EXPECT_DOUBLE_EQ(points_of_classification("body", code), 0);
  EXPECT_DOUBLE_EQ(points_of_classification("", code), 0);
}

std::vector<ProfileCount> counted(const std::vector<std::array<std::uint32_t, 2>>& repairs) {
  std::vector<ProfileCount> profiles;
  for (std::size_t i = 0; i < repairs.size(); ++i) {
    const std::vector<std::string> fixes{"replace part" + std::to_string(i)};
    profiles.push_back({{"a:b", OutcomeStatus::kCameBack, fixes}, repairs[i][0]});
    profiles.push_back({{"a:b", OutcomeStatus::kStayedFixed, fixes}, repairs[i][1]});
  }
  return profiles;
}

TEST(VainRepair, TheOneThatCameBackMostIsFirst) {
  const auto offered = repairs_to_tell_apart(counted({{1, 19}, {4, 4}, {7, 1}}), "a:b");
  ASSERT_EQ(offered.size(), 3U);
  EXPECT_EQ(offered[0].fixes, "replace part2");
  EXPECT_EQ(offered[0].came_back.count, 7U);
  EXPECT_EQ(offered[0].came_back.out_of, 8U);
  EXPECT_DOUBLE_EQ(points_of_repair(offered[0], offered[0]), 100);
  EXPECT_NEAR(points_of_repair(offered[1], offered[0]), 100 * .5 / .875, 1e-12);
}

TEST(VainRepair, NothingIsAskedWhereNothingCanBeTold) {
  struct Row {
    const char* name;
    std::vector<std::array<std::uint32_t, 2>> repairs;
  };
  for (const Row& row :
       {Row{"one repair only", {{7, 1}}}, Row{"too few known outcomes", {{4, 0}, {0, 4}}},
        Row{"none came back in a third", {{3, 7}, {0, 9}}},
        Row{"all about as bad", {{6, 4}, {5, 5}}}}) {
    EXPECT_TRUE(repairs_to_tell_apart(counted(row.repairs), "a:b").empty()) << row.name;
  }
  EXPECT_TRUE(repairs_to_tell_apart(counted({{7, 1}, {0, 9}}), "other:cause").empty());
}

TEST(TrustQuestion, WithinTheIntervalIsAllThatCanBeKnown) {
  const Share misled{10, 16, {.42, .80}};
  EXPECT_DOUBLE_EQ(points_of_trust(62.5, misled), 100);
  EXPECT_DOUBLE_EQ(points_of_trust(42, misled), 100);
  EXPECT_NEAR(points_of_trust(32, misled), 60, 1e-9);
  EXPECT_NEAR(points_of_trust(90, misled), 60, 1e-9);
  EXPECT_DOUBLE_EQ(points_of_trust(0, misled), 0);
}

}  // namespace
}  // namespace shoplore
