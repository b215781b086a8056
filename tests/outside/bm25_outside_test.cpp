// BM25 of the full-text search on a collection small enough to work out by hand.
//
// Source: Xapian's documented defaults, xapian/weight.h of 1.4: k1 = 1, k2 = 0, k3 = 1, b = 0.5,
// min_normlen = 0.5. Formula: Robertson, Walker, Jones, Hancock-Beaulieu & Gatford, Okapi at
// TREC-3 (1994), with Xapian's idf: ln((N - n + 0.5) / (n + 0.5)), below 2 replaced inside the
// logarithm by half itself plus one so that it never becomes negative.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <map>

#include "indexer/records.hpp"
#include "query/similar_cases.hpp"

namespace shoplore {
namespace {

// Words chosen so that stemming leaves them as they are, with no vocabulary phrase among them.
const std::map<std::string, std::string> kDocuments{{"d1", "zebra zebra quark"},
                                                    {"d2", "zebra quark quark tulip"},
                                                    {"d3", "tulip tulip tulip tulip tulip tulip"},
                                                    {"d4", "zebra tulip"},
                                                    {"d5", "quark"},
                                                    {"d6", "tulip"},
                                                    {"d7", "tulip tulip"},
                                                    {"d8", "tulip tulip tulip"}};
// Every record also carries these stems: its cause's two names.
constexpr double kExtraWords = 2;  // "turbocharger", "worn"

std::vector<std::string> split(const std::string& text) {
  std::vector<std::string> words;
  std::size_t at = 0;
  while (at < text.size()) {
    const auto end = std::min(text.find(' ', at), text.size());
    words.push_back(text.substr(at, end - at));
    at = end + 1;
  }
  return words;
}

double bm25(const std::string& text, const std::vector<std::string>& query) {
  const double n_documents = static_cast<double>(kDocuments.size());
  double average = 0;
  for (const auto& [ref, words] : kDocuments) {
    average += (static_cast<double>(split(words).size()) + kExtraWords) / n_documents;
  }
  const auto words = split(text);
  const double length = std::max((static_cast<double>(words.size()) + kExtraWords) / average, 0.5);
  double score = 0;
  for (const std::string& term : query) {
    const double frequency = static_cast<double>(std::count(words.begin(), words.end(), term));
    double holders = 0;
    for (const auto& [ref, other] : kDocuments) {
      const auto list = split(other);
      if (std::find(list.begin(), list.end(), term) != list.end()) ++holders;
    }
    double odds = (n_documents - holders + 0.5) / (holders + 0.5);
    if (odds < 2) odds = odds * 0.5 + 1;
    const double k1 = 1, k3 = 1, b = 0.5;
    const double wqf = (k3 + 1) * 1 / (k3 + 1);
    score +=
        std::log(odds) * (k1 + 1) * frequency / (k1 * (b * length + (1 - b)) + frequency) * wqf;
  }
  return score;
}

TEST(Bm25Outside, ScoresAndOrderEqualTheFormula) {
  std::string pattern = (std::filesystem::temp_directory_path() / "shoplore-bm25-XXXXXX").string();
  const std::filesystem::path home = mkdtemp(pattern.data());
  auto records = Records::create({home / "shop"});
  ASSERT_TRUE(records);
  for (const auto& [ref, text] : kDocuments) {
    Case record;
    record.ref = ref;
    record.state = CaseState::kClosed;
    record.opened = record.closed.emplace(parse_date("2026-03-02").value());
    record.complaint = text;
    record.cause = Cause{"turbocharger", "worn", Proof::kSeen};
    ASSERT_TRUE(records->add({record, {}}, Role::kTechnician));
  }
  ASSERT_TRUE(records->follow(std::chrono::seconds(10)));
  const auto snapshot = Snapshot::open(records->folder());
  ASSERT_TRUE(snapshot);
  for (const std::vector<std::string>& query :
       {std::vector<std::string>{"zebra", "quark"}, {"tulip"}, {"quark", "tulip"}}) {
    std::string text;
    for (const std::string& word : query) text += word + " ";
    const auto page = find_similar({text, {}, 10, ""}, **snapshot, records->store(),
                                   records->vocabulary(), records->recogniser());
    ASSERT_TRUE(page) << describe(page.error());
    std::vector<std::pair<double, std::string>> expected;
    for (const auto& [ref, words] : kDocuments) {
      const double score = bm25(words, query);
      if (score > 0) expected.emplace_back(-score, ref);
    }
    std::sort(expected.begin(), expected.end());
    ASSERT_EQ(page->cases.size(), expected.size()) << text;
    EXPECT_EQ(page->matches, expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i) {
      EXPECT_EQ(page->cases[i].ref, expected[i].second) << text << i;
      EXPECT_NEAR(page->cases[i].score, -expected[i].first, 1e-9) << text << i;
    }
  }
  std::filesystem::remove_all(home);
}

TEST(FindSimilar, PagesAreSlicesOfTheWhole) {
  std::string pattern = (std::filesystem::temp_directory_path() / "shoplore-page-XXXXXX").string();
  const std::filesystem::path home = mkdtemp(pattern.data());
  auto records = Records::create({home / "shop"});
  ASSERT_TRUE(records);
  for (int i = 0; i < 23; ++i) {
    Case record;
    record.state = CaseState::kClosed;
    record.opened = record.closed.emplace(parse_date("2026-03-02").value());
    record.complaint = i % 3 == 0 ? "zebra zebra" : "zebra";
    record.cause = Cause{"turbocharger", "worn", Proof::kSeen};
    ASSERT_TRUE(records->add({record, {}}, Role::kTechnician));
  }
  ASSERT_TRUE(records->follow(std::chrono::seconds(10)));
  const auto snapshot = *Snapshot::open(records->folder());
  const auto search = [&](std::uint32_t size, std::string cursor) {
    return find_similar({"zebra", {}, size, std::move(cursor)}, *snapshot, records->store(),
                        records->vocabulary(), records->recogniser());
  };
  const auto whole = search(100, "");
  std::vector<std::string> refs, paged;
  for (const SimilarCase& each : whole->cases) refs.push_back(each.ref);
  std::string cursor;
  do {
    const auto page = search(5, cursor);
    ASSERT_TRUE(page) << describe(page.error());
    for (const SimilarCase& each : page->cases) paged.push_back(each.ref);
    cursor = page->next_cursor;
  } while (!cursor.empty());
  EXPECT_EQ(refs.size(), 23U);
  EXPECT_EQ(paged, refs);
  EXPECT_FALSE(search(5, "1-2-zz"));
  std::filesystem::remove_all(home);
}

}  // namespace
}  // namespace shoplore
