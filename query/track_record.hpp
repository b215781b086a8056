// How good the shop's records are at telling causes: every closed case asked as if it were new.
//
// The case itself is left out (leave-one-out), or, with folds, a whole share of the cases at a
// time, the knobs fitted on the rest. Asked with all of its evidence, with half and with a quarter.
// Says of how many it can speak; few questions tell nothing.
// Threads: works on two of its own. Errors: the store's.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "query/ledger.hpp"
#include "query/ranking/past_cases.hpp"
#include "query/ranking/ranking_model.hpp"
#include "query/ranking/scores.hpp"

namespace shoplore {

// Shares of the evidence that is hidden, level by level.
inline constexpr std::array<double, 3> kHiddenLevels{0, .5, .75};
// Fewer questions than this and shares of them say little.
inline constexpr std::size_t kFewestToTell = 30;

struct TrackRecordRow {
  std::string name;
  std::array<Scores, 3> levels;
};

struct TrackRecord {
  std::size_t cases = 0;                // closed, with anything to ask by
  std::size_t only_of_their_cause = 0;  // of them: nothing recorded could have told
  TrackRecordRow all;
  std::vector<TrackRecordRow> by_family;  // by engine family, most cases first
  std::vector<TrackRecordRow> by_seen;    // by how many other cases of the cause there are
  std::vector<TrackRecordRow> by_year;    // by the year the case was closed, oldest first
};

struct TrackRecordOptions {
  std::size_t folds = 0;   // 0: leave one out
  std::uint64_t seed = 1;  // of folds and of what is hidden
  // Times each case is asked with part of its evidence hidden, another part each time: more of them
  // tell the same, less by chance.
  std::size_t draws = 1;
  // Reads complaints for the words left over; without one no words are asked with.
  const Recogniser* recogniser = nullptr;
};

[[nodiscard]] Result<TrackRecord> track_record(const Ledger& ledger, const RankingModel& model,
                                               const std::vector<PastCase>& cases,
                                               const TrackRecordOptions& options);

}  // namespace shoplore
