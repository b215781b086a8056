#include "api/cli/output_file.hpp"
#include "api/cli/print_repair_plan.hpp"
#include "api/cli/verbs.hpp"
#include "api/wire/approval_html.hpp"
#include "api/wire/repair_plan_json.hpp"

namespace shoplore {
namespace {

Result<ExitCode> write_approval(const std::string& file, const RepairPlan& plan,
                                const Records& records, Session& session) {
  const auto stored = records.store().read(plan.case_ref);
  if (!stored) return fail(stored.error());
  const auto page = approval_html(plan, stored->record, records.vocabulary());
  if (!page) return fail(page.error());
  if (file == "-") {
    session.out << *page;
    return ExitCode::kAnswered;
  }
  if (const auto written = write_output(file, *page); !written) return fail(written.error());
  session.out << "The customer's approval is in " << file << ", to be printed and signed.\n";
  return ExitCode::kAnswered;
}

}  // namespace

Result<ExitCode> run(const PlanOptions& options, Session& session) {
  const auto records = open_in_step(session);
  if (!records) return fail(records.error());
  const auto plan = on_snapshot(session.folder, [&](const Snapshot& snapshot) {
    return repair_plan(options.question, snapshot, records->store(), records->vocabulary(),
                       records->recogniser());
  });
  if (!plan) return fail(plan.error());
  if (!options.approval_file.empty()) {
    return write_approval(options.approval_file, *plan, *records, session);
  }
  session.out << (options.output == Output::kJson
                      ? repair_plan_json(*plan, records->vocabulary()) + "\n"
                      : print_repair_plan(*plan, records->vocabulary(), session.page));
  return plan->cases > 0 ? ExitCode::kAnswered : ExitCode::kNothingFound;
}

}  // namespace shoplore
