#include "query/repair_plan/repair_plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "indexer/case_keys.hpp"
#include "indexer/text.hpp"
#include "indexer/vocabulary_search.hpp"
#include "query/cautions_for.hpp"
#include "query/drive_of_vehicle.hpp"
#include "query/lives/vehicle_histories.hpp"

namespace shoplore {
namespace {

// A symptom or check belongs to the cause when at least this share of its cases has it.
constexpr double kUsual = 0.5;

Result<void> check_open(const std::set<std::string>& open, const Vocabulary& vocabulary) {
  for (const std::string& id : open) {
    if (vocabulary.find(EntryKind::kRemoval, id) != nullptr) continue;
    std::string why = fmt::format("there is no removal \"{}\"", id);
    const auto near = near_ids(vocabulary, EntryKind::kRemoval, id);
    if (!near.empty()) why += fmt::format("; near it: {}", fmt::join(near, ", "));
    return fail(ErrorCode::kInvalidInput, "open", why);
  }
  return {};
}

double lower_end_as_heard(const StayedFixed& done) {
  return jeffreys(done.still_fixed, done.came_back + done.still_fixed).low;
}

std::optional<double> lower_end_after_a_year(const StayedFixed& done) {
  for (const auto& share : done.by_days) {
    if (share.after == kProposedAfter) return share.interval.low;
  }
  return std::nullopt;
}

std::optional<ProposedWork> proposed_of(const std::vector<StayedFixed>& fixes) {
  if (fixes.empty()) return std::nullopt;
  ProposedWork best{fixes.front().fixes, ProposedBecause::kDoneMost, fixes.front().cases};
  double lower_end = -1;
  // A share after a year goes before a count of those heard of, whatever their sizes.
  const auto offer = [&](const StayedFixed& done, ProposedBecause because, double low) {
    const bool surer = because < best.because || (because == best.because && low > lower_end);
    if (!surer) return;
    best = {done.fixes, because, done.cases};
    lower_end = low;
  };
  for (const StayedFixed& done : fixes) {
    if (const auto low = lower_end_after_a_year(done)) {
      offer(done, ProposedBecause::kLastedAYear, *low);
    } else if (done.came_back + done.still_fixed >= kFewestToPlan) {
      offer(done, ProposedBecause::kLastedAsHeard, lower_end_as_heard(done));
    }
  }
  return best;
}

// Ids that at least half of the cases have.
std::vector<std::string> usual(const std::map<std::string, std::uint32_t>& counts,
                               std::size_t cases) {
  std::vector<std::string> ids;
  for (const auto& [id, count] : counts) {
    if (count >= kUsual * static_cast<double>(cases)) ids.push_back(id);
  }
  return ids;
}

void involve_findings(std::vector<Involved>& involved, std::span<const PlanCase> cases,
                      const Vocabulary& vocabulary) {
  std::map<std::string, std::uint32_t> symptoms, checks;
  for (const PlanCase& each : cases) {
    std::set<std::string> here;
    for (const Symptom& symptom : each.record.symptoms) {
      if (symptom.state == Presence::kAbsent) continue;
      here.insert(vocabulary.canonical(EntryKind::kSymptom, symptom.id));
    }
    for (const std::string& id : here) ++symptoms[id];
    here.clear();
    for (const Check& check : each.record.checks) {
      here.insert(vocabulary.canonical(EntryKind::kCheck, check.id));
    }
    for (const std::string& id : here) ++checks[id];
  }
  for (auto& id : usual(symptoms, cases.size())) involved.push_back({EntryKind::kSymptom, id});
  for (auto& id : usual(checks, cases.size())) involved.push_back({EntryKind::kCheck, id});
}

std::vector<Involved> involved_in(const RepairPlan& plan, const Case* record,
                                  std::span<const PlanCase> cases, const Vocabulary& vocabulary) {
  std::vector<Involved> involved{{EntryKind::kComponent, plan.cause.component}};
  if (plan.proposed) {
    for (const std::string& fix : plan.proposed->fixes) {
      const auto [action, component] = fix_parts(fix);
      involved.push_back({EntryKind::kAction, action});
      involved.push_back({EntryKind::kComponent, component});
    }
  }
  for (const PlannedRemoval& each : plan.removals.in_order) {
    involved.push_back({EntryKind::kRemoval, each.id});
  }
  for (const ProofStep& step : plan.proof) involved.push_back({EntryKind::kVerification, step.id});
  if (record == nullptr) {
    involve_findings(involved, cases, vocabulary);
  } else {
    PlanCase itself;
    itself.record = *record;
    involve_findings(involved, std::span(&itself, 1), vocabulary);
  }
  return involved;
}

void plan_work(RepairPlan& plan, std::span<const PlanCase> cases, const std::set<std::string>& open,
               const Vocabulary& vocabulary) {
  const auto fixes = plan.proposed ? plan.proposed->fixes : std::vector<std::string>{};
  auto alike = with_fixes(cases, fixes);
  plan.parts = parts_used(alike, vocabulary);
  plan.removals = removals_for(alike, open, vocabulary);
  if (plan.removals.out_of == 0) {
    alike.clear();
    for (const PlanCase& each : cases) alike.push_back(&each);
    plan.removals = removals_for(alike, open, vocabulary);
  }
  plan.beside = fixes_beside(cases, fixes);
  plan.currency = usual_currency(cases);
  const WorkOf work{fixes, lower_case(plan.vehicle.make), lower_case(plan.vehicle.engine_family)};
  for (const auto& [figure, name] : kEnumNames<WorkFigure>) {
    plan.work.push_back(work_spread(cases, figure, work, plan.currency));
  }
  plan.afterwards = afterwards_of(cases, fixes, vocabulary);
  plan.traps = traps_of(cases);
  plan.proof = proof_steps(cases, vocabulary);
}

Result<std::optional<Case>> case_of(const std::string& ref, const Store& store) {
  if (ref.empty()) return std::nullopt;
  auto stored = store.read(ref);
  if (!stored) return fail(stored.error());
  return std::move(stored->record);
}

}  // namespace

std::vector<std::string> proposed_in_order(const RepairPlan& plan) {
  std::vector<std::string> fixes = plan.proposed->fixes;
  std::stable_partition(fixes.begin(), fixes.end(), [&](const std::string& fix) {
    return fix_parts(fix).component == plan.cause.component;
  });
  return fixes;
}

Result<RepairPlan> repair_plan(const PlanQuestion& question, const Snapshot& snapshot,
                               const Store& store, const Vocabulary& vocabulary,
                               const Recogniser& recogniser) {
  const Ledger& counter = snapshot.ledger();
  if (auto good = check_open(question.open, vocabulary); !good) return fail(good.error());
  auto cause = cause_from_words(question.cause, "cause", vocabulary, counter);
  if (!cause) return fail(cause.error());
  const auto record = case_of(question.case_ref, store);
  if (!record) return fail(record.error());
  auto vehicle = plan_vehicle(question.vehicle, *record ? (*record)->vehicle : Vehicle{}, counter,
                              vocabulary, recogniser);
  if (!vehicle) return fail(vehicle.error());
  const auto cases = plan_cases(counter, store, snapshot.revision(), vocabulary, cause->key);
  if (!cases) return fail(cases.error());
  const auto histories = vehicle_histories(store, vocabulary);
  if (!histories) return fail(histories.error());
  const auto lives = lives_of_cause(fix_lives(*histories), cause->key);

  RepairPlan plan;
  plan.cause = std::move(*cause);
  plan.vehicle = std::move(*vehicle);
  plan.case_ref = question.case_ref;
  plan.cases = static_cast<std::uint32_t>(cases->size());
  plan.vehicles = vehicles_among(*cases);
  plan.fixes = stayed_fixed_by_fixes(lives, plan.cause.key);
  plan.repeats = repeat_comebacks(lives);
  plan.proposed = proposed_of(plan.fixes);
  plan.missed = missed_when_left_out(lives);
  plan_work(plan, *cases, question.open, vocabulary);
  const Case* itself = *record ? &**record : nullptr;
  auto drive = plan.vehicle.fuel;
  if (!drive) {
    Case vehicle_alone;
    vehicle_alone.vehicle = plan.vehicle;
    auto electric = electric_drive_of(evidence_of(vehicle_alone, vocabulary), counter);
    if (!electric) return fail(electric.error());
    drive = *electric;
  }
  plan.cautions = cautions_of(involved_in(plan, itself, *cases, vocabulary), drive, vocabulary);
  plan.revision = snapshot.revision();
  plan.cases_in_records = counter.case_count();
  return plan;
}

}  // namespace shoplore
