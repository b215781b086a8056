#include "query/breadth.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace shoplore {
namespace {

constexpr std::array<std::string_view, 6> kVehicle{"make", "model",        "engine_family",
                                                   "fuel", "transmission", "mileage_band"};

bool is_vehicle(const EvidenceItem& item) {
  return std::find(kVehicle.begin(), kVehicle.end(), item.attribute) != kVehicle.end();
}

// A finding that by itself makes a case like this one.
bool is_anchor(const EvidenceItem& item) {
  return item.value != "absent" && known_by(item.attribute) != KnownBy::kMention;
}

struct Scope {
  std::string name;
  std::vector<EvidenceItem> items;
};

std::vector<Scope> scopes_of(const std::vector<EvidenceItem>& items) {
  std::vector<Scope> scopes;
  for (const std::string_view attribute : {"engine_family", "make"}) {
    for (const EvidenceItem& item : items) {
      if (item.attribute != attribute) continue;
      scopes.push_back({display_vehicle_item(item), {item}});
    }
  }
  scopes.push_back({"all vehicles", {}});
  return scopes;
}

double telling(const EvidenceItem& item, const Ranking& ranking) {
  if (ranking.causes.empty()) return 0;
  for (const WhyLine& line : ranking.causes.front().why) {
    if (line.item == item) return std::abs(line.weight);
  }
  return -1;  // no case holds it: the first to go
}

// Index of the finding to drop next; the size when none may go.
std::size_t least_telling(const std::vector<EvidenceItem>& findings, const Ranking& ranking) {
  const auto anchors = std::count_if(findings.begin(), findings.end(), is_anchor);
  std::size_t least = findings.size();
  for (std::size_t i = 0; i < findings.size(); ++i) {
    if (anchors <= 1 && is_anchor(findings[i])) continue;
    if (least == findings.size() ||
        telling(findings[i], ranking) < telling(findings[least], ranking)) {
      least = i;
    }
  }
  return least;
}

}  // namespace

Result<Breadth> look_wider(const std::vector<EvidenceItem>& items, const Filter& filter,
                           const CaseCounter& counter, const Ranking& ranking) {
  std::vector<EvidenceItem> findings;
  for (const EvidenceItem& item : items) {
    if (!is_vehicle(item)) findings.push_back(item);
  }
  const bool has_findings = !findings.empty();
  Breadth breadth;
  const auto look = [&](const Scope& scope, std::optional<EvidenceItem> dropped) -> Result<bool> {
    Width width{scope.name, findings, std::move(dropped), 0, 0};
    std::vector<EvidenceItem> all_of = findings;
    all_of.insert(all_of.end(), scope.items.begin(), scope.items.end());
    auto tally = counter.tally({all_of, filter});
    if (!tally) return fail(tally.error());
    // Several makes can share an engine family: a make with fewer of these cases is not wider.
    if (!breadth.widths.empty() && tally->cases < breadth.widths.back().cases) return false;
    width.cases = tally->cases;
    width.vehicles = tally->vehicles;
    breadth.widths.push_back(std::move(width));
    breadth.tally = std::move(*tally);
    return breadth.tally.cases >= kEnoughCases;
  };

  for (const Scope& scope : scopes_of(items)) {
    // Without findings "all vehicles" would be everything: no likeness left.
    if (!has_findings && scope.items.empty() && !breadth.widths.empty()) break;
    const auto enough = look(scope, std::nullopt);
    if (!enough) return fail(enough.error());
    if (*enough) return breadth;
  }
  while (findings.size() > 1) {
    const std::size_t least = least_telling(findings, ranking);
    if (least == findings.size()) break;
    const EvidenceItem dropped = findings[least];
    findings.erase(findings.begin() + static_cast<std::ptrdiff_t>(least));
    const auto enough = look({"all vehicles", {}}, dropped);
    if (!enough) return fail(enough.error());
    if (*enough) break;
  }
  return breadth;
}

}  // namespace shoplore
