#include "indexer/evidence_item.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <utility>

#include "indexer/case_keys.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

constexpr std::string_view kPresent = "present", kAbsent = "absent";

// Attribute prefixes whose presence is stored and whose absence follows from the group.
constexpr std::array<std::pair<std::string_view, std::string_view>, 3> kGroups{
    {{"code:", "scanned"},
     {"work_sign:", "work_looked_for"},
     {"earlier_repair:", "earlier_repairs"}}};
// A term of the index holds 245 bytes at most: what was done in more than about six fixes is not
// listed.
constexpr std::size_t kMaxHindsightBytes = 200;

constexpr std::array<std::string_view, 7> kHindsight{
    "misled:", "right:", "contributing:", "done:", "came_back:", "brand:", "codes:"};

template <class T>
void sort_once(std::vector<T>& values) {
  std::sort(values.begin(), values.end());
  values.erase(std::unique(values.begin(), values.end()), values.end());
}

void add_vehicle(const Vehicle& vehicle, std::vector<EvidenceItem>& items) {
  const std::array<std::pair<std::string_view, const std::string*>, 3> names{
      {{"make", &vehicle.make},
       {"model", &vehicle.model},
       {"engine_family", &vehicle.engine_family}}};
  for (const auto& [attribute, name] : names) {
    if (!name->empty()) items.push_back({std::string(attribute), lower_case(*name)});
  }
  if (vehicle.fuel) items.push_back({"fuel", std::string(name_of(*vehicle.fuel))});
  if (vehicle.transmission) {
    items.push_back({"transmission", std::string(name_of(*vehicle.transmission))});
  }
  if (vehicle.mileage_km) {
    items.push_back({"mileage_band", std::to_string(mileage_band(*vehicle.mileage_km))});
  }
}

void add_symptoms(const Case& record, const Vocabulary& vocabulary,
                  std::vector<EvidenceItem>& items) {
  for (const Symptom& symptom : record.symptoms) {
    items.push_back({"symptom:" + vocabulary.canonical(EntryKind::kSymptom, symptom.id),
                     std::string(name_of(symptom.state))});
    for (const std::string& condition : symptom.when) {
      items.push_back({"condition:" + vocabulary.canonical(EntryKind::kCondition, condition),
                       std::string(kPresent)});
    }
  }
}

// A check done twice with different verdicts is "mixed".
void add_checks(const Case& record, const Vocabulary& vocabulary,
                std::vector<EvidenceItem>& items) {
  std::map<std::string, std::string> verdicts;
  for (const Check& check : record.checks) {
    const std::string verdict{name_of(check.verdict)};
    auto [entry, is_new] =
        verdicts.emplace(vocabulary.canonical(EntryKind::kCheck, check.id), verdict);
    if (!is_new && entry->second != verdict) entry->second = "mixed";
  }
  for (const auto& [id, verdict] : verdicts) items.push_back({"check:" + id, verdict});
}

void add_done(const Case& record, const Vocabulary& vocabulary, std::vector<EvidenceItem>& items) {
  std::string together;
  for (const std::string& key : fix_keys(record, vocabulary)) {
    together += (together.empty() ? "" : "+") + key;
  }
  if (!together.empty()) items.push_back({"done:" + together, std::string(kPresent)});
  if (!record.outcome || record.outcome->status != OutcomeStatus::kCameBack) return;
  const auto& reason = record.outcome->reason;
  items.push_back({"came_back:" + std::string(reason ? name_of(*reason) : kUnsaidReason),
                   std::string(kPresent)});
}

// The component that a part's name means; nothing when no component is called so.
std::optional<std::string> component_of(const Part& part, const Vocabulary& vocabulary) {
  const std::string name = lower_case(part.part);
  for (const auto& [id, entry] : vocabulary.entries(EntryKind::kComponent)) {
    if (id == name || lower_case(entry.name) == name) {
      return std::string(vocabulary.canonical(EntryKind::kComponent, id));
    }
  }
  return std::nullopt;
}

// The only thing that was replaced; nothing when there were several.
std::optional<std::string> only_replaced(const Correction& done, const Vocabulary& vocabulary) {
  std::optional<std::string> only;
  for (const Fix& fix : done.fixes) {
    if (fix.action != "replace") continue;
    if (only) return std::nullopt;
    only = std::string(vocabulary.canonical(EntryKind::kComponent, fix.component));
  }
  return only;
}

void add_brands(const Case& record, const Vocabulary& vocabulary,
                std::vector<EvidenceItem>& items) {
  if (!record.correction) return;
  const Correction& done = *record.correction;
  for (const Part& part : done.parts) {
    if (part.brand.empty()) continue;
    auto component = component_of(part, vocabulary);
    if (!component && done.parts.size() == 1) component = only_replaced(done, vocabulary);
    if (component) items.push_back({"brand:" + *component, lower_case(part.brand)});
  }
}

}  // namespace

KnownBy known_by(std::string_view attribute) {
  for (const auto& [prefix, group] : kGroups) {
    if (attribute.starts_with(prefix)) return KnownBy::kGroup;
  }
  const bool is_mention = attribute.starts_with("condition:") || attribute.starts_with("word:") ||
                          is_hindsight(attribute);
  return is_mention ? KnownBy::kMention : KnownBy::kItself;
}

bool is_hindsight(std::string_view attribute) {
  return std::any_of(kHindsight.begin(), kHindsight.end(),
                     [&](std::string_view prefix) { return attribute.starts_with(prefix); });
}

std::string known_group(std::string_view attribute) {
  for (const auto& [prefix, group] : kGroups) {
    if (attribute.starts_with(prefix)) return std::string(group);
  }
  return std::string(attribute);
}

std::vector<EvidenceItem> evidence_of(const Case& record, const Vocabulary& vocabulary) {
  std::vector<EvidenceItem> items;
  add_vehicle(record.vehicle, items);
  add_symptoms(record, vocabulary, items);
  add_checks(record, vocabulary, items);
  for (const Code& code : record.codes)
    items.push_back({"code:" + code.code, std::string(kPresent)});
  for (const WorkSign& sign : record.work_signs) {
    items.push_back({"work_sign:" + vocabulary.canonical(EntryKind::kWorkSign, sign.id),
                     std::string(kPresent)});
  }
  for (const EarlierRepair& repair :
       record.earlier_repairs.value_or(std::vector<EarlierRepair>{})) {
    items.push_back({"earlier_repair:" + fix_key(repair.fix, vocabulary), std::string(kPresent)});
  }
  for (const auto& [name, value] : record.facts) items.push_back({"fact:" + name, value});
  sort_once(items);
  return items;
}

std::vector<std::string> known_in(const Case& record, const Vocabulary& vocabulary) {
  std::vector<std::string> known;
  for (const EvidenceItem& item : evidence_of(record, vocabulary)) {
    if (known_by(item.attribute) != KnownBy::kMention) known.push_back(known_group(item.attribute));
  }
  // A group may be known and empty: looked, and nothing there.
  if (record.scanned == YesNo::kYes) known.emplace_back("scanned");
  if (record.work_looked_for == YesNo::kYes) known.emplace_back("work_looked_for");
  if (record.earlier_repairs) known.emplace_back("earlier_repairs");
  sort_once(known);
  return known;
}

std::vector<EvidenceItem> hindsight_of(const Case& record, const Vocabulary& vocabulary) {
  std::vector<EvidenceItem> items;
  for (const Check& check : record.checks) {
    if (!check.later) continue;
    items.push_back({std::string(name_of(*check.later)) + ":" +
                         vocabulary.canonical(EntryKind::kCheck, check.id),
                     std::string(name_of(check.verdict))});
  }
  for (const Cause& cause : record.contributing) {
    items.push_back({"contributing:" + cause_key(cause, vocabulary), std::string(kPresent)});
  }
  for (const Code& code : record.codes) {
    const bool at_arrival = code.seen == CodeSeen::kArrival;
    items.push_back({at_arrival ? "codes:at_arrival" : "codes:later", std::string(kPresent)});
  }
  add_done(record, vocabulary, items);
  add_brands(record, vocabulary, items);
  std::erase_if(items, [](const EvidenceItem& item) {
    return item.attribute.size() + item.value.size() > kMaxHindsightBytes;
  });
  sort_once(items);
  return items;
}

std::string_view kind_of_attribute(std::string_view attribute) {
  return attribute.substr(0, attribute.find(':'));
}

std::string_view id_of_attribute(std::string_view attribute) {
  const auto colon = attribute.find(':');
  return colon == std::string_view::npos ? std::string_view{} : attribute.substr(colon + 1);
}

int mileage_band(Kilometres mileage) {
  return static_cast<int>(std::min<std::int64_t>(mileage.value / 50'000, 5) * 50);
}

std::string display_item(const EvidenceItem& item, const Vocabulary& vocabulary) {
  const std::string_view kind = kind_of_attribute(item.attribute);
  const std::string id(id_of_attribute(item.attribute));
  // Behind the name, since many names are statements: "no sits low at one corner" is no English.
  const bool is_absent = item.value == kAbsent;
  const std::string absent = is_absent ? " (absent)" : "";
  if (kind == "symptom") return vocabulary.display_name(EntryKind::kSymptom, id) + absent;
  if (kind == "condition") return vocabulary.display_name(EntryKind::kCondition, id);
  if (kind == "code") return id + absent;
  if (kind == "word") return "the word \"" + id + "…\"";  // only its stem is kept
  if (kind == "work_sign") return vocabulary.display_name(EntryKind::kWorkSign, id) + absent;
  if (kind == "earlier_repair") {
    return (is_absent ? "no earlier " : "earlier: ") + display_fix(id, vocabulary);
  }
  if (kind == "check") {
    return vocabulary.display_name(EntryKind::kCheck, id) + ": " + item.value;
  }
  if (kind == "fact") return id + " " + item.value;
  if (kind == "mileage_band") {
    const int low = std::stoi(item.value);
    return low == 250 ? "250,000 km and more" : fmt::format("{} to {} thousand km", low, low + 50);
  }
  return display_vehicle_item(item);
}

std::string display_vehicle_item(const EvidenceItem& item) {
  std::string name = item.attribute, value = item.value;
  std::replace(name.begin(), name.end(), '_', ' ');
  const bool is_name = name == "make" || name == "model";
  const std::size_t capitals = item.attribute == "engine_family" ? value.size() : is_name ? 1U : 0U;
  for (std::size_t i = 0; i < std::min(capitals, value.size()); ++i) {
    if (value[i] >= 'a' && value[i] <= 'z') value[i] = static_cast<char>(value[i] - 'a' + 'A');
  }
  return name + " " + value;
}

}  // namespace shoplore
