#include "query/checks/check_advice.hpp"

#include <algorithm>
#include <array>
#include <limits>

#include "indexer/case_keys.hpp"
#include "query/checks/check_trust.hpp"
#include "query/checks/repair_order.hpp"

namespace shoplore {
namespace {

// Causes tried in an order; less likely ones would hardly come to their turn.
constexpr std::size_t kMostTried = 8;
constexpr double kLeastTried = 0.01;
// A repair takes no less than this, whatever was written down.
constexpr double kLeastRepairMinutes = 5;
// Where no case of the cause wrote hours down: common practice, no source.
constexpr double kUsualRepairMinutes = 60;
constexpr double kMinutesAnHour = 60;
// A repair on suspicion needs a suspicion, and has to save this share of the minutes.
constexpr double kLeastSuspicion = 0.5, kLeastSaved = 0.1;

// Cautions of components on which no guess is tried out.
constexpr std::array kNeverTried{"airbag_area_disconnect",
                                 "airbag_igniter",
                                 "seat_belt_tensioner_charge",
                                 "high_voltage",
                                 "xenon_high_voltage",
                                 "piezo_injector_voltage",
                                 "parking_brake_service_mode",
                                 "brake_fluid_harm",
                                 "brake_dust",
                                 "unsafe_to_drive",
                                 "injection_injury",
                                 "refrigerant",
                                 "accumulator_pressure",
                                 "air_suspension_pressure",
                                 "springs"};
// Parts that as a rule have to be coded to the vehicle: common practice, no source.
constexpr std::array kCoded{"_unit",       "_module", "injector", "instrument_cluster",
                            "immobiliser", "gateway", "key_fob"};
// Of electric drive, whatever else is said of them.
constexpr std::array kElectricDrive{"traction_", "inverter", "reduction_gear", "high_voltage"};

RemovalMinutes minutes_of_removals(const Vocabulary& vocabulary) {
  RemovalMinutes minutes;
  for (const auto& [id, entry] : vocabulary.entries(EntryKind::kRemoval)) {
    minutes[id] = entry.minutes.value_or(0);
  }
  return minutes;
}

class Advising {
 public:
  Advising(const AdviceQuestion& question, const CaseCounter& counter, const CheckBasis& basis)
      : question_(question), counter_(counter), causes_(counter.causes()), basis_(basis) {}

  Result<CheckAdvice> advice() const {
    const auto next =
        next_checks(question_.ranking, question_.items, counter_, question_.so_far, basis_);
    if (!next) return fail(next.error());
    CheckAdvice advice;
    for (const CheckChoice& choice : next->checks) {
      advice.checks.push_back(advised(choice));
      if (auto trusted = add_trust(advice.checks.back()); !trusted) return fail(trusted.error());
    }
    for (const CheckChoice& choice : next->questions) advice.questions.push_back(advised(choice));
    if (question_.agreed == AgreedToTry::kNo) return advice;
    advice.repair = weigh_repair(next->checks);
    return advice;
  }

 private:
  AdvisedCheck advised(const CheckChoice& choice) const {
    AdvisedCheck out{{choice.attribute, ""},
                     choice.minutes,
                     choice.removal_minutes,
                     choice.removals,
                     choice.information,
                     choice.answerable,
                     choice.per_minute,
                     {},
                     {},
                     {},
                     {},
                     {}};
    const std::string id = std::string(id_of_attribute(choice.attribute));
    if (const Entry* entry = basis_.vocabulary.find(EntryKind::kCheck, id)) {
      out.where = entry->where;
      out.how = entry->how;
    }
    for (const Outlook& outlook : choice.outlooks) {
      AdvisedOutlook put{outlook.answer, outlook.probability, {}};
      for (const auto& [cause, probability] : outlook.leading) {
        const auto [component, failure] = cause_parts(causes_.key(cause));
        put.leading.push_back({component, failure, probability});
      }
      out.outlooks.push_back(std::move(put));
    }
    return out;
  }

  Result<void> add_trust(AdvisedCheck& check) const {
    const std::string& attribute = check.item.attribute;
    const auto trust = trust_of(counter_, id_of_attribute(attribute), basis_.vocabulary);
    if (!trust) return fail(trust.error());
    check.pass_misled = trust->pass.misled_us;
    check.fail_misled = trust->fail.misled_us;
    return {};
  }

  // Own minutes without the removals, which the order counts itself, and the part's price as
  // minutes where this shop's hour is known.
  RepairAction action_of(CauseNumber cause, double probability) const {
    RepairAction action{probability, kUsualRepairMinutes, {}, 0};
    const auto figures = basis_.figures.repairs.find(causes_.key(cause));
    if (figures == basis_.figures.repairs.end()) return action;
    action.removals = figures->second.removals;
    if (figures->second.cases > 0) action.minutes = figures->second.minutes;
    for (const std::string& removal : action.removals) {
      const auto found = removal_minutes_.find(removal);
      if (found != removal_minutes_.end()) action.minutes -= found->second;
    }
    action.minutes = std::max(action.minutes, kLeastRepairMinutes);
    if (basis_.figures.hour_costs) {
      action.minutes += figures->second.parts / *basis_.figures.hour_costs * kMinutesAnHour;
    }
    return action;
  }

  struct Tried {
    std::vector<CauseNumber> causes;
    std::vector<RepairAction> actions;
    RepairOrder order;
  };

  // The likeliest causes, likeliest first; by CauseNumber, "not in these records" last.
  std::vector<CauseNumber> likeliest(const std::vector<double>& causes) const {
    std::vector<CauseNumber> numbers;
    for (CauseNumber c = 0; c + 1 < causes.size(); ++c) {
      if (causes[c] >= kLeastTried) numbers.push_back(c);
    }
    std::sort(numbers.begin(), numbers.end(),
              [&](CauseNumber a, CauseNumber b) { return causes[a] > causes[b]; });
    if (numbers.size() > kMostTried) numbers.resize(kMostTried);
    return numbers;
  }

  Tried try_in_order(const std::vector<double>& causes) const {
    Tried tried;
    tried.causes = likeliest(causes);
    for (const CauseNumber cause : tried.causes) {
      tried.actions.push_back(action_of(cause, causes[cause]));
    }
    tried.order = best_repair_order(tried.actions, removal_minutes_, question_.so_far.open);
    return tried;
  }

  // The check, then repairs in the order its answer leaves.
  double minutes_with(const CheckChoice& choice, const std::vector<double>& causes,
                      double minutes_without) const {
    const auto rates =
        std::find_if(basis_.rates.begin(), basis_.rates.end(),
                     [&](const auto& each) { return each.attribute == choice.attribute; });
    double after = 0;
    for (std::size_t a = 0; a < choice.outlooks.size(); ++a) {
      after += choice.outlooks[a].probability *
               try_in_order(causes_after(causes, rates->rates[a])).order.expected_minutes;
    }
    return choice.minutes + choice.removal_minutes + choice.answerable * after +
           (1 - choice.answerable) * minutes_without;
  }

  bool is_never_tried_cause(CauseNumber cause) const {
    return is_never_tried(cause_parts(causes_.key(cause)).component, basis_.vocabulary);
  }

  // The steps up to the first that may not be guessed at, each with what comes off for it.
  std::vector<RepairStep> steps_of(const Tried& tried) const {
    std::vector<RepairStep> steps;
    std::set<std::string> off = question_.so_far.open;
    for (const std::size_t i : tried.order.order) {
      if (is_never_tried_cause(tried.causes[i])) break;
      const RepairAction& action = tried.actions[i];
      double minutes = action.minutes;
      for (const std::string& removal : action.removals) {
        const auto found = removal_minutes_.find(removal);
        if (off.insert(removal).second && found != removal_minutes_.end()) minutes += found->second;
      }
      const auto [component, failure] = cause_parts(causes_.key(tried.causes[i]));
      steps.push_back({component, failure, action.probability, minutes});
    }
    return steps;
  }

  std::optional<RepairOnSuspicion> weigh_repair(const std::vector<CheckChoice>& checks) const {
    const auto causes = probabilities_by_cause(question_.ranking, causes_.size());
    const auto first = likeliest(causes);
    if (checks.empty() || first.empty() || causes[first[0]] < kLeastSuspicion) return {};
    const Tried tried = try_in_order(causes);
    RepairOnSuspicion repair{steps_of(tried), tried.order.expected_minutes, 0};
    if (repair.order.empty()) return {};
    repair.expected_minutes_checked = std::numeric_limits<double>::infinity();
    for (const CheckChoice& check : checks) {
      repair.expected_minutes_checked = std::min(
          repair.expected_minutes_checked, minutes_with(check, causes, repair.expected_minutes));
    }
    const bool saves =
        repair.expected_minutes <= (1 - kLeastSaved) * repair.expected_minutes_checked;
    return saves ? std::optional(std::move(repair)) : std::nullopt;
  }

  const AdviceQuestion& question_;
  const CaseCounter& counter_;
  const CauseTable& causes_;
  const CheckBasis& basis_;
  const RemovalMinutes removal_minutes_ = minutes_of_removals(basis_.vocabulary);
};

}  // namespace

bool is_never_tried(std::string_view component, const Vocabulary& vocabulary) {
  const auto has = [&](const char* part) { return component.find(part) != component.npos; };
  if (std::any_of(kCoded.begin(), kCoded.end(), has)) return true;
  if (std::any_of(kElectricDrive.begin(), kElectricDrive.end(), has)) return true;
  const Entry* entry = vocabulary.find(EntryKind::kComponent, component);
  if (entry == nullptr) return true;  // nobody can say what it is
  return std::any_of(
      entry->cautions.begin(), entry->cautions.end(), [](const std::string& caution) {
        return std::find(kNeverTried.begin(), kNeverTried.end(), caution) != kNeverTried.end();
      });
}

Result<CheckAdvice> advise(const AdviceQuestion& question, const CaseCounter& counter,
                           const CheckBasis& basis) {
  return Advising(question, counter, basis).advice();
}

}  // namespace shoplore
