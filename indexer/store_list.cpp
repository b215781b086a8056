// Lists of cases. The filter looks at the listed columns of case_ only; bodies are read for the
// cases shown. Rows come by walking ids downward until the page is full: a filter that few cases
// pass walks them all, which at 100,000 cases is some hundredths of a second.
#include <fmt/format.h>

#include <algorithm>

#include "indexer/store_connection.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

// The WHERE clause and what stands for its question marks.
struct Where {
  std::string sql;
  std::vector<std::string> texts;

  void equals(const char* column, const std::string& value) {
    if (value.empty()) return;
    sql += fmt::format(" AND c.{} = ?", column);
    texts.push_back(value);
  }
  void any_of(const char* column, const std::vector<std::string>& values) {
    if (values.empty()) return;
    sql += fmt::format(" AND c.{} IN (", column);
    for (const std::string& value : values) {
      sql += texts.empty() || sql.back() == '(' ? "?" : ", ?";
      texts.push_back(value);
    }
    sql += ")";
  }
  // Days as text sort as days; "" of a case that is not closed is before all.
  void since(const char* column, std::optional<Date> day) {
    if (!day) return;
    sql += fmt::format(" AND c.{} >= ?", column);
    texts.push_back(format_date(*day));
  }
};

Where where_of(const CaseListFilter& filter) {
  Where where;
  const auto& states = filter.states;
  const bool unfinished = !states.empty() && std::all_of(states.begin(), states.end(), [](auto s) {
    return s == CaseState::kOpen || s == CaseState::kWaiting;
  });
  // Said as the index says it, or SQLite does not see that the index will do.
  if (unfinished) where.sql += " AND c.state IN ('open', 'waiting')";
  std::vector<std::string> names;
  for (const CaseState state : states) names.emplace_back(name_of(state));
  where.any_of("state", names);
  where.equals("make", lower_case(filter.make));
  where.equals("engine_family", lower_case(filter.engine_family));
  where.any_of("component", filter.components);
  where.any_of("failure", filter.failures);
  if (!filter.vehicle.empty()) where.sql += " AND c.vehicle <> ''";
  where.equals("vehicle", filter.vehicle);
  where.since("opened", filter.opened_since);
  where.since("closed", filter.closed_since);
  return where;
}

}  // namespace

Result<std::vector<StoredCase>> Store::list(const CaseListFilter& filter, CaseId before,
                                            std::size_t limit) const {
  return impl_->guarded([&]() -> Result<std::vector<StoredCase>> {
    const Where where = where_of(filter);
    // CROSS JOIN keeps SQLite from beginning with the changes.
    SQLite::Statement select(
        impl_->database,
        "SELECT h.revision, h.case_id, h.at, h.role, h.body FROM case_ c CROSS JOIN change h "
        "WHERE c.id < ? AND h.revision = c.revision" +
            where.sql + " ORDER BY c.id DESC LIMIT ?");
    int place = 0;
    select.bind(++place, before.value == 0 ? INT64_MAX : std::int64_t{before.value});
    for (const std::string& text : where.texts) select.bind(++place, text);
    select.bind(++place, static_cast<std::int64_t>(limit));
    std::vector<StoredCase> cases;
    while (select.executeStep()) {
      auto stored = impl_->stored_case(change_of(select));
      if (!stored) return fail(stored.error());
      cases.push_back(std::move(*stored));
    }
    return cases;
  });
}

}  // namespace shoplore
