// What full-text search finds, marks and refuses. Its scores are in bm25_outside_test.cpp.
#include "query/similar_cases.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <filesystem>
#include <sstream>

#include "indexer/records.hpp"

namespace shoplore {
namespace {

class SimilarCases : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string pattern =
        (std::filesystem::temp_directory_path() / "shoplore-similar-XXXXXX").string();
    home_ = mkdtemp(pattern.data());
    records_ = std::make_unique<Records>(std::move(*Records::create({home_ / "shop"})));
  }
  void TearDown() override {
    snapshot_.reset();
    records_.reset();
    std::filesystem::remove_all(home_);
  }

  static Case closed_case(const std::string& ref, const std::string& complaint) {
    Case record;
    record.ref = ref;
    record.state = CaseState::kClosed;
    record.opened = record.closed.emplace(parse_date("2026-03-02").value());
    record.complaint = complaint;
    record.cause = Cause{"turbocharger", "worn", Proof::kSeen};
    return record;
  }
  void put(const Case& record) {
    const auto added = records_->add({record, {}}, Role::kTechnician);
    ASSERT_TRUE(added) << describe(added.error());
  }
  void follow() {
    ASSERT_TRUE(records_->follow(std::chrono::seconds(10)));
    snapshot_ = *Snapshot::open(records_->folder());
  }
  Result<SearchPage> found(const std::string& text, Filter filter = {}, std::uint32_t size = 10,
                           std::string cursor = "") {
    return find_similar({text, std::move(filter), size, std::move(cursor)}, *snapshot_,
                        records_->store(), records_->vocabulary(), records_->recogniser());
  }
  static std::vector<std::string> refs(const Result<SearchPage>& page) {
    std::vector<std::string> names;
    for (const SimilarCase& each : page.value().cases) names.push_back(each.ref);
    return names;
  }
  static std::vector<std::string> marked(const Snippet& snippet) {
    std::vector<std::string> words;
    for (const Span span : snippet.marked) {
      words.push_back(snippet.text.substr(span.begin, span.end - span.begin));
    }
    return words;
  }
  using Refs = std::vector<std::string>;

  std::filesystem::path home_;
  std::unique_ptr<Records> records_;
  std::shared_ptr<const Snapshot> snapshot_;
};

TEST_F(SimilarCases, FindsOtherFormsOfTheWordAndMarksThem) {
  put(closed_case("a", "Rattles when the zebra is cold"));
  put(closed_case("b", "nothing of the kind"));
  follow();
  const auto page = found("rattling zebras");
  ASSERT_EQ(refs(page), Refs{"a"});
  EXPECT_EQ(marked(page->cases[0].snippet), (Refs{"Rattles", "zebra"}));
}

TEST_F(SimilarCases, FindsARecordByTheVocabularysNameForWhatWasTyped) {
  Case record = closed_case("a", "");
  record.symptoms.push_back({"misfire", Presence::kPresent, {}, {}, {}});
  put(record);
  put(closed_case("b", "zebra"));
  follow();
  EXPECT_EQ(refs(found("running on three")), Refs{"a"});
}

TEST_F(SimilarCases, WhatTheVehicleDoesNotDoIsNotSearchedFor) {
  put(closed_case("whistles", "whistle whistle whistle under load"));
  put(closed_case("quiet", "zebra"));
  follow();
  EXPECT_EQ(refs(found("zebra, no whistle")), Refs{"quiet"});
  EXPECT_EQ(refs(found("whistle")), Refs{"whistles"});
}

TEST_F(SimilarCases, TiesAreInOrderOfTheirIds) {
  for (const char* ref : {"c", "a", "b"}) put(closed_case(ref, "zebra"));
  follow();
  EXPECT_EQ(refs(found("zebra")), (Refs{"c", "a", "b"}));
}

TEST_F(SimilarCases, StopWordsAndAnEmptyTextFindNothing) {
  put(closed_case("a", "it is the zebra"));
  follow();
  for (const char* text : {"", "it is the", "?!", "no"}) {
    const auto page = found(text);
    ASSERT_TRUE(page) << text;
    EXPECT_EQ(page->matches, 0U) << text;
    EXPECT_TRUE(page->next_cursor.empty()) << text;
  }
}

TEST_F(SimilarCases, AFilterNeverAddsAndKeepsTheOrder) {
  for (int i = 0; i < 12; ++i) {
    Case record = closed_case("c" + std::to_string(i), i % 2 == 0 ? "zebra zebra" : "zebra");
    record.vehicle.make = i % 3 == 0 ? "Cormont" : "Arlune";
    record.vehicle.mileage_km = Kilometres{i * 10'000};
    record.cause->proof = i < 6 ? Proof::kSeen : Proof::kPresumed;
    put(record);
  }
  follow();
  const Refs all = refs(found("zebra", {}, 100));
  ASSERT_EQ(all.size(), 12U);
  Filter make, mileage, proof;
  make.make = "CORMONT";
  mileage.mileage = {Kilometres{20'000}, Kilometres{50'000}};
  proof.proofs = {Proof::kSeen};
  const std::pair<Filter, std::size_t> table[] = {{make, 4}, {mileage, 3}, {proof, 6}};
  for (const auto& [filter, expected] : table) {
    const auto page = found("zebra", filter, 100);
    EXPECT_EQ(page->matches, expected);
    const Refs some = refs(page);
    Refs in_order;
    for (const std::string& ref : all) {
      if (std::find(some.begin(), some.end(), ref) != some.end()) in_order.push_back(ref);
    }
    EXPECT_EQ(some, in_order);
    EXPECT_EQ(some.size(), expected);
  }
}

// Without being asked for an exact count, a search engine guesses when it need not look at all.
TEST_F(SimilarCases, TheNumberOfMatchesIsExactWhateverThePageSize) {
  std::stringstream lines;
  std::uint32_t matches = 0;
  for (int i = 0; i < 600; ++i) {
    std::string text = "tulip";
    if (i % 2 == 0) text += " zebra";
    if (i % 3 == 0) text += " quark quark";
    if (i % 35 == 0) text += " zebra zebra zebra";
    Case record = closed_case("c" + std::to_string(i), text);
    record.vehicle.mileage_km = Kilometres{i * 100};
    if (i >= 200 && (i % 2 == 0 || i % 3 == 0 || i % 35 == 0)) ++matches;
    lines << case_to_json(record) << "\n";
  }
  ASSERT_TRUE(records_->import(lines, [](std::int64_t) {}));
  follow();
  Filter filter;
  filter.mileage.low = Kilometres{20'000};
  for (const std::uint32_t size : {1U, 7U, 100U}) {
    EXPECT_EQ(found("zebra quark", filter, size)->matches, matches) << size;
  }
}

TEST_F(SimilarCases, ANameLongerThanAnyTermFindsNothing) {
  put(closed_case("a", "zebra"));
  follow();
  Filter filter;
  filter.make = std::string(500, 'x');
  const auto page = found("zebra", filter);
  ASSERT_TRUE(page) << describe(page.error());
  EXPECT_EQ(page->matches, 0U);
}

TEST_F(SimilarCases, AnOpenOrWithdrawnCaseIsNotFound) {
  Case open = closed_case("open", "zebra");
  open.state = CaseState::kOpen;
  open.closed.reset(), open.cause.reset();
  put(open);
  put(closed_case("gone", "zebra"));
  put(closed_case("kept", "zebra"));
  ASSERT_TRUE(
      records_->change("gone", std::nullopt, R"({"state":"withdrawn"})", Role::kTechnician));
  follow();
  EXPECT_EQ(refs(found("zebra")), Refs{"kept"});
}

TEST_F(SimilarCases, ACursorIsGoodForItsQuestionAndRevisionAlone) {
  for (int i = 0; i < 5; ++i) put(closed_case("c" + std::to_string(i), "zebra"));
  follow();
  const auto first = found("zebra", {}, 2);
  ASSERT_FALSE(first->next_cursor.empty());
  const auto other = found("zebras quark", {}, 2, first->next_cursor);
  ASSERT_FALSE(other);
  EXPECT_EQ(other.error().code, ErrorCode::kInvalidInput);
  put(closed_case("new", "zebra"));
  follow();
  const auto stale = found("zebra", {}, 2, first->next_cursor);
  ASSERT_FALSE(stale);
  EXPECT_EQ(stale.error().code, ErrorCode::kConflict);
}

TEST_F(SimilarCases, RefusesForgedCursorsAndImpossiblePageSizes) {
  put(closed_case("a", "zebra"));
  follow();
  for (const char* cursor : {"x", "-", "1", "1-", "1-2", "1--2-00", "99999999999999999999-1-0",
                             "1-1-0000000000000000", " 1-1-00"}) {
    const auto page = found("zebra", {}, 2, cursor);
    ASSERT_FALSE(page) << cursor;
    EXPECT_EQ(page.error().code, ErrorCode::kInvalidInput) << cursor;
  }
  for (const std::uint32_t size : {0U, 101U}) EXPECT_FALSE(found("zebra", {}, size)) << size;
  EXPECT_FALSE(found("\xff"));
}

// Snippets are cut between characters and stay short, whatever the text looks like.
TEST_F(SimilarCases, ASnippetIsWholeCharactersAroundTheMatches) {
  const std::string filler = "lorem dolor amet tempor ";
  std::string long_text, umlauts = "my zebra ", unbroken = "zebra/", lines = "zebra\n";
  for (int i = 0; i < 30; ++i) long_text += filler;
  // One word of 400 bytes; the odd start puts the longest cut inside a character.
  for (int i = 0; i < 200; ++i) umlauts += "\xC3\xBC";
  for (int i = 0; i < 80; ++i) unbroken += "ab/cd/";
  for (int i = 0; i < 80; ++i) lines += "abc\n";
  put(closed_case("far", long_text + "zebra " + long_text));
  put(closed_case("umlauts", umlauts));
  put(closed_case("unbroken", unbroken));
  put(closed_case("lines", lines));
  follow();
  const auto page = found("zebra");
  ASSERT_EQ(page->cases.size(), 4U);
  for (const SimilarCase& each : page->cases) {
    ASSERT_EQ(marked(each.snippet), Refs{"zebra"}) << each.ref;
    EXPECT_LE(each.snippet.text.size(), 200U) << each.ref;
    for (const char c : each.snippet.text) EXPECT_NE(c, '\n') << each.ref;
    const unsigned char front = static_cast<unsigned char>(each.snippet.text.front());
    const unsigned char back = static_cast<unsigned char>(each.snippet.text.back());
    EXPECT_NE(front & 0xC0U, 0x80U) << each.ref;                      // no tail of a character
    EXPECT_TRUE(back < 0x80 || (back & 0xC0U) == 0x80U) << each.ref;  // no lone lead byte
  }
}

TEST_F(SimilarCases, ShowsTheVehicleTheCauseAndWhatWasDone) {
  Case record = closed_case("a", "zebra");
  record.vehicle.make = "Brackwater";
  record.vehicle.model = "Tidal";
  record.vehicle.model_year = 2016;
  record.vehicle.engine_family = "BW16D";
  record.vehicle.mileage_km = Kilometres{142'000};
  record.correction.emplace().fixes = {{"replace", "turbocharger"}};
  record.outcome.emplace().status = OutcomeStatus::kCameBack;
  put(record);
  follow();
  const SimilarCase similar = found("zebra").value().cases.at(0);
  EXPECT_EQ(similar.vehicle, "2016 Brackwater Tidal BW16D, 142,000 km");
  EXPECT_EQ(similar.cause, "turbocharger, worn");
  EXPECT_EQ(similar.fixes, Refs{"replace turbocharger"});
  EXPECT_EQ(similar.outcome, OutcomeStatus::kCameBack);
}

}  // namespace
}  // namespace shoplore
