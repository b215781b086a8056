// Patterns for tests of how they are written: one of each kind, and the records they are of.
#pragma once

#include "query/fix_counts.hpp"
#include "query/patterns/pattern_book.hpp"

namespace shoplore::testing {

inline const Vocabulary& pattern_words() {
  static const Vocabulary vocabulary =
      Vocabulary::parse(
          {{"symptoms.json",
            R"({"kind":"symptom","entries":[{"id":"whistle","name":"whistle under load"}]})"},
           {"components.json",
            R"({"kind":"component","entries":[{"id":"hose","name":"charge-air hose"},)"
            R"({"id":"turbo","name":"turbocharger"}]})"},
           {"failures.json",
            R"({"kind":"failure","entries":[{"id":"split","name":"split <long>"}]})"},
           {"actions.json", R"({"kind":"action","entries":[{"id":"replace","name":"replace"}]})"},
           {"checks.json", R"({"kind":"check","entries":[{"id":"look","name":"hose look"}]})"},
           {"work_signs.json",
            R"({"kind":"work_sign","entries":[{"id":"tape","name":"tape on a hose"}]})"}})
          .value();
  return vocabulary;
}

inline Pattern cause_pattern() {
  Pattern pattern;
  pattern.scope = {"engine_family", "bw16d"};
  pattern.items = {{"code:P0299", "present"}, {"symptom:whistle", "present"}};
  pattern.cause = "hose:split";
  pattern.table = {50, 6, 5, 125};
  pattern.share = share_of(50, 56);
  pattern.association = association_of(pattern.table);
  pattern.p = 1e-30;
  pattern.q = 1e-27;
  pattern.holm = 1e-25;
  return pattern;
}

inline Pattern sign_pattern() {
  Pattern pattern = cause_pattern();
  pattern.kind = PatternKind::kWorkSign;
  pattern.scope = {};
  pattern.cause.clear();
  pattern.sign = "work_sign:tape";
  pattern.table = {10, 0, 5, 25};
  pattern.share = share_of(10, 10);
  pattern.association = association_of(pattern.table);
  pattern.q = 0.03;
  return pattern;
}

inline Pattern in_vain_pattern() {
  Pattern pattern;
  pattern.kind = PatternKind::kInVain;
  pattern.items = {{"earlier_repair:replace turbo", "present"}};
  pattern.table = {38, 1, 0, 0};
  pattern.share = share_of(38, 39);
  pattern.q = 1e-9;
  return pattern;
}

inline Pattern passed_pattern() {
  Pattern pattern;
  pattern.kind = PatternKind::kPassed;
  pattern.items = {{"check:look", "pass"}};
  pattern.cause = "hose:split";
  pattern.table = {12, 12, 0, 0};
  pattern.share = share_of(12, 24);
  pattern.q = 0.002;
  return pattern;
}

inline std::vector<OpenedPattern> opened_patterns() {
  return {{cause_pattern(), {"case-1", "case-2"}, 48},
          {sign_pattern(), {"case-3"}, 9},
          {in_vain_pattern(), {"case-4"}, 33},
          {passed_pattern(), {"case-5"}, 1}};
}

inline PatternList pattern_list() {
  PatternList list;
  list.scope_cases = 2'421;
  list.found = 1'204;
  for (const OpenedPattern& each : opened_patterns()) list.patterns.push_back(each.pattern);
  return list;
}

}  // namespace shoplore::testing
