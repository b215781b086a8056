// What the generator put in has to be found by asking, and nobody accused of what it did not.
//
// Asked is every pattern's typical question: its commonest engine family with the symptoms and
// codes that at least half of its cases have. Demanded is what stands out with a chance of .99 by
// its true rate in as many cases as the records hold; intervals of 90 % have to cover as often as a
// binomial count allows. Truth: world_rates.hpp.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <map>

#include "corpus-demo/case_closing.hpp"
#include "query/fix_counts.hpp"
#include "tests/query/watch_out/asked_world.hpp"

namespace shoplore::testing {
namespace {

// ---- earlier repairs

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
