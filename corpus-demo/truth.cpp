#include "corpus-demo/truth.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace shoplore {
namespace {

bool same_name(std::string_view left, std::string_view right) {
  const auto lower = [](char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  };
  return std::equal(left.begin(), left.end(), right.begin(), right.end(),
                    [&](char a, char b) { return lower(a) == lower(b); });
}

double either(double probability, bool holds) {
  return holds ? probability : 1 - probability;
}

// The chance of this record's evidence under one pattern, as a logarithm.
class Likelihood {
 public:
  Likelihood(const World& world, const Case& record, const FailurePattern& pattern,
             const Recording& recording)
      : world_(world), record_(record), pattern_(pattern), recording_(recording) {}

  double log() {
    vehicle_and_checks();
    mileage();
    facts();
    symptoms();
    conditions();
    codes();
    earlier_repairs();
    signs();
    return log_;
  }

 private:
  void times(double factor) { log_ += std::log(std::max(factor, 1e-300)); }

  double family_fits(const EngineFamily& family) const {
    const Vehicle& vehicle = record_.vehicle;
    if (!vehicle.engine_family.empty() && !same_name(vehicle.engine_family, family.id)) return 0;
    if (!vehicle.make.empty() && !same_name(vehicle.make, family.make)) return 0;
    if (vehicle.fuel && *vehicle.fuel != family.fuel) return 0;
    if (vehicle.transmission && *vehicle.transmission != family.transmission) return 0;
    if (vehicle.model.empty()) return 1;
    const auto fits = std::count_if(family.models.begin(), family.models.end(),
                                    [&](auto model) { return same_name(vehicle.model, model); });
    return static_cast<double>(fits) / static_cast<double>(family.models.size());
  }

  // Which checks are done depends on the vehicle, so both are summed over the families together.
  void vehicle_and_checks() {
    double total = 0, fitting = 0;
    for (const EngineFamily& family : world_.families) {
      const double weight = rate_of(pattern_.families, family.id, 0);
      total += weight;
      const double fits = weight * family_fits(family);
      if (fits > 0) fitting += fits * checks_on(family);
    }
    times(fitting / total);
  }

  void mileage() {
    if (!record_.vehicle.mileage_km) return;
    const auto band = std::min<std::int64_t>(record_.vehicle.mileage_km->value / kBandKm, 5);
    const double all = std::accumulate(pattern_.mileage.begin(), pattern_.mileage.end(), 0.0);
    times(pattern_.mileage[static_cast<std::size_t>(band)] / all);
  }

  void facts() {
    for (const FactRates& fact : world_.facts) {
      const auto stated = record_.facts.find(std::string(fact.name));
      if (stated == record_.facts.end()) continue;
      // A value the world does not know says nothing.
      times(rate_of(fact_rates(world_, pattern_, fact.name), stated->second, 1));
    }
  }

  void symptoms() {
    for (const SymptomHabit& habit : world_.symptoms) {
      const auto listed = std::find_if(record_.symptoms.begin(), record_.symptoms.end(),
                                       [&](const Symptom& s) { return s.id == habit.id; });
      const double present = symptom_rate(pattern_, habit);
      const double listed_present = listed_rate(pattern_, habit, Presence::kPresent, recording_);
      const double listed_absent = listed_rate(pattern_, habit, Presence::kAbsent, recording_);
      if (listed == record_.symptoms.end()) {
        times(present * (1 - listed_present) + (1 - present) * (1 - listed_absent));
      } else if (listed->state == Presence::kPresent) {
        times(present * listed_present);
      } else {
        times((1 - present) * listed_absent);
      }
    }
  }

  void conditions() {
    const bool could_be_written =
        std::any_of(record_.symptoms.begin(), record_.symptoms.end(),
                    [](const Symptom& s) { return s.state == Presence::kPresent; });
    if (!could_be_written) return;
    for (const std::string_view id : world_.conditions) {
      const bool mentioned =
          std::any_of(record_.symptoms.begin(), record_.symptoms.end(), [&](const Symptom& s) {
            return std::find(s.when.begin(), s.when.end(), id) != s.when.end();
          });
      times(either(rate_of(pattern_.conditions, id, kStrayCondition), mentioned));
    }
  }

  void codes() {
    if (!record_.scanned && record_.codes.empty()) return;
    const bool scanned = record_.scanned.value_or(YesNo::kYes) == YesNo::kYes;
    times(either(group_rate(world_.scanned, pattern_.group, 0) * recording_.scans, scanned));
    if (!scanned) return;
    for (const std::string_view id : world_.codes) {
      const bool read = std::any_of(record_.codes.begin(), record_.codes.end(),
                                    [&](const Code& code) { return code.code == id; });
      times(either(rate_of(pattern_.codes, id, kStrayCode), read));
    }
  }

  double checks_on(const EngineFamily& family) const {
    double product = 1;
    for (const CheckHabit& habit : world_.checks) {
      const auto done = std::find_if(record_.checks.begin(), record_.checks.end(),
                                     [&](const Check& check) { return check.id == habit.id; });
      const double rate = done_rate(habit, pattern_.group, family);
      product *= either(rate * recording_.checks, done != record_.checks.end());
      if (done == record_.checks.end()) continue;
      if (done->verdict == Verdict::kUnclear) continue;  // as likely under every pattern
      const double fail = rate_of(pattern_.checks, habit.id, kStrayCheckFail);
      product *= either(fail, done->verdict == Verdict::kFail);
    }
    return product;
  }

  // Either no comeback, or one after some plan, whose fixes are then certain to be there.
  void earlier_repairs() {
    times(either(kEarlierAsked * recording_.earlier, record_.earlier_repairs.has_value()));
    if (!record_.earlier_repairs) return;
    double sum = (1 - comeback_share(pattern_)) * earlier_given({});
    for (const FixPlan& plan : pattern_.plans) {
      if (plan.comes_back > 0) sum += comeback_share(plan) * earlier_given(plan.fixes);
    }
    times(sum);
  }

  double earlier_given(const std::vector<FixName>& certain) const {
    double product = 1;
    for (const FixName& fix : world_.earlier) {
      const bool is_certain = std::find(certain.begin(), certain.end(), fix) != certain.end();
      const double rate = is_certain ? 1 : earlier_rate(pattern_, fix);
      const bool there = std::any_of(
          record_.earlier_repairs->begin(), record_.earlier_repairs->end(),
          [&](const EarlierRepair& repair) {
            return repair.fix.action == fix.action && repair.fix.component == fix.component;
          });
      product *= either(rate, there);
    }
    return product;
  }

  void signs() {
    const bool looked = record_.work_looked_for == YesNo::kYes || !record_.work_signs.empty();
    times(either(kWorkLookedFor * recording_.signs, looked));
    if (!looked) return;
    for (const std::string_view id : world_.signs) {
      const bool seen = std::any_of(record_.work_signs.begin(), record_.work_signs.end(),
                                    [&](const WorkSign& sign) { return sign.id == id; });
      times(either(rate_of(pattern_.signs, id, kStraySign), seen));
    }
  }

  const World& world_;
  const Case& record_;
  const FailurePattern& pattern_;
  const Recording& recording_;
  double log_ = 0;
};

std::string rates_text(const std::vector<EvidenceRate>& rates) {
  std::string text;
  for (const EvidenceRate& rate : rates) {
    text += fmt::format("{}\"{}\":{}", text.empty() ? "" : ",", rate.id, rate.probability);
  }
  return "{" + text + "}";
}

std::string facts_text(const FailurePattern& pattern) {
  std::string text;
  for (const FactRates& fact : pattern.facts) {
    text += fmt::format("{}\"{}\":{}", text.empty() ? "" : ",", fact.name, rates_text(fact.values));
  }
  return "{" + text + "}";
}

std::string plans_text(const std::vector<FixPlan>& plans) {
  std::string text;
  for (const FixPlan& plan : plans) {
    std::string fixes;
    for (const FixName& fix : plan.fixes) {
      fixes += fmt::format("{}\"{} {}\"", fixes.empty() ? "" : ",", fix.action, fix.component);
    }
    text += fmt::format(R"({}{{"fixes":[{}],"share":{},"comes_back":{}}})", text.empty() ? "" : ",",
                        fixes, plan.share, plan.comes_back);
  }
  return "[" + text + "]";
}

}  // namespace

// Thin or thorough is not written on a record, so both are summed over.
std::vector<double> true_posterior(const World& world, const Case& record) {
  std::vector<double> joint, posterior(world.patterns.size());
  for (std::size_t i = 0; i < world.patterns.size(); ++i) {
    for (const Recording& recording : kRecordings) {
      joint.push_back(std::log(prior_of(world, i) * recording.share) +
                      Likelihood(world, record, world.patterns[i], recording).log());
    }
  }
  const double highest = *std::max_element(joint.begin(), joint.end());
  double total = 0;
  for (std::size_t k = 0; k < joint.size(); ++k) {
    const double weight = std::exp(joint[k] - highest);
    posterior[k / kRecordings.size()] += weight;
    total += weight;
  }
  for (double& value : posterior) value /= total;
  return posterior;
}

std::size_t best_guess(const World& world, const Case& record) {
  const auto posterior = true_posterior(world, record);
  return static_cast<std::size_t>(std::max_element(posterior.begin(), posterior.end()) -
                                  posterior.begin());
}

std::optional<std::size_t> pattern_of(const World& world, const Case& record) {
  if (!record.cause) return {};
  for (std::size_t i = 0; i < world.patterns.size(); ++i) {
    const FailurePattern& pattern = world.patterns[i];
    if (pattern.component == record.cause->component && pattern.failure == record.cause->failure) {
      return i;
    }
  }
  return {};
}

std::string truth_line(const World& world, const std::string& ref, std::size_t pattern) {
  return fmt::format(R"({{"ref":"{}","pattern":"{}"}})", ref, world.patterns[pattern].id);
}

std::string rates_lines(const World& world) {
  std::string lines;
  for (std::size_t i = 0; i < world.patterns.size(); ++i) {
    const FailurePattern& p = world.patterns[i];
    std::string earlier;
    for (const EarlierRate& rate : p.earlier) {
      earlier += fmt::format("{}\"{} {}\":{}", earlier.empty() ? "" : ",", rate.fix.action,
                             rate.fix.component, rate.probability);
    }
    lines += fmt::format(
        R"({{"pattern":"{}","component":"{}","failure":"{}","prior":{:.6f},)"
        R"("system":"{}","symptoms":{},"codes":{},"conditions":{},"checks_fail":{},"earlier_repairs":{{{}}},)"
        R"("work_signs":{},"engine_families":{},"mileage_bands":[{}],"months":[{}],"facts":{},"plans":{}}})"
        "\n",
        p.id, p.component, p.failure, prior_of(world, i), name_of(p.system), rates_text(p.symptoms),
        rates_text(p.codes), rates_text(p.conditions), rates_text(p.checks), earlier,
        rates_text(p.signs), rates_text(p.families), fmt::join(p.mileage, ","),
        fmt::join(p.season, ","), facts_text(p), plans_text(p.plans));
  }
  return lines;
}

}  // namespace shoplore
