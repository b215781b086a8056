#include "indexer/repair_parts.hpp"

#include <algorithm>

#include "indexer/repair_words.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

class PartFinder {
 public:
  PartFinder(const NotePage& page, const Vocabulary& vocabulary, const BareParts& bare_parts)
      : page_(page), vocabulary_(vocabulary), bare_parts_(bare_parts) {}

  // Components that take part in no longer finding. One in "since new tyres" stays a component:
  // the words tell the condition too.
  RepairParts find() {
    std::vector<TokenRange> conditions;
    for (PhraseMatch& match : page_.matches({EntryKind::kSymptom, EntryKind::kCondition,
                                             EntryKind::kWorkSign, EntryKind::kComponent})) {
      const TokenRange at{match.first, match.last};
      if (match.kind == EntryKind::kComponent && !is_season(at)) parts_.push_back(std::move(match));
      if (match.kind == EntryKind::kCondition) conditions.push_back(at);
    }
    drop_names_of_firms();
    add_bare_parts();
    add_parts_within(conditions);
    std::sort(parts_.begin(), parts_.end(),
              [](const PhraseMatch& a, const PhraseMatch& b) { return a.first < b.first; });
    return {std::move(parts_), std::move(is_condition_)};
  }

 private:
  // "sensor", "slides": nouns that many components end in; also where one of them goes by the noun
  // alone, unless that is its whole name.
  void add_bare_parts() {
    std::vector<char> taken(page_.size(), 0);
    const auto take = [&](const PhraseMatch& match) {
      std::fill(taken.begin() + static_cast<std::ptrdiff_t>(match.first),
                taken.begin() + static_cast<std::ptrdiff_t>(match.last), 1);
    };
    const auto findings =
        page_.matches({EntryKind::kSymptom, EntryKind::kCondition, EntryKind::kWorkSign});
    std::for_each(findings.begin(), findings.end(), take);
    std::for_each(parts_.begin(), parts_.end(), take);
    name_battery();
    drop_cells_of_keys();
    const auto told =
        components_told(vocabulary_, page_.matches({EntryKind::kSymptom, EntryKind::kCheck}));
    for (PhraseMatch& part : parts_) {
      const std::string name = vocabulary_.display_name(EntryKind::kComponent, part.id);
      if (part.last - part.first > 1 || words_of(name).size() < 2) continue;
      if (auto id = bare_parts_.at(page_, part.first, told)) part.id = std::move(*id);
    }
    for (std::size_t i = 0; i < page_.size(); ++i) {
      if (taken[i] != 0 || page_.is_claimed(i) || is_season({i, i + 1})) continue;
      if (auto id = bare_parts_.at(page_, i, told)) {
        parts_.push_back({EntryKind::kComponent, std::move(*id), i, i + 1});
      }
    }
  }

  // In a hybrid or an electric car "the battery" that somebody changed is the 12-volt one.
  void name_battery() {
    const bool is_electric =
        std::any_of(page_.items().begin(), page_.items().end(), [](const RecognisedItem& item) {
          return item.kind == ItemKind::kFuel && (item.id == "hybrid" || item.id == "electric");
        });
    const char* small = "twelve_volt_auxiliary_battery";
    if (!is_electric || vocabulary_.find(EntryKind::kComponent, small) == nullptr) return;
    for (PhraseMatch& part : parts_) {
      if (part.id == "battery") part.id = small;
    }
  }

  // "main dealer", "the tyre place", "an exhaust specialist"
  void drop_names_of_firms() {
    std::erase_if(parts_, [&](const PhraseMatch& part) {
      return page_.same_clause(part.last, part.first) && names_firm(page_.word(part.last));
    });
  }

  // "new battery in the key" is no battery of the car.
  void drop_cells_of_keys() {
    std::erase_if(parts_, [&](const PhraseMatch& part) {
      if (part.id != "battery" && part.id != "twelve_volt_auxiliary_battery") return false;
      std::size_t i = part.last;
      while (page_.same_clause(i, part.first) && is_stop_word(page_.word(i))) ++i;
      if (i == part.last || !page_.same_clause(i, part.first)) return false;
      const std::string& thing = page_.word(i);
      return thing == "key" || thing == "fob" || thing == "remote" || thing == "keyfob";
    });
  }

  void add_parts_within(const std::vector<TokenRange>& conditions) {
    is_condition_.assign(page_.size(), 0);
    auto condition = conditions.begin();
    for (PhraseMatch& match : page_.matches({EntryKind::kComponent})) {
      while (condition != conditions.end() && condition->last < match.last) ++condition;
      if (condition == conditions.end()) return;
      if (match.first <= condition->first) continue;
      std::fill(is_condition_.begin() + static_cast<std::ptrdiff_t>(condition->first),
                is_condition_.begin() + static_cast<std::ptrdiff_t>(condition->last), 1);
      parts_.push_back(std::move(match));
    }
  }

  // "changed in spring"
  bool is_season(TokenRange at) const {
    if (at.last - at.first > 1 || page_.word(at.first) != "spring" || at.first == 0) return false;
    const std::string& before = page_.word(at.first - 1);
    return before == "in" || before == "last" || before == "this" || before == "since";
  }

  const NotePage& page_;
  const Vocabulary& vocabulary_;
  const BareParts& bare_parts_;
  std::vector<PhraseMatch> parts_;
  std::vector<char> is_condition_;  // by token
};

}  // namespace

RepairParts repair_parts_of(const NotePage& page, const Vocabulary& vocabulary,
                            const BareParts& bare_parts) {
  return PartFinder(page, vocabulary, bare_parts).find();
}

}  // namespace shoplore
