#include "api/wire/answer_json.hpp"

#include <fmt/format.h>

#include "api/wire/display_names.hpp"
#include "api/wire/filter_form.hpp"
#include "api/wire/list_form.hpp"
#include "api/wire/share_form.hpp"

namespace shoplore {

namespace {

Json span_form(const Span& span) {
  return {{"begin", span.begin}, {"end", span.end}};
}

// A copied name may have been cut inside a character; writing must still not fail.
std::string text_of(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

Json similar_form(const SimilarCase& similar) {
  return {
      {"ref", similar.ref},
      {"opened", format_date(similar.opened)},
      {"vehicle", similar.vehicle},
      {"cause", similar.cause},
      {"fixes", similar.fixes},
      {"outcome", name_of(similar.outcome)},
      {"score", similar.score},
      {"snippet",
       {{"text", similar.snippet.text}, {"marked", list_of(similar.snippet.marked, span_form)}}}};
}

// The vocabulary's kind of what was recognised; nothing for values that are their own name.
std::optional<EntryKind> entry_kind(ItemKind kind) {
  switch (kind) {
    case ItemKind::kSymptom:
      return EntryKind::kSymptom;
    case ItemKind::kCondition:
      return EntryKind::kCondition;
    case ItemKind::kCheck:
      return EntryKind::kCheck;
    case ItemKind::kWorkSign:
      return EntryKind::kWorkSign;
    default:
      return std::nullopt;
  }
}

// "11.2 V" or "OL".
std::string reading_text(const RecognisedItem& item) {
  if (!item.reading->number) return item.reading->word;
  return fmt::format("{:.10g} {}", *item.reading->number, item.unit);
}

Json suggestion_form(const Suggestion& suggestion) {
  return {{"kind", name_of(suggestion.kind)}, {"id", suggestion.id}, {"name", suggestion.name}};
}

Json word_suggestions(const WordSuggestions& word) {
  return {{"word", word.word}, {"suggestions", list_of(word.suggestions, suggestion_form)}};
}

void put_code(Json& json, const Code& code) {
  json["status"] = name_of(code.status);
  json["seen"] = name_of(code.seen);
  if (!code.failure_type.empty()) json["failure_type"] = code.failure_type;
  if (!code.module.empty()) json["module"] = code.module;
}

Json warning_form(const Warning& warning) {
  return {{"kind", name_of(warning.kind)},
          {"stated", name_of(warning.stated)},
          {"text", warning.text},
          {"about", warning.about},
          {"cause", warning.cause},
          {"share", share_form(warning.share)},
          {"minutes_at_stake", warning.minutes},
          {"how_often", warning.how_often},
          {"expected_minutes", warning.expected_minutes()},
          {"cases", warning.refs}};
}

class AnswerForm {
 public:
  explicit AnswerForm(const Vocabulary& vocabulary) : vocabulary_(vocabulary) {}

  Json answer(const Answer& a) const {
    Json json;
    json["understood"] = understood(a.understood);
    json["likely_causes"] = list_of(a.likely_causes, [&](const auto& c) { return cause(c); });
    json["not_in_these_records"] = a.not_in_these_records;
    json["causes_left_out"] = a.causes_left_out;
    json["left_out_probability"] = a.left_out_probability;
    json["breadth"] = list_of(a.breadth, [&](const auto& w) { return width(w); });
    json["never_seen"] = items(a.never_seen);
    json["nothing_matches"] = a.nothing_matches;
    json["next_checks"] = list_of(a.next.checks, [&](const auto& c) { return check(c); });
    json["questions"] = list_of(a.next.questions, [&](const auto& c) { return check(c); });
    if (a.next.repair) json["repair_on_suspicion"] = repair(*a.next.repair);
    json["watch_out"] = list_of(a.watch_out, warning_form);
    json["similar_cases"] = list_of(a.similar, similar_form);
    json["cautions"] = list_of(a.cautions, caution_form);
    json["revision"] = a.revision.value;
    json["cases_in_records"] = a.cases_in_records;
    json["filter"] = json_of(form_of_filter(a.filter));
    json["note"] = kEvidenceNotDiagnosis;
    return json;
  }

  Json understood(const Understood& u) const {
    return {{"text", u.text},
            {"items", list_of(u.recognised.items, [&](const auto& r) { return recognised(r); })},
            {"not_understood", u.not_understood},
            {"suggestions", list_of(u.suggestions, word_suggestions)},
            {"evidence", items(u.evidence)}};
  }

 private:
  Json item(const EvidenceItem& i) const {
    return {{"attribute", i.attribute}, {"value", i.value}, {"name", display_item(i, vocabulary_)}};
  }
  Json items(const std::vector<EvidenceItem>& list) const {
    return list_of(list, [&](const auto& i) { return item(i); });
  }

  Json recognised(const RecognisedItem& r) const {
    Json json;
    json["kind"] = name_of(r.kind);
    json["id"] = r.id;
    const auto kind = entry_kind(r.kind);
    if (kind)
      json["name"] = vocabulary_.display_name(*kind, r.id);
    else if (r.kind == ItemKind::kScanned)
      json["name"] = "no fault codes";
    else
      json["name"] = r.kind == ItemKind::kEarlierRepair ? display_fix(r.id, vocabulary_) : r.id;
    json["state"] = name_of(r.state);
    if (r.verdict) json["verdict"] = name_of(*r.verdict);
    if (r.code) put_code(json, *r.code);
    if (r.reading) json["reading"] = reading_text(r);
    if (r.how_often) json["how_often"] = name_of(*r.how_often);
    if (r.repair) json["by"] = name_of(r.repair->by);
    if (r.months_ago) json["months_ago"] = *r.months_ago;
    if (r.mileage_km) json["mileage_km"] = r.mileage_km->value;
    if (!r.reading_chosen.empty()) json["note"] = r.reading_chosen;
    json["begin"] = r.span.begin;
    json["end"] = r.span.end;
    return json;
  }

  Json why_line(const WhyLine& line) const {
    Json json = item(line.item);
    json["weight"] = line.weight;
    json["with_item"] = line.with_item;
    json["known"] = line.known;
    json["with_item_elsewhere"] = line.with_item_elsewhere;
    json["known_elsewhere"] = line.known_elsewhere;
    return json;
  }

  Json fix_count(const FixCount& f) const {
    return {{"fixes", f.fixes},
            {"name", display_fixes(f.fixes, vocabulary_)},
            {"cases", f.cases},
            {"stayed_fixed", f.stayed_fixed},
            {"came_back", f.came_back},
            {"unknown", f.unknown},
            {"stayed", share_form(f.stayed)}};
  }

  Json cause(const LikelyCause& c) const {
    const auto fix = [&](const auto& f) { return fix_count(f); };
    return {{"component", c.component},
            {"failure", c.failure},
            {"name", display_cause(c.component, c.failure, vocabulary_)},
            {"share", share_form(c.share)},
            {"vehicles", c.vehicles},
            {"seen", c.seen},
            {"probability", c.probability},
            {"why", list_of(c.why, [&](const auto& line) { return why_line(line); })},
            {"log_odds",
             {{"prior", c.prior},
              {"scarcity", c.scarcity},
              {"pairs", c.pairs},
              {"likeness", c.likeness},
              {"others", c.others}}},
            {"fixes", list_of(c.fixes, fix)},
            {"fixes_together", list_of(c.fixes_together, fix)}};
  }

  Json leading(const LeadingCause& c) const {
    return {{"component", c.component},
            {"failure", c.failure},
            {"name", display_cause(c.component, c.failure, vocabulary_)},
            {"probability", c.probability}};
  }

  Json outlook(const AdvisedOutlook& o) const {
    return {{"answer", o.answer},
            {"probability", o.probability},
            {"leading", list_of(o.leading, [&](const auto& c) { return leading(c); })}};
  }

  Json removal(const std::string& id) const {
    return {{"id", id}, {"name", vocabulary_.display_name(EntryKind::kRemoval, id)}};
  }

  Json check(const AdvisedCheck& c) const {
    Json json = {{"attribute", c.item.attribute},
                 {"name", display_question(c.item.attribute, vocabulary_)},
                 {"minutes", c.minutes},
                 {"removals", list_of(c.removals, [&](const auto& id) { return removal(id); })},
                 {"removal_minutes", c.removal_minutes},
                 {"information_bits", c.information},
                 {"answerable", c.answerable},
                 {"bits_per_minute", c.per_minute},
                 {"outlooks", list_of(c.outlooks, [&](const auto& o) { return outlook(o); })}};
    if (!c.where.empty()) json["where"] = c.where;
    if (!c.how.empty()) json["how"] = c.how;
    if (c.pass_misled.out_of > 0) json["pass_misled"] = share_form(c.pass_misled);
    if (c.fail_misled.out_of > 0) json["fail_misled"] = share_form(c.fail_misled);
    return json;
  }

  Json repair(const RepairOnSuspicion& r) const {
    return {{"order", list_of(r.order,
                              [&](const auto& step) {
                                return Json{{"component", step.component},
                                            {"failure", step.failure},
                                            {"name", display_cause(step.component, step.failure,
                                                                   vocabulary_)},
                                            {"probability", step.probability},
                                            {"minutes", step.minutes}};
                              })},
            {"expected_minutes", r.expected_minutes},
            {"expected_minutes_checked", r.expected_minutes_checked}};
  }

  Json width(const Width& w) const {
    Json json = {{"scope", w.scope}, {"items", items(w.items)}};
    if (w.dropped) json["dropped"] = item(*w.dropped);
    json["cases"] = w.cases;
    json["vehicles"] = w.vehicles;
    return json;
  }

  const Vocabulary& vocabulary_;
};

}  // namespace

std::string answer_json(const Answer& answer, const Vocabulary& vocabulary) {
  return text_of(AnswerForm(vocabulary).answer(answer));
}

std::string watch_out_json(const Answer& answer, const Vocabulary& vocabulary) {
  return text_of({{"understood", AnswerForm(vocabulary).understood(answer.understood)},
                  {"watch_out", list_of(answer.watch_out, warning_form)},
                  {"nothing_matches", answer.nothing_matches},
                  {"revision", answer.revision.value},
                  {"cases_in_records", answer.cases_in_records},
                  {"filter", json_of(form_of_filter(answer.filter))},
                  {"note", kEvidenceNotDiagnosis}});
}

std::string understood_json(const Understood& understood, const Vocabulary& vocabulary) {
  return text_of(AnswerForm(vocabulary).understood(understood));
}

std::string search_page_json(const SearchPage& page) {
  return text_of({{"cases", list_of(page.cases, similar_form)},
                  {"matches", page.matches},
                  {"next_cursor", page.next_cursor},
                  {"revision", page.revision.value}});
}

}  // namespace shoplore
