#include "query/patterns/set_counts.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>
#include <map>
#include <random>

namespace shoplore {
namespace {

using Numbers = std::vector<std::uint32_t>;

struct Count {
  std::uint32_t rows = 0;
  Numbers by_outcome;
  friend bool operator==(const Count&, const Count&) = default;
};
using Counts = std::map<Numbers, Count>;

struct Rows {
  std::vector<Numbers> numbers, outcomes;  // by row
  std::uint32_t number_count = 0, outcome_count = 0;
};

NumberRows columns_of(const std::vector<Numbers>& rows, std::uint32_t count) {
  std::vector<Numbers> columns(count);
  for (std::uint32_t row = 0; row < rows.size(); ++row) {
    for (const std::uint32_t number : rows[row]) columns[number].push_back(row);
  }
  return {columns, rows.size()};
}

bool holds(const Numbers& row, const Numbers& set) {
  return std::includes(row.begin(), row.end(), set.begin(), set.end());
}

// Every set of up to three there could be, each counted by going through all rows.
Counts plainly(const Rows& rows, const Numbers& among, std::uint32_t fewest) {
  std::vector<Numbers> sets;
  for (std::uint32_t a = 0; a < rows.number_count; ++a) {
    sets.push_back({a});
    for (std::uint32_t b = a + 1; b < rows.number_count; ++b) {
      sets.push_back({a, b});
      for (std::uint32_t c = b + 1; c < rows.number_count; ++c) sets.push_back({a, b, c});
    }
  }
  Counts counts;
  for (const Numbers& set : sets) {
    Count count{0, Numbers(rows.outcome_count)};
    for (const std::uint32_t row : among) {
      if (!holds(rows.numbers[row], set)) continue;
      ++count.rows;
      for (const std::uint32_t outcome : rows.outcomes[row]) ++count.by_outcome[outcome];
    }
    if (count.rows >= fewest) counts[set] = count;
  }
  return counts;
}

Counts mined(const Rows& rows, const Numbers& among, std::uint32_t fewest) {
  Counts counts;
  for_each_set(columns_of(rows.numbers, rows.number_count),
               columns_of(rows.outcomes, rows.outcome_count), among, fewest,
               [&](const SetCount& set) {
                 const Numbers key(set.set.begin(), set.set.end());
                 EXPECT_FALSE(counts.contains(key)) << "met twice";
                 counts[key] = {set.rows, Numbers(set.by_outcome.begin(), set.by_outcome.end())};
               });
  return counts;
}

Rows drawn(std::mt19937_64& random) {
  Rows rows;
  rows.number_count = 1 + static_cast<std::uint32_t>(random() % 12);
  rows.outcome_count = static_cast<std::uint32_t>(random() % 4);
  for (std::uint64_t left = random() % 40; left > 0; --left) {
    Numbers numbers, outcomes;
    for (std::uint32_t n = 0; n < rows.number_count; ++n) {
      if (random() % 3 == 0) numbers.push_back(n);
    }
    for (std::uint32_t n = 0; n < rows.outcome_count; ++n) {
      if (random() % 2 == 0) outcomes.push_back(n);
    }
    rows.numbers.push_back(numbers);
    rows.outcomes.push_back(outcomes);
  }
  return rows;
}

TEST(SetCounts, AgreesWithGoingThroughAllRowsForEverySet) {
  constexpr std::uint64_t kSeed = 20'261'126;
  std::cout << "seed " << kSeed << "\n";
  std::mt19937_64 random(kSeed);
  std::size_t sets = 0;
  for (int round = 0; round < 300; ++round) {
    const Rows rows = drawn(random);
    Numbers among;
    for (std::uint32_t row = 0; row < rows.numbers.size(); ++row) {
      if (random() % 4 != 0) among.push_back(row);
    }
    const auto fewest = 1 + static_cast<std::uint32_t>(random() % 4);
    const Counts counts = mined(rows, among, fewest);
    ASSERT_EQ(counts, plainly(rows, among, fewest)) << "round " << round;
    sets += counts.size();
  }
  EXPECT_GT(sets, 5'000U) << "too few sets to prove anything";
}

TEST(SetCounts, TheOrderOfTheRowsDoesNotMatter) {
  std::mt19937_64 random(7);
  const Rows rows = drawn(random);
  Numbers among;
  for (std::uint32_t row = 0; row < rows.numbers.size(); ++row) among.push_back(row);
  Numbers backward(among.rbegin(), among.rend());
  EXPECT_EQ(mined(rows, among, 2), mined(rows, backward, 2));
}

TEST(SetCounts, NothingStandsInNoRows) {
  EXPECT_TRUE(mined({{}, {}, 3, 1}, {}, 1).empty());
}

}  // namespace
}  // namespace shoplore
