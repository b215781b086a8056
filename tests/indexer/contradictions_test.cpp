// What is asked of when a case is closed, and what is not.
#include "indexer/contradictions.hpp"

#include <gtest/gtest.h>

namespace shoplore {
namespace {

// `hose_look` tells about the hose and, by an older id, about the turbocharger.
const Vocabulary& words() {
  static const Vocabulary vocabulary =
      Vocabulary::parse(
          {{"components.json", R"({"kind":"component","entries":[{"id":"hose","name":"hose"},)"
                               R"({"id":"turbo","name":"turbo"},{"id":"sensor","name":"sensor"},)"
                               R"({"id":"turbo_old","name":"old turbo","alias_of":"turbo"}]})"},
           {"checks.json",
            R"({"kind":"check","entries":[)"
            R"({"id":"hose_look","name":"hose look","components":["hose","turbo_old"]},)"
            R"({"id":"hose_look_old","name":"old look","alias_of":"hose_look"},)"
            R"({"id":"look_round","name":"look round"}]})"}})
          .value();
  return vocabulary;
}

Case closed(const std::string& component, std::vector<Check> checks) {
  Case record;
  record.state = CaseState::kClosed;
  record.cause = Cause{component, "worn", Proof::kSeen};
  record.checks = std::move(checks);
  return record;
}

Check check(const std::string& id, Verdict verdict, std::optional<Later> later = {}) {
  Check made;
  made.id = id;
  made.verdict = verdict;
  made.later = later;
  return made;
}

TEST(Contradictions, VerdictAgainstTheMainCause) {
  const struct {
    const char* name;
    const char* cause;
    const char* check;
    Verdict verdict;
    bool against;
  } rows[] = {{"pass, and it was that part", "hose", "hose_look", Verdict::kPass, true},
              {"fail, and it was that part", "hose", "hose_look", Verdict::kFail, false},
              {"pass, and it was another part", "sensor", "hose_look", Verdict::kPass, false},
              {"fail, and it was another part", "sensor", "hose_look", Verdict::kFail, true},
              {"unclear, that part", "hose", "hose_look", Verdict::kUnclear, false},
              {"unclear, another part", "sensor", "hose_look", Verdict::kUnclear, false},
              {"component by its older id", "turbo", "hose_look", Verdict::kPass, true},
              {"cause by its older id", "turbo_old", "hose_look", Verdict::kPass, true},
              {"check by its older id", "hose", "hose_look_old", Verdict::kPass, true},
              {"check that tells about nothing, pass", "hose", "look_round", Verdict::kPass, false},
              {"check that tells about nothing, fail", "hose", "look_round", Verdict::kFail, false},
              {"check that is not known", "hose", "gone", Verdict::kFail, false}};
  for (const auto& row : rows) {
    const auto found = contradictions(closed(row.cause, {check(row.check, row.verdict)}), words());
    EXPECT_EQ(found.size(), row.against ? 1U : 0U) << row.name;
  }
}

TEST(Contradictions, AFailIsExplainedByAContributingOrAlsoFoundCause) {
  Case record = closed("sensor", {check("hose_look", Verdict::kFail)});
  record.contributing = {{"hose", "split", Proof::kSeen}};
  EXPECT_TRUE(contradictions(record, words()).empty());
  record.also_found = std::move(record.contributing);
  record.contributing.clear();
  EXPECT_TRUE(contradictions(record, words()).empty());
  record.also_found = {{"sensor", "split", Proof::kSeen}};
  EXPECT_EQ(contradictions(record, words()).size(), 1U);
}

TEST(Contradictions, APassIsHeldAgainstTheMainCauseOnly) {
  Case record = closed("sensor", {check("hose_look", Verdict::kPass)});
  record.also_found = {{"hose", "split", Proof::kSeen}};
  EXPECT_TRUE(contradictions(record, words()).empty());
}

TEST(Contradictions, SayWhichCheckAndWhatWasSaidOfIt) {
  const Case record =
      closed("hose", {check("look_round", Verdict::kPass),
                      check("hose_look", Verdict::kPass, Later::kMisled),
                      check("hose_look", Verdict::kFail), check("hose_look_old", Verdict::kPass)});
  const auto found = contradictions(record, words());
  ASSERT_EQ(found.size(), 2U);
  EXPECT_EQ(found[0].position, 1U);
  EXPECT_EQ(found[0].later, Later::kMisled);
  EXPECT_EQ(found[1].position, 3U);
  EXPECT_EQ(found[1].check, "hose_look_old");
  EXPECT_EQ(found[1].later, std::nullopt);
  const auto open = unanswered_contradictions(record, words());
  ASSERT_EQ(open.size(), 1U);
  EXPECT_EQ(open[0].position, 3U);
}

TEST(Contradictions, WithoutACauseNothingIsContradicted) {
  Case record = closed("hose", {check("hose_look", Verdict::kPass)});
  record.cause.reset();
  EXPECT_TRUE(contradictions(record, words()).empty());
}

}  // namespace
}  // namespace shoplore
