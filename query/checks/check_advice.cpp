#include "query/checks/check_advice.hpp"

#include <algorithm>
#include <array>

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

// Cautions of components on which no guess is tried out.
constexpr std::array kNeverTried{"airbag_area_disconnect",
                                 "airbag_igniter",
                                 "seat_belt_tensioner_charge",
                                 "high_voltage",
                                 "parking_brake_service_mode",
                                 "brake_fluid_harm",
                                 "brake_dust",
                                 "unsafe_to_drive"};
// Parts that as a rule have to be coded to the vehicle: common practice, no source.
constexpr std::array kCoded{"_unit", "_module", "injector", "instrument_cluster", "immobiliser"};

std::pair<std::string, std::string> cause_of(const std::string& key) {
  const auto colon = key.find(':');
  return {key.substr(0, colon), key.substr(colon + 1)};
}

class Advising {
 public:
  Advising(const AdviceQuestion& question, const RankingModel& model, const CaseCounter& counter,
           const CheckBasis& basis)
      : question_(question),
        model_(model),
        counter_(counter),
        causes_(counter.causes()),
        basis_(basis) {}

  Result<CheckAdvice> advice() const {
    const auto next = next_checks(question_.ranking, question_.items, question_.filter, model_,
                                  question_.so_far, basis_);
    if (!next) return fail(next.error());
    CheckAdvice advice;
    for (const CheckChoice& choice : next->checks) {
      advice.checks.push_back(advised(choice));
      if (auto trusted = add_trust(advice.checks.back()); !trusted) return fail(trusted.error());
    }
    for (const CheckChoice& choice : next->questions) advice.questions.push_back(advised(choice));
    if (question_.agreed == AgreedToTry::kNo) return advice;
    auto repair = weigh_repair(next->checks);
    if (!repair) return fail(repair.error());
    advice.repair = std::move(*repair);
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
    const std::string id = choice.attribute.substr(choice.attribute.find(':') + 1);
    if (const Entry* entry = basis_.vocabulary.find(EntryKind::kCheck, id)) {
      out.where = entry->where;
      out.how = entry->how;
    }
    for (const Outlook& outlook : choice.outlooks) {
      AdvisedOutlook put{outlook.answer, outlook.probability, {}};
      for (const auto& [cause, probability] : outlook.leading) {
        const auto [component, failure] = cause_of(causes_.key(cause));
        put.leading.push_back({component, failure, probability});
      }
      out.outlooks.push_back(std::move(put));
    }
    return out;
  }

  Result<void> add_trust(AdvisedCheck& check) const {
    const std::string& attribute = check.item.attribute;
    const auto trust =
        trust_of(counter_, attribute.substr(attribute.find(':') + 1), basis_.vocabulary);
    if (!trust) return fail(trust.error());
    check.pass_misled = trust->pass.misled_us;
    check.fail_misled = trust->fail.misled_us;
    return {};
  }

  RemovalMinutes removal_minutes() const {
    RemovalMinutes minutes;
    for (const auto& [id, entry] : basis_.vocabulary.entries(EntryKind::kRemoval)) {
      minutes[id] = entry.minutes.value_or(0);
    }
    return minutes;
  }

  // Own minutes without the removals, which the order counts itself, and the part's price as
  // minutes where this shop's hour is known.
  RepairAction action_of(const RankedCause& row, const RemovalMinutes& removals) const {
    RepairAction action{row.probability, kUsualRepairMinutes, {}, 0};
    const auto figures = basis_.figures.repairs.find(causes_.key(row.cause));
    if (figures == basis_.figures.repairs.end()) return action;
    action.removals = figures->second.removals;
    if (figures->second.cases > 0) action.minutes = figures->second.minutes;
    for (const std::string& removal : action.removals) {
      const auto found = removals.find(removal);
      if (found != removals.end()) action.minutes -= found->second;
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

  Tried try_in_order(const Ranking& ranking) const {
    const RemovalMinutes removals = removal_minutes();
    Tried tried;
    for (const RankedCause& row : ranking.causes) {
      if (tried.causes.size() == kMostTried || row.probability < kLeastTried) break;
      tried.causes.push_back(row.cause);
      tried.actions.push_back(action_of(row, removals));
    }
    tried.order = best_repair_order(tried.actions, removals, question_.so_far.open);
    return tried;
  }

  // The check, then repairs in the order its answer leaves.
  Result<double> minutes_with(const CheckChoice& choice) const {
    double after = 0;
    for (const Outlook& outlook : choice.outlooks) {
      std::vector<EvidenceItem> items = question_.items;
      items.push_back({choice.attribute, outlook.answer});
      const auto ranking = model_.rank(items, question_.filter);
      if (!ranking) return fail(ranking.error());
      after += outlook.probability * try_in_order(*ranking).order.expected_minutes;
    }
    const double now = try_in_order(question_.ranking).order.expected_minutes;
    return choice.minutes + choice.removal_minutes + choice.answerable * after +
           (1 - choice.answerable) * now;
  }

  Result<std::optional<RepairOnSuspicion>> weigh_repair(
      const std::vector<CheckChoice>& checks) const {
    const Tried tried = try_in_order(question_.ranking);
    if (tried.order.order.empty()) return std::optional<RepairOnSuspicion>();
    RepairOnSuspicion repair;
    repair.expected_minutes = tried.order.expected_minutes;
    for (const std::size_t i : tried.order.order) {
      const auto [component, failure] = cause_of(causes_.key(tried.causes[i]));
      // The order ends before what may not be guessed at.
      if (is_never_tried(component, basis_.vocabulary)) break;
      repair.order.push_back(
          {component, failure, tried.actions[i].probability, tried.actions[i].minutes});
    }
    if (repair.order.empty()) return std::optional<RepairOnSuspicion>();
    repair.expected_minutes_checked = repair.expected_minutes;
    for (const CheckChoice& check : checks) {
      const auto minutes = minutes_with(check);
      if (!minutes) return fail(minutes.error());
      if (*minutes < repair.expected_minutes) return std::optional<RepairOnSuspicion>();
      const bool is_first = &check == &checks.front();
      repair.expected_minutes_checked =
          is_first ? *minutes : std::min(repair.expected_minutes_checked, *minutes);
    }
    return std::optional(std::move(repair));
  }

  const AdviceQuestion& question_;
  const RankingModel& model_;
  const CaseCounter& counter_;
  const CauseTable& causes_;
  const CheckBasis& basis_;
};

}  // namespace

bool is_never_tried(std::string_view component, const Vocabulary& vocabulary) {
  const auto has = [&](const char* part) { return component.find(part) != component.npos; };
  if (std::any_of(kCoded.begin(), kCoded.end(), has)) return true;
  const Entry* entry = vocabulary.find(EntryKind::kComponent, component);
  if (entry == nullptr) return true;  // nobody can say what it is
  return std::any_of(
      entry->cautions.begin(), entry->cautions.end(), [](const std::string& caution) {
        return std::find(kNeverTried.begin(), kNeverTried.end(), caution) != kNeverTried.end();
      });
}

Result<CheckAdvice> advise(const AdviceQuestion& question, const RankingModel& model,
                           const CaseCounter& counter, const CheckBasis& basis) {
  return Advising(question, model, counter, basis).advice();
}

}  // namespace shoplore
