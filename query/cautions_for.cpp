#include "query/cautions_for.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "indexer/case_keys.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

using Reasons = std::map<std::string, std::set<std::string>>;  // caution id to names

constexpr double kLikely = 0.1;

void add(EntryKind kind, const std::string& id, const Vocabulary& vocabulary, Reasons& reasons) {
  const Entry* entry = vocabulary.find(kind, id);
  if (entry == nullptr) return;
  for (const std::string& caution : entry->cautions) reasons[caution].insert(entry->name);
}

void add_drive(const std::string& fuel, Reasons& reasons) {
  const bool is_electric = fuel == "electric" || fuel == "hybrid";
  if (is_electric) reasons["high_voltage"].insert(fuel + " drive");
}

Reasons reasons_of(const std::vector<EvidenceItem>& items, const std::vector<LikelyCause>& causes,
                   const Vocabulary& vocabulary) {
  Reasons reasons;
  for (const EvidenceItem& item : items) {
    if (item.attribute == "fuel") add_drive(item.value, reasons);
    const std::string_view kind = kind_of_attribute(item.attribute);
    const std::string id(id_of_attribute(item.attribute));
    if (id.empty() || item.value == "absent") continue;
    if (kind == "symptom") add(EntryKind::kSymptom, id, vocabulary, reasons);
    if (kind == "check") add(EntryKind::kCheck, id, vocabulary, reasons);
    if (kind == "earlier_repair") {
      add(EntryKind::kComponent, fix_parts(id).component, vocabulary, reasons);
    }
  }
  for (const LikelyCause& cause : causes) {
    if (cause.probability >= kLikely)
      add(EntryKind::kComponent, cause.component, vocabulary, reasons);
  }
  return reasons;
}

void add_advice(const CheckAdvice& next, const Vocabulary& vocabulary, Reasons& reasons) {
  for (const AdvisedCheck& check : next.checks) {
    const std::string& attribute = check.item.attribute;
    add(EntryKind::kCheck, std::string(id_of_attribute(attribute)), vocabulary, reasons);
    for (const std::string& removal : check.removals) {
      add(EntryKind::kRemoval, removal, vocabulary, reasons);
    }
  }
  if (!next.repair) return;
  for (const RepairStep& step : next.repair->order) {
    add(EntryKind::kComponent, step.component, vocabulary, reasons);
  }
}

constexpr std::array kForbidding{"high_voltage",           "unsafe_to_drive",
                                 "do_not_crank",           "airbag_igniter",
                                 "airbag_area_disconnect", "fire_after_electrical_smell"};

// The words one by one with a space on either side, so that a phrase is found as whole words.
std::string spaced_words(std::string_view text) {
  std::string spaced = " ";
  for (const Word& word : words_of(text)) spaced += word.text + " ";
  return spaced;
}

void add_worded(std::string_view text, const Vocabulary& vocabulary, Reasons& reasons) {
  const std::string words = spaced_words(text);
  for (const char* id : kForbidding) {
    const Entry* entry = vocabulary.find(EntryKind::kCaution, id);
    if (entry == nullptr) continue;
    for (const std::string& phrase : entry->phrases) {
      if (words.find(spaced_words(phrase)) != std::string::npos) reasons[id].insert(phrase);
    }
  }
}

std::size_t urgency(const Caution& caution) {
  const auto found = std::find(kForbidding.begin(), kForbidding.end(), caution.id);
  const auto before = static_cast<std::size_t>(kForbidding.end() - found);
  return before > 0 ? 1'000 + before : caution.because_of.size();
}

std::vector<Caution> in_order(const Reasons& reasons, const Vocabulary& vocabulary) {
  std::vector<Caution> cautions;
  for (const auto& [id, names] : reasons) {
    const Entry* entry = vocabulary.find(EntryKind::kCaution, id);
    if (entry != nullptr) {
      cautions.push_back({id, entry->name, entry->how, {names.begin(), names.end()}});
    }
  }
  std::stable_sort(cautions.begin(), cautions.end(),
                   [&](const Caution& a, const Caution& b) { return urgency(a) > urgency(b); });
  return cautions;
}

}  // namespace

bool is_forbidding(const Caution& caution) {
  return std::find(kForbidding.begin(), kForbidding.end(), caution.id) != kForbidding.end();
}

std::vector<Caution> cautions_for(std::string_view text, const std::vector<EvidenceItem>& items,
                                  const std::vector<LikelyCause>& causes, const CheckAdvice& next,
                                  const Vocabulary& vocabulary) {
  Reasons reasons = reasons_of(items, causes, vocabulary);
  add_worded(text, vocabulary, reasons);
  add_advice(next, vocabulary, reasons);
  return in_order(reasons, vocabulary);
}

std::vector<Caution> cautions_of(const std::vector<Involved>& involved, std::optional<Fuel> fuel,
                                 const Vocabulary& vocabulary) {
  Reasons reasons;
  for (const auto& [kind, id] : involved) add(kind, id, vocabulary, reasons);
  if (fuel) add_drive(std::string(name_of(*fuel)), reasons);
  return in_order(reasons, vocabulary);
}

std::set<std::string> unsafe_checks(const std::vector<EvidenceItem>& items,
                                    const std::vector<LikelyCause>& causes,
                                    const Vocabulary& vocabulary) {
  const Reasons reasons = reasons_of(items, causes, vocabulary);
  const bool not_on_the_road = reasons.contains("unsafe_to_drive");
  const bool not_cranked = reasons.contains("do_not_crank");
  const auto holds = [](const std::vector<std::string>& list, const char* wanted) {
    return std::find(list.begin(), list.end(), wanted) != list.end();
  };
  std::set<std::string> unsafe;
  for (const auto& [id, check] : vocabulary.entries(EntryKind::kCheck)) {
    const bool on_the_road = holds(check.cautions, "road_test_passenger_records");
    const bool turns =
        holds(check.conditions, "cranking") || holds(check.conditions, "engine_running");
    if ((on_the_road && not_on_the_road) || (turns && not_cranked)) unsafe.insert(id);
  }
  return unsafe;
}

}  // namespace shoplore
