#include "corpus-demo/case_draw.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace shoplore {
namespace {

constexpr std::int64_t kHighestKm = 330'000;

std::vector<double> weights_of(const std::vector<EvidenceRate>& rates,
                               const std::vector<EngineFamily>& families) {
  std::vector<double> weights;
  for (const EngineFamily& family : families) weights.push_back(rate_of(rates, family.id, 0));
  return weights;
}

std::size_t draw_value(const std::vector<EvidenceRate>& values, Random& random) {
  std::vector<double> weights;
  for (const EvidenceRate& value : values) weights.push_back(value.probability);
  return random.pick(weights);
}

double rounded(double value, double width) {
  const double step = width < 5 ? 0.01 : width < 30 ? 0.1 : 1;
  return std::round(value / step) * step;
}

// Clearly outside the expected range, on the side this check fails to.
double bad_number(double low, double high, BadReading bad, Random& random) {
  const double width = high - low;
  const double off = width * random.between(0.25, 1.15);
  if (bad != BadReading::kLow) return rounded(high + off, width);
  // What cannot be negative falls towards nothing.
  if (low > 0 && low - off < 0) return rounded(low * random.between(0.0, 0.8), width);
  return rounded(low - off, width);
}

// A reading that fits the verdict; unclear ones are left out.
void draw_reading(Check& check, const Entry& entry, BadReading bad, Random& random) {
  const bool open = bad == BadReading::kOpenCircuit && check.verdict == Verdict::kFail;
  if (open && random.chance(0.6)) {
    check.reading = Reading{{}, "OL"};
    check.unit = entry.unit;
    return;
  }
  if (!entry.low || !entry.high || check.verdict == Verdict::kUnclear) return;
  const double low = *entry.low, high = *entry.high;
  check.unit = entry.unit;
  if (random.chance(0.5)) check.expected = ExpectedRange{low, high};
  if (random.chance(0.3)) check.where = entry.where;
  if (random.chance(0.3)) check.conditions = entry.conditions;
  if (check.verdict == Verdict::kPass) {
    const double value = rounded(random.between(low, high), high - low);
    check.reading = Reading{std::clamp(value, low, high), ""};
  } else {
    check.reading = Reading{bad_number(low, high, bad, random), ""};
  }
}

Verdict draw_verdict(double fail, Random& random) {
  if (random.chance(kCheckUnclear)) return Verdict::kUnclear;
  return random.chance(fail) ? Verdict::kFail : Verdict::kPass;
}

bool tells_about(const Entry& entry, std::string_view component) {
  return std::find(entry.components.begin(), entry.components.end(), component) !=
         entry.components.end();
}

std::optional<Later> hindsight(Verdict verdict, const Entry& entry, std::string_view component) {
  if (verdict == Verdict::kUnclear || entry.components.empty()) return {};
  const bool agrees = (verdict == Verdict::kFail) == tells_about(entry, component);
  return agrees ? std::optional<Later>{} : Later::kMisled;
}

// Present symptoms of the pattern come first: that is what the customer complains of.
void draw_symptoms(Case& record, const World& world, const FailurePattern& pattern,
                   const Recording& recording, Random& random) {
  std::vector<Symptom> complained, asked;
  for (const SymptomHabit& habit : world.symptoms) {
    const bool present = random.chance(symptom_rate(pattern, habit));
    const Presence state = present ? Presence::kPresent : Presence::kAbsent;
    if (!random.chance(listed_rate(pattern, habit, state, recording))) continue;
    Symptom symptom{std::string(habit.id), state, {}, {}, {}};
    if (present && random.chance(0.2)) {
      symptom.how_often =
          random.one_of(std::vector{HowOften::kSometimes, HowOften::kOften, HowOften::kAlways});
    }
    if (present && random.chance(0.3)) {
      symptom.reproduced = random.chance(0.7) ? YesNo::kYes : YesNo::kNo;
    }
    (present ? complained : asked).push_back(std::move(symptom));
  }
  const auto place = [&](const Symptom& symptom) {
    const auto found = std::find_if(pattern.symptoms.begin(), pattern.symptoms.end(),
                                    [&](const EvidenceRate& r) { return r.id == symptom.id; });
    return found - pattern.symptoms.begin();
  };
  std::stable_sort(complained.begin(), complained.end(),
                   [&](const Symptom& a, const Symptom& b) { return place(a) < place(b); });
  record.symptoms = std::move(complained);
  record.symptoms.insert(record.symptoms.end(), asked.begin(), asked.end());
}

// Conditions are written beside the first complaint; without one there is nowhere to put them.
void draw_conditions(Case& record, const World& world, const FailurePattern& pattern,
                     Random& random) {
  std::vector<std::string> when;
  for (const std::string_view id : world.conditions) {
    if (random.chance(rate_of(pattern.conditions, id, kStrayCondition))) when.emplace_back(id);
  }
  if (!record.symptoms.empty() && record.symptoms.front().state == Presence::kPresent) {
    record.symptoms.front().when = std::move(when);
  }
}

void draw_codes(Case& record, const World& world, const FailurePattern& pattern,
                const Recording& recording, Random& random) {
  const bool scanned = random.chance(group_rate(world.scanned, pattern.group, 0) * recording.scans);
  record.scanned = scanned ? YesNo::kYes : YesNo::kNo;
  if (!scanned) return;
  for (const std::string_view id : world.codes) {
    if (!random.chance(rate_of(pattern.codes, id, kStrayCode))) continue;
    Code code;
    code.code = std::string(id);
    if (random.chance(0.15)) code.status = CodeStatus::kPending;
    if (random.chance(0.08)) {
      code.freeze_frame.push_back(
          {"engine_speed", static_cast<double>(random.integer(7, 35)) * 100, "rpm"});
    }
    record.codes.push_back(std::move(code));
  }
}

EarlierRepair done_here(const FixName& fix, const FailedRepair& failed) {
  EarlierRepair repair;
  repair.fix = {std::string(fix.action), std::string(fix.component)};
  repair.by = RepairedBy::kHere;
  repair.helped_for_a_while = YesNo::kYes;
  repair.when = failed.done;
  repair.distance_km = failed.driven_since;
  return repair;
}

EarlierRepair done_by_others(const FixName& fix, Date opened, Random& random) {
  EarlierRepair repair;
  repair.fix = {std::string(fix.action), std::string(fix.component)};
  repair.by = random.chance(0.82) ? RepairedBy::kElsewhere : RepairedBy::kOwner;
  if (random.chance(0.5)) {
    repair.helped_for_a_while = random.chance(0.35) ? YesNo::kYes : YesNo::kNo;
  }
  if (random.chance(0.3)) {
    repair.when = Date{opened.days - std::chrono::days(random.integer(7, 300))};
  }
  return repair;
}

void draw_earlier_repairs(Case& record, const World& world, const FailurePattern& pattern,
                          const FailedRepair* failed, const Recording& recording, Random& random) {
  std::vector<EarlierRepair> repairs;
  for (const FixName& fix : world.earlier) {
    const bool by_others = random.chance(earlier_rate(pattern, fix));
    const bool by_us = failed != nullptr &&
                       std::find(failed->plan->fixes.begin(), failed->plan->fixes.end(), fix) !=
                           failed->plan->fixes.end();
    if (by_us) {
      repairs.push_back(done_here(fix, *failed));
    } else if (by_others) {
      repairs.push_back(done_by_others(fix, record.opened, random));
    }
  }
  if (random.chance(kEarlierAsked * recording.earlier)) record.earlier_repairs = std::move(repairs);
}

}  // namespace

const Recording& draw_recording(Random& random) {
  std::array<double, kRecordings.size()> shares{};
  for (std::size_t i = 0; i < shares.size(); ++i) shares[i] = kRecordings[i].share;
  return kRecordings[random.pick(shares)];
}

Kilometres draw_mileage(const BandWeights& weights, Random& random) {
  const auto band = static_cast<std::int64_t>(random.pick(weights));
  const std::int64_t low = band * kBandKm;
  const std::int64_t high = band == 5 ? kHighestKm : low + kBandKm;
  return {random.integer(std::max<std::int64_t>(low, 3'000), high - 1)};
}

DemoVehicle draw_vehicle(const World& world, const FailurePattern& pattern, Date day,
                         Random& random) {
  DemoVehicle vehicle;
  vehicle.family = random.pick(weights_of(pattern.families, world.families));
  const EngineFamily& family = world.families[vehicle.family];
  vehicle.model = static_cast<std::size_t>(
      random.integer(0, static_cast<std::int64_t>(family.models.size()) - 1));
  vehicle.mileage = draw_mileage(pattern.mileage, random);
  for (const FactRates& fact : world.facts) {
    vehicle.facts.push_back(draw_value(fact_rates(world, pattern, fact.name), random));
  }
  vehicle.seen = day;
  const std::chrono::year_month_day date{day.days};
  const int this_year = static_cast<int>(date.year());
  const double a_year = random.between(13'000, 32'000);  // km: short trips to taxis
  const int age = static_cast<int>(static_cast<double>(vehicle.mileage.value) / a_year);
  vehicle.model_year = std::clamp(this_year - age, family.first_year, this_year);
  const std::uint64_t high = random.next(), low = random.next();
  vehicle.token = fmt::format("{:016x}{:016x}", high, low);
  return vehicle;
}

void write_vehicle(Case& record, const World& world, const DemoVehicle& vehicle, Random& random) {
  const EngineFamily& family = world.families[vehicle.family];
  Vehicle& written = record.vehicle;
  written.make = std::string(family.make);
  if (random.chance(kModelRecorded)) written.model = std::string(family.models[vehicle.model]);
  if (random.chance(kFamilyRecorded)) written.engine_family = std::string(family.id);
  if (random.chance(kFuelRecorded)) written.fuel = family.fuel;
  if (random.chance(0.4)) written.transmission = family.transmission;
  if (random.chance(kMileageRecorded)) written.mileage_km = vehicle.mileage;
  written.model_year = vehicle.model_year;
  for (std::size_t i = 0; i < world.facts.size(); ++i) {
    const FactRates& fact = world.facts[i];
    if (!random.chance(kFactRecorded)) continue;
    record.facts[std::string(fact.name)] = std::string(fact.values[vehicle.facts[i]].id);
  }
  written.token = vehicle.token;
}

void draw_complaint(Case& record, const World& world, const FailurePattern& pattern,
                    const FailedRepair* failed, const Recording& recording, Random& random) {
  draw_symptoms(record, world, pattern, recording, random);
  draw_conditions(record, world, pattern, random);
  draw_codes(record, world, pattern, recording, random);
  draw_earlier_repairs(record, world, pattern, failed, recording, random);
}

void draw_findings(Case& record, const World& world, const FailurePattern& pattern,
                   const EngineFamily& family, const Vocabulary& vocabulary,
                   const Recording& recording, Random& random) {
  for (const CheckHabit& habit : world.checks) {
    const double done = done_rate(habit, pattern.group, family);
    if (!random.chance(done * recording.checks)) continue;
    Check check;
    check.id = std::string(habit.id);
    check.verdict = draw_verdict(rate_of(pattern.checks, habit.id, kStrayCheckFail), random);
    // Numbers of their own: a vocabulary that gives a check a range changes no other case.
    Random details(random.next());
    if (const Entry* entry = vocabulary.find(EntryKind::kCheck, habit.id)) {
      if (details.chance(0.7)) draw_reading(check, *entry, habit.bad, details);
      if (entry->minutes && details.chance(0.4)) {
        check.minutes = Minutes{std::round(*entry->minutes * details.between(0.7, 2.0))};
      }
      check.later = hindsight(check.verdict, *entry, pattern.component);
    }
    record.checks.push_back(std::move(check));
  }
  const bool looked = random.chance(kWorkLookedFor * recording.signs);
  record.work_looked_for = looked ? YesNo::kYes : YesNo::kNo;
  for (const std::string_view id : world.signs) {
    if (!looked || !random.chance(rate_of(pattern.signs, id, kStraySign))) continue;
    record.work_signs.push_back({std::string(id), "", ""});
  }
}

}  // namespace shoplore
