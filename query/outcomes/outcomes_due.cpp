#include "query/outcomes/outcomes_due.hpp"

#include <algorithm>
#include <tuple>

#include "query/outcomes/fix_lives.hpp"

namespace shoplore {
namespace {

bool is_due(const FixLife& life, Date today) {
  if (life.end != FixEnd::kNotHeardOf) return false;
  const Date last = std::max(life.done, life.asked.value_or(life.done));
  return today.days - last.days >= kDueAfter;
}

}  // namespace

Result<OutcomesDue> outcomes_due(const Store& store, const Vocabulary& vocabulary, Date today,
                                 std::size_t limit) {
  const auto histories = vehicle_histories(store, vocabulary);
  if (!histories) return fail(histories.error());
  std::vector<FixLife> lives = fix_lives(*histories);
  std::erase_if(lives, [&](const FixLife& life) { return !is_due(life, today); });
  std::sort(lives.begin(), lives.end(), [](const FixLife& a, const FixLife& b) {
    return std::tie(b.done, b.id) < std::tie(a.done, a.id);
  });
  OutcomesDue due;
  due.all = lives.size();
  for (std::size_t i = 0; i < std::min(limit, lives.size()); ++i) {
    const FixLife& life = lives[i];
    auto stored = store.read(life.id);
    if (!stored) return fail(stored.error());
    due.cases.push_back({life.ref, stored->record.job_number, std::move(stored->record.vehicle),
                         life.cause, life.fixes, life.done, today.days - life.done.days,
                         life.asked});
  }
  return due;
}

}  // namespace shoplore
