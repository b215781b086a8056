#include "query/watch_out/contributing_causes.hpp"

#include <fmt/format.h>

#include "query/fix_counts.hpp"
#include "query/watch_out/at_stake.hpp"
#include "query/watch_out/stands_out.hpp"

namespace shoplore {
namespace {

Result<std::optional<Warning>> behind(const LikelyRow& likely, const ItemByCause& other,
                                      std::uint32_t seen, const WatchQuestion& question) {
  const auto with = question.counter.by_cause({{other.item}, question.filter});
  if (!with) return fail(with.error());
  const std::uint32_t count = (*with)[likely.number];
  const Others others{other.total - other.cases[likely.number],
                      total(question.basis.seen) - question.basis.seen[likely.number]};
  if (!stands_out(count, seen, others.rate())) return std::optional<Warning>{};
  Warning warning;
  warning.kind = WarningKind::kContributingCause;
  warning.about = id_of_attribute(other.item.attribute);
  warning.cause = likely.key();
  warning.share = share_of(count, seen);
  warning.minutes = minutes_of_cause(warning.about, question.figures);
  warning.how_often = likely.row.probability * count / static_cast<double>(seen);
  warning.text = fmt::format(
      "{}: in {} of {} cases {} had helped to bring it about ({}); look there too, or it may come "
      "back",
      display_cause_key(warning.cause, question.vocabulary), count, seen,
      display_cause_key(warning.about, question.vocabulary), interval_text(warning.share));
  auto cases = cases_behind({{other.item}, question.filter}, likely.number, question.counter);
  if (!cases) return fail(cases.error());
  warning.cases = std::move(*cases);
  return std::optional(std::move(warning));
}

}  // namespace

Result<std::vector<Warning>> warn_of_contributing_causes(const WatchQuestion& question) {
  std::vector<Warning> warnings;
  const auto rows = likely_rows(question);
  if (rows.empty()) return warnings;
  const auto seen = question.counter.by_cause({{}, question.filter});
  if (!seen) return fail(seen.error());
  for (const LikelyRow& likely : rows) {
    for (const ItemByCause& other : question.basis.contributing) {
      if (other.cases[likely.number] < kFewestWarned) continue;
      auto warning = behind(likely, other, (*seen)[likely.number], question);
      if (!warning) return fail(warning.error());
      if (*warning) warnings.push_back(std::move(**warning));
    }
  }
  return warnings;
}

}  // namespace shoplore
