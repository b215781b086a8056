// One warning: what the shop's own cases say to beware of, with its counts and the cases behind it.
//
// Facts, never blame: no warning says who did what, and none names another shop. A warning is for
// whoever works on the vehicle, never for what a customer is asked to approve; brands of parts
// least of all. Plain values.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "indexer/enum_names.hpp"
#include "indexer/quantities.hpp"
#include "query/share.hpp"

namespace shoplore {

enum class WarningKind {
  kSeenBefore,         // this very vehicle was here
  kEarlierRepair,      // a repair that vehicles like this one had already, and it had not cured
  kFixCameBack,        // a repair of ours that came back
  kWorkSign,           // what signs of earlier work led to, or are worth looking for
  kPassMisled,         // a check that passed although it was this cause
  kFailMisled,         // a check that failed although it was something else
  kContributingCause,  // a cause that seldom comes alone
  kCodesCleared,       // no codes now proves nothing
  kPartBrand           // a brand whose parts came back more often
};
template <>
inline constexpr EnumTable<WarningKind, 9> kEnumNames<WarningKind>{
    {{WarningKind::kSeenBefore, "seen_before"},
     {WarningKind::kEarlierRepair, "earlier_repair"},
     {WarningKind::kFixCameBack, "fix_came_back"},
     {WarningKind::kWorkSign, "work_sign"},
     {WarningKind::kPassMisled, "pass_misled"},
     {WarningKind::kFailMisled, "fail_misled"},
     {WarningKind::kContributingCause, "contributing_cause"},
     {WarningKind::kCodesCleared, "codes_cleared"},
     {WarningKind::kPartBrand, "part_brand"}}};

// Whether what the warning is about is stated in the question, or to be expected.
enum class Stated { kYes, kNo };
template <>
inline constexpr EnumTable<Stated, 2> kEnumNames<Stated>{
    {{Stated::kYes, "yes"}, {Stated::kNo, "no"}}};

// Cases named behind a warning; share.count says how many there are.
inline constexpr std::size_t kCasesBehind = 20;

struct Warning {
  WarningKind kind = WarningKind::kEarlierRepair;
  Stated stated = Stated::kNo;
  std::string text;           // a sentence for people, counts included
  std::string about;          // fix key or keys with +, check, sign, cause key, brand or component
  std::string cause;          // cause key the counts are of; empty where they are of none
  Share share;                // 0 of 0: nothing to count, the sentence stands by itself
  double minutes = 0;         // at stake: what it costs when it happens (at_stake.hpp)
  double how_often = 0;       // 0 to 1: how often it is to be expected here
  std::vector<CaseId> cases;  // those counted by share.count, the last recorded first
  std::vector<std::string> refs;  // theirs, once looked up in the records

  // What ignoring it is expected to cost: warnings are ordered by this.
  [[nodiscard]] double expected_minutes() const { return minutes * how_often; }
};

}  // namespace shoplore
