#include "api/wire/repair_plan_json.hpp"

#include "api/wire/estimate_form.hpp"
#include "api/wire/list_form.hpp"
#include "api/wire/share_form.hpp"
#include "indexer/case_keys.hpp"
#include "query/similar_cases.hpp"

namespace shoplore {
namespace {

template <class T>
Json or_null(const std::optional<T>& value) {
  return value ? Json(*value) : Json(nullptr);
}

Json or_null(const std::string& text) {
  return text.empty() ? Json(nullptr) : Json(text);
}

std::int64_t number_of(std::chrono::days after) {
  return after.count();
}
std::int64_t number_of(Kilometres after) {
  return after.value;
}

template <class After>
Json stayed_form(const StayedShare<After>& stayed) {
  return {{"after", number_of(stayed.after)},
          {"share", stayed.share},
          {"interval",
           {{"low", stayed.interval.low},
            {"high", stayed.interval.high},
            {"confidence", kShownConfidence}}},
          {"came_back", stayed.came_back},
          {"still_watched", stayed.still_watched}};
}

Json reason_form(const ReasonCount& count) {
  return {{"reason", count.reason ? Json(name_of(*count.reason)) : Json(nullptr)},
          {"cases", count.cases}};
}

Json fixes_form(const StayedFixed& done) {
  return {{"fixes", done.fixes},
          {"cases", done.cases},
          {"came_back", done.came_back},
          {"still_fixed", done.still_fixed},
          {"not_heard_of", done.not_heard_of},
          {"seen_by_later_visits", done.seen_by_later_visits},
          {"no_day", done.no_day},
          {"reasons", list_of(done.reasons, reason_form)},
          {"stayed_fixed_days", list_of(done.by_days, stayed_form<std::chrono::days>)},
          {"stayed_fixed_km", list_of(done.by_km, stayed_form<Kilometres>)}};
}

Json fix_in_cases(const FixInCases& fix) {
  return {{"fix", fix.fix}, {"cases", fix.cases}};
}

Json company_form(const FixCompany& company) {
  return {{"fix", company.fix},
          {"cases", company.cases},
          {"beside", list_of(company.beside, fix_in_cases)}};
}

Json missed_form(const MissedPart& missed) {
  return {{"fix", missed.fix},
          {"missed", missed.missed},
          {"alone", share_form(missed.alone)},
          {"together", share_form(missed.together)}};
}

Json part_form(const PartUsed& part) {
  return {{"name", part.name},
          {"component", or_null(part.component)},
          {"cases", part.cases},
          {"usual_quantity", part.usual_quantity}};
}

Json work_form(const WorkSpread& work) {
  Json json = {{"figure", name_of(work.figure)},
               {"work", name_of(work.work)},
               {"vehicles", name_of(work.vehicles)},
               {"cases", work.cases},
               {"low", nullptr},
               {"median", nullptr},
               {"high", nullptr}};
  if (work.spread) {
    json["low"] = work.spread->low;
    json["median"] = work.spread->median;
    json["high"] = work.spread->high;
  } else {
    json["values"] = work.values;
  }
  return json;
}

class PlanForm {
 public:
  PlanForm(const RepairPlan& plan, const Vocabulary& vocabulary)
      : plan_(plan), vocabulary_(vocabulary) {}

  Json json() const {
    Json json = {
        {"cause",
         {{"component", plan_.cause.component},
          {"failure", plan_.cause.failure},
          {"name", display_cause(plan_.cause.component, plan_.cause.failure, vocabulary_)}}},
        {"vehicle",
         {{"name", vehicle_text(plan_.vehicle)},
          {"make", plan_.vehicle.make},
          {"engine_family", plan_.vehicle.engine_family}}},
        {"case", or_null(plan_.case_ref)},
        {"cases", plan_.cases},
        {"vehicles", plan_.vehicles},
        {"proposed", proposed()}};
    put_work(json);
    put_around(json);
    json["revision"] = plan_.revision.value;
    json["cases_in_records"] = plan_.cases_in_records;
    json["note"] = kEvidenceNotDiagnosis;
    return json;
  }

 private:
  Json proposed() const {
    if (!plan_.proposed) return nullptr;
    return {{"fixes", proposed_in_order(plan_)},
            {"because", name_of(plan_.proposed->because)},
            {"cases", plan_.proposed->cases}};
  }

  void put_work(Json& json) const {
    json["fixes"] = list_of(plan_.fixes, fixes_form);
    const RepeatComebacks& repeats = plan_.repeats;
    json["repeat_comebacks"] = {
        {"vehicles", repeats.vehicles},
        {"comebacks", repeats.comebacks},
        {"more_than_once", repeats.more_than_once},
        {"by_two_years", repeats.by_then ? estimate_form(*repeats.by_then) : Json(nullptr)}};
    json["beside"] = list_of(plan_.beside, company_form);
    json["missed_when_left_out"] = list_of(plan_.missed, missed_form);
    json["parts"] = {{"out_of", plan_.parts.out_of},
                     {"parts", list_of(plan_.parts.parts, part_form)}};
    json["currency"] = {{"name", plan_.currency.name},
                        {"cases_in_others", plan_.currency.in_others},
                        {"cases_without", plan_.currency.unnamed}};
    json["work"] = list_of(plan_.work, work_form);
    const auto removal = [&](const PlannedRemoval& each) {
      return Json{{"id", each.id},
                  {"name", vocabulary_.display_name(EntryKind::kRemoval, each.id)},
                  {"minutes", or_null(each.minutes)},
                  {"cases", each.cases},
                  {"now", name_of(each.now)}};
    };
    json["removals"] = {{"out_of", plan_.removals.out_of},
                        {"minutes", plan_.removals.minutes},
                        {"in_order", list_of(plan_.removals.in_order, removal)},
                        {"also_found", list_of(plan_.removals.also_found, removal)}};
  }

  void put_around(Json& json) const {
    const AfterwardsNeeds& after = plan_.afterwards;
    json["afterwards"] = {
        {"common", list_of(after.common,
                           [](const CommonNeed& need) {
                             return Json{{"component", need.component}, {"text", need.text}};
                           })},
        {"out_of", after.out_of},
        {"done", list_of(after.done, fix_in_cases)}};
    json["cautions"] = list_of(plan_.cautions, caution_form);
    json["traps"] = list_of(plan_.traps, [](const Trap& trap) {
      return Json{{"text", trap.text}, {"cases", trap.refs.size()}, {"refs", trap.refs}};
    });
    json["proof"] = list_of(plan_.proof, [&](const ProofStep& step) {
      const Entry* entry = vocabulary_.find(EntryKind::kVerification, step.id);
      return Json{{"id", step.id},
                  {"name", vocabulary_.display_name(EntryKind::kVerification, step.id)},
                  {"minutes", entry == nullptr ? Json(nullptr) : or_null(entry->minutes)},
                  {"how", entry == nullptr ? "" : entry->how},
                  {"caught", share_form(step.caught)}};
    });
  }

  const RepairPlan& plan_;
  const Vocabulary& vocabulary_;
};

}  // namespace

std::string repair_plan_json(const RepairPlan& plan, const Vocabulary& vocabulary) {
  return PlanForm(plan, vocabulary).json().dump();
}

}  // namespace shoplore
