#include "api/cli/print_repair_plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "api/cli/print_cautions.hpp"
#include "api/cli/print_stayed_fixed.hpp"
#include "indexer/case_keys.hpp"
#include "query/similar_cases.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kIndent = 2;
constexpr std::size_t kShownRows = 8;  // of a list; the rest is counted
constexpr std::size_t kShownRefs = 3;  // of a trap's cases

std::string cases_text(std::uint64_t count) {
  return counted(count, "case", "cases");
}

class PlanPrinter {
 public:
  PlanPrinter(const RepairPlan& plan, const Vocabulary& vocabulary, const Page& page)
      : plan_(plan), vocabulary_(vocabulary), page_(page), ink_(page.colour) {}

  std::string print() {
    head();
    if (plan_.cases == 0) {
      never_seen();
      out_ += print_cautions(plan_.cautions, page_);
      return std::move(out_);
    }
    what_to_do();
    parts();
    time_and_cost();
    removals();
    out_ += print_cautions(plan_.cautions, page_);
    traps();
    afterwards();
    proof();
    evidence();
    return std::move(out_);
  }

 private:
  void section(const std::string& title) { out_ += "\n" + ink_.heading(title) + "\n"; }
  void paragraph(const std::string& text) { out_ += hang("  ", text, page_.width); }
  void item(const std::string& mark, const std::string& text) {
    out_ += hang("  " + mark + " ", text, page_.width);
  }
  std::string name(EntryKind kind, const std::string& id) const {
    return vocabulary_.display_name(kind, id);
  }

  void head() {
    out_ += hang("",
                 ink_.heading("Repair plan: " + display_cause(plan_.cause.component,
                                                              plan_.cause.failure, vocabulary_)),
                 page_.width);
    std::string text = vehicle_text(plan_.vehicle);
    if (!plan_.case_ref.empty()) text += (text.empty() ? "" : " · ") + plan_.case_ref;
    if (!text.empty()) paragraph(text);
    if (plan_.cases == 0) return;
    text = fmt::format("from {} of this cause here", cases_text(plan_.cases));
    if (plan_.vehicles != plan_.cases) {
      text += fmt::format(" ({})", counted(plan_.vehicles, "vehicle", "vehicles"));
    }
    if (plan_.cases < kFewestToPlan) text += "; too few to lean on";
    paragraph(text);
  }

  void never_seen() {
    section("What to do");
    paragraph(
        "No closed case here turned out to be this, so there is nothing of our own to plan from. "
        "Work by the vehicle maker's procedure.");
    paragraph(
        "Close the case with its fixes, parts, hours, removals and what tripped you up: the next "
        "plan starts from it.");
    paragraph(fmt::format("What else this part did here: shoplore plan \"{}\"",
                          name(EntryKind::kComponent, plan_.cause.component)));
  }

  const StayedFixed* outcome_of(const std::vector<std::string>& fixes) const {
    const auto found = std::find_if(plan_.fixes.begin(), plan_.fixes.end(),
                                    [&](const StayedFixed& each) { return each.fixes == fixes; });
    return found == plan_.fixes.end() ? nullptr : &*found;
  }

  void what_to_do() {
    section("What to do");
    if (!plan_.proposed) {
      paragraph("What was done is written down in none of these cases.");
      return;
    }
    const ProposedWork& work = *plan_.proposed;
    for (const std::string& fix : proposed_in_order(plan_)) {
      item("*", ink_.bold(display_fix(fix, vocabulary_)));
    }
    if (const StayedFixed* done = outcome_of(work.fixes)) lasted(*done);
    switch (work.because) {
      case ProposedBecause::kLastedAYear:
      case ProposedBecause::kLastedAsHeard:
        if (plan_.fixes.size() > 1) {
          paragraph("Of what was done here this lasted most surely; the rest is under Evidence.");
        }
        break;
      case ProposedBecause::kDoneMost:
        paragraph("Done most often; whether it lasts was heard of too seldom to compare.");
        break;
    }
    for (const MissedPart& each : plan_.missed) missed(each);
  }

  void lasted(const StayedFixed& done) {
    const std::string shares = still_fixed_text(done);
    paragraph(fmt::format(
        "done so in {}; {}", cases_text(done.cases),
        shares.empty()
            ? of_text(done.came_back, done.came_back + done.still_fixed) + " heard of came back"
            : "still fixed: " + shares));
  }

  void missed(const MissedPart& each) {
    item("!", fmt::format("{} alone came back {} ({}); together with {} {} ({})",
                          display_fix(each.fix, vocabulary_),
                          of_text(each.alone.count, each.alone.out_of),
                          interval_text(each.alone.interval), display_fix(each.missed, vocabulary_),
                          of_text(each.together.count, each.together.out_of),
                          interval_text(each.together.interval)));
  }

  void parts() {
    section("Parts to order");
    if (plan_.parts.out_of == 0) {
      paragraph("No part was written down for this work.");
    }
    std::vector<TableRow> rows;
    if (plan_.parts.out_of > 0) rows.push_back({"", {"in cases"}});
    for (const PartUsed& part : plan_.parts.parts) {
      if (rows.size() > kShownRows) break;
      const std::string quantity =
          part.usual_quantity == 1 ? "" : fmt::format("{:g} × ", part.usual_quantity);
      rows.push_back({quantity + part.name, {of_text(part.cases, plan_.parts.out_of)}});
    }
    if (!rows.empty()) list(rows, plan_.parts.parts.size() + 1);
    for (const FixCompany& company : plan_.beside) beside(company);
  }

  void list(const std::vector<TableRow>& rows, std::size_t all) {
    out_ += table(rows, kIndent, page_.width);
    if (all > rows.size()) paragraph(fmt::format("and {} more (--json)", all - rows.size()));
  }

  void beside(const FixCompany& company) {
    if (company.beside.empty()) return;
    std::vector<std::string> others;
    for (const FixInCases& other : company.beside) {
      if (others.size() == kShownRows) break;
      others.push_back(
          fmt::format("{} {}", display_fix(other.fix, vocabulary_), thousands(other.cases)));
    }
    paragraph(fmt::format("beside {} ({}): {}", display_fix(company.fix, vocabulary_),
                          cases_text(company.cases), fmt::join(others, ", ")));
  }

  std::string figure_text(WorkFigure figure, double value) const {
    return figure == WorkFigure::kCost ? thousands(static_cast<std::int64_t>(std::lround(value)))
                                       : fmt::format("{:.1f}", value);
  }

  std::string figure_name(WorkFigure figure) const {
    switch (figure) {
      case WorkFigure::kClockedHours:
        return "repair, hours";
      case WorkFigure::kDiagnosisHours:
        return "diagnosis, hours";
      case WorkFigure::kCost:
        return "cost in all, " + plan_.currency.name;
    }
    return "";
  }

  std::string circle(const WorkSpread& work) const {
    std::string text = "all vehicles";
    if (work.vehicles == VehiclesAlike::kEngineFamily) text = plan_.vehicle.engine_family;
    if (work.vehicles == VehiclesAlike::kMake) text = plan_.vehicle.make;
    return work.work == WorkAlike::kSameFixes ? text : text + ", any repair of it";
  }

  void time_and_cost() {
    section("Time and cost");
    std::vector<TableRow> rows{{"", {"middle", "8 of 10", "cases", "counted on"}}};
    std::vector<std::string> few;
    for (const WorkSpread& work : plan_.work) {
      if (work.figure == WorkFigure::kCost && plan_.currency.name.empty()) continue;
      if (work.spread) {
        rows.push_back({figure_name(work.figure),
                        {figure_text(work.figure, work.spread->median),
                         figure_text(work.figure, work.spread->low) + " to " +
                             figure_text(work.figure, work.spread->high),
                         thousands(work.cases), circle(work)}});
      } else {
        few.push_back(listed(work));
      }
    }
    if (rows.size() > 1) {
      out_ += table(rows, kIndent, page_.width);
      paragraph("middle: as many took less as took more; 8 of 10 lay in the range.");
    }
    for (const std::string& line : few) paragraph(line);
    other_money();
  }

  std::string listed(const WorkSpread& work) const {
    if (work.cases == 0) return figure_name(work.figure) + ": written down in no case";
    std::vector<std::string> values;
    for (const double value : work.values) values.push_back(figure_text(work.figure, value));
    return fmt::format("{}: {} ({}): {}", figure_name(work.figure), cases_text(work.cases),
                       circle(work), fmt::join(values, ", "));
  }

  void other_money() {
    const Currency& currency = plan_.currency;
    if (currency.in_others > 0) {
      paragraph(fmt::format("not counted: {} charged in other currencies",
                            cases_text(currency.in_others)));
    }
    if (currency.unnamed > 0) {
      paragraph(
          fmt::format("not counted: {} with a cost but no currency", cases_text(currency.unnamed)));
    }
  }

  void removals() {
    const RemovalPlan& removals = plan_.removals;
    section(removals.minutes > 0 ? "Take off first: " + duration_text(removals.minutes)
                                 : "Take off first");
    if (removals.in_order.empty()) paragraph("Nothing was written down as coming off.");
    std::vector<TableRow> rows;
    if (!removals.in_order.empty()) rows.push_back({"", {"takes", "in cases"}});
    for (const PlannedRemoval& each : removals.in_order) {
      std::string time = each.minutes ? duration_text(*each.minutes) : "no time known";
      if (each.now == RemovalNow::kOffAlready) time = "off already";
      rows.push_back({fmt::format("{}. {}", rows.size(), name(EntryKind::kRemoval, each.id)),
                      {time, of_text(each.cases, removals.out_of)}});
    }
    out_ += table(rows, kIndent, page_.width);
    std::vector<std::string> others;
    for (const PlannedRemoval& each : removals.also_found) {
      others.push_back(fmt::format("{} {}", name(EntryKind::kRemoval, each.id),
                                   of_text(each.cases, removals.out_of)));
    }
    if (!others.empty()) paragraph(fmt::format("in other cases: {}", fmt::join(others, ", ")));
  }

  void traps() {
    section("Traps");
    if (plan_.traps.empty()) paragraph("None written down yet.");
    for (std::size_t i = 0; i < std::min(plan_.traps.size(), kShownRows); ++i) {
      const Trap& trap = plan_.traps[i];
      const auto shown = static_cast<std::ptrdiff_t>(std::min(trap.refs.size(), kShownRefs));
      std::string refs =
          fmt::format("{}", fmt::join(trap.refs.begin(), trap.refs.begin() + shown, ", "));
      if (trap.refs.size() > kShownRefs) refs += ", ...";
      item("-", fmt::format("{} ({}: {})", trap.text, cases_text(trap.refs.size()), refs));
    }
    if (plan_.traps.size() > kShownRows) {
      paragraph(fmt::format("and {} more (--json)", plan_.traps.size() - kShownRows));
    }
  }

  void afterwards() {
    section("Afterwards it needs");
    const AfterwardsNeeds& needs = plan_.afterwards;
    for (const CommonNeed& need : needs.common) {
      item("-", fmt::format("{} ({})", need.text, name(EntryKind::kComponent, need.component)));
    }
    for (const FixInCases& done : needs.done) {
      item("-", fmt::format("{}: done beside it in {} cases", display_fix(done.fix, vocabulary_),
                            of_text(done.cases, needs.out_of)));
    }
    if (needs.common.empty() && needs.done.empty()) {
      paragraph(
          "Nothing known. The maker's procedure says whether anything is to be taught or "
          "set.");
    } else if (!needs.common.empty()) {
      paragraph("Common practice without a source: the maker's procedure decides.");
    }
  }

  void proof() {
    section("Prove it cured");
    if (plan_.proof.empty()) paragraph("How it was proved is written down in no case.");
    for (std::size_t i = 0; i < plan_.proof.size(); ++i) {
      const ProofStep& step = plan_.proof[i];
      const Entry* entry = vocabulary_.find(EntryKind::kVerification, step.id);
      std::string text = ink_.bold(name(EntryKind::kVerification, step.id));
      if (entry != nullptr && entry->minutes) text += ", " + duration_text(*entry->minutes);
      text += fmt::format(": caught something {} times",
                          of_text(step.caught.count, step.caught.out_of));
      item(fmt::format("{}.", i + 1), text);
      if (entry != nullptr && !entry->how.empty()) {
        out_ += hang("     ", ink_.dim(entry->how), page_.width);
      }
    }
  }

  void evidence() {
    section("Evidence");
    if (!plan_.fixes.empty()) {
      out_ += stayed_fixed_table(plan_.fixes, kShownRows, kIndent, vocabulary_, page_);
    }
    if (plan_.fixes.size() > kShownRows) {
      paragraph(fmt::format("and {} more (--json)", plan_.fixes.size() - kShownRows));
    }
    const StayedFixed* done = plan_.proposed ? outcome_of(plan_.proposed->fixes) : nullptr;
    const std::string reasons = done == nullptr ? "" : comeback_reasons_text(*done);
    if (!reasons.empty()) paragraph("why the proposed work came back: " + reasons);
    repeats();
    notes();
  }

  void repeats() {
    const RepeatComebacks& repeats = plan_.repeats;
    if (repeats.comebacks == 0) return;
    std::string text =
        fmt::format("{} of {} followed", counted(repeats.comebacks, "comeback", "comebacks"),
                    counted(repeats.vehicles, "vehicle", "vehicles"));
    if (repeats.by_then) {
      const Estimate& mean = *repeats.by_then;
      text += fmt::format("; by 2 years {:.2f} a vehicle ({:.2f}-{:.2f})", mean.value, mean.low,
                          mean.high);
    }
    if (repeats.more_than_once > 0) {
      text += fmt::format("; {} came back more than once", repeats.more_than_once);
    }
    paragraph(text);
  }

  void notes() {
    std::uint32_t by_visits = 0;
    for (const StayedFixed& done : plan_.fixes) by_visits += done.seen_by_later_visits;
    std::string text =
        "In brackets 90 % intervals. Fixed a year on counts each repair as long as it was watched "
        "(Kaplan-Meier); - where too few were.";
    if (by_visits > 0) {
      text += fmt::format(" That {} lasted shows only from later visits without the complaint.",
                          counted(by_visits, "repair", "repairs"));
    }
    text += " Who had it put right elsewhere never tells us.";
    paragraph(text);
    paragraph(fmt::format("{} Records as of revision {}, {}.", kEvidenceNotDiagnosis,
                          plan_.revision.value,
                          counted(plan_.cases_in_records, "counted case", "counted cases")));
  }

  const RepairPlan& plan_;
  const Vocabulary& vocabulary_;
  const Page& page_;
  Ink ink_;
  std::string out_;
};

}  // namespace

std::string print_repair_plan(const RepairPlan& plan, const Vocabulary& vocabulary,
                              const Page& page) {
  return PlanPrinter(plan, vocabulary, page).print();
}

}  // namespace shoplore
