// Past cases of one cause given outright, for testing what a plan makes of them.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

#include "indexer/case_keys.hpp"
#include "query/outcomes/fix_lives.hpp"
#include "query/repair_plan/plan_cases.hpp"

namespace shoplore::testing {

inline PlanCase plan_case(const std::string& ref, std::vector<std::string> fixes,
                          const std::string& family = "cm14p",
                          const std::string& make = "cormont") {
  PlanCase one;
  one.ref = ref;
  one.record.ref = ref;
  one.make = make;
  one.engine_family = family;
  one.record.correction.emplace();
  for (const std::string& key : fixes) one.record.correction->fixes.push_back(fix_parts(key));
  std::sort(fixes.begin(), fixes.end());
  one.fixes = std::move(fixes);
  return one;
}

inline std::vector<const PlanCase*> all_of(const std::vector<PlanCase>& cases) {
  std::vector<const PlanCase*> pointers;
  for (const PlanCase& each : cases) pointers.push_back(&each);
  return pointers;
}

// `count` repairs that ended so.
inline void add_lives(std::vector<FixLife>& lives, int count, std::vector<std::string> fixes,
                      FixEnd end) {
  std::sort(fixes.begin(), fixes.end());
  for (int i = 0; i < count; ++i) {
    FixLife& life = lives.emplace_back();
    life.cause = "plug_well_seal:leaking";
    life.fixes = fixes;
    life.end = end;
  }
}

}  // namespace shoplore::testing
