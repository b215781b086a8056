// Exact counts of every set of up to three numbers that stand together in enough rows, by outcome.
//
// A row is a case: the numbers of what it holds, and the numbers of its outcomes. Knows nothing of
// evidence. Counts sideways: of each set the rows are walked once and every number that follows in
// them is counted together with the outcomes. A case holds some fifteen of several hundred numbers,
// so this touches only what occurs; ANDing a bitmap for every candidate touches what does not. The
// work grows with the rows, at most C(15,3) = 455 steps a row of fifteen, whatever the vocabulary.
// Pure functions, any thread; they cannot fail.
#pragma once

#include <cstdint>
#include <functional>
#include <span>
#include <vector>

namespace shoplore {

inline constexpr std::size_t kMaxSetSize = 3;

// Rows of numbers, each ascending and without doubles. Immutable.
class NumberRows {
 public:
  NumberRows() = default;
  // Number i stands in the rows of columns[i]. Requires: row numbers below `rows`, each once a
  // column.
  NumberRows(const std::vector<std::vector<std::uint32_t>>& columns, std::size_t rows);

  [[nodiscard]] std::span<const std::uint32_t> row(std::size_t number) const {
    return {numbers_.data() + starts_[number], numbers_.data() + starts_[number + 1]};
  }
  [[nodiscard]] std::size_t number_count() const { return number_count_; }

 private:
  std::vector<std::size_t> starts_{0};
  std::vector<std::uint32_t> numbers_;
  std::size_t number_count_ = 0;
};

struct SetCount {
  std::span<const std::uint32_t> set;  // one to three numbers, ascending
  std::uint32_t rows = 0;              // in which all of it stands
  // By outcome, of those rows; may add to more or less than `rows`, as a row has any number of
  // outcomes.
  std::span<const std::uint32_t> by_outcome;
};

// Calls visit for every set that stands in at least `fewest` of the rows `among`; what it is given
// lives until it returns. A set comes after all sets it begins with. Requires: fewest >= 1, each of
// `among` once.
void for_each_set(const NumberRows& numbers, const NumberRows& outcomes,
                  const std::vector<std::uint32_t>& among, std::uint32_t fewest,
                  const std::function<void(const SetCount&)>& visit);

}  // namespace shoplore
