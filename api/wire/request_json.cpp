#include "api/wire/request_json.hpp"

#include <array>

#include "api/wire/filter_form.hpp"
#include "indexer/case_json.hpp"

namespace shoplore {

namespace {

// The record is kept as JSON: its form belongs to case_json.cpp.
struct RecordForm {
  Json json;
};

void read_form(const Json& json, const std::string&, RecordForm& target, std::vector<Problem>&) {
  target.json = json;
}

Json written_form(const RecordForm& form) {
  return form.json;
}

struct IdentityForm {
  std::string vin, plate;
};

template <class Io>
void fields(Io& io, Of<IdentityForm> auto& i) {
  io.optional("vin", i.vin);
  io.optional("plate", i.plate);
}

struct QuestionForm {
  std::string text;
  std::optional<RecordForm> record;
  FilterForm filter;
  int rows = 5, similar_cases = 5;
  std::vector<std::string> open, not_possible;
  YesNo agreed = YesNo::kNo;
  std::optional<IdentityForm> identity;
};

template <class Io>
void fields(Io& io, Of<QuestionForm> auto& q) {
  io.text("text", q.text);
  io.optional("record", q.record);
  io.optional("filter", q.filter);
  io.defaulted("rows", q.rows);
  io.defaulted("similar_cases", q.similar_cases);
  io.optional("open", q.open);
  io.optional("not_possible", q.not_possible);
  io.defaulted("agreed", q.agreed);
  io.optional("identity", q.identity);
}

struct TextForm {
  std::string text;
};

template <class Io>
void fields(Io& io, Of<TextForm> auto& t) {
  io.text("text", t.text);
}

Result<Case> record_of(const RecordForm& form) {
  auto record = case_from_json(form.json.dump());
  if (record) return record;
  Error error = std::move(record.error());
  error.place = "/record" + error.place;
  for (Problem& problem : error.problems) problem.place = "/record" + problem.place;
  return fail(std::move(error));
}

constexpr std::array kClosingFields = {"closed",       "cause",      "correction", "outcome",
                                       "contributing", "also_found", "checks",     "verification",
                                       "declined",     "notes"};

}  // namespace

Result<Question> question_from_json(std::string_view text, const TokenOf& token_of) {
  const auto json = parse_json(text, kMaxRequestBytes);
  if (!json) return fail(json.error());
  const auto form = struct_from_json<QuestionForm>(*json, "the question");
  if (!form) return fail(form.error());
  if (form->rows < 1 || form->rows > 50) {
    return fail(ErrorCode::kInvalidInput, "/rows", "expected 1 to 50");
  }
  if (form->similar_cases < 0 || form->similar_cases > 50) {
    return fail(ErrorCode::kInvalidInput, "/similar_cases", "expected 0 to 50");
  }
  Question question;
  question.text = form->text;
  question.filter = filter_of_form(form->filter);
  question.rows = static_cast<std::uint32_t>(form->rows);
  question.similar_cases = static_cast<std::uint32_t>(form->similar_cases);
  question.so_far.open = {form->open.begin(), form->open.end()};
  question.so_far.not_possible = {form->not_possible.begin(), form->not_possible.end()};
  question.agreed = form->agreed == YesNo::kYes ? AgreedToTry::kYes : AgreedToTry::kNo;
  if (form->identity) {
    auto token = token_of({form->identity->vin, form->identity->plate, ""});
    if (!token) return fail(token.error());
    question.vehicle = std::move(*token);
  }
  if (!form->record) return question;
  auto record = record_of(*form->record);
  if (!record) return fail(std::move(record.error()));
  question.record = std::move(*record);
  return question;
}

Result<std::string> closing_patch_from_json(std::string_view text, Date today) {
  const auto json = parse_json(text, kMaxRequestBytes);
  if (!json) return fail(json.error());
  if (!json->is_object()) return fail(ErrorCode::kInvalidInput, "", "expected an object");
  Error error{ErrorCode::kInvalidInput, "", "the closing is not as expected", {}};
  for (const auto& [key, unused] : json->items()) {
    if (std::find(kClosingFields.begin(), kClosingFields.end(), key) != kClosingFields.end())
      continue;
    error.problems.push_back({"/" + pointer_token(key), "is not a known field"});
  }
  if (!json->contains("cause")) error.problems.push_back({"/cause", "is missing"});
  if (!error.problems.empty()) {
    error.place = error.problems.front().place;
    return fail(std::move(error));
  }
  Json patch = *json;
  patch["state"] = name_of(CaseState::kClosed);
  if (!patch.contains("closed")) patch["closed"] = format_date(today);
  return patch.dump();
}

Result<std::string> text_from_json(std::string_view json) {
  const auto parsed = parse_json(json, kMaxRequestBytes);
  if (!parsed) return fail(parsed.error());
  auto form = struct_from_json<TextForm>(*parsed, "the request");
  if (!form) return fail(form.error());
  if (form->text.find_first_not_of(" \t\r\n") == std::string::npos) {
    return fail(ErrorCode::kInvalidInput, "/text", "is missing or empty");
  }
  return std::move(form->text);
}

}  // namespace shoplore
