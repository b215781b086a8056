// A counter tells how many were closed since a day; a month is the difference of two such counts.
#include "query/lately/monthly_counts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <tuple>

namespace shoplore {
namespace {

using std::chrono::year_month;
using Counts = std::vector<std::uint32_t>;

Date first_day(year_month month) {
  return {std::chrono::sys_days{month / 1}};
}

std::uint32_t sum(const Counts& counts) {
  return std::accumulate(counts.begin(), counts.end(), std::uint32_t{0});
}

// Cases by cause, month by month, of those with the engine family ("": all).
struct CountsOfFamily {
  std::vector<Counts> by_month;  // month, then cause
  Counts earlier;
};

class Counting {
 public:
  Counting(const CaseCounter& counter, year_month after) : counter_(counter), after_(after) {}

  // Of the months from `first` to the one before `after`; from the earliest that has a case and at
  // most kMostMonths when `first` is none.
  Result<CountsOfFamily> count(const std::string& family, std::optional<std::size_t> months) const {
    const auto all = since(family, std::nullopt);
    auto later = since(family, after_);
    if (!all || !later) return fail(all ? later.error() : all.error());
    CountsOfFamily counted;
    for (std::size_t back = 1; back <= months.value_or(kMostMonths); ++back) {
      if (!months && sum(*later) == sum(*all)) break;
      auto from = since(family, after_ - std::chrono::months(static_cast<int>(back)));
      if (!from) return fail(from.error());
      counted.by_month.push_back(difference(*from, *later));
      later = std::move(from);
    }
    std::reverse(counted.by_month.begin(), counted.by_month.end());
    counted.earlier = difference(*all, *later);
    return counted;
  }

 private:
  static Counts difference(const Counts& more, const Counts& less) {
    Counts rest(more.size());
    std::transform(more.begin(), more.end(), less.begin(), rest.begin(), std::minus<>());
    return rest;
  }

  Result<Counts> since(const std::string& family, std::optional<year_month> month) const {
    CountQuestion question;
    if (!family.empty()) question.all_of.push_back({"engine_family", family});
    if (month) question.filter.closed_since = first_day(*month);
    return counter_.by_cause(question);
  }

  const CaseCounter& counter_;
  year_month after_;
};

// One series a cause that was met, by key.
std::vector<CountSeries> series_of(const CountsOfFamily& counted, const CauseTable& causes,
                                   const std::string& family) {
  std::vector<CountSeries> all;
  for (CauseNumber cause = 0; cause < causes.size(); ++cause) {
    CountSeries series{causes.key(cause), family, {}, counted.earlier[cause]};
    for (const Counts& month : counted.by_month) series.by_month.push_back(month[cause]);
    if (series.earlier + sum(series.by_month) > 0) all.push_back(std::move(series));
  }
  std::sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.cause < b.cause; });
  return all;
}

CountSeries total_of(const CountsOfFamily& counted, const std::string& family) {
  CountSeries total{"", family, {}, sum(counted.earlier)};
  for (const Counts& month : counted.by_month) total.by_month.push_back(sum(month));
  return total;
}

// Says when the first case was closed. Requires: some case, and none before that month.
Error too_early(const CaseCounter& counter, year_month month, Date as_of) {
  const auto closed_before = [&](year_month end) {
    CountQuestion question;
    const auto all = counter.by_cause(question);
    question.filter.closed_since = first_day(end);
    const auto later = counter.by_cause(question);
    return !all || !later || sum(*all) > sum(*later);
  };
  while (!closed_before(month + std::chrono::months(1))) month += std::chrono::months(1);
  return {ErrorCode::kInvalidInput, "as of",
          fmt::format("no month with a case had ended by {}: the first case was closed in {}",
                      format_date(as_of), month_text(month))};
}

Result<std::vector<std::string>> engine_families(const CaseCounter& counter) {
  const auto items = counter.stored_items();
  if (!items) return fail(items.error());
  std::vector<std::string> families;
  for (const EvidenceItem& item : *items) {
    if (item.attribute == "engine_family") families.push_back(item.value);
  }
  return families;
}

}  // namespace

std::string month_text(year_month month) {
  return format_date(first_day(month)).substr(0, 7);
}

year_month last_whole_month(Date day) {
  const std::chrono::year_month_day tomorrow{day.days + std::chrono::days(1)};
  return year_month{tomorrow.year(), tomorrow.month()} - std::chrono::months(1);
}

Result<MonthlyCounts> monthly_counts(const CaseCounter& counter, Date as_of) {
  const year_month after = last_whole_month(as_of) + std::chrono::months(1);
  const Counting counting(counter, after);
  const auto all = counting.count("", std::nullopt);
  if (!all) return fail(all.error());
  MonthlyCounts counts;
  if (all->by_month.empty() && sum(all->earlier) > 0) return fail(too_early(counter, after, as_of));
  if (all->by_month.empty()) return counts;
  counts.first = after - std::chrono::months(static_cast<int>(all->by_month.size()));
  counts.cases = total_of(*all, "").by_month;
  counts.causes = series_of(*all, counter.causes(), "");
  const auto families = engine_families(counter);
  if (!families) return fail(families.error());
  for (const std::string& family : *families) {
    const auto counted = counting.count(family, counts.months());
    if (!counted) return fail(counted.error());
    CountSeries total = total_of(*counted, family);
    if (total.earlier + sum(total.by_month) == 0) continue;
    counts.families.push_back(std::move(total));
    for (CountSeries& pair : series_of(*counted, counter.causes(), family)) {
      counts.pairs.push_back(std::move(pair));
    }
  }
  std::sort(counts.pairs.begin(), counts.pairs.end(), [](const auto& a, const auto& b) {
    return std::tie(a.cause, a.engine_family) < std::tie(b.cause, b.engine_family);
  });
  return counts;
}

}  // namespace shoplore
