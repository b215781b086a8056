// Prices are rounded outwards to whole tens: a range that looks exact would be taken for a promise.
#include "api/wire/approval_html.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "api/wire/markup_text.hpp"
#include "indexer/case_keys.hpp"

namespace shoplore {
namespace {

// A part taken in fewer of the alike repairs than this is not announced.
constexpr double kUsualPart = 0.5;

constexpr std::string_view kBegin = R"(<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>Approval of a repair</title>
<style>
body { font: 12pt/1.4 serif; color: #000; background: #fff; max-width: 42em; margin: 2em auto;
  padding: 0 1em; overflow-wrap: break-word; }
h1 { font-size: 1.5em; border-bottom: 2px solid #000; padding-bottom: .2em; }
h2 { font-size: 1.1em; margin: 1.2em 0 .2em; break-after: avoid; }
p, ul, table { margin: .2em 0; }
th { text-align: left; font-weight: normal; padding-right: 1em; vertical-align: top; }
td { font-weight: bold; }
.line { display: inline-block; border-bottom: 1px solid #000; min-width: 14em; }
.box { display: inline-block; width: .9em; height: .9em; border: 1.5px solid #000;
  margin-right: .5em; vertical-align: -.1em; }
.price { font-size: 1.2em; font-weight: bold; }
.answer { break-inside: avoid; border: 2px solid #000; padding: .5em 1em 1em; margin-top: 1.5em; }
.answer p { margin-top: .8em; }
@page { margin: 2cm; }
@media print { body { margin: 0; padding: 0; max-width: none; } }
</style>
</head>
<body>
<h1>Approval of a repair</h1>
)";

constexpr std::string_view kWhatMayChange = R"(<h2>What could change it</h2>
<ul>
<li>Bolts and screws may be seized or break, and more damage may show once it is open.</li>
<li>Parts may be dearer, cheaper or hard to get on the day.</li>
<li>The work may show that something else is at fault as well.</li>
</ul>
<p>If it comes to more than this, or to other work, we ask you first.</p>
)";

constexpr std::string_view kAnswer = R"(<div class="answer">
<h2>Your answer</h2>
<p><span class="box"></span>Yes, do this work.</p>
<p><span class="box"></span>No, do not do it.</p>
<p>Name <span class="line"></span></p>
<p>Date <span class="line"></span></p>
<p>Signature <span class="line"></span></p>
</div>
</body>
</html>
)";

std::string lower_ten(double value) {
  return fmt::format("{:.0f}", std::floor(value / 10) * 10);
}
std::string upper_ten(double value) {
  return fmt::format("{:.0f}", std::ceil(value / 10) * 10);
}

class ApprovalPage {
 public:
  ApprovalPage(const RepairPlan& plan, const Case& record, const Vocabulary& vocabulary)
      : plan_(plan), case_(record), vocabulary_(vocabulary) {}

  std::string html() {
    out_ = kBegin;
    vehicle();
    if (!case_.complaint.empty()) {
      heading("What you told us");
      paragraph(case_.complaint);
    }
    checks();
    heading("What we take to be wrong");
    paragraph(display_cause(plan_.cause.component, plan_.cause.failure, vocabulary_));
    work();
    safety();
    parts();
    estimate();
    out_ += kWhatMayChange;
    out_ += kAnswer;
    return std::move(out_);
  }

 private:
  void heading(std::string_view text) { out_ += fmt::format("<h2>{}</h2>\n", text); }
  void paragraph(std::string_view text) { out_ += fmt::format("<p>{}</p>\n", markup_text(text)); }
  void list(const std::vector<std::string>& lines) {
    out_ += "<ul>\n";
    for (const std::string& line : lines) out_ += fmt::format("<li>{}</li>\n", markup_text(line));
    out_ += "</ul>\n";
  }

  std::string vehicle_name() const {
    std::vector<std::string> names;
    if (case_.vehicle.model_year) names.push_back(std::to_string(*case_.vehicle.model_year));
    for (const std::string& name : {case_.vehicle.make, case_.vehicle.model}) {
      if (!name.empty()) names.push_back(name);
    }
    return fmt::format("{}", fmt::join(names, " "));
  }

  void vehicle() {
    out_ += "<table>\n";
    const auto row = [&](std::string_view label, const std::string& value) {
      out_ +=
          fmt::format("<tr><th>{}</th><td>{}</td></tr>\n", label,
                      value.empty() ? "<span class=\"line\">&nbsp;</span>" : markup_text(value));
    };
    row("Job number", case_.job_number);
    row("Vehicle", vehicle_name());
    if (case_.vehicle.mileage_km) {
      row("Mileage", thousands(case_.vehicle.mileage_km->value) + " km");
    }
    row("Registration", "");
    row("Customer", "");
    out_ += "</table>\n";
  }

  static std::string verdict_text(Verdict verdict) {
    switch (verdict) {
      case Verdict::kPass:
        return "in order";
      case Verdict::kFail:
        return "not in order";
      case Verdict::kUnclear:
        return "could not be told for certain";
    }
    return "";
  }

  void checks() {
    if (case_.checks.empty()) return;
    heading("What we checked");
    std::vector<std::string> lines;
    for (const Check& check : case_.checks) {
      std::string line = vocabulary_.display_name(EntryKind::kCheck, check.id) + ": " +
                         verdict_text(check.verdict);
      if (check.reading && check.reading->number) {
        line += fmt::format(" ({:g}{}{})", *check.reading->number, check.unit.empty() ? "" : " ",
                            check.unit);
      }
      lines.push_back(std::move(line));
    }
    list(lines);
  }

  void work() {
    heading("What we propose");
    std::vector<std::string> lines;
    for (const std::string& fix : proposed_in_order(plan_)) {
      lines.push_back(display_fix(fix, vocabulary_));
    }
    list(lines);
  }

  // Said in writing where the plan's cautions ask for it.
  void safety() {
    const bool in_doubt =
        std::any_of(plan_.cautions.begin(), plan_.cautions.end(),
                    [](const Caution& caution) { return caution.id == "unsafe_to_drive"; });
    if (!in_doubt) return;
    heading("Safety");
    paragraph(
        "Brakes or steering are in doubt: the vehicle is not to be driven until this work is done "
        "and proved.");
  }

  void parts() {
    std::vector<std::string> lines;
    for (const PartUsed& part : plan_.parts.parts) {
      if (part.component.empty() || part.cases < kUsualPart * plan_.parts.out_of) continue;
      const std::string quantity =
          part.usual_quantity == 1 ? "" : fmt::format("{:g} × ", part.usual_quantity);
      lines.push_back(quantity + part.name);
    }
    if (lines.empty()) return;
    heading("Parts");
    list(lines);
  }

  // Only of the same work: what other repairs of this cause cost says nothing of this one.
  const Spread* spread_of(WorkFigure figure) const {
    for (const WorkSpread& work : plan_.work) {
      const bool usable = work.figure == figure && work.work == WorkAlike::kSameFixes;
      if (usable && work.spread) return &*work.spread;
    }
    return nullptr;
  }

  void estimate() {
    heading("What it may cost (an estimate)");
    const Spread* cost = spread_of(WorkFigure::kCost);
    if (cost == nullptr) {
      paragraph("We cannot estimate this from earlier work. We tell you a price before we begin.");
    } else {
      out_ += fmt::format("<p class=\"price\">{} {} to {}</p>\n", markup_text(plan_.currency.name),
                          lower_ten(cost->low), upper_ten(cost->high));
      paragraph(
          "Parts and work together, as such repairs usually came to here. It is an estimate, "
          "not a fixed price.");
    }
    if (const Spread* hours = spread_of(WorkFigure::kClockedHours)) {
      paragraph(fmt::format("Time on the vehicle: usually {:.1f} to {:.1f} hours.", hours->low,
                            hours->high));
    }
  }

  const RepairPlan& plan_;
  const Case& case_;
  const Vocabulary& vocabulary_;
  std::string out_;
};

}  // namespace

Result<std::string> approval_html(const RepairPlan& plan, const Case& record,
                                  const Vocabulary& vocabulary) {
  if (record.state != CaseState::kOpen && record.state != CaseState::kWaiting) {
    return fail(
        ErrorCode::kConflict, record.ref,
        fmt::format("is {}; an approval is asked for before the work, of an open or waiting "
                    "case",
                    name_of(record.state)));
  }
  if (!plan.proposed) {
    return fail(ErrorCode::kNotFound, "cause",
                fmt::format("no repair of \"{}\" is recorded here: there is nothing to propose or "
                            "estimate from",
                            display_cause(plan.cause.component, plan.cause.failure, vocabulary)));
  }
  return ApprovalPage(plan, record, vocabulary).html();
}

}  // namespace shoplore
