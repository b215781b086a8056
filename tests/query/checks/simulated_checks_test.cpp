// Whether asking by expected information per minute saves work: cases nobody has seen are taken as
// they came in and checked until one cause has .9, in the order the program advises, in the best
// fixed order and in random order. A check that gives no answer costs its minutes all the same.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <iostream>
#include <map>
#include <numeric>
#include <random>

#include "query/checks/next_check.hpp"
#include "tests/query/demo_shop.hpp"
#include "tests/query/soybean.hpp"

namespace shoplore::testing {
namespace {

constexpr double kSure = .9;
constexpr std::size_t kMostChecks = 40;

struct Subject {
  std::vector<EvidenceItem> start;
  CauseNumber truth = 0;
  std::map<std::string, std::string> answers;  // by attribute; what is missing gives no answer
  std::set<std::string> not_possible;          // check ids
  std::size_t routine = 0;                     // which fixed order applies
};

using Worth = std::map<std::string, double>;
// The next attribute; empty when there is none.
using Choose = std::function<std::string(
    const std::vector<double>& causes, const std::vector<EvidenceItem>& items,
    const std::set<std::string>& asked, const WorkSoFar& so_far)>;

struct Setting {
  const RankingModel& model;
  CheckBasis basis;
  std::map<std::string, double> costs;  // minutes by attribute; without one the vocabulary's
};

// Bits per minute of all that can be asked.
Worth worth_of(const Setting& setting, const std::vector<double>& causes,
               const std::vector<EvidenceItem>& items, const WorkSoFar& so_far) {
  const NextChecks next = rate_checks(causes, items, so_far, setting.basis);
  Worth worth;
  for (const CheckChoice& choice : next.checks) {
    worth[choice.attribute] = choice.per_minute;
  }
  if (setting.costs.empty()) return worth;  // only checks
  for (const CheckChoice& choice : next.questions) {
    worth[choice.attribute] =
        choice.information * choice.answerable / setting.costs.at(choice.attribute);
  }
  return worth;
}

double minutes_of(const Setting& setting, const std::string& attribute, const WorkSoFar& so_far) {
  const auto cost = setting.costs.find(attribute);
  if (cost != setting.costs.end()) return cost->second;
  const std::string id = attribute.substr(attribute.find(':') + 1);
  double minutes = setting.basis.figures.check_minutes(id, setting.basis.vocabulary);
  for (const std::string& removal :
       setting.basis.vocabulary.find(EntryKind::kCheck, id)->removals) {
    if (so_far.open.contains(removal)) continue;
    minutes += setting.basis.vocabulary.find(EntryKind::kRemoval, removal)->minutes.value_or(0);
  }
  return minutes;
}

struct Effort {
  double checks = 0, minutes = 0, right = 0;
};

void take_off(const Setting& setting, const std::string& attribute, WorkSoFar& so_far) {
  const Entry* check =
      setting.basis.vocabulary.find(EntryKind::kCheck, attribute.substr(attribute.find(':') + 1));
  if (check != nullptr) so_far.open.insert(check->removals.begin(), check->removals.end());
}

Effort work_on(const Subject& subject, const Setting& setting, const Choose& choose) {
  Effort effort;
  std::vector<EvidenceItem> items = subject.start;
  std::set<std::string> asked;
  WorkSoFar so_far{{}, subject.not_possible};
  for (;;) {
    const auto causes = setting.model.probabilities(items, {}).value();
    const auto first = std::max_element(causes.begin(), causes.end()) - causes.begin();
    effort.right = first == static_cast<std::ptrdiff_t>(subject.truth) ? 1 : 0;
    if (causes[static_cast<std::size_t>(first)] >= kSure || asked.size() == kMostChecks) break;
    const std::string next = choose(causes, items, asked, so_far);
    if (next.empty()) break;
    effort.checks += 1;
    effort.minutes += minutes_of(setting, next, so_far);
    take_off(setting, next, so_far);
    asked.insert(next);
    const auto answer = subject.answers.find(next);
    if (answer != subject.answers.end()) items.push_back({next, answer->second});
  }
  return effort;
}

bool can_ask(const std::string& attribute, const std::set<std::string>& asked,
             const WorkSoFar& so_far) {
  return !asked.contains(attribute) &&
         !so_far.not_possible.contains(attribute.substr(attribute.find(':') + 1));
}

Choose by_information(const Setting& setting) {
  return [&setting](const auto& causes, const auto& items, const auto& asked, const auto& so_far) {
    std::string best;
    double most = 0;
    for (const auto& [attribute, worth] : worth_of(setting, causes, items, so_far)) {
      if (!can_ask(attribute, asked, so_far) || worth <= most) continue;
      most = worth;
      best = attribute;
    }
    return best;
  };
}

Choose in_order(const std::vector<std::string>& order) {
  return [&order](const auto&, const auto&, const auto& asked, const auto& so_far) {
    for (const std::string& attribute : order) {
      if (can_ask(attribute, asked, so_far)) return attribute;
    }
    return std::string();
  };
}

// Position by position the attribute that is worth most on average over cases of the past, given
// all that the order has asked of each before.
std::vector<std::string> best_fixed_order(const std::vector<Subject>& past, const Setting& setting,
                                          std::vector<std::string> all) {
  std::vector<std::string> order;
  std::vector<std::vector<EvidenceItem>> items;
  for (const Subject& subject : past) items.push_back(subject.start);
  WorkSoFar so_far;
  while (!all.empty()) {
    Worth worth;
    for (const auto& known : items) {
      const auto causes = setting.model.probabilities(known, {}).value();
      if (*std::max_element(causes.begin(), causes.end()) >= kSure) continue;  // done with this one
      for (const auto& [attribute, each] : worth_of(setting, causes, known, so_far)) {
        worth[attribute] += each;
      }
    }
    const auto best = std::max_element(
        all.begin(), all.end(), [&](const auto& a, const auto& b) { return worth[a] < worth[b]; });
    order.push_back(*best);
    all.erase(best);
    take_off(setting, order.back(), so_far);
    for (std::size_t i = 0; i < past.size(); ++i) {
      const auto answer = past[i].answers.find(order.back());
      if (answer != past[i].answers.end()) items[i].push_back({order.back(), answer->second});
    }
    if (worth[order.back()] <= 0) break;
  }
  order.insert(order.end(), all.begin(), all.end());
  return order;
}

struct Compared {
  Effort advised, fixed, random;
  std::size_t subjects = 0;
};

void add(Effort& sum, const Effort& more) {
  sum.checks += more.checks;
  sum.minutes += more.minutes;
  sum.right += more.right;
}

void compare(const std::vector<Subject>& subjects, const Setting& setting,
             const std::vector<std::vector<std::string>>& routines, std::mt19937_64& random,
             Compared& compared) {
  const Choose advised = by_information(setting);
  for (const Subject& subject : subjects) {
    add(compared.advised, work_on(subject, setting, advised));
    add(compared.fixed, work_on(subject, setting, in_order(routines[subject.routine])));
    std::vector<std::string> shuffled = routines[subject.routine];
    std::shuffle(shuffled.begin(), shuffled.end(), random);
    add(compared.random, work_on(subject, setting, in_order(shuffled)));
    ++compared.subjects;
  }
}

void print(const char* name, const Compared& compared) {
  const auto n = static_cast<double>(compared.subjects);
  const auto row = [&](const char* order, const Effort& effort) {
    std::cout << fmt::format("{:<18}{:<12}{:6.2f} checks {:7.1f} min  right {:.3f}\n", name, order,
                             effort.checks / n, effort.minutes / n, effort.right / n);
  };
  row("advised", compared.advised);
  row("best fixed", compared.fixed);
  row("random", compared.random);
}

void expect_saved(const Compared& compared, double Effort::*effort) {
  EXPECT_LE(compared.advised.*effort, .7 * (compared.fixed.*effort));
  EXPECT_LT(compared.advised.*effort, compared.random.*effort);
  EXPECT_NEAR(compared.advised.right / static_cast<double>(compared.subjects),
              compared.fixed.right / static_cast<double>(compared.subjects), .02);
}

std::vector<Subject> soybean_subjects(const std::vector<const PastCase*>& cases) {
  std::vector<Subject> subjects;
  for (const PastCase* past : cases) {
    Subject subject{{}, past->stated.cause, {}, {}, 0};
    for (const EvidenceItem& item : past->questions) subject.answers[item.attribute] = item.value;
    subjects.push_back(std::move(subject));
  }
  return subjects;
}

enum class Costs { kAlike, kRandom };

// Ten folds; the orders are made on some of the rest.
Compared compare_on_soybean(const SoybeanShop& shop, const Vocabulary& vocabulary, Costs costs) {
  constexpr std::size_t kFolds = 10, kPast = 40;
  std::mt19937_64 random(20261126);
  Compared compared;
  for (std::size_t fold = 0; fold < kFolds; ++fold) {
    std::vector<const PastCase*> tested, rest;
    std::set<CaseId> ids;
    for (std::size_t i = 0; i < shop.cases().size(); ++i) {
      (i % kFolds == fold ? tested : rest).push_back(&shop.cases()[i]);
    }
    for (const PastCase* past : tested) ids.insert(past->stated.id);
    const Ledger ledger = shop.ledger().without(ids);
    const RankingModel model = RankingModel::of(ledger, {}).value();
    const auto rates = answer_rates(ledger, 2).value();
    const WorkFigures figures;
    Setting setting{model, {rates, figures, vocabulary}, {}};
    std::vector<std::string> all;
    for (const AnswerRates& each : rates) {
      all.push_back(each.attribute);
      setting.costs[each.attribute] =
          costs == Costs::kAlike ? 1 : 1 + static_cast<double>(random() % 30);
    }
    std::shuffle(rest.begin(), rest.end(), random);
    rest.resize(kPast);
    const std::vector<std::vector<std::string>> routines{
        best_fixed_order(soybean_subjects(rest), setting, all)};
    compare(soybean_subjects(tested), setting, routines, random, compared);
  }
  return compared;
}

TEST(SimulatedChecks, SoybeanIsToldInFewerQuestionsAndMinutes) {
  const SoybeanShop shop;
  const Vocabulary vocabulary = Vocabulary::built_in().value();
  const Compared alike = compare_on_soybean(shop, vocabulary, Costs::kAlike);
  print("soybean, alike", alike);
  expect_saved(alike, &Effort::checks);
  const Compared random = compare_on_soybean(shop, vocabulary, Costs::kRandom);
  print("soybean, by cost", random);
  expect_saved(random, &Effort::minutes);
}

// What a technician would find who did the check on this very vehicle.
Subject demo_subject(const DemoShop& shop, const DemoCase& drawn, std::mt19937_64& random) {
  const FailurePattern& pattern = shop.world().patterns[*drawn.pattern];
  Subject subject{
      {}, shop.cause_of(drawn).value(), {}, {}, static_cast<std::size_t>(pattern.group)};
  for (const EvidenceItem& item : ranking_items(evidence_of(drawn.record, shop.vocabulary()))) {
    if (!item.attribute.starts_with("check:")) subject.start.push_back(item);
  }
  const auto family = std::find_if(
      shop.world().families.begin(), shop.world().families.end(),
      [&](const EngineFamily& each) { return each.id == drawn.record.vehicle.engine_family; });
  std::uniform_real_distribution<double> draw(0, 1);
  for (const CheckHabit& habit : shop.world().checks) {
    const double unclear = draw(random), fails = draw(random);
    if (family != shop.world().families.end() && done_rate(habit, pattern.group, *family) <= 0) {
      subject.not_possible.insert(std::string(habit.id));
      continue;
    }
    if (unclear < kCheckUnclear) continue;
    subject.answers["check:" + std::string(habit.id)] =
        fails < rate_of(pattern.checks, habit.id, kStrayCheckFail) ? "fail" : "pass";
  }
  return subject;
}

TEST(SimulatedChecks, TheDemoIsToldInFewerChecksAndMinutes) {
  const DemoShop shop;
  const RankingModel model = shop.fitted(1);
  const auto rates = answer_rates(shop.ledger(), model.knobs().smoothing).value();
  const WorkFigures figures = work_figures(shop.records().store(), shop.vocabulary()).value();
  const Setting setting{model, {rates, figures, shop.vocabulary()}, {}};
  std::vector<std::string> all;
  for (const AnswerRates& each : rates) {
    if (each.attribute.starts_with("check:")) all.push_back(each.attribute);
  }
  std::mt19937_64 random(20261126);
  // One routine a complaint, as a workshop would have it.
  std::map<std::size_t, std::vector<Subject>> past;
  for (const DemoCase& drawn : shop.unseen(600, 7)) {
    Subject subject = demo_subject(shop, drawn, random);
    past[subject.routine].push_back(std::move(subject));
  }
  std::vector<std::vector<std::string>> routines(past.rbegin()->first + 1, all);
  for (const auto& [group, subjects] : past) {
    routines[group] = best_fixed_order(subjects, setting, all);
  }
  std::vector<Subject> subjects;
  for (const DemoCase& drawn : shop.unseen(600, 8)) {
    subjects.push_back(demo_subject(shop, drawn, random));
  }
  Compared compared;
  compare(subjects, setting, routines, random, compared);
  print("demo", compared);
  expect_saved(compared, &Effort::checks);
  expect_saved(compared, &Effort::minutes);
}

}  // namespace
}  // namespace shoplore::testing
