#include "query/cautions_for.hpp"

#include <algorithm>
#include <map>
#include <set>

namespace shoplore {
namespace {

using Reasons = std::map<std::string, std::set<std::string>>;  // caution id to names

constexpr double kLikely = 0.1;

void add(EntryKind kind, const std::string& id, const Vocabulary& vocabulary, Reasons& reasons) {
  const Entry* entry = vocabulary.find(kind, id);
  if (entry == nullptr) return;
  for (const std::string& caution : entry->cautions) reasons[caution].insert(entry->name);
}

}  // namespace

std::vector<Caution> cautions_for(const std::vector<EvidenceItem>& items,
                                  const std::vector<LikelyCause>& causes,
                                  const std::vector<AdvisedCheck>& checks,
                                  const Vocabulary& vocabulary) {
  Reasons reasons;
  for (const EvidenceItem& item : items) {
    const auto colon = item.attribute.find(':');
    if (colon == std::string::npos || item.value == "absent") continue;
    const std::string kind = item.attribute.substr(0, colon), id = item.attribute.substr(colon + 1);
    if (kind == "symptom") add(EntryKind::kSymptom, id, vocabulary, reasons);
    if (kind == "check") add(EntryKind::kCheck, id, vocabulary, reasons);
    if (kind == "earlier_repair") {
      add(EntryKind::kComponent, id.substr(id.find(' ') + 1), vocabulary, reasons);
    }
  }
  for (const LikelyCause& cause : causes) {
    if (cause.probability >= kLikely)
      add(EntryKind::kComponent, cause.component, vocabulary, reasons);
  }
  for (const AdvisedCheck& check : checks) {
    const std::string& attribute = check.item.attribute;
    add(EntryKind::kCheck, attribute.substr(attribute.find(':') + 1), vocabulary, reasons);
    for (const std::string& removal : check.removals) {
      add(EntryKind::kRemoval, removal, vocabulary, reasons);
    }
  }
  std::vector<Caution> cautions;
  for (const auto& [id, names] : reasons) {
    const Entry* entry = vocabulary.find(EntryKind::kCaution, id);
    if (entry != nullptr) {
      cautions.push_back({id, entry->name, entry->how, {names.begin(), names.end()}});
    }
  }
  const auto urgency = [](const Caution& caution) {
    return caution.id.starts_with("high_voltage") ? std::size_t{1000} : caution.because_of.size();
  };
  std::stable_sort(cautions.begin(), cautions.end(),
                   [&](const Caution& a, const Caution& b) { return urgency(a) > urgency(b); });
  return cautions;
}

}  // namespace shoplore
