#include "api/cli/print_case.hpp"

#include <fmt/format.h>

#include "api/cli/print_similar.hpp"
#include "api/wire/display_names.hpp"
#include "api/wire/record_json.hpp"

namespace shoplore {

namespace {

constexpr std::size_t kLabelWidth = 15;

class CasePrinter {
 public:
  CasePrinter(const Case& record, const Vocabulary& vocabulary, const Page& page)
      : case_(record), vocabulary_(vocabulary), page_(page), ink_(page.colour) {}

  std::string print(Revision revision) {
    out_ = ink_.heading(case_.ref) +
           fmt::format("  {}  (revision {})\n", name_of(case_.state), revision.value);
    dates();
    vehicle();
    line("complaint", case_.complaint);
    findings();
    checks();
    cause();
    correction();
    after();
    line("notes", case_.notes);
    return std::move(out_);
  }

  std::string print_arrival() {
    line("came in", format_date(case_.opened));
    vehicle();
    line("complaint", case_.complaint);
    findings();
    return std::move(out_);
  }

 private:
  void line(std::string_view label, const std::string& text) {
    if (text.empty()) return;
    out_ += hang(pad_right("  " + std::string(label), kLabelWidth + 2), text, page_.width);
  }
  std::string name(EntryKind kind, std::string_view id) const {
    return vocabulary_.display_name(kind, id);
  }
  std::string fix(const Fix& f) const {
    return name(EntryKind::kAction, f.action) + " " + name(EntryKind::kComponent, f.component);
  }
  std::string named(EntryKind kind, const std::vector<std::string>& ids) const {
    std::vector<std::string> names;
    for (const auto& id : ids) names.push_back(name(kind, id));
    return fmt::format("{}", fmt::join(names, ", "));
  }

  void dates() {
    std::string text = "opened " + format_date(case_.opened);
    if (case_.closed) text += ", closed " + format_date(*case_.closed);
    if (case_.ended) text += fmt::format(", ended: {}", name_of(*case_.ended));
    line("dates", text);
    line("job number", case_.job_number);
    if (case_.visit)
      line("visit", std::string(name_of(case_.visit->kind)) + " " + case_.visit->ref);
    line("follows", case_.follows);
  }

  void vehicle() {
    const Vehicle& v = case_.vehicle;
    std::vector<std::string> names;
    if (v.model_year) names.push_back(fmt::format("{}", *v.model_year));
    for (const std::string& each : {v.make, v.model, v.engine_family}) {
      if (!each.empty()) names.push_back(each);
    }
    std::vector<std::string> parts;
    if (!names.empty()) parts.push_back(fmt::format("{}", fmt::join(names, " ")));
    if (v.fuel) parts.emplace_back(name_of(*v.fuel));
    if (v.transmission) parts.emplace_back(name_of(*v.transmission));
    if (v.mileage_km) parts.push_back(thousands(v.mileage_km->value) + " km");
    line("vehicle", fmt::format("{}", fmt::join(parts, ", ")));
    if (!v.token.empty()) line("", "known to the shop by its pseudonym");
  }

  void findings() {
    std::vector<std::string> absent;
    for (const Symptom& s : case_.symptoms) {
      std::string text = name(EntryKind::kSymptom, s.id);
      if (s.state == Presence::kAbsent) {
        absent.push_back(std::move(text));
        continue;
      }
      if (!s.when.empty()) text += " (" + named(EntryKind::kCondition, s.when) + ")";
      if (s.how_often) text += fmt::format(", {}", name_of(*s.how_often));
      if (s.reproduced) {
        text += *s.reproduced == YesNo::kYes ? ", reproduced here" : ", not reproduced here";
      }
      line("symptom", text);
    }
    line("not there", fmt::format("{}", fmt::join(absent, ", ")));
    if (case_.scanned && case_.codes.empty()) {
      line("codes", *case_.scanned == YesNo::kYes ? "scanned, none" : "not scanned");
    }
    for (const Code& c : case_.codes) {
      line("code", fmt::format("{} {} ({}, {})", c.code, name(EntryKind::kCodeNote, c.code),
                               name_of(c.status), name_of(c.seen)));
    }
    for (const auto& [key, value] : case_.facts) line("fact", key + ": " + value);
    earlier();
  }

  void earlier() {
    if (case_.earlier_repairs && case_.earlier_repairs->empty()) {
      line("earlier repair", "asked, there was none");
    }
    if (case_.earlier_repairs) {
      for (const EarlierRepair& e : *case_.earlier_repairs) {
        line("earlier repair", fmt::format("{} ({})", fix(e.fix), name_of(e.by)));
      }
    }
    for (const WorkSign& w : case_.work_signs) {
      line("earlier work",
           name(EntryKind::kWorkSign, w.id) + (w.note.empty() ? "" : ": " + w.note));
    }
  }

  void checks() {
    for (const Check& c : case_.checks) {
      std::string text = name(EntryKind::kCheck, c.id) + fmt::format(": {}", name_of(c.verdict));
      if (c.reading) {
        text += ", " +
                (c.reading->number ? fmt::format("{:.6g}", *c.reading->number) : c.reading->word);
        if (!c.unit.empty()) text += " " + c.unit;
      }
      if (!c.where.empty()) text += ", " + c.where;
      if (!c.conditions.empty()) text += " (" + named(EntryKind::kCondition, c.conditions) + ")";
      if (c.later) text += *c.later == Later::kRight ? "; proved right" : "; misled us";
      if (!c.note.empty()) text += "; " + c.note;
      line("check", text);
    }
  }

  std::string cause_text(const Cause& c) const {
    return display_cause(c.component, c.failure, vocabulary_) +
           fmt::format(" ({})", name_of(c.proof));
  }
  void cause() {
    if (case_.cause) line("cause", cause_text(*case_.cause));
    for (const Cause& c : case_.contributing) line("contributing", cause_text(c));
    for (const Cause& c : case_.also_found) line("also found", cause_text(c));
  }

  void correction() {
    if (!case_.correction) return;
    const Correction& c = *case_.correction;
    for (const Fix& f : c.fixes) line("fix", fix(f));
    for (const Part& p : c.parts) {
      line("part", fmt::format("{} × {} ({})", p.quantity, name(EntryKind::kComponent, p.part),
                               name_of(p.grade)));
    }
    if (!c.removals.empty()) line("removed", named(EntryKind::kRemoval, c.removals));
    if (c.hours && c.hours->clocked) line("hours", fmt::format("{} clocked", *c.hours->clocked));
    if (c.cost_total) line("cost", fmt::format("{} {}", *c.cost_total, c.currency));
    for (const std::string& trap : c.traps) line("trap", trap);
  }

  void after() {
    for (const Declined& d : case_.declined) {
      line("declined", d.work + (d.safety == YesNo::kYes ? " (safety)" : ""));
    }
    for (const Verification& v : case_.verification) {
      line("verification",
           name(EntryKind::kVerification, v.id) + fmt::format(": {}", name_of(v.verdict)));
    }
    if (!case_.outcome) return;
    const Outcome& o = *case_.outcome;
    std::string text = outcome_text(o.status);
    if (o.reason) text += fmt::format(" ({})", name_of(*o.reason));
    if (o.as_of) text += ", as of " + format_date(*o.as_of);
    if (o.mileage_km) text += ", " + thousands(o.mileage_km->value) + " km";
    line("outcome", text);
  }

  const Case& case_;
  const Vocabulary& vocabulary_;
  const Page& page_;
  Ink ink_;
  std::string out_;
};

}  // namespace

std::string print_case(const StoredCase& stored, const Vocabulary& vocabulary, const Page& page) {
  return CasePrinter(stored.record, vocabulary, page).print(stored.revision);
}

std::string print_as_it_came_in(const Case& record, const Vocabulary& vocabulary,
                                const Page& page) {
  return CasePrinter(record, vocabulary, page).print_arrival();
}

std::string print_history(const std::vector<Change>& history, const Page& page) {
  std::string out;
  std::string_view before;
  for (const Change& change : history) {
    const std::string head = fmt::format("{:>8}  {}  {:<10}  ", change.revision.value,
                                         format_time(change.at), name_of(change.role));
    out += hang(head, fmt::format("{}", fmt::join(changed_fields(before, change.body), ", ")),
                page.width);
    before = change.body;
  }
  return out;
}

}  // namespace shoplore
