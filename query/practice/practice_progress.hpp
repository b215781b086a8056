// How an apprentice gets on: how far what they say can be trusted, what they know, where they are
// weak. For their own eyes: compared with the truth and with the records, never with anybody else.
//
// Calibration: every part of the last belief of a cause round that came up by chance
// (subject_turn.hpp) is one thing said with a percentage; a reliability table (ranking/scores.hpp,
// ten bins, an inner edge in the lower bin) sets what was said beside how often it was so. In words
// it is told by the cause believed most in each round: the mean percentage said of it against the
// 90 % Jeffreys interval of how often it was so. Fewer than kFewestToTell rounds tell nothing. A
// pattern is mastered when its last repetition was known and the next is kMasteredDays or more off.
// Weak: complaints, by symptom present, with kFewestOfASymptom rounds or more whose mean points lie
// kWeaker or more below the mean of all. Pure functions, any thread.
#pragma once

#include <string>
#include <vector>

#include "query/practice/apprentice_record.hpp"
#include "query/track_record.hpp"

namespace shoplore {

inline constexpr std::size_t kSaidBins = 10;
inline constexpr int kMasteredDays = 15;
inline constexpr std::size_t kFewestOfASymptom = 5;
inline constexpr double kWeaker = 5;

enum class CalibrationWord { kTooFew, kCalibrated, kOverconfident, kUnderconfident };
template <>
inline constexpr EnumTable<CalibrationWord, 4> kEnumNames<CalibrationWord>{
    {{CalibrationWord::kTooFew, "too_few"},
     {CalibrationWord::kCalibrated, "calibrated"},
     {CalibrationWord::kOverconfident, "overconfident"},
     {CalibrationWord::kUnderconfident, "underconfident"}}};

struct Calibration {
  std::size_t rounds = 0;    // of kCause, by chance
  double said_of_first = 0;  // mean percentage of the cause believed most
  Share first_was_so;
  CalibrationWord word = CalibrationWord::kTooFew;
  std::vector<ReliabilityBin> bins;  // of all parts, as shares
  double error = 0;                  // expected calibration error
};

struct KindProgress {
  PracticeKind kind = PracticeKind::kCause;
  std::size_t rounds = 0, right = 0;
  double points = 0;  // mean
};

struct SymptomProgress {
  std::string symptom;  // id
  std::size_t rounds = 0;
  double points = 0;  // mean
};

struct PatternProgress {
  std::string cause;  // key
  std::size_t rounds = 0;
  double points = 0;  // mean
  Date due;
};

struct PracticeProgress {
  std::string apprentice;
  std::vector<KindProgress> kinds;        // that were practised
  double points = 0, records_points = 0;  // means of cause rounds
  std::int64_t unheeded = 0;              // warnings, in all of them
  Calibration calibration;
  std::vector<PatternProgress> mastered, to_learn;  // causes; mastered by name, due ones first
  std::vector<SymptomProgress> weak;                // weakest first
};

[[nodiscard]] PracticeProgress progress_of(const ApprenticeRecord& record);

}  // namespace shoplore
