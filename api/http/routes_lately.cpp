#include "api/http/metrics.hpp"
#include "api/http/routes.hpp"

namespace shoplore {

Reply get_lately(LiveRecords& records, const Incoming&) {
  const auto kept = records.lately();
  if (!kept) return refusal(kept.error());
  return {200, "application/json", kept->json};
}

Reply get_metrics(LiveRecords& records, const Incoming&) {
  const auto health = records.health();
  if (!health) return refusal(health.error(), 503);
  return {200, kMetricsType,
          metrics_text(*health, records.requests().all(), records.lately_as_kept())};
}

}  // namespace shoplore
