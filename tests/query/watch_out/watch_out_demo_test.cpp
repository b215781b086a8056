// What the generator put in has to be found by asking, and nobody accused of what it did not.
//
// Asked is every pattern's typical question: its commonest engine family with the symptoms and
// codes that at least half of its cases have. Demanded is what stands out with a chance of .99 by
// its true rate in as many cases as the records hold; intervals of 90 % have to cover as often as a
// binomial count allows. Truth: world_rates.hpp.
#include <gtest/gtest.h>

#include <fmt/format.h>

#include <boost/math/distributions/binomial.hpp>
#include <iostream>
#include <map>
#include <numeric>
#include <set>
#include <utility>

#include "corpus-demo/case_closing.hpp"
#include "query/ask.hpp"
#include "query/fix_counts.hpp"
#include "query/watch_out/earlier_repairs.hpp"
#include "query/watch_out/stands_out.hpp"
#include "tests/query/coverage.hpp"
#include "tests/query/demo_shop.hpp"
#include "tests/query/watch_out/world_rates.hpp"

namespace shoplore::testing {
namespace {

constexpr double kPower = 0.99;

// Chance that so true a rate stands out in so many cases.
double power(double rate, std::uint32_t cases, double others_rate) {
  if (rate <= 0 || cases == 0) return 0;
  const boost::math::binomial_distribution<> counts(cases, std::min(rate, 1.0));
  double sum = 0;
  for (std::uint32_t k = 0; k <= cases; ++k) {
    if (stands_out(k, cases, others_rate)) sum += pdf(counts, k);
  }
  return sum;
}

double sum(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0);
}

std::string key_of(const FailurePattern& pattern) {
  return fmt::format("{}:{}", pattern.component, pattern.failure);
}
std::string key_of(const FixName& fix) {
  return fmt::format("{} {}", fix.action, fix.component);
}

std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return out;
}

// The typical question of a pattern, as the generator's names.
InRecord typical(const FailurePattern& pattern) {
  InRecord what;
  double most = 0;
  for (const EvidenceRate& family : pattern.families) {
    if (family.probability <= most) continue;
    most = family.probability;
    what.family = family.id;
  }
  for (const EvidenceRate& symptom : pattern.symptoms) {
    if (symptom.probability >= 0.5) what.symptoms.push_back(symptom.id);
  }
  for (const EvidenceRate& code : pattern.codes) {
    if (code.probability >= 0.5) what.codes.push_back(code.id);
  }
  return what;
}

Case record_of(const InRecord& what) {
  Case record;
  record.vehicle.engine_family = std::string(what.family);
  for (const auto id : what.symptoms) record.symptoms.push_back({std::string(id), {}, {}, {}, {}});
  for (const auto id : what.codes) {
    record.codes.push_back({});
    record.codes.back().code = std::string(id);
  }
  if (what.repair) {
    EarlierRepair repair;
    repair.fix = {std::string(what.repair->action), std::string(what.repair->component)};
    record.earlier_repairs = {{repair}};
  }
  if (!what.sign.empty()) {
    record.work_looked_for = YesNo::kYes;
    record.work_signs = {{std::string(what.sign), "", ""}};
  }
  return record;
}

// How often what was demanded was found and covered, and who was accused of what is not so.
struct Findings {
  int demanded = 0, found = 0, accused = 0;
  Coverage coverage;
  std::set<std::string> seen;

  void demand(bool is_found, const std::string& what) {
    ++demanded;
    found += is_found ? 1 : 0;
    if (!is_found) std::cout << "  not found: " << what << "\n";
  }
  // The same count met by another question is the same interval, not another trial.
  void cover(const Share& share, double truth, const std::string& what) {
    if (!seen.insert(fmt::format("{} {} {}", what, share.count, share.out_of)).second) return;
    coverage.add(share, truth);
    if (Coverage::covers(share, truth)) return;
    std::cout << fmt::format("  not covered: {}, true {:.3f}, counted {} of {}\n", what, truth,
                             share.count, share.out_of);
  }
  void accuse(const std::string& what) {
    ++accused;
    std::cout << "  accused: " << what << "\n";
  }
  void print(const char* kind) const {
    std::cout << fmt::format("{}: {} of {} found, {} of {} intervals cover, {} accused\n", kind,
                             found, demanded, coverage.covered, coverage.reported, accused);
  }
};

// Each misses with a chance below .01: so many at most but for one time in a thousand or so.
int most_missed(int demanded) {
  return static_cast<int>(std::ceil(.01 * demanded + 3.1 * std::sqrt(.0099 * demanded)));
}

class Asked {
 public:
  explicit Asked(const DemoShop& shop) : shop_(shop) {}

  std::vector<Warning> warnings(const InRecord& what, WarningKind kind) const {
    Question question;
    question.record = record_of(what);
    question.similar_cases = 0;
    question.rows = 50;
    const auto answer = ask(question, shop_.snapshot(), shop_.records().store(), shop_.vocabulary(),
                            shop_.records().recogniser());
    EXPECT_TRUE(answer);
    std::vector<Warning> out;
    for (const Warning& warning : answer->watch_out) {
      if (warning.kind == kind) out.push_back(warning);
    }
    return out;
  }

  // Cases the records hold of it, by cause.
  std::vector<std::uint32_t> counts(const InRecord& what) const {
    CountQuestion question;
    if (!what.family.empty()) question.all_of.push_back({"engine_family", lower(what.family)});
    for (const auto id : what.symptoms) {
      question.all_of.push_back({"symptom:" + std::string(id), "present"});
    }
    for (const auto id : what.codes) {
      question.all_of.push_back({"code:" + std::string(id), "present"});
    }
    if (what.repair) {
      question.all_of.push_back({"earlier_repair:" + key_of(*what.repair), "present"});
    }
    if (!what.sign.empty()) {
      question.all_of.push_back({"work_sign:" + std::string(what.sign), "present"});
    }
    if (what.asked) question.known.push_back("earlier_repair:");
    if (what.looked) question.known.push_back("work_sign:");
    return *shop_.ledger().by_cause(question);
  }

  std::uint32_t of_cause(const InRecord& what, const FailurePattern& pattern) const {
    const auto cause = shop_.ledger().causes().find(key_of(pattern));
    return cause ? counts(what)[*cause] : 0;
  }

  const DemoShop& shop() const { return shop_; }
  const World& world() const { return shop_.world(); }

 private:
  const DemoShop& shop_;
};

const Warning* find(const std::vector<Warning>& warnings, std::string_view about, Stated stated) {
  for (const Warning& each : warnings) {
    if (each.about == about && each.stated == stated) return &each;
  }
  return nullptr;
}

// ---- earlier repairs

// The complaint as widened by the header's rule: without the commonest while fewer than kLikeThis.
InRecord widened(const Asked& asked, InRecord what) {
  what.family = {};
  what.asked = true;
  const auto cases_of = [&](bool is_code, std::string_view id) {
    InRecord one;
    (is_code ? one.codes : one.symptoms).push_back(id);
    return total(asked.counts(one));
  };
  while (total(asked.counts(what)) < kLikeThis && what.symptoms.size() + what.codes.size() > 1) {
    std::uint32_t most = 0;
    std::pair<bool, std::string_view> commonest;
    for (const bool is_code : {false, true}) {
      for (const auto id : is_code ? what.codes : what.symptoms) {
        if (cases_of(is_code, id) < most) continue;
        most = cases_of(is_code, id);
        commonest = {is_code, id};
      }
    }
    std::erase(commonest.first ? what.codes : what.symptoms, commonest.second);
  }
  return what;
}

bool lists(const FailurePattern& pattern, const FixName& repair) {
  return std::any_of(pattern.earlier.begin(), pattern.earlier.end(),
                     [&](const EarlierRate& each) { return each.fix == repair; });
}

struct VainRates {
  double here = 0, elsewhere = 0;
};

// True share in vain of those asked in a group, and outside the complaint.
VainRates vain_rates(const World& world, InRecord group, const InRecord& complaint,
                     const FixName& repair) {
  const auto in_vain = [&](InRecord what) {
    what.repair = repair;
    const auto cases = joint(world, what);
    double vain = 0;
    for (std::size_t i = 0; i < cases.size(); ++i) {
      if (world.patterns[i].component != repair.component) vain += cases[i];
    }
    return vain;
  };
  group.asked = true;
  InRecord anything;
  anything.asked = true;
  return {in_vain(group) / sum(joint(world, group)),
          (in_vain(anything) - in_vain(complaint)) /
              (sum(joint(world, anything)) - sum(joint(world, complaint)))};
}

Findings unstated_repairs(const Asked& asked) {
  Findings findings;
  const World& world = asked.world();
  for (const FailurePattern& pattern : world.patterns) {
    const InRecord question = typical(pattern);
    const InRecord wide = widened(asked, question);
    InRecord narrow = wide;
    narrow.family = question.family;
    const auto warnings = asked.warnings(question, WarningKind::kEarlierRepair);
    bool accused = false;
    for (const FixName& repair : world.earlier) {
      const std::string key = key_of(repair);
      const std::string what = fmt::format("{} before {}", key, pattern.id);
      const Warning* warning = find(warnings, key, Stated::kNo);
      const bool is_wide = warning && warning->text.find("on any vehicle") != std::string::npos;
      const VainRates in_narrow = vain_rates(world, narrow, wide, repair);
      const VainRates in_wide = vain_rates(world, wide, wide, repair);
      const double findable =
          std::max(power(in_narrow.here, total(asked.counts(narrow)), in_narrow.elsewhere),
                   power(in_wide.here, total(asked.counts(wide)), in_wide.elsewhere));
      const bool of_pattern = lists(pattern, repair) && repair.component != pattern.component;
      if (of_pattern && findable >= kPower) findings.demand(warning != nullptr, what);
      if (!warning) continue;
      const VainRates truth = is_wide ? in_wide : in_narrow;
      findings.cover(warning->share, truth.here, what);
      if (truth.here <= truth.elsewhere && !std::exchange(accused, true)) findings.accuse(what);
    }
  }
  return findings;
}

// With the repair stated: what those with it turned out to have.
Findings stated_repairs(const Asked& asked) {
  Findings findings;
  const World& world = asked.world();
  for (const FailurePattern& pattern : world.patterns) {
    for (const EarlierRate& repair : pattern.earlier) {
      InRecord question = typical(pattern);
      question.repair = repair.fix;
      const InRecord wide = widened(asked, typical(pattern));
      InRecord group = wide;
      group.repair = repair.fix;
      // In the records they are like this often enough to be spoken of by themselves.
      const std::string what = fmt::format("{} done, then {}", key_of(repair.fix), pattern.id);
      const VainRates rates = vain_rates(world, wide, wide, repair.fix);
      const auto warnings = asked.warnings(question, WarningKind::kEarlierRepair);
      const Warning* warning = find(warnings, key_of(repair.fix), Stated::kYes);
      const bool in_vain = repair.fix.component != pattern.component;
      if (in_vain && total(asked.counts(group)) >= kEnoughToWarn &&
          power(rates.here, total(asked.counts(wide)), rates.elsewhere) >= kPower) {
        findings.demand(warning != nullptr, what);
      }
      if (!warning) continue;
      const auto says = [&](const char* text) {
        return warning->text.find(text) != std::string::npos;
      };
      if (says("with any complaint")) {
        group = {};
        group.repair = repair.fix;
      } else if (!says("on any vehicle")) {
        group.family = question.family;
      }
      const auto cases = joint(world, group);
      double truth = 0;
      for (std::size_t i = 0; i < cases.size(); ++i) {
        if (key_of(world.patterns[i]) == warning->cause) truth += cases[i];
      }
      findings.cover(warning->share, truth / sum(cases), what);
    }
  }
  return findings;
}

// ---- signs of earlier work

struct SignRates {
  double here = 0, elsewhere = 0;
};

SignRates sign_rates(const World& world, std::size_t pattern, std::string_view sign) {
  InRecord with, looked;
  with.sign = sign;
  looked.looked = true;
  const auto seen = joint(world, with), asked = joint(world, looked);
  return {rate_of(world.patterns[pattern].signs, sign, kStraySign),
          (sum(seen) - seen[pattern]) / (sum(asked) - asked[pattern])};
}

Findings signs_to_look_for(const Asked& asked) {
  Findings findings;
  const World& world = asked.world();
  std::map<std::string, std::size_t> numbers;
  for (std::size_t i = 0; i < world.patterns.size(); ++i) numbers[key_of(world.patterns[i])] = i;
  InRecord looked;
  looked.looked = true;
  for (std::size_t i = 0; i < world.patterns.size(); ++i) {
    const FailurePattern& pattern = world.patterns[i];
    const auto warnings = asked.warnings(typical(pattern), WarningKind::kWorkSign);
    for (const EvidenceRate& sign : pattern.signs) {
      const SignRates rates = sign_rates(world, i, sign.id);
      const std::string what = fmt::format("{} of {}", sign.id, pattern.id);
      const bool found = std::any_of(warnings.begin(), warnings.end(), [&](const Warning& each) {
        return each.about == sign.id && each.cause == key_of(pattern);
      });
      if (power(rates.here, asked.of_cause(looked, pattern), rates.elsewhere) >= kPower) {
        findings.demand(found, what);
      }
    }
    bool accused = false;
    for (const Warning& warning : warnings) {
      const auto number = numbers.find(warning.cause);
      if (number == numbers.end()) continue;
      const SignRates rates = sign_rates(world, number->second, warning.about);
      const std::string what =
          fmt::format("{} of {}, asked {}", warning.about, warning.cause, pattern.id);
      if (number->second == i) findings.cover(warning.share, rates.here, what);
      if (rates.here <= rates.elsewhere && !std::exchange(accused, true)) findings.accuse(what);
    }
  }
  return findings;
}

// With the sign stated: what vehicles of the family with it turned out to have.
Findings stated_signs(const Asked& asked) {
  Findings findings;
  const World& world = asked.world();
  for (const FailurePattern& pattern : world.patterns) {
    for (const EvidenceRate& sign : pattern.signs) {
      InRecord question = typical(pattern);
      question.sign = sign.id;
      const auto warnings = asked.warnings(question, WarningKind::kWorkSign);
      const Warning* warning = find(warnings, sign.id, Stated::kYes);
      if (!warning) continue;
      InRecord group;
      group.sign = sign.id;
      const bool on_family = warning->text.find("on engine family") != std::string::npos;
      const bool on_make = warning->text.find("on make") != std::string::npos;
      if (on_make) continue;  // the question names no make
      if (on_family) group.family = question.family;
      const auto cases = joint(world, group);
      double truth = 0;
      for (std::size_t i = 0; i < cases.size(); ++i) {
        if (key_of(world.patterns[i]) == warning->cause) truth += cases[i];
      }
      findings.cover(warning->share, truth / sum(cases),
                     fmt::format("{} led to {}", sign.id, warning->cause));
    }
  }
  return findings;
}

// ---- checks

bool tells_about(const Asked& asked, std::string_view check, std::string_view component) {
  const Entry* entry = asked.shop().vocabulary().find(EntryKind::kCheck, check);
  return entry != nullptr && std::find(entry->components.begin(), entry->components.end(),
                                       component) != entry->components.end();
}

// Of all fails of the check the share on causes it does not tell about.
double false_fails(const Asked& asked, const CheckHabit& check) {
  const World& world = asked.world();
  double all = 0, wrong = 0;
  for (std::size_t i = 0; i < world.patterns.size(); ++i) {
    const FailurePattern& pattern = world.patterns[i];
    const double fails = prior_of(world, i) * fail_chance(world, pattern, check);
    all += fails;
    if (!tells_about(asked, check.id, pattern.component)) wrong += fails;
  }
  return all > 0 ? wrong / all : 0;
}

std::uint32_t verdicts(const Asked& asked, std::string_view check, const FailurePattern* pattern,
                       std::vector<std::string> values) {
  const Ledger& ledger = asked.shop().ledger();
  const auto cause = pattern ? ledger.causes().find(key_of(*pattern)) : std::nullopt;
  std::uint32_t cases = 0;
  for (const std::string& value : values) {
    const auto counts = *ledger.by_cause({{{"check:" + std::string(check), value}}, {}});
    cases += cause ? counts[*cause] : total(counts);
  }
  return cases;
}

Findings misleading_checks(const Asked& asked) {
  Findings findings;
  const World& world = asked.world();
  const WatchBasis& basis = asked.shop().snapshot().watch_basis(asked.shop().vocabulary());
  for (const FailurePattern& pattern : world.patterns) {
    const auto passes = asked.warnings(typical(pattern), WarningKind::kPassMisled);
    const auto fails = asked.warnings(typical(pattern), WarningKind::kFailMisled);
    bool accused = false;
    for (const CheckHabit& check : world.checks) {
      if (!tells_about(asked, check.id, pattern.component)) continue;
      const std::string of = fmt::format("{} on {}", check.id, pattern.id);
      const double misled = 1 - rate_of(pattern.checks, check.id, kStrayCheckFail);
      const double wrong_fails = false_fails(asked, check);
      const Warning* pass_warning = nullptr;
      for (const Warning& each : passes) {
        if (each.about == check.id && each.cause == key_of(pattern)) pass_warning = &each;
      }
      const struct {
        const char* verdict;
        const Warning* warning;
        double rate, others;
        std::uint32_t cases;
      } both[] = {{"pass", pass_warning, misled, basis.pass_misled,
                   verdicts(asked, check.id, &pattern, {"pass", "fail"})},
                  {"fail", find(fails, check.id, Stated::kNo), wrong_fails, basis.fail_misled,
                   verdicts(asked, check.id, nullptr, {"fail"})}};
      for (const auto& each : both) {
        const Warning* warning = each.warning;
        const std::string what = fmt::format("{} of {}", each.verdict, of);
        if (power(each.rate, each.cases, each.others) >= kPower) {
          findings.demand(warning != nullptr, what);
        }
        if (!warning) continue;
        findings.cover(warning->share, each.rate, what);
        if (each.rate <= each.others && !std::exchange(accused, true)) findings.accuse(what);
      }
    }
  }
  return findings;
}

// ---- contributing causes

Findings contributing_causes(const Asked& asked) {
  Findings findings;
  InRecord anything;
  for (const FailurePattern& pattern : asked.world().patterns) {
    const auto warnings = asked.warnings(typical(pattern), WarningKind::kContributingCause);
    std::set<std::string> known;
    for (const CauseName& cause : pattern.contributing) {
      const std::string key = fmt::format("{}:{}", cause.component, cause.failure);
      known.insert(key);
      const double rate = kContributing / static_cast<double>(pattern.contributing.size());
      const std::string what = fmt::format("{} behind {}", key, pattern.id);
      const Warning* found = nullptr;
      for (const Warning& each : warnings) {
        if (each.about == key && each.cause == key_of(pattern)) found = &each;
      }
      // The others have it hardly ever: far below .05.
      if (power(rate, asked.of_cause(anything, pattern), 0.05) >= kPower) {
        findings.demand(found != nullptr, what);
      }
      if (found) findings.cover(found->share, rate, what);
    }
    for (const Warning& each : warnings) {
      if (each.cause != key_of(pattern) || known.contains(each.about)) continue;
      findings.accuse(fmt::format("{} behind {}", each.about, pattern.id));
      break;
    }
  }
  return findings;
}

class WatchOutDemo : public ::testing::TestWithParam<std::int64_t> {
 protected:
  static const DemoShop& shop() {
    static std::map<std::int64_t, std::unique_ptr<DemoShop>> shops;
    auto& shop = shops[GetParam()];
    if (!shop) shop = std::make_unique<DemoShop>(GetParam(), Showcases::kOut);
    return *shop;
  }
};

void expect_good(const char* kind, const Findings& findings) {
  findings.print(kind);
  EXPECT_LE(findings.demanded - findings.found, most_missed(findings.demanded)) << kind;
  EXPECT_GE(findings.coverage.covered, fewest_covered(findings.coverage.reported)) << kind;
}

TEST_P(WatchOutDemo, WhatWasBuiltInIsFoundAndNobodyElseAccused) {
  const Asked asked(shop());
  const std::pair<const char*, Findings> kinds[] = {
      {"repairs before ordering", unstated_repairs(asked)},
      {"repairs already done", stated_repairs(asked)},
      {"signs to look for", signs_to_look_for(asked)},
      {"signs stated", stated_signs(asked)},
      {"misleading checks", misleading_checks(asked)},
      {"contributing causes", contributing_causes(asked)}};
  int accused = 0, demanded = 0;
  for (const auto& [name, findings] : kinds) {
    expect_good(name, findings);
    accused += findings.accused;
    demanded += findings.demanded;
  }
  // Four kinds can accuse; each once a pattern at most.
  const auto questions = static_cast<int>(4 * asked.world().patterns.size());
  std::cout << fmt::format("{} accused of {} patterns x kinds\n", accused, questions);
  EXPECT_LE(40 * accused, questions);
  EXPECT_GT(demanded, 40);
}

INSTANTIATE_TEST_SUITE_P(Shops, WatchOutDemo, ::testing::Values(2'400, 10'000));

}  // namespace
}  // namespace shoplore::testing
