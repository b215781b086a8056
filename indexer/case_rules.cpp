#include "indexer/case_rules.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <string>

#include "indexer/fault_code.hpp"

namespace shoplore {
namespace {

bool is_ref(std::string_view text) {
  const auto allowed = [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '.' ||
           c == '_' || c == '-';
  };
  return !text.empty() && text.size() <= 40 && std::all_of(text.begin(), text.end(), allowed);
}

bool is_hex(std::string_view text, std::size_t size) {
  return text.size() == size && text.find_first_not_of("0123456789abcdefABCDEF") == text.npos;
}

std::string at(std::string_view list, std::size_t index) {
  return fmt::format("/{}/{}", list, index);
}

// Collects problems about one record; each member checks one room of the rules.
class RuleBook {
 public:
  RuleBook(const Case& record, const Vocabulary& vocabulary)
      : record_(record), vocabulary_(vocabulary) {}

  std::vector<Problem> broken() {
    check_names();
    check_state();
    check_dates();
    check_vehicle();
    check_symptoms();
    check_codes();
    check_checks();
    check_earlier_work();
    check_causes();
    check_correction();
    check_closing_details();
    return std::move(problems_);
  }

 private:
  void problem(std::string place, std::string expected) {
    problems_.push_back({std::move(place), std::move(expected)});
  }
  void require(bool holds, std::string place, std::string expected) {
    if (!holds) problem(std::move(place), std::move(expected));
  }
  void require_id(EntryKind kind, const std::string& id, std::string place) {
    if (vocabulary_.find(kind, id) != nullptr) return;
    problem(std::move(place), fmt::format("'{}' is not a {} of the vocabulary", id, name_of(kind)));
  }
  void require_ids(EntryKind kind, const std::vector<std::string>& ids, const std::string& place) {
    for (std::size_t i = 0; i < ids.size(); ++i) {
      require_id(kind, ids[i], fmt::format("{}/{}", place, i));
    }
  }
  void require_not_negative(std::optional<double> value, std::string place) {
    require(!value || *value >= 0, std::move(place), "may not be negative");
  }
  void require_mileage(std::optional<Kilometres> value, std::string place) {
    require(!value || (value->value >= 0 && value->value <= 3'000'000), std::move(place),
            "expected 0 to 3,000,000 km");
  }

  void check_names() {
    const std::string form = "expected 1 to 40 of A-Z a-z 0-9 . _ -";
    require(record_.ref.empty() || is_ref(record_.ref), "/ref", form);
    require(record_.follows.empty() || is_ref(record_.follows), "/follows", form);
    require(record_.follows.empty() || record_.follows != record_.ref, "/follows",
            "a case cannot follow itself");
    if (record_.visit) {
      require(record_.visit->ref.empty() || is_ref(record_.visit->ref), "/visit/ref", form);
    }
    for (const auto& [name, value] : record_.facts) {
      require(name.find('=') == name.npos, "/facts/" + name, "a fact's name holds no '='");
      require(!value.empty(), "/facts/" + name, "is empty");
    }
  }

  void check_state() {
    const CaseState state = record_.state;
    if (state == CaseState::kClosed) {
      require(record_.closed.has_value(), "/closed", "a closed case needs its closing date");
      require(record_.cause.has_value(), "/cause", "a closed case needs a cause");
    }
    require(state != CaseState::kEnded || record_.ended.has_value(), "/ended",
            "an ended case says how: " + expected_names<EndedHow>());
    if (state == CaseState::kNoComplaint) {
      require(record_.complaint.empty() && record_.symptoms.empty() && record_.codes.empty() &&
                  !record_.cause,
              "/state", "a visit without complaint has no complaint, symptoms, codes or cause");
    }
    if (state == CaseState::kClosed || state == CaseState::kWithdrawn) return;
    require(!record_.cause, "/cause", "only a closed case has a cause");
    require(!record_.closed || state == CaseState::kEnded, "/closed",
            "only a closed or ended case has a closing date");
    require(!record_.outcome, "/outcome", "only a closed case has an outcome");
  }

  void check_dates() {
    if (record_.closed) {
      require(record_.opened <= *record_.closed, "/closed",
              fmt::format("is before the opening on {}", format_date(record_.opened)));
    }
    if (record_.outcome && record_.outcome->as_of) {
      const Date done = record_.closed.value_or(record_.opened);
      require(done <= *record_.outcome->as_of, "/outcome/as_of",
              fmt::format("is before the closing on {}", format_date(done)));
    }
    const auto repairs = record_.earlier_repairs.value_or(std::vector<EarlierRepair>{});
    for (std::size_t i = 0; i < repairs.size(); ++i) {
      require(!repairs[i].when || *repairs[i].when <= record_.opened,
              at("earlier_repairs", i) + "/when", "is after this case was opened");
    }
  }

  void check_vehicle() {
    const Vehicle& vehicle = record_.vehicle;
    require(!vehicle.model_year || (*vehicle.model_year >= 1950 && *vehicle.model_year <= 2100),
            "/vehicle/model_year", "expected 1950 to 2100");
    require_mileage(vehicle.mileage_km, "/vehicle/mileage_km");
    require(vehicle.token.empty() || is_hex(vehicle.token, 32), "/vehicle/token",
            "expected 32 hex digits");
  }

  void check_symptoms() {
    std::set<std::string> seen;
    for (std::size_t i = 0; i < record_.symptoms.size(); ++i) {
      const Symptom& symptom = record_.symptoms[i];
      require_id(EntryKind::kSymptom, symptom.id, at("symptoms", i) + "/id");
      require(seen.insert(symptom.id).second, at("symptoms", i) + "/id",
              fmt::format("'{}' is listed twice", symptom.id));
      require_ids(EntryKind::kCondition, symptom.when, at("symptoms", i) + "/when");
    }
  }

  void check_codes() {
    require(record_.codes.empty() || record_.scanned != YesNo::kNo, "/codes",
            "there are codes, but scanned is no");
    std::set<std::string> seen;
    for (std::size_t i = 0; i < record_.codes.size(); ++i) {
      const Code& code = record_.codes[i];
      const auto parsed = parse_fault_code(code.code);
      const std::string place = at("codes", i);
      if (!parsed) {
        problem(place + "/code", parsed.error().message);
      } else {
        require(parsed->text() == code.code, place + "/code",
                fmt::format("expected the plain form {}", parsed->text()));
      }
      require(code.failure_type.empty() || is_hex(code.failure_type, 2), place + "/failure_type",
              "expected two hex digits");
      const auto key = fmt::format("{}|{}|{}|{}", code.code, name_of(code.status),
                                   name_of(code.seen), code.module);
      require(seen.insert(key).second, place, fmt::format("'{}' is listed twice", code.code));
    }
  }

  void check_checks() {
    for (std::size_t i = 0; i < record_.checks.size(); ++i) {
      const Check& check = record_.checks[i];
      const std::string place = at("checks", i);
      require_id(EntryKind::kCheck, check.id, place + "/id");
      require_ids(EntryKind::kCondition, check.conditions, place + "/conditions");
      require(!check.minutes || check.minutes->value >= 0, place + "/minutes",
              "may not be negative");
      const bool upside_down = check.expected && check.expected->low && check.expected->high &&
                               *check.expected->low > *check.expected->high;
      require(!upside_down, place + "/expected", "low is above high");
    }
  }

  void check_earlier_work() {
    const auto repairs = record_.earlier_repairs.value_or(std::vector<EarlierRepair>{});
    for (std::size_t i = 0; i < repairs.size(); ++i) {
      require_fix(repairs[i].fix, at("earlier_repairs", i) + "/fix");
      require_mileage(repairs[i].distance_km, at("earlier_repairs", i) + "/distance_km");
    }
    require(record_.work_signs.empty() || record_.work_looked_for != YesNo::kNo, "/work_signs",
            "there are signs of earlier work, but work_looked_for is no");
    for (std::size_t i = 0; i < record_.work_signs.size(); ++i) {
      const WorkSign& sign = record_.work_signs[i];
      require_id(EntryKind::kWorkSign, sign.id, at("work_signs", i) + "/id");
      if (!sign.component.empty()) {
        require_id(EntryKind::kComponent, sign.component, at("work_signs", i) + "/component");
      }
    }
  }

  void require_fix(const Fix& fix, const std::string& place) {
    require_id(EntryKind::kAction, fix.action, place + "/action");
    require_id(EntryKind::kComponent, fix.component, place + "/component");
  }
  void require_cause(const Cause& cause, const std::string& place) {
    require_id(EntryKind::kComponent, cause.component, place + "/component");
    require_id(EntryKind::kFailure, cause.failure, place + "/failure");
  }

  void check_causes() {
    if (record_.cause) require_cause(*record_.cause, "/cause");
    for (std::size_t i = 0; i < record_.contributing.size(); ++i) {
      require_cause(record_.contributing[i], at("contributing", i));
    }
    for (std::size_t i = 0; i < record_.also_found.size(); ++i) {
      require_cause(record_.also_found[i], at("also_found", i));
    }
  }

  void check_correction() {
    if (!record_.correction) return;
    const Correction& correction = *record_.correction;
    for (std::size_t i = 0; i < correction.fixes.size(); ++i) {
      require_fix(correction.fixes[i], "/correction" + at("fixes", i));
    }
    for (std::size_t i = 0; i < correction.parts.size(); ++i) {
      const std::string place = "/correction" + at("parts", i);
      require_not_negative(correction.parts[i].quantity, place + "/quantity");
      require_not_negative(correction.parts[i].cost, place + "/cost");
    }
    if (correction.hours) {
      require_not_negative(correction.hours->diagnosis, "/correction/hours/diagnosis");
      require_not_negative(correction.hours->clocked, "/correction/hours/clocked");
      require_not_negative(correction.hours->charged, "/correction/hours/charged");
    }
    require_not_negative(correction.cost_total, "/correction/cost_total");
    require_ids(EntryKind::kRemoval, correction.removals, "/correction/removals");
  }

  void check_closing_details() {
    for (std::size_t i = 0; i < record_.verification.size(); ++i) {
      require_id(EntryKind::kVerification, record_.verification[i].id,
                 at("verification", i) + "/id");
    }
    if (!record_.outcome) return;
    require_mileage(record_.outcome->mileage_km, "/outcome/mileage_km");
    const auto then = record_.vehicle.mileage_km, now = record_.outcome->mileage_km;
    require(!then || !now || *then <= *now, "/outcome/mileage_km",
            fmt::format("is less than the {} km at the repair", then ? then->value : 0));
    require(!record_.outcome->reason || record_.outcome->status == OutcomeStatus::kCameBack,
            "/outcome/reason", "only an outcome that came_back has a reason");
  }

  const Case& record_;
  const Vocabulary& vocabulary_;
  std::vector<Problem> problems_;
};

}  // namespace

std::vector<Problem> broken_rules(const Case& record, const Vocabulary& vocabulary) {
  return RuleBook(record, vocabulary).broken();
}

Result<void> check_rules(const Case& record, const Vocabulary& vocabulary) {
  auto problems = broken_rules(record, vocabulary);
  if (problems.empty()) return {};
  std::string place = problems.front().place;
  return tl::make_unexpected(Error{ErrorCode::kInvalidInput, std::move(place),
                                   "the case breaks a rule", std::move(problems)});
}

}  // namespace shoplore
