// Each case is judged at three levels; rows are the same judgements sorted into heaps.
#include "query/track_record.hpp"

#include <algorithm>
#include <future>
#include <map>
#include <set>

#include "query/ranking/knob_fit.hpp"

namespace shoplore {
namespace {

using CaseJudged = std::array<std::vector<Judged>, 3>;

struct JudgedCase {
  const PastCase* past = nullptr;
  CaseJudged levels;
};

Result<CaseJudged> judge_case(const RankingModel& model, const PastCase& past,
                              const std::optional<LeftOut>& left_out,
                              const TrackRecordOptions& options) {
  CaseJudged judged;
  const PastQuestion question = question_of(past, options.recogniser);
  // By the case's own number, so that what is hidden does not hang on who asks first.
  std::mt19937_64 random(options.seed * 1'000'003 + past.stated.id.value);
  for (std::size_t level = 0; level < judged.size(); ++level) {
    const std::size_t draws = kHiddenLevels[level] > 0 ? options.draws : 1;
    for (std::size_t draw = 0; draw < draws; ++draw) {
      const auto items = some_of(question, kHiddenLevels[level], random);
      const auto probabilities = model.probabilities(items, {}, left_out);
      if (!probabilities) return fail(probabilities.error());
      judged[level].push_back(judge(*probabilities, past.stated.cause));
    }
  }
  return judged;
}

using Cases = std::vector<const PastCase*>;
enum class Asked { kLeftOut, kNeverSeen };

Result<std::vector<JudgedCase>> judge_each(const RankingModel& model, const Cases& cases,
                                           std::size_t first, std::size_t step, Asked asked,
                                           const TrackRecordOptions& options) {
  std::vector<JudgedCase> out;
  for (std::size_t i = first; i < cases.size(); i += step) {
    const std::optional<LeftOut> left_out =
        asked == Asked::kLeftOut ? std::optional(cases[i]->stated) : std::nullopt;
    auto judged = judge_case(model, *cases[i], left_out, options);
    if (!judged) return fail(judged.error());
    out.push_back({cases[i], *judged});
  }
  return out;
}

// On two threads.
Result<std::vector<JudgedCase>> judge_all(const RankingModel& model, const Cases& cases,
                                          Asked asked, const TrackRecordOptions& options) {
  auto other = std::async(std::launch::async,
                          [&] { return judge_each(model, cases, 1, 2, asked, options); });
  auto judged = judge_each(model, cases, 0, 2, asked, options);
  auto rest = other.get();
  if (!judged) return judged;
  if (!rest) return rest;
  judged->insert(judged->end(), rest->begin(), rest->end());
  return judged;
}

Result<std::vector<JudgedCase>> judge_fold(const Ledger& ledger, const Cases& all,
                                           const std::vector<PastCase>& cases,
                                           const std::set<CaseId>& tested,
                                           const TrackRecordOptions& options) {
  const Ledger rest = ledger.without(tested);
  const auto seen = rest.by_cause({});
  if (!seen) return fail(seen.error());
  std::vector<PastCase> training;
  for (PastCase past : cases) {
    if (tested.contains(past.stated.id)) continue;
    past.seen = (*seen)[past.stated.cause];
    training.push_back(std::move(past));
  }
  auto model = RankingModel::of(rest, {});
  if (!model) return fail(model.error());
  const auto fit = fit_knobs(*model, training, options.seed, options.recogniser);
  if (!fit) return fail(fit.error());
  model->set_knobs(fit->knobs);
  Cases asked;
  for (const PastCase* past : all) {
    if (tested.contains(past->stated.id)) asked.push_back(past);
  }
  return judge_all(*model, asked, Asked::kNeverSeen, options);
}

Result<std::vector<JudgedCase>> judge_in_folds(const Ledger& ledger, const Cases& all,
                                               const std::vector<PastCase>& cases,
                                               const TrackRecordOptions& options) {
  Cases order = all;
  std::mt19937_64 random(options.seed);
  std::shuffle(order.begin(), order.end(), random);
  std::stable_sort(order.begin(), order.end(), [](const PastCase* a, const PastCase* b) {
    return a->stated.cause < b->stated.cause;
  });
  std::vector<JudgedCase> judged;
  for (std::size_t fold = 0; fold < options.folds; ++fold) {
    std::set<CaseId> tested;
    for (std::size_t i = fold; i < order.size(); i += options.folds) {
      tested.insert(order[i]->stated.id);
    }
    auto part = judge_fold(ledger, order, cases, tested, options);
    if (!part) return part;
    judged.insert(judged.end(), part->begin(), part->end());
  }
  return judged;
}

TrackRecordRow row_of(std::string name, const std::vector<const JudgedCase*>& cases) {
  TrackRecordRow row{std::move(name), {}};
  for (std::size_t level = 0; level < row.levels.size(); ++level) {
    std::vector<Judged> judged;
    for (const JudgedCase* each : cases) {
      judged.insert(judged.end(), each->levels[level].begin(), each->levels[level].end());
    }
    row.levels[level] = scores_of(judged);
  }
  return row;
}

// Sorted by the key's order.
template <class Key, class KeyOf, class NameOf>
std::vector<TrackRecordRow> rows_by(const std::vector<JudgedCase>& judged, KeyOf key_of,
                                    NameOf name_of) {
  std::map<Key, std::vector<const JudgedCase*>> heaps;
  for (const JudgedCase& each : judged) heaps[key_of(*each.past)].push_back(&each);
  std::vector<TrackRecordRow> rows;
  for (const auto& [key, cases] : heaps) rows.push_back(row_of(name_of(key), cases));
  return rows;
}

// How many other cases of its cause there are: 0, 1 to 3, 4 to 10, 11 to 30, more.
constexpr std::array<std::uint32_t, 4> kSeenSteps{0, 3, 10, 30};
std::size_t seen_step(const PastCase& past) {
  const std::uint32_t others = past.seen - 1;
  std::size_t step = 0;
  while (step < kSeenSteps.size() && others > kSeenSteps[step]) ++step;
  return step;
}

std::string seen_name(std::size_t step) {
  if (step == 0) return "no other";
  if (step == kSeenSteps.size()) return "more than " + std::to_string(kSeenSteps.back());
  return std::to_string(kSeenSteps[step - 1] + 1) + " to " + std::to_string(kSeenSteps[step]);
}

}  // namespace

Result<TrackRecord> track_record(const Ledger& ledger, const RankingModel& model,
                                 const std::vector<PastCase>& cases,
                                 const TrackRecordOptions& options) {
  Cases asked;
  for (const PastCase& past : cases) {
    if (!past.questions.empty()) asked.push_back(&past);
  }
  const auto judged = options.folds == 0 ? judge_all(model, asked, Asked::kLeftOut, options)
                                         : judge_in_folds(ledger, asked, cases, options);
  if (!judged) return fail(judged.error());
  TrackRecord record;
  record.cases = asked.size();
  std::vector<const JudgedCase*> all;
  for (const JudgedCase& each : *judged) {
    all.push_back(&each);
    record.only_of_their_cause += each.past->seen == 1 ? 1U : 0U;
  }
  record.all = row_of("all", all);
  record.by_family = rows_by<std::string>(
      *judged, [](const PastCase& past) { return past.engine_family; },
      [](const std::string& key) { return key.empty() ? std::string("not written down") : key; });
  std::stable_sort(
      record.by_family.begin(), record.by_family.end(),
      [](const auto& a, const auto& b) { return a.levels[0].questions > b.levels[0].questions; });
  record.by_seen = rows_by<std::size_t>(*judged, seen_step, seen_name);
  record.by_year = rows_by<int>(
      *judged, [](const PastCase& past) { return past.closed_year; },
      [](int year) { return std::to_string(year); });
  return record;
}

}  // namespace shoplore
