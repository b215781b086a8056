// A small random workshop and the obvious way to count it, for comparing the counters with.
#pragma once

#include <map>
#include <random>
#include <set>
#include <string>
#include <vector>

#include "indexer/case_record.hpp"
#include "query/case_counter.hpp"

namespace shoplore::testing {

// Brute force over the records: reads the case, never the index.
struct PlainCount {
  std::uint32_t cases = 0, vehicles = 0;
  std::map<std::string, std::uint32_t> by_cause, vehicles_by_cause;
  std::map<std::string, std::uint32_t> by_profile;
  friend bool operator==(const PlainCount&, const PlainCount&) = default;
};

using CasesById = std::map<std::uint32_t, Case>;

[[nodiscard]] PlainCount count_plainly(const CasesById& cases, const CountQuestion& question);
[[nodiscard]] PlainCount plain(const Tally& tally, const CauseTable& causes);

[[nodiscard]] Case random_case(std::mt19937_64& random);
[[nodiscard]] CountQuestion random_question(std::mt19937_64& random);

}  // namespace shoplore::testing
