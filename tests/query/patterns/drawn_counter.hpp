// A counter over cases drawn by the demo's generator, without store and index: for mining many
// workshops, or a large one, in a test or bench.
//
// Answers what mining asks: cases() and by_cause() of stored items, known attributes and a filter's
// make and engine family; tallies are empty. Causes can be dealt out anew among the cases.
#pragma once

#include <algorithm>
#include <map>
#include <random>

#include "corpus-demo/generator.hpp"
#include "indexer/case_keys.hpp"
#include "query/case_counter.hpp"

namespace shoplore::testing {

class DrawnCounter final : public CaseCounter {
 public:
  void add(const Case& record, const Vocabulary& vocabulary) {
    add(evidence_of(record, vocabulary), known_in(record, vocabulary),
        cause_key(*record.cause, vocabulary));
  }

  void add(const std::vector<EvidenceItem>& items, const std::vector<std::string>& known,
           const std::string& cause) {
    const auto id = static_cast<std::uint32_t>(cause_of_.size()) + 1;
    cause_of_.push_back(causes_.number(cause));
    for (const EvidenceItem& item : items) items_[item].push_back(id);
    for (const std::string& group : known) known_[group].push_back(id);
  }

  // Every cause stays as frequent as it is, and has nothing to do with anything.
  void shuffle_causes(std::uint64_t seed) {
    std::mt19937_64 random(seed);
    std::shuffle(cause_of_.begin(), cause_of_.end(), random);
  }

  Result<std::vector<CaseCause>> cases(const CountQuestion& question) const override {
    std::vector<const Ids*> lists;
    for (const EvidenceItem& item : question.all_of) lists.push_back(&list(items_, item));
    const EvidenceItem make{"make", lower(question.filter.make)};
    const EvidenceItem family{"engine_family", lower(question.filter.engine_family)};
    for (const EvidenceItem& item : {make, family}) {
      if (!item.value.empty()) lists.push_back(&list(items_, item));
    }
    for (const std::string& attribute : question.known) {
      if (known_by(attribute) != KnownBy::kMention) {
        lists.push_back(&list(known_, known_group(attribute)));
      }
    }
    return in_all(lists);
  }

  Result<std::vector<std::uint32_t>> by_cause(const CountQuestion& question) const override {
    std::vector<std::uint32_t> counts(causes_.size());
    const auto found = cases(question);
    for (const CaseCause& each : *found) ++counts[each.cause];
    return counts;
  }

  Result<std::vector<EvidenceItem>> items_beginning(std::string_view attribute) const override {
    std::vector<EvidenceItem> items;
    for (const auto& [item, ids] : items_) {
      if (item.attribute.starts_with(attribute)) items.push_back(item);
    }
    return items;
  }

  Result<Tally> tally(const CountQuestion&) const override { return Tally{}; }
  Result<std::uint32_t> value_count(std::string_view) const override { return 1; }
  const CauseTable& causes() const override { return causes_; }
  [[nodiscard]] std::size_t size() const { return cause_of_.size(); }

 private:
  using Ids = std::vector<std::uint32_t>;

  static std::string lower(std::string text) {
    for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return text;
  }

  template <class Key>
  static const Ids& list(const std::map<Key, Ids>& lists, const Key& key) {
    static const Ids kNone;
    const auto found = lists.find(key);
    return found == lists.end() ? kNone : found->second;
  }

  std::vector<CaseCause> in_all(const std::vector<const Ids*>& lists) const {
    Ids ids;
    if (lists.empty()) {
      ids.resize(cause_of_.size());
      for (std::uint32_t i = 0; i < ids.size(); ++i) ids[i] = i + 1;
    } else {
      ids = *lists.front();
    }
    for (std::size_t i = 1; i < lists.size(); ++i) {
      Ids both;
      std::set_intersection(ids.begin(), ids.end(), lists[i]->begin(), lists[i]->end(),
                            std::back_inserter(both));
      ids = std::move(both);
    }
    std::vector<CaseCause> out;
    for (const std::uint32_t id : ids) out.push_back({CaseId{id}, cause_of_[id - 1]});
    return out;
  }

  std::map<EvidenceItem, Ids> items_;
  std::map<std::string, Ids> known_;
  std::vector<CauseNumber> cause_of_;
  CauseTable causes_;
};

// So many closed cases of that seed; showcases left out.
[[nodiscard]] inline DrawnCounter drawn_counter(const World& world, const Vocabulary& vocabulary,
                                                std::int64_t cases, std::uint64_t seed) {
  DrawnCounter counter;
  generate_workshop(world, vocabulary, {cases, seed}, [&](const DemoCase& drawn) {
    if (drawn.record.state == CaseState::kClosed && drawn.pattern) {
      counter.add(drawn.record, vocabulary);
    }
  });
  return counter;
}

}  // namespace shoplore::testing
