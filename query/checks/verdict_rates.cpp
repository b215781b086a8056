#include "query/checks/verdict_rates.hpp"

#include <algorithm>
#include <numeric>

namespace shoplore {
namespace {

using Counts = std::vector<std::uint32_t>;

std::uint32_t total(const Counts& counts) {
  return std::accumulate(counts.begin(), counts.end(), 0U);
}

bool starts(const std::string& attribute, std::string_view kind) {
  return attribute.starts_with(kind);
}

// Cases by cause of each answer; which value of a check is which answer.
struct Answered {
  std::vector<std::string> answers;
  std::vector<Counts> counts;
  std::uint32_t asked = 0;

  void add(const std::string& answer, const Counts& more) {
    asked += total(more);
    if (answer.empty()) return;
    const auto found = std::find(answers.begin(), answers.end(), answer);
    if (found == answers.end()) {
      answers.push_back(answer);
      counts.push_back(more);
      return;
    }
    Counts& sum = counts[static_cast<std::size_t>(found - answers.begin())];
    for (std::size_t c = 0; c < sum.size(); ++c) sum[c] += more[c];
  }
};

std::string answer_of(const std::string& attribute, const std::string& value) {
  if (!starts(attribute, "check:")) return value;
  if (value == "mixed") return "fail";
  return value == "unclear" ? "" : value;
}

// Asked and answered in all cases where it is known; a fact may have been unknown to whoever asked.
double answerable(const std::string& attribute, std::uint32_t answered, std::uint32_t asked,
                  std::uint32_t cases) {
  if (starts(attribute, "symptom:")) return 1;
  if (starts(attribute, "fact:")) return static_cast<double>(answered) / cases;
  return (answered + 1.0) / (asked + 1.0);
}

AnswerRates rates_of(const std::string& attribute, const Answered& answered, std::uint32_t cases,
                     double smoothing) {
  AnswerRates out{attribute, answered.answers, {}, 1, answered.asked};
  const std::size_t causes = answered.counts.front().size();
  Counts known(causes);
  for (const Counts& counts : answered.counts) {
    for (std::size_t c = 0; c < causes; ++c) known[c] += counts[c];
  }
  const std::uint32_t all = total(known);
  out.answerable = answerable(attribute, all, answered.asked, cases);
  const auto kinds = static_cast<double>(answered.answers.size());
  for (const Counts& counts : answered.counts) {
    const double everywhere = (total(counts) + 0.5) / (all + kinds / 2);
    std::vector<double> rates;
    for (std::size_t c = 0; c < causes; ++c) {
      rates.push_back((counts[c] + smoothing * everywhere) / (known[c] + smoothing));
    }
    rates.push_back(everywhere);
    out.rates.push_back(std::move(rates));
  }
  return out;
}

bool is_question(const std::string& attribute) {
  return starts(attribute, "check:") || starts(attribute, "symptom:") || starts(attribute, "fact:");
}

}  // namespace

Result<std::vector<AnswerRates>> answer_rates(const CaseCounter& counter, double smoothing) {
  const auto items = counter.stored_items();
  if (!items) return fail(items.error());
  const auto seen = counter.by_cause({});
  if (!seen) return fail(seen.error());
  const std::uint32_t cases = total(*seen);
  std::vector<AnswerRates> out;
  for (std::size_t i = 0; i < items->size();) {
    const std::string& attribute = (*items)[i].attribute;
    Answered answered;
    for (; i < items->size() && (*items)[i].attribute == attribute; ++i) {
      if (!is_question(attribute)) continue;
      const auto counts = counter.by_cause({{(*items)[i]}, {}, {}});
      if (!counts) return fail(counts.error());
      answered.add(answer_of(attribute, (*items)[i].value), *counts);
    }
    // With one answer only there is nothing to tell apart.
    if (answered.asked < kFewestAsked || answered.answers.size() < 2) continue;
    out.push_back(rates_of(attribute, answered, cases, smoothing));
  }
  return out;
}

}  // namespace shoplore
