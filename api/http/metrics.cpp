#include "api/http/metrics.hpp"

#include <fmt/format.h>

namespace shoplore {
namespace {

// The two comment lines before the samples of a metric.
std::string about(const char* name, const char* kind, const char* meaning) {
  return fmt::format("# HELP {0} {2}\n# TYPE {0} {1}\n", name, kind, meaning);
}

std::string gauge(const char* name, const char* meaning, std::int64_t value) {
  return about(name, "gauge", meaning) + fmt::format("{} {}\n", name, value);
}

}  // namespace

// Label values need no escaping: methods and routes are our own words.
std::string metrics_text(const LiveRecords::Health& health,
                         const std::map<RequestKind, std::uint64_t>& requests,
                         const std::optional<KeptLately>& lately) {
  std::string text = gauge("shoplore_cases", "Counted cases in answers.", health.counted);
  text += gauge("shoplore_records_revision", "Latest revision recorded.", health.records.value);
  text += gauge("shoplore_index_lag_revisions", "Revisions recorded and not yet answered from.",
                health.records.value - health.snapshot.value);
  text += gauge("shoplore_index_follows", "1 while the index follows the records.",
                health.trouble.empty() ? 1 : 0);
  text += about("shoplore_requests_total", "counter", "Requests answered.");
  for (const auto& [kind, count] : requests) {
    text +=
        fmt::format("shoplore_requests_total{{method=\"{}\",route=\"{}\",status=\"{}xx\"}} {}\n",
                    kind.method, kind.route, kind.status_class, count);
  }
  if (!lately) return text;
  text += about("shoplore_lately_changes", "gauge",
                "Failures and pairings seen more or less often lately.");
  text += fmt::format("shoplore_lately_changes{{change=\"risen\"}} {}\n", lately->risen);
  text += fmt::format("shoplore_lately_changes{{change=\"fallen\"}} {}\n", lately->fallen);
  return text + gauge("shoplore_lately_pairings",
                      "Failures on an engine family they were never seen on before.",
                      lately->pairings);
}

}  // namespace shoplore
