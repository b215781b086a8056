#include "query/failure_mileage/failure_lives.hpp"

#include <algorithm>
#include <optional>
#include <set>

#include "indexer/case_keys.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

double number(Kilometres km) {
  return static_cast<double>(km.value);
}

// The part was a cause or was mended: the vehicle has it.
bool has_part(const PastVisit& visit, std::string_view component) {
  const auto of_part = [&](const std::string& cause) {
    return cause_parts(cause).component == component;
  };
  return of_part(visit.cause) ||
         std::any_of(visit.other_causes.begin(), visit.other_causes.end(), of_part) ||
         std::any_of(visit.fixes.begin(), visit.fixes.end(),
                     [&](const std::string& fix) { return fix_parts(fix).component == component; });
}

std::set<std::string> families_with(const std::vector<VehicleHistory>& histories,
                                    std::string_view component) {
  std::set<std::string> families;
  for (const VehicleHistory& vehicle : histories) {
    if (vehicle.engine_family.empty()) continue;
    if (std::any_of(vehicle.visits.begin(), vehicle.visits.end(),
                    [&](const PastVisit& visit) { return has_part(visit, component); })) {
      families.insert(vehicle.engine_family);
    }
  }
  return families;
}

// Only these say what was wrong, or that nothing was.
bool tells(const PastVisit& visit) {
  return visit.state == CaseState::kClosed || visit.state == CaseState::kNoComplaint;
}

bool runs_backwards(const VehicleHistory& vehicle) {
  std::optional<Kilometres> last;
  for (const PastVisit& visit : vehicle.visits) {
    if (!visit.km) continue;
    if (last && *visit.km < *last) return true;
    last = visit.km;
  }
  return false;
}

// Walks the visits of one vehicle and writes down the lives of its parts.
class PartWalk {
 public:
  PartWalk(std::string_view cause, std::string replaced, FailureLives& out)
      : cause_(cause), replaced_(std::move(replaced)), out_(out) {}

  void walk(const VehicleHistory& vehicle) {
    for (const PastVisit& visit : vehicle.visits) {
      if (tells(visit)) meet(visit);
    }
    end_life(Ended::kWhole);
    ++(out_.vehicles.*became_);
  }

 private:
  void meet(const PastVisit& visit) {
    const bool failed = has_failure(visit, cause_);
    const bool renewed =
        std::find(visit.fixes.begin(), visit.fixes.end(), replaced_) != visit.fixes.end();
    if (visit.km) {
      if (!met_) became_ = &VehicleCounts::no_distance;
      met_ = true;
      if (part_ == Part::kNotSeen) begin(Part::kFirst, number(*visit.km));
      last_ = number(*visit.km);
    }
    if (failed || renewed) {
      end_life(failed && visit.km ? Ended::kFailed : Ended::kWhole);
      part_ = Part::kGone;
    }
    if (!renewed || !visit.km) return;
    ++out_.replaced;
    begin(Part::kRenewed, last_);
  }

  enum class Part { kNotSeen, kFirst, kRenewed, kGone };
  enum class Ended { kFailed, kWhole };

  void begin(Part part, double km) {
    part_ = part;
    began_ = last_ = km;
  }

  void end_life(Ended how) {
    const bool is_failed = how == Ended::kFailed;
    const bool driven = last_ > began_;
    if (part_ == Part::kFirst && driven) {
      out_.first.push_back({last_, is_failed, began_ > 0 ? std::optional(began_) : std::nullopt});
      became_ = &VehicleCounts::followed;
    } else if (part_ == Part::kFirst && is_failed) {
      became_ = &VehicleCounts::failed_at_first;
    } else if (part_ == Part::kRenewed && driven) {
      out_.since_replaced.push_back({last_ - began_, is_failed, {}});
    }
  }

  std::string_view cause_;
  std::string replaced_;  // fix key
  FailureLives& out_;
  std::uint32_t VehicleCounts::*became_ = &VehicleCounts::no_km;
  Part part_ = Part::kNotSeen;
  bool met_ = false;
  double began_ = 0, last_ = 0;
};

bool is_same_name(const std::string& asked, const std::string& written) {
  return asked.empty() || lower_case(asked) == written;
}

}  // namespace

bool VehicleScope::holds(const VehicleHistory& vehicle) const {
  return is_same_name(make, vehicle.make) && is_same_name(engine_family, vehicle.engine_family);
}

bool has_failure(const PastVisit& visit, std::string_view cause_key) {
  if (visit.state != CaseState::kClosed) return false;
  return visit.cause == cause_key || std::find(visit.other_causes.begin(), visit.other_causes.end(),
                                               cause_key) != visit.other_causes.end();
}

FailureLives failure_lives(const std::vector<VehicleHistory>& histories, std::string_view cause_key,
                           const VehicleScope& scope) {
  const std::string component = cause_parts(cause_key).component;
  const std::set<std::string> families = families_with(histories, component);
  FailureLives out;
  VehicleCounts& counts = out.vehicles;
  std::set<std::string> met;
  for (const VehicleHistory& vehicle : histories) {
    if (!scope.holds(vehicle)) continue;
    ++counts.in_scope;
    if (!families.empty() && vehicle.engine_family.empty()) {
      ++counts.family_unknown;
    } else if (!families.empty() && !families.contains(vehicle.engine_family)) {
      ++counts.without_part;
    } else if (runs_backwards(vehicle)) {
      ++counts.backwards;
    } else {
      PartWalk(cause_key, "replace " + component, out).walk(vehicle);
    }
    if (families.contains(vehicle.engine_family)) met.insert(vehicle.engine_family);
  }
  out.families.assign(met.begin(), met.end());
  return out;
}

}  // namespace shoplore
