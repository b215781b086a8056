// Writes recognised items into a record (declared in recogniser.hpp).
#include <algorithm>
#include <chrono>

#include "indexer/code_words.hpp"
#include "indexer/recogniser.hpp"

namespace shoplore {
namespace {

// Adds the value, or puts it in place of the one of the same id unless that says the same already:
// it may hold more (a reading, a condition) than a few typed words.
template <class Value, class Same>
void put_by_id(std::vector<Value>& list, Value value, Same says_same) {
  const auto there = std::find_if(list.begin(), list.end(),
                                  [&](const Value& each) { return each.id == value.id; });
  if (there == list.end()) {
    list.push_back(std::move(value));
  } else if (!says_same(*there, value)) {
    *there = std::move(value);
  }
}

void put_symptom(Case& record, const RecognisedItem& item) {
  Symptom symptom;
  symptom.id = item.id;
  symptom.state = item.state;
  symptom.how_often = item.how_often;
  put_by_id(record.symptoms, std::move(symptom), [](const Symptom& a, const Symptom& b) {
    return a.state == b.state && (!b.how_often || a.how_often == b.how_often);
  });
}

// Adds what a further mention says: the surer status, the later sighting, what was unknown so far.
void add_to(Code& code, const Code& said) {
  if (sureness(said.status) > sureness(code.status)) code.status = said.status;
  code.seen = std::max(code.seen, said.seen);
  if (code.failure_type.empty()) code.failure_type = said.failure_type;
  if (code.module.empty()) code.module = said.module;
  if (code.freeze_frame.empty()) code.freeze_frame = said.freeze_frame;
}

void put_code(Case& record, const RecognisedItem& item) {
  record.scanned = YesNo::kYes;
  const auto there = std::find_if(record.codes.begin(), record.codes.end(),
                                  [&](const Code& code) { return code.code == item.id; });
  if (there != record.codes.end()) {
    if (item.code) add_to(*there, *item.code);
    return;
  }
  Code code = item.code.value_or(Code{});
  code.code = item.id;
  record.codes.push_back(std::move(code));
}

// That many months before the case was opened; on the month's last day where the day is missing.
Date months_before(Date opened, int months) {
  const std::chrono::year_month_day then =
      std::chrono::year_month_day{opened.days} - std::chrono::months{months};
  return {then.ok() ? then : then.year() / then.month() / std::chrono::last};
}

void put_repair(Case& record, const RecognisedItem& item) {
  EarlierRepair repair = *item.repair;
  if (item.months_ago) repair.when = months_before(record.opened, *item.months_ago);
  if (!record.earlier_repairs) record.earlier_repairs.emplace();
  const bool there = std::any_of(record.earlier_repairs->begin(), record.earlier_repairs->end(),
                                 [&](const EarlierRepair& each) { return each.fix == repair.fix; });
  if (!there) record.earlier_repairs->push_back(repair);
}

void put_sign(Case& record, const RecognisedItem& item) {
  if (item.state == Presence::kAbsent) return;  // one sign absent is not "looked for all"
  WorkSign sign;
  sign.id = item.id;
  record.work_looked_for = YesNo::kYes;
  put_by_id(record.work_signs, std::move(sign),
            [](const WorkSign&, const WorkSign&) { return true; });
}

void put_check(Case& record, const RecognisedItem& item) {
  Check check;
  check.id = item.id;
  check.verdict = item.verdict.value_or(Verdict::kUnclear);
  check.reading = item.reading;
  check.unit = item.unit;
  put_by_id(record.checks, std::move(check),
            [](const Check& a, const Check& b) { return a.verdict == b.verdict && !b.reading; });
}

// The symptom nearest before the condition in the text, else the nearest after.
void put_condition(Case& record, const Recognised& recognised, const RecognisedItem& condition) {
  const RecognisedItem* nearest = nullptr;
  for (const RecognisedItem& item : recognised.items) {
    if (item.kind != ItemKind::kSymptom) continue;
    const bool before = item.span.begin < condition.span.begin;
    if (before || nearest == nullptr) nearest = &item;
  }
  if (nearest == nullptr) return;
  for (Symptom& symptom : record.symptoms) {
    if (symptom.id != nearest->id) continue;
    const bool there =
        std::find(symptom.when.begin(), symptom.when.end(), condition.id) != symptom.when.end();
    if (!there) symptom.when.push_back(condition.id);
  }
}

}  // namespace

void add_recognised(Case& record, const Recognised& recognised) {
  for (const RecognisedItem& item : recognised.items) {
    switch (item.kind) {
      case ItemKind::kCode:
        put_code(record, item);
        break;
      case ItemKind::kScanned:
        record.scanned = YesNo::kYes;
        break;
      case ItemKind::kMileage:
        record.vehicle.mileage_km = item.mileage_km;
        break;
      case ItemKind::kModelYear:
        record.vehicle.model_year = std::stoi(item.id);
        break;
      case ItemKind::kMake:
        record.vehicle.make = item.id;
        break;
      case ItemKind::kModel:
        record.vehicle.model = item.id;
        break;
      case ItemKind::kEngineFamily:
        record.vehicle.engine_family = item.id;
        break;
      case ItemKind::kFuel:
        record.vehicle.fuel = enum_from_name<Fuel>(item.id);
        break;
      case ItemKind::kSymptom:
        put_symptom(record, item);
        break;
      case ItemKind::kCheck:
        put_check(record, item);
        break;
      case ItemKind::kEarlierRepair:
        put_repair(record, item);
        break;
      case ItemKind::kWorkSign:
        put_sign(record, item);
        break;
      case ItemKind::kCondition:
        break;  // once every symptom is there
      case ItemKind::kReading:
        break;  // measured, but nothing says by which check: it stays in the text
    }
  }
  for (const RecognisedItem& item : recognised.items) {
    if (item.kind == ItemKind::kCondition) put_condition(record, recognised, item);
  }
}

}  // namespace shoplore
