// Drawing an exercise: what it asks about, and what is offered to choose from.
//
// Cases: a cause is practised where kFewestOfACause of its cases have a known outcome, one to ask
// and the others to have learnt from, and only in records with kFewestCauses such causes, or there
// would be nothing to tell apart. What is due is drawn by its
// cause, what comes up by chance from the cases of all of them. Reads the bodies of a few; of these
// the one nearest the difficulty wished for, cases asked before last and, of a cause that is due,
// cases without any check. No wish: clear at first, then by the mean points of the last
// kAnswersLookedAt of the kind: clear below kPoorPoints, fair below kGoodPoints, else hard.
// Codes: one of the records, or any that the standard's form allows.
// Fails with kNotFound at "records" where these records have nothing to ask of that kind: says what
// is missing and what to do. Other errors: the store's and the counter's.
#pragma once

#include <optional>
#include <random>

#include "indexer/store.hpp"
#include "query/practice/apprentice_record.hpp"
#include "query/practice/practice_case.hpp"
#include "query/snapshot.hpp"

namespace shoplore {

inline constexpr std::uint32_t kFewestOfACause = 6;
inline constexpr std::size_t kFewestCauses = 3;
inline constexpr std::size_t kCasesLookedAt = 6, kAnswersLookedAt = 5;
inline constexpr double kPoorPoints = 60, kGoodPoints = 85;
inline constexpr std::size_t kChecksOffered = 4;

// The records that are practised on.
struct PracticeGround {
  const Snapshot& snapshot;
  const Store& store;
  const Vocabulary& vocabulary;
};

// A round without id and steps.
[[nodiscard]] Result<PracticeRound> drawn_exercise(const RoundWish& wish,
                                                   const ApprenticeRecord& record,
                                                   const PracticeGround& ground,
                                                   std::mt19937_64& random);

// The case of a round; kConflict when it is no exercise any more (reopened, withdrawn, changed).
[[nodiscard]] Result<PracticeCase> case_of(const PracticeRound& round,
                                           const PracticeGround& ground);

// By the probability of the ranking's first cause.
[[nodiscard]] Difficulty difficulty_of(double first);

}  // namespace shoplore
