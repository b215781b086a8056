// Cases given outright and the obvious way to count them: for testing what sits on a counter.
#pragma once

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "query/case_counter.hpp"
#include "query/ranking/ranking_model.hpp"

namespace shoplore::testing {

struct PlainCase {
  std::string cause;
  std::vector<EvidenceItem> items;    // as stored: never a group's "absent"
  std::set<std::string> groups = {};  // groups looked at, with or without a find
  OutcomeStatus outcome = OutcomeStatus::kUnknown;
  std::vector<std::string> fixes = {};  // sorted
  std::string vehicle = {};             // empty: a vehicle of its own
  std::optional<int> came_back_days = {};
};

inline bool states(const PlainCase& record, const EvidenceItem& item) {
  const auto there = [&](const EvidenceItem& wanted) {
    return std::find(record.items.begin(), record.items.end(), wanted) != record.items.end();
  };
  if (known_by(item.attribute) == KnownBy::kGroup && item.value == "absent") {
    return record.groups.contains(known_group(item.attribute)) &&
           !there({item.attribute, "present"});
  }
  return there(item);
}

inline bool knows(const PlainCase& record, std::string_view attribute) {
  if (known_by(attribute) == KnownBy::kMention) return true;
  if (known_by(attribute) == KnownBy::kGroup) {
    return record.groups.contains(known_group(attribute));
  }
  return std::any_of(record.items.begin(), record.items.end(),
                     [&](const EvidenceItem& item) { return item.attribute == attribute; });
}

// Of the filter only the make is known here.
class PlainCounter final : public CaseCounter {
 public:
  explicit PlainCounter(std::vector<PlainCase> cases) : cases_(std::move(cases)) {
    for (const PlainCase& each : cases_) causes_.number(each.cause);
  }

  Result<Tally> tally(const CountQuestion& question) const override {
    Tally tally;
    tally.cases_by_cause.resize(causes_.size());
    tally.vehicles_by_cause.resize(causes_.size());
    std::set<std::string> vehicles;
    std::map<CauseNumber, std::set<std::string>> by_cause;
    std::map<Profile, std::uint32_t> profiles;
    for (std::size_t i = 0; i < cases_.size(); ++i) {
      const PlainCase& each = cases_[i];
      if (!matches(each, question)) continue;
      const CauseNumber cause = *causes_.find(each.cause);
      const std::string vehicle = each.vehicle.empty() ? "own " + std::to_string(i) : each.vehicle;
      ++tally.cases;
      ++tally.cases_by_cause[cause];
      vehicles.insert(vehicle);
      by_cause[cause].insert(vehicle);
      ++profiles[{each.cause, each.outcome, each.fixes}];
    }
    tally.vehicles = static_cast<std::uint32_t>(vehicles.size());
    for (const auto& [cause, set] : by_cause) {
      tally.vehicles_by_cause[cause] = static_cast<std::uint32_t>(set.size());
    }
    for (const auto& [profile, count] : profiles) tally.profiles.push_back({profile, count});
    return tally;
  }

  Result<std::vector<std::uint32_t>> by_cause(const CountQuestion& question) const override {
    return tally(question)->cases_by_cause;
  }

  Result<std::vector<CaseCause>> cases(const CountQuestion& question) const override {
    std::vector<CaseCause> found;
    for (std::size_t i = 0; i < cases_.size(); ++i) {
      if (matches(cases_[i], question)) {
        found.push_back({CaseId{static_cast<std::uint32_t>(i) + 1}, *causes_.find(cases_[i].cause),
                         cases_[i].came_back_days});
      }
    }
    return found;
  }

  Result<std::vector<EvidenceItem>> items_beginning(std::string_view attribute) const override {
    std::set<EvidenceItem> items;
    for (const PlainCase& each : cases_) {
      for (const EvidenceItem& item : each.items) {
        if (item.attribute.starts_with(attribute)) items.insert(item);
      }
    }
    return std::vector<EvidenceItem>(items.begin(), items.end());
  }

  Result<std::uint32_t> value_count(std::string_view attribute) const override {
    std::set<std::string> values;
    for (const PlainCase& each : cases_) {
      for (const EvidenceItem& item : each.items) {
        if (item.attribute == attribute) values.insert(item.value);
      }
    }
    return std::max(1U, static_cast<std::uint32_t>(values.size()));
  }

  const CauseTable& causes() const override { return causes_; }
  const std::vector<PlainCase>& plain() const { return cases_; }

 private:
  static bool matches(const PlainCase& each, const CountQuestion& question) {
    if (!question.filter.make.empty() && !states(each, {"make", question.filter.make})) {
      return false;
    }
    for (const std::string& attribute : question.known) {
      if (!knows(each, attribute)) return false;
    }
    return std::all_of(question.all_of.begin(), question.all_of.end(),
                       [&](const EvidenceItem& item) { return states(each, item); });
  }

  std::vector<PlainCase> cases_;
  CauseTable causes_;
};

// The simple first form of the ranking: every item weighs alike, no pairs, no likeness, and unless
// told nothing said by what its cases do not even name.
inline Result<Ranking> rank_simply(const std::vector<EvidenceItem>& items, const Filter& filter,
                                   const CaseCounter& counter,
                                   const std::optional<LeftOut>& left_out = {},
                                   double listing = 0) {
  RankingKnobs knobs;
  knobs.listing = listing;
  knobs.gamma = 0;
  knobs.eta = 0;
  return RankingModel(counter, {}, {}, knobs).rank(items, filter, left_out);
}

// `count` copies.
inline void add(std::vector<PlainCase>& cases, int count, const PlainCase& one) {
  for (int i = 0; i < count; ++i) cases.push_back(one);
}

}  // namespace shoplore::testing
