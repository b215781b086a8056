// What an apprentice believes of the causes, in percent, and how good that was once the truth is
// known.
//
// What a belief leaves over belongs to "something else": spread evenly over all other causes of the
// records and one more for a cause they lack, so that it is a whole forecast like the records' own
// and both are scored alike, by proper scores: nobody gains by saying other than he believes.
//   log score   ln p(truth) (Good 1952), p no less than kLeastProbability
//   Brier       sum over causes of (p - 1[truth])^2 (Brier 1950), 0 to 2 (ranking/scores.hpp)
//   points      100 (1 - Brier / 2): the shown one. 100: all on the truth; 0: all on one other
//               cause; about 50: nothing said. Being a straight line of Brier it is proper too.
// Grades of SM-2 follow from the points of the last belief and the cause committed to; nobody
// grades himself.
//   points   >= 90  >= 80  >= 65  >= 50  >= 25  less
//   grade      5      4      3      2      1     0
// As good as the records themselves (kAsGood points or fewer below them) and better than nothing
// said is a 4 at least: more could not be known. A wrong cause committed to is a 2 at most.
// Pure functions, any thread.
#pragma once

#include <string>
#include <vector>

#include "indexer/case_record.hpp"
#include "query/case_counter.hpp"
#include "query/ranking/scores.hpp"

namespace shoplore {

struct Belief {
  std::string cause;  // cause key
  double percent = 0;
  friend bool operator==(const Belief&, const Belief&) = default;
};

// Most parts that one statement of belief may have.
inline constexpr std::size_t kMostBeliefs = 20;
// A hundredth of a percent: three thirds of 33.34 are no mistake worth a refusal.
inline constexpr double kRoundingPercent = 0.05;
inline constexpr double kAsGood = 5;

// kInvalidInput naming the part ("/beliefs/1"): none, too many, negative, over 100, not a number,
// a cause twice, more than 100 together.
[[nodiscard]] Result<void> check_beliefs(const std::vector<Belief>& beliefs);

// Probabilities by CauseNumber of the causes with cases (`seen` > 0), "not in these records" last,
// as the ranking gives them. Requires: checked, and every cause is in the table.
[[nodiscard]] std::vector<double> forecast_of(const std::vector<Belief>& beliefs,
                                              const CauseTable& causes,
                                              const std::vector<std::uint32_t>& seen);

struct ProperScore {
  double log = 0, brier = 0, points = 0;
};

// Of probabilities as forecast_of and RankingModel::probabilities give them.
[[nodiscard]] ProperScore proper_score(const std::vector<double>& probabilities, CauseNumber truth);

// `committed`: whether the cause committed to was right.
[[nodiscard]] int grade_of(double points, double records_points, YesNo committed);

}  // namespace shoplore
