#include "query/ranking/knob_fit.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>

#include "query/ranking/knob_descent.hpp"

namespace shoplore {
namespace {

constexpr std::array<double, 3> kHidden{0, .5, .75};
constexpr std::size_t kCasesForSmoothing = 600;
const std::vector<double> kSmoothing{.1, .5, 2, 6};

using Cases = std::vector<const PastCase*>;
using Questions = std::vector<FitQuestion>;

Cases draw(const std::vector<PastCase>& cases, std::mt19937_64& random) {
  Cases drawn;
  for (const PastCase& past : cases) {
    if (past.seen > 1 && !past.questions.empty()) drawn.push_back(&past);
  }
  std::shuffle(drawn.begin(), drawn.end(), random);
  if (drawn.size() > kMostCasesAsked) drawn.resize(kMostCasesAsked);
  return drawn;
}

// Puts the questions to the records. What counts of one question name, every case that holds an
// item, would not fit into memory for all questions at once: only what is made of it is kept.
class Asking {
 public:
  Asking(const RankingModel& model, const Recogniser* recogniser, std::mt19937_64& random)
      : model_(model), recogniser_(recogniser), random_(random) {}

  // The same questions once a smoothing.
  Result<std::vector<Questions>> ask(const Cases& cases, const std::vector<double>& smoothings) {
    std::vector<Questions> asked(smoothings.size());
    for (const PastCase* past : cases) {
      const PastQuestion question = question_of(*past, recogniser_);
      for (const double hidden : kHidden) {
        const auto items = some_of(question, hidden, random_);
        const auto counts = model_.count(items, {}, past->stated);
        if (!counts) return fail(counts.error());
        for (std::size_t i = 0; i < smoothings.size(); ++i) {
          asked[i].push_back(fit_question(*counts, past->stated.cause, smoothings[i]));
        }
        const RankingKnobs start;
        start_loss_ +=
            log_loss({fit_question(*counts, past->stated.cause, start.smoothing)}, start);
      }
    }
    return asked;
  }

  // Summed over all questions asked so far, at the start values.
  [[nodiscard]] double start_loss() const { return start_loss_; }

 private:
  static FitQuestion fit_question(const QuestionCounts& counts, CauseNumber truth,
                                  double smoothing) {
    return {columns_of(counts, smoothing), counts.seen, priors_of(counts.seen), counts.items.size(),
            truth};
  }

  const RankingModel& model_;
  const Recogniser* recogniser_;
  std::mt19937_64& random_;
  double start_loss_ = 0;
};

RankingKnobs starting_at(double smoothing) {
  RankingKnobs knobs;
  knobs.smoothing = smoothing;
  return knobs;
}

std::size_t best_smoothing(const std::vector<Questions>& asked) {
  std::vector<double> values;
  for (std::size_t i = 0; i < asked.size(); ++i) {
    values.push_back(
        fit_objective(asked[i], descend(asked[i], starting_at(kSmoothing[i])), nullptr));
  }
  return static_cast<std::size_t>(std::min_element(values.begin(), values.end()) - values.begin());
}

}  // namespace

Result<KnobFit> fit_knobs(const RankingModel& model, const std::vector<PastCase>& cases,
                          std::uint64_t seed, const Recogniser* recogniser) {
  KnobFit fit;
  if (cases.size() < kFewestCasesToFit) return fit;
  std::mt19937_64 random(seed);
  const Cases drawn = draw(cases, random);
  if (drawn.empty()) return fit;
  const auto middle =
      drawn.begin() + static_cast<std::ptrdiff_t>(std::min(drawn.size(), kCasesForSmoothing));
  Asking asking(model, recogniser, random);
  auto trial = asking.ask({drawn.begin(), middle}, kSmoothing);
  if (!trial) return fail(trial.error());
  const std::size_t best = best_smoothing(*trial);
  Questions questions = std::move((*trial)[best]);
  trial->clear();  // the other smoothings' are as large
  auto rest = asking.ask({middle, drawn.end()}, {kSmoothing[best]});
  if (!rest) return fail(rest.error());
  std::move(rest->front().begin(), rest->front().end(), std::back_inserter(questions));
  fit.questions = drawn.size();
  fit.start_log_loss = asking.start_loss() / static_cast<double>(questions.size());
  fit.knobs = descend(questions, starting_at(kSmoothing[best]));
  fit.knobs.sureness = balanced_sureness(questions, fit.knobs);
  fit.log_loss = log_loss(questions, fit.knobs);
  return fit;
}

}  // namespace shoplore
