#include "indexer/edit_distance.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <string>

namespace shoplore {
namespace {

struct Row {
  const char *a, *b;
  std::size_t edits;
};

TEST(EditDistance, CountsInsertionsDeletionsReplacementsAndSwaps) {
  // "kitten" and "sitting" are the textbook pair, "ca" and "abc" the one that tells the optimal
  // string alignment (3) from the unrestricted distance (2); both from memory.
  const Row rows[] = {{"", "", 0},
                      {"", "abc", 3},
                      {"wobble", "wobble", 0},
                      {"wobly", "wobble", 2},
                      {"whisle", "whistle", 1},
                      {"kitten", "sitting", 3},
                      {"ca", "abc", 3},
                      {"turob", "turbo", 1},
                      {"abcd", "badc", 2}};
  for (const Row& row : rows) {
    EXPECT_EQ(edits_between(row.a, row.b, 5), row.edits) << row.a << " " << row.b;
    EXPECT_EQ(edits_between(row.b, row.a, 5), row.edits) << row.b << " " << row.a;
  }
}

TEST(EditDistance, SaysNothingAboveTheLimit) {
  EXPECT_EQ(edits_between("kitten", "sitting", 2), std::nullopt);
  EXPECT_EQ(edits_between("abc", "abcdef", 2), std::nullopt);
  EXPECT_EQ(edits_between(std::string(65, 'a'), std::string(65, 'a'), 2), std::nullopt);
  EXPECT_EQ(edits_between(std::string(64, 'a'), std::string(64, 'a'), 0), 0U);
}

TEST(EditDistance, AnyTwoEditsOfTheirOwnAreFoundWithinTwo) {
  constexpr unsigned kSeed = 20'260'301;
  SCOPED_TRACE(kSeed);
  std::mt19937 random(kSeed);
  const auto below = [&](std::size_t n) { return static_cast<std::size_t>(random()) % n; };
  const auto letter = [&] { return static_cast<char>('a' + static_cast<int>(below(4))); };
  for (int i = 0; i < 2'000; ++i) {
    std::string word;
    for (std::size_t n = 4 + below(8); n > 0; --n) word += letter();
    std::string other = word;
    // Far apart, so that no part is edited twice.
    other.insert(other.size(), 1, letter());
    std::swap(other[0], other[1]);
    const auto edits = edits_between(word, other, 2);
    ASSERT_TRUE(edits) << word << " " << other;
    EXPECT_LE(*edits, 2U);
  }
}

}  // namespace
}  // namespace shoplore
