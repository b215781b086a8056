// The answer's JSON form is a promise to programs: its raw keys are compared one by one, with the
// JSON library and never with code of ours.
#include "api/wire/answer_json.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/api/sample_answer.hpp"

namespace shoplore {
namespace {

using nlohmann::ordered_json;
using ::testing::ElementsAre;

const Vocabulary& vocabulary() {
  static const Vocabulary loaded = Vocabulary::built_in().value();
  return loaded;
}

ordered_json sample() {
  return ordered_json::parse(answer_json(testing::sample_answer(), vocabulary()));
}

std::vector<std::string> keys_of(const ordered_json& object) {
  std::vector<std::string> keys;
  for (const auto& [key, unused] : object.items()) keys.push_back(key);
  return keys;
}

TEST(AnswerJson, HasTheseKeysAtTheTop) {
  EXPECT_THAT(
      keys_of(sample()),
      ElementsAre("understood", "likely_causes", "not_in_these_records", "causes_left_out",
                  "left_out_probability", "breadth", "never_seen", "nothing_matches", "next_checks",
                  "questions", "repair_on_suspicion", "watch_out", "similar_cases", "cautions",
                  "revision", "cases_in_records", "filter", "note"));
}

TEST(AnswerJson, HasTheSameKeysWhenNothingMatches) {
  const auto json = ordered_json::parse(answer_json(testing::answer_without_match(), vocabulary()));
  auto keys = keys_of(sample());
  std::erase(keys, "repair_on_suspicion");  // only where there is one
  EXPECT_EQ(keys_of(json), keys);
  EXPECT_EQ(json["next_checks"], ordered_json::array());
  EXPECT_EQ(json["nothing_matches"], true);
  EXPECT_EQ(json["likely_causes"], ordered_json::array());
  EXPECT_EQ(json["watch_out"], ordered_json::array());
  EXPECT_EQ(json["similar_cases"], ordered_json::array());
  EXPECT_EQ(json["filter"], ordered_json::object());
}

struct KeysRow {
  const char* name;
  const char* pointer;
  std::vector<std::string> keys;
};

const std::vector<std::string> kItemKeys = {"attribute", "value", "name"};
const std::vector<std::string> kFixKeys = {"fixes",     "name",    "cases", "stayed_fixed",
                                           "came_back", "unknown", "stayed"};

const KeysRow kKeysRows[] = {
    {"understood", "/understood", {"text", "items", "not_understood", "suggestions", "evidence"}},
    {"recognised code", "/understood/items/2", {"kind", "id", "name", "state", "begin", "end"}},
    {"recognised mileage",
     "/understood/items/3",
     {"kind", "id", "name", "state", "mileage_km", "note", "begin", "end"}},
    {"suggestions", "/understood/suggestions/0", {"word", "suggestions"}},
    {"suggestion", "/understood/suggestions/0/suggestions/0", {"kind", "id", "name"}},
    {"evidence", "/understood/evidence/0", kItemKeys},
    {"cause",
     "/likely_causes/0",
     {"component", "failure", "name", "share", "vehicles", "seen", "probability", "why", "log_odds",
      "fixes", "fixes_together"}},
    {"share", "/likely_causes/0/share", {"count", "out_of", "interval"}},
    {"interval", "/likely_causes/0/share/interval", {"low", "high", "confidence"}},
    {"why",
     "/likely_causes/0/why/0",
     {"attribute", "value", "name", "weight", "with_item", "known", "with_item_elsewhere",
      "known_elsewhere"}},
    {"fix", "/likely_causes/0/fixes/0", kFixKeys},
    {"fixes together", "/likely_causes/0/fixes_together/0", kFixKeys},
    {"stayed", "/likely_causes/0/fixes/0/stayed", {"count", "out_of", "interval"}},
    {"first width", "/breadth/0", {"scope", "items", "cases", "vehicles"}},
    {"wider", "/breadth/1", {"scope", "items", "dropped", "cases", "vehicles"}},
    {"dropped", "/breadth/1/dropped", kItemKeys},
    {"log odds", "/likely_causes/0/log_odds", {"prior", "scarcity", "pairs", "likeness", "others"}},
    {"next check",
     "/next_checks/0",
     {"attribute", "name", "minutes", "removals", "removal_minutes", "information_bits",
      "answerable", "bits_per_minute", "outlooks", "where", "how", "pass_misled"}},
    {"removal", "/next_checks/0/removals/0", {"id", "name"}},
    {"outlook", "/next_checks/0/outlooks/0", {"answer", "probability", "leading"}},
    {"leading",
     "/next_checks/0/outlooks/0/leading/0",
     {"component", "failure", "name", "probability"}},
    {"question",
     "/questions/0",
     {"attribute", "name", "minutes", "removals", "removal_minutes", "information_bits",
      "answerable", "bits_per_minute", "outlooks"}},
    {"repair on suspicion",
     "/repair_on_suspicion",
     {"order", "expected_minutes", "expected_minutes_checked"}},
    {"repair step",
     "/repair_on_suspicion/order/0",
     {"component", "failure", "name", "probability", "minutes"}},
    {"warning",
     "/watch_out/0",
     {"kind", "stated", "text", "about", "cause", "share", "minutes_at_stake", "how_often",
      "expected_minutes", "cases"}},
    {"similar case",
     "/similar_cases/0",
     {"ref", "opened", "vehicle", "cause", "fixes", "outcome", "score", "snippet"}},
    {"snippet", "/similar_cases/0/snippet", {"text", "marked"}},
    {"mark", "/similar_cases/0/snippet/marked/0", {"begin", "end"}},
    {"caution", "/cautions/0", {"id", "name", "text", "because_of"}},
};

TEST(AnswerJson, HasTheseKeysInEveryPart) {
  const auto json = sample();
  for (const KeysRow& row : kKeysRows) {
    SCOPED_TRACE(row.name);
    EXPECT_EQ(keys_of(json.at(ordered_json::json_pointer(row.pointer))), row.keys);
  }
}

struct ValueRow {
  const char* pointer;
  ordered_json value;
};

TEST(AnswerJson, CarriesEveryValueUnrounded) {
  const ValueRow rows[] = {
      {"/understood/text", "2016 Brackwater P0299 142k foo no whistle"},
      {"/understood/items/3/mileage_km", 142'000},
      {"/understood/items/4/state", "absent"},
      {"/understood/items/4/begin", 31},
      {"/understood/not_understood", {"foo"}},
      {"/understood/suggestions/0/word", "foo"},
      {"/understood/suggestions/0/suggestions/0/kind", "check"},
      {"/likely_causes/0/component", "wastegate_linkage"},
      {"/likely_causes/0/share/count", 14},
      {"/likely_causes/0/share/out_of", 19},
      {"/likely_causes/0/share/interval/low", 0.5},
      {"/likely_causes/0/share/interval/high", 0.875},
      {"/likely_causes/0/share/interval/confidence", 0.9},
      {"/likely_causes/0/probability", 0.8125},
      {"/likely_causes/0/why/1/weight", -0.5},
      {"/likely_causes/0/why/0/known_elsewhere", 1'200},
      {"/likely_causes/0/fixes/0/fixes", {"replace wastegate_linkage"}},
      {"/likely_causes/1/failure", "split"},
      {"/not_in_these_records", 0.0234375},
      {"/left_out_probability", 0.0390625},
      {"/causes_left_out", 2},
      {"/breadth/1/cases", 19},
      {"/breadth/1/dropped/value", "absent"},
      {"/watch_out/0/kind", "earlier_repair"},
      {"/watch_out/0/stated", "yes"},
      {"/watch_out/0/minutes_at_stake", 840},
      {"/watch_out/0/expected_minutes", 630},
      {"/watch_out/0/cases", {"case-7", "case-3"}},
      {"/similar_cases/0/opened", "2024-03-02"},
      {"/similar_cases/0/outcome", "stayed_fixed"},
      {"/similar_cases/0/snippet/marked/1/end", 23},
      {"/cautions/0/because_of", {"wastegate linkage"}},
      {"/revision", 2'412},
      {"/cases_in_records", 2'400},
      {"/note",
       "Counts are evidence, not a diagnosis. Follow the vehicle maker's procedure and local "
       "rules."},
  };
  const auto json = sample();
  for (const ValueRow& row : rows) {
    SCOPED_TRACE(row.pointer);
    EXPECT_EQ(json.at(ordered_json::json_pointer(row.pointer)), row.value);
  }
}

TEST(AnswerJson, SaysTheFilterItCountedUnder) {
  Answer answer = testing::sample_answer();
  answer.filter.make = "Brackwater";
  answer.filter.mileage = {Kilometres{100'000}, std::nullopt};
  answer.filter.model_year = {2014, 2017};
  answer.filter.closed_since = *parse_date("2024-01-01");
  answer.filter.proofs = {Proof::kMeasured, Proof::kSeen};
  const auto json = ordered_json::parse(answer_json(answer, vocabulary()));
  EXPECT_EQ(json["filter"], ordered_json::parse(R"({"make":"Brackwater",
      "mileage_km":{"low":100000},"model_year":{"low":2014,"high":2017},
      "closed_since":"2024-01-01","proof":["seen","measured"]})"));
}

TEST(AnswerJson, WatchOutAloneIsThatPartOfTheAnswer) {
  const Answer answer = testing::sample_answer();
  const auto json = ordered_json::parse(watch_out_json(answer, vocabulary()));
  EXPECT_THAT(keys_of(json), ElementsAre("understood", "watch_out", "nothing_matches", "revision",
                                         "cases_in_records", "filter", "note"));
  const auto whole = ordered_json::parse(answer_json(answer, vocabulary()));
  for (const auto& [key, value] : json.items()) EXPECT_EQ(value, whole.at(key)) << key;
}

TEST(AnswerJson, IsOneLine) {
  const std::string text = answer_json(testing::sample_answer(), vocabulary());
  EXPECT_EQ(text.find('\n'), std::string::npos);
}

TEST(SearchPageJson, HasTheseKeys) {
  SearchPage page;
  page.cases = {testing::similar_case()};
  page.matches = 57;
  page.next_cursor = "abc";
  page.revision = Revision{2'412};
  const auto json = ordered_json::parse(search_page_json(page));
  EXPECT_THAT(keys_of(json), ElementsAre("cases", "matches", "next_cursor", "revision"));
  EXPECT_EQ(json["matches"], 57);
  EXPECT_EQ(json["cases"][0]["ref"], "case-7");
}

}  // namespace
}  // namespace shoplore
