// What is kept of one apprentice's practice: practice/<handle>.json in the shop's folder, theirs
// alone.
//
// There is no list of apprentices, no comparison between them and no clock on a person: of time
// only the days are kept that spaced repetition needs. A handle is one or two letters and one to
// three digits ("a1"), so that it is nobody's name; whoever knows it can read and delete the file.
// Rounds survive a restart. Kept at most: kMostApprentices files, of each the last kMostRounds
// rounds, none older than kRoundDays, the last kMostResults results and
// the last kMostSubjects subjects.
//
// File: {"schema":1,"apprentice":"a1","rounds_started":12,"subjects":[..],"results":[..],
//        "rounds":[..]}; forms of the parts in apprentice_record.cpp.
// Threads and processes: any; one file is changed under the lock practice/lock and replaced whole.
// Fails with kInvalidInput for a handle of another form, kNotFound for one nobody practised under,
// kTooLarge when there are too many files, kDamagedStore when a file is not as written, kBusy,
// kNoPermission.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/shop_folder.hpp"
#include "query/practice/practice_round.hpp"
#include "query/practice/spaced_repetition.hpp"

namespace shoplore {

inline constexpr std::size_t kMostApprentices = 100, kMostRounds = 10, kMostResults = 1'000,
                             kMostSubjects = 2'000;
inline constexpr int kRoundDays = 7;

// Something to learn and when it comes up again.
struct PractisedSubject {
  PracticeKind kind = PracticeKind::kCause;
  std::string subject;
  Repetition repetition;
};

// A part of the last belief before a cause was committed to.
struct SaidPart {
  double percent = 0;
  YesNo right = YesNo::kNo;
};

struct PracticeResult {
  PracticeKind kind = PracticeKind::kCause;
  std::string subject, case_ref;
  Drawn drawn = Drawn::kByChance;
  Date day;
  double points = 0;
  int grade = 0;
  YesNo right = YesNo::kNo;
  // Of kCause:
  std::vector<SaidPart> said;
  double records_points = 0, minutes = 0, best_minutes = 0;
  std::int64_t unheeded = 0;          // warnings
  std::vector<std::string> symptoms;  // present as it came in: canonical ids
};

struct ApprenticeRecord {
  std::string apprentice;
  std::int64_t rounds_started = 0;
  std::vector<PractisedSubject> subjects;  // in the order first practised
  std::vector<PracticeRound> rounds;       // oldest first
  std::vector<PracticeResult> results;     // oldest first
};

[[nodiscard]] Result<void> check_handle(std::string_view handle);

[[nodiscard]] Result<ApprenticeRecord> read_apprentice(const ShopFolder& folder,
                                                       const std::string& handle);

// Calls `change` with the record, a new one when there is none, and keeps it unless that failed.
[[nodiscard]] Result<void> change_apprentice(
    const ShopFolder& folder, const std::string& handle,
    const std::function<Result<void>(ApprenticeRecord&)>& change);

[[nodiscard]] Result<void> forget_apprentice(const ShopFolder& folder, const std::string& handle);

// All of it for the apprentice to take away, but for rounds, which would tell their answers. One
// line, no trailing newline.
[[nodiscard]] std::string exported_json(const ApprenticeRecord& record);

}  // namespace shoplore
