#include "api/http/routes.hpp"
#include "api/wire/mileage_json.hpp"
#include "api/wire/mileage_plot.hpp"
#include "api/wire/svg_plot.hpp"

namespace shoplore {

namespace {

Result<FailureMileage> asked(const LiveRecords& records, const Incoming& request) {
  QueryReader query(request.query);
  const MileageQuestion question{query.text("cause"),
                                 {query.text("make"), query.text("engine_family")}};
  if (const auto read = query.finish(); !read) return fail(read.error());
  if (question.cause.empty()) {
    return fail(ErrorCode::kInvalidInput, "?cause", "is missing: name a part and how it failed");
  }
  return records.mileage(question);
}

}  // namespace

Reply get_mileage(LiveRecords& records, const Incoming& request) {
  const auto answer = asked(records, request);
  if (!answer) return refusal(answer.error());
  return {200, "application/json", mileage_json(*answer)};
}

Reply get_mileage_picture(LiveRecords& records, const Incoming& request) {
  const auto answer = asked(records, request);
  if (!answer) return refusal(answer.error());
  return {200, kSvgType, svg_of(mileage_plot(*answer, records.vocabulary()))};
}

}  // namespace shoplore
