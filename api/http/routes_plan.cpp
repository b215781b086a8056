#include <fmt/format.h>

#include "api/http/routes.hpp"
#include "api/wire/approval_html.hpp"
#include "api/wire/repair_plan_json.hpp"

namespace shoplore {

namespace {

// Places as these routes' callers know them.
Reply refused(Error error) {
  for (const std::string_view name : {"cause", "make", "engine_family", "vehicle", "open"}) {
    if (error.place != name) continue;
    error.place = fmt::format("?{}", name);
    break;
  }
  return refusal(error);
}

}  // namespace

Reply get_plan(LiveRecords& records, const Incoming& request) {
  QueryReader query(request.query);
  PlanQuestion question;
  question.cause = query.text("cause");
  question.vehicle = {query.text("make"), query.text("engine_family"), query.text("vehicle")};
  question.case_ref = query.text("case");
  for (std::string& id : request.query.all("open")) question.open.insert(std::move(id));
  if (const auto read = query.finish(); !read) return refusal(read.error());
  const auto plan = records.plan(question);
  if (!plan) return refused(plan.error());
  return {200, "application/json", repair_plan_json(*plan, records.vocabulary())};
}

Reply get_approval(LiveRecords& records, const Incoming& request) {
  QueryReader query(request.query);
  PlanQuestion question;
  question.cause = query.text("cause");
  question.case_ref = request.parts[0];
  if (const auto read = query.finish(); !read) return refusal(read.error());
  const auto stored = records.read(question.case_ref);
  if (!stored) return refused(stored.error());
  const auto plan = records.plan(question);
  if (!plan) return refused(plan.error());
  const auto page = approval_html(*plan, stored->record, records.vocabulary());
  if (!page) return refused(page.error());
  return {200, "text/html", *page};
}

}  // namespace shoplore
