// The demo's world as asked about: every pattern's typical question with its answer, and what has
// to be found in it by the true rates.
#pragma once

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <boost/math/distributions/binomial.hpp>
#include <iostream>
#include <numeric>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "query/ask.hpp"
#include "query/watch_out/earlier_repairs.hpp"
#include "query/watch_out/stands_out.hpp"
#include "tests/query/coverage.hpp"
#include "tests/query/demo_shop.hpp"
#include "tests/query/watch_out/world_rates.hpp"

namespace shoplore::testing {

inline constexpr double kPower = 0.99;

// Chance that so true a rate stands out in so many cases.
inline double power(double rate, std::uint32_t cases, double others_rate) {
  if (rate <= 0 || cases == 0) return 0;
  const boost::math::binomial_distribution<> counts(cases, std::min(rate, 1.0));
  double sum = 0;
  for (std::uint32_t k = 0; k <= cases; ++k) {
    if (stands_out(k, cases, others_rate)) sum += pdf(counts, k);
  }
  return sum;
}

inline double sum(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0);
}

inline std::string key_of(const FailurePattern& pattern) {
  return fmt::format("{}:{}", pattern.component, pattern.failure);
}
inline std::string key_of(const FixName& fix) {
  return fmt::format("{} {}", fix.action, fix.component);
}

inline std::string lower(std::string_view text) {
  std::string out(text);
  for (char& c : out) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return out;
}

// The typical question of a pattern, as the generator's names.
inline InRecord typical(const FailurePattern& pattern) {
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

inline Case record_of(const InRecord& what) {
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
inline int most_missed(int demanded) {
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

inline const Warning* find(const std::vector<Warning>& warnings, std::string_view about,
                           Stated stated) {
  for (const Warning& each : warnings) {
    if (each.about == about && each.stated == stated) return &each;
  }
  return nullptr;
}

// The complaint as widened by the header's rule: without the commonest while fewer than kLikeThis.
inline InRecord widened(const Asked& asked, InRecord what) {
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

}  // namespace shoplore::testing
