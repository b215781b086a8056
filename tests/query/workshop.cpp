#include "tests/query/workshop.hpp"

#include <algorithm>

namespace shoplore::testing {
namespace {

// Lists are short so that questions often match; names are of the built-in vocabulary.
const std::vector<std::string> kSymptoms{"lack_of_power", "whistle_under_load", "misfire"};
const std::vector<std::string> kChecks{"wastegate_linkage_by_hand", "actuator_vacuum_test"};
const std::vector<std::string> kCodes{"P0299", "P0301"};
const std::vector<std::string> kParts{"turbocharger", "ignition_coil"};
const std::vector<std::string> kMakes{"Brackwater", "Cormont"};
const std::vector<std::string> kFamilies{"BW16D", "CM14P"};
const std::vector<std::string> kComplaints{"it drums", "Drums and hums"};
const std::vector<std::string> kWords{"drum", "hum"};
const std::vector<std::string> kFailures{"worn", "cracked"};

std::uint64_t below(std::mt19937_64& random, std::uint64_t end) {
  return random() % end;
}
bool one_in(std::mt19937_64& random, std::uint64_t n) {
  return below(random, n) == 0;
}
const std::string& pick(std::mt19937_64& random, const std::vector<std::string>& list) {
  return list[below(random, list.size())];
}

std::string lower(std::string text) {
  for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return text;
}

// Whether the record itself says so, read from its own fields.
bool states(const Case& record, const EvidenceItem& item) {
  const auto colon = item.attribute.find(':');
  const std::string kind = item.attribute.substr(0, colon);
  const std::string id = colon == std::string::npos ? "" : item.attribute.substr(colon + 1);
  if (kind == "engine_family") return lower(record.vehicle.engine_family) == item.value;
  if (kind == "word") return lower(record.complaint).find(id) != std::string::npos;
  if (kind == "symptom") {
    return std::any_of(record.symptoms.begin(), record.symptoms.end(), [&](const Symptom& s) {
      return s.id == id && (s.state == Presence::kPresent) == (item.value == "present");
    });
  }
  if (kind == "code") {
    const bool there = std::any_of(record.codes.begin(), record.codes.end(),
                                   [&](const Code& c) { return c.code == id; });
    return item.value == "present" ? there : record.scanned == YesNo::kYes && !there;
  }
  if (kind == "check") {
    std::set<Verdict> verdicts;
    for (const Check& check : record.checks) {
      if (check.id == id) verdicts.insert(check.verdict);
    }
    if (item.value == "mixed") return verdicts.size() > 1;
    return verdicts.size() == 1 && name_of(*verdicts.begin()) == item.value;
  }
  const auto repairs = record.earlier_repairs.value_or(std::vector<EarlierRepair>{});
  const bool there = std::any_of(repairs.begin(), repairs.end(), [&](const EarlierRepair& r) {
    return r.fix.action + " " + r.fix.component == id;
  });
  return item.value == "present" ? there : record.earlier_repairs.has_value() && !there;
}

bool passes(const Case& record, const Filter& filter) {
  if (!filter.make.empty() && lower(record.vehicle.make) != lower(filter.make)) return false;
  if (!filter.engine_family.empty() &&
      lower(record.vehicle.engine_family) != lower(filter.engine_family)) {
    return false;
  }
  const auto inside = [](const auto& band, const auto& value) {
    if (band.is_open()) return true;
    return value && (!band.low || *value >= *band.low) && (!band.high || *value < *band.high);
  };
  if (!inside(filter.mileage, record.vehicle.mileage_km)) return false;
  if (!inside(filter.model_year, record.vehicle.model_year)) return false;
  if (filter.closed_since && *record.closed < *filter.closed_since) return false;
  return filter.proofs.empty() || filter.proofs.contains(record.cause->proof);
}

}  // namespace

PlainCount count_plainly(const CasesById& cases, const CountQuestion& question) {
  PlainCount count;
  std::set<std::string> vehicles;
  std::map<std::string, std::set<std::string>> by_cause;
  for (const auto& [id, record] : cases) {
    if (record.state != CaseState::kClosed || !passes(record, question.filter)) continue;
    const bool all = std::all_of(question.all_of.begin(), question.all_of.end(),
                                 [&](const EvidenceItem& item) { return states(record, item); });
    if (!all) continue;
    const std::string cause = record.cause->component + ":" + record.cause->failure;
    const std::string vehicle =
        record.vehicle.token.empty() ? "case " + std::to_string(id) : record.vehicle.token;
    std::set<std::string> fixes;
    for (const Fix& fix : record.correction->fixes) fixes.insert(fix.action + " " + fix.component);
    std::string profile =
        cause + "|" +
        std::string(name_of(record.outcome ? record.outcome->status : OutcomeStatus::kUnknown));
    for (const std::string& fix : fixes) profile += "|" + fix;
    ++count.cases;
    ++count.by_cause[cause];
    ++count.by_profile[profile];
    vehicles.insert(vehicle);
    by_cause[cause].insert(vehicle);
  }
  count.vehicles = static_cast<std::uint32_t>(vehicles.size());
  for (const auto& [cause, set] : by_cause) {
    count.vehicles_by_cause[cause] = static_cast<std::uint32_t>(set.size());
  }
  return count;
}

PlainCount plain(const Tally& tally, const CauseTable& causes) {
  PlainCount count;
  count.cases = tally.cases;
  count.vehicles = tally.vehicles;
  for (CauseNumber cause = 0; cause < causes.size(); ++cause) {
    if (tally.cases_by_cause[cause] == 0) continue;
    count.by_cause[causes.key(cause)] = tally.cases_by_cause[cause];
    count.vehicles_by_cause[causes.key(cause)] = tally.vehicles_by_cause[cause];
  }
  for (const ProfileCount& each : tally.profiles) {
    std::string profile = each.profile.cause + "|" + std::string(name_of(each.profile.outcome));
    for (const std::string& fix : each.profile.fixes) profile += "|" + fix;
    count.by_profile[profile] += each.cases;
  }
  return count;
}

Case random_case(std::mt19937_64& random) {
  Case record;
  record.state = one_in(random, 5) ? CaseState::kOpen : CaseState::kClosed;
  record.opened = parse_date("2020-01-01").value();
  record.opened.days += std::chrono::days(below(random, 2'000));
  record.vehicle.make = pick(random, kMakes);
  if (!one_in(random, 4)) record.vehicle.engine_family = pick(random, kFamilies);
  if (!one_in(random, 4)) {
    record.vehicle.mileage_km = Kilometres{static_cast<std::int64_t>(below(random, 300'000))};
  }
  if (!one_in(random, 4)) record.vehicle.model_year = 2005 + static_cast<int>(below(random, 15));
  if (!one_in(random, 3)) {
    record.vehicle.token = std::string(31, '0') + "0123456789abcdef"[below(random, 16)];
  }
  if (one_in(random, 3)) record.complaint = pick(random, kComplaints);
  for (const std::string& id : kSymptoms) {
    if (one_in(random, 3)) continue;
    record.symptoms.push_back(
        {id, one_in(random, 3) ? Presence::kAbsent : Presence::kPresent, {}, {}, {}});
  }
  if (!one_in(random, 3)) {
    record.scanned = YesNo::kYes;
    for (const std::string& code : kCodes) {
      if (one_in(random, 2)) record.codes.emplace_back().code = code;
    }
  }
  for (std::uint64_t n = below(random, 4); n > 0; --n) {
    Check& check = record.checks.emplace_back();
    check.id = pick(random, kChecks);
    check.verdict = one_in(random, 2) ? Verdict::kPass : Verdict::kFail;
  }
  if (!one_in(random, 3)) {
    record.earlier_repairs.emplace();
    if (one_in(random, 2)) {
      record.earlier_repairs->emplace_back().fix = {"replace", pick(random, kParts)};
    }
  }
  if (record.state != CaseState::kClosed) return record;
  record.closed = record.opened;
  record.cause = Cause{pick(random, kParts), pick(random, kFailures),
                       one_in(random, 2) ? Proof::kSeen : Proof::kPresumed};
  record.correction.emplace();
  for (const std::string& part : kParts) {
    if (one_in(random, 2)) record.correction->fixes.push_back({"replace", part});
  }
  if (!one_in(random, 3)) {
    record.outcome.emplace().status =
        one_in(random, 3) ? OutcomeStatus::kCameBack : OutcomeStatus::kStayedFixed;
    if (one_in(random, 2)) {
      const auto days = std::chrono::days(static_cast<int>(below(random, 400)));
      record.outcome->as_of = Date{record.closed->days + days};
    }
  }
  return record;
}

CountQuestion random_question(std::mt19937_64& random) {
  CountQuestion question;
  const auto presence = [&] { return std::string(one_in(random, 3) ? "absent" : "present"); };
  if (one_in(random, 2))
    question.all_of.push_back({"symptom:" + pick(random, kSymptoms), presence()});
  if (one_in(random, 3)) question.all_of.push_back({"code:" + pick(random, kCodes), presence()});
  if (one_in(random, 4)) {
    const std::vector<std::string> values{"pass", "fail", "mixed"};
    question.all_of.push_back({"check:" + pick(random, kChecks), pick(random, values)});
  }
  if (one_in(random, 4)) {
    question.all_of.push_back({"earlier_repair:replace " + pick(random, kParts), presence()});
  }
  if (one_in(random, 4))
    question.all_of.push_back({"engine_family", lower(pick(random, kFamilies))});
  if (one_in(random, 6)) question.all_of.push_back({"word:" + pick(random, kWords), "present"});
  if (one_in(random, 4)) question.filter.make = pick(random, kMakes);
  if (one_in(random, 6)) question.filter.engine_family = pick(random, kFamilies);
  if (one_in(random, 4))
    question.filter.mileage.low = Kilometres{static_cast<std::int64_t>(below(random, 200'000))};
  if (one_in(random, 4))
    question.filter.mileage.high = Kilometres{static_cast<std::int64_t>(below(random, 300'000))};
  if (one_in(random, 4))
    question.filter.model_year.low = 2005 + static_cast<int>(below(random, 15));
  if (one_in(random, 4))
    question.filter.model_year.high = 2010 + static_cast<int>(below(random, 10));
  if (one_in(random, 4)) {
    question.filter.closed_since = parse_date("2020-01-01").value();
    question.filter.closed_since->days += std::chrono::days(below(random, 2'000));
  }
  if (one_in(random, 4)) question.filter.proofs = {Proof::kSeen};
  return question;
}

}  // namespace shoplore::testing
