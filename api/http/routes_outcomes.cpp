#include "api/http/once.hpp"
#include "api/http/routes.hpp"
#include "api/wire/outcomes_json.hpp"

namespace shoplore {

namespace {

constexpr std::int64_t kMaxDue = 200;
constexpr std::int64_t kDefaultDue = 50;

}  // namespace

Reply get_comeback(LiveRecords& records, const Incoming& request) {
  const auto stored = records.read(request.parts[0]);
  if (!stored) return refusal(stored.error());
  const auto offers = records.comebacks(stored->record);
  if (!offers) return refusal(offers.error());
  return {200, "application/json",
          comeback_json(stored->record.ref, *offers, records.vocabulary())};
}

Reply post_outcome(LiveRecords& records, const Incoming& request) {
  return once(records, request, 200, [&](const std::optional<Receipt>& receipt) {
    const auto report = outcome_report_from_json(request.body);
    if (!report) return refusal(report.error());
    const auto now = records.read(request.parts[0]);
    if (!now) return refusal(now.error());
    const auto demanded = demanded_revision(request, *now);
    if (!demanded) return demanded.error();
    const auto recorded = records.record_outcome(now->record.ref, *demanded, *report, receipt);
    if (!recorded) return refused_change(request, recorded.error(), now->record.ref);
    return recorded_reply(200, *recorded);
  });
}

Reply get_outcomes_due(LiveRecords& records, const Incoming& request) {
  QueryReader query(request.query);
  const auto limit = query.whole("limit", 1, kMaxDue).value_or(kDefaultDue);
  if (const auto read = query.finish(); !read) return refusal(read.error());
  const auto due = records.due(static_cast<std::size_t>(limit));
  if (!due) return refusal(due.error());
  return {200, "application/json", outcomes_due_json(*due, records.vocabulary())};
}

}  // namespace shoplore
