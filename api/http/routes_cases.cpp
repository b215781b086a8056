#include <fmt/format.h>

#include "api/http/once.hpp"
#include "api/http/page_cursor.hpp"
#include "api/http/preconditions.hpp"
#include "api/http/routes.hpp"
#include "api/wire/case_list_json.hpp"
#include "api/wire/comeback_words.hpp"
#include "api/wire/request_json.hpp"

namespace shoplore {

namespace {

constexpr std::int64_t kMaxPage = 200;
constexpr std::int64_t kDefaultPage = 50;

// "component" or "component:failure", each known: an empty list for a typing error would mislead.
Result<void> filter_cause(CaseListFilter& filter, const std::string& cause,
                          const Vocabulary& vocabulary) {
  if (cause.empty()) return {};
  const auto colon = cause.find(':');
  const std::string component = cause.substr(0, colon);
  const std::string failure = colon == cause.npos ? "" : cause.substr(colon + 1);
  const auto unknown = [](const std::string& id, std::string_view kind) {
    return fail(ErrorCode::kInvalidInput, "?cause",
                fmt::format("\"{}\" is not a known {}", id, kind));
  };
  if (vocabulary.find(EntryKind::kComponent, component) == nullptr) {
    return unknown(component, "component");
  }
  filter.components = vocabulary.same_entries(EntryKind::kComponent, component);
  if (colon == cause.npos) return {};
  if (vocabulary.find(EntryKind::kFailure, failure) == nullptr) return unknown(failure, "failure");
  filter.failures = vocabulary.same_entries(EntryKind::kFailure, failure);
  return {};
}

Result<void> filter_vehicle(CaseListFilter& filter, const std::string& token) {
  const bool is_token =
      token.size() == 32 && token.find_first_not_of("0123456789abcdef") == token.npos;
  if (!token.empty() && !is_token) {
    return fail(ErrorCode::kInvalidInput, "?vehicle",
                "expected a vehicle's token, 32 hex digits in lower case");
  }
  filter.vehicle = token;
  return {};
}

// What a reply points out when a change closes a case that may be a comeback: how to link it.
std::vector<std::string> notes_on_closing(LiveRecords& records, const Case& before,
                                          const std::string& patch) {
  std::vector<std::string> notes;
  const auto after = patch_case(before, patch);
  const bool closes =
      after && after->record.state == CaseState::kClosed && before.state != CaseState::kClosed;
  if (!closes) return notes;
  const auto offers = records.comebacks(after->record);
  if (!offers) return notes;
  for (const ComebackOffer& offer : *offers) {
    notes.push_back(fmt::format("may be back again with {}; if so: {}",
                                comeback_words(offer, records.vocabulary()),
                                comeback_request(offer, before.ref)));
  }
  return notes;
}

// A change of the case; of `expected` only, or of what If-Match demands. Without either it is of
// whatever the case is when its turn comes, so that two changes at once both get through.
Reply change_case(LiveRecords& records, const Incoming& request, const StoredCase& now,
                  std::optional<Revision> expected, const std::string& patch,
                  std::optional<Receipt> receipt) {
  const auto demanded = demanded_revision(request, now);
  if (!demanded) return demanded.error();
  const auto notes = notes_on_closing(records, now.record, patch);
  if (receipt) receipt->notes = notes;
  auto recorded = records.change(now.record.ref, *demanded ? *demanded : expected, patch, receipt);
  if (!recorded) return refused_change(request, recorded.error(), now.record.ref);
  recorded->warnings.insert(recorded->warnings.end(), notes.begin(), notes.end());
  return recorded_reply(200, *recorded);
}

}  // namespace

tl::expected<std::optional<Revision>, Reply> demanded_revision(const Incoming& request,
                                                               const StoredCase& now) {
  if (request.if_match.empty()) return std::optional<Revision>();
  if (names_tag(request.if_match, entity_tag(now.revision), TagComparison::kStrong)) {
    return std::optional(now.revision);
  }
  return tl::make_unexpected(refusal(
      {ErrorCode::kConflict, now.record.ref,
       fmt::format("is at revision {} now: somebody changed it meanwhile", now.revision.value)},
      412));
}

Reply refused_change(const Incoming& request, const Error& error, std::string_view ref) {
  const bool raced = error.code == ErrorCode::kConflict && error.place == ref;
  return !request.if_match.empty() && raced ? refusal(error, 412) : refusal(error);
}

Reply get_cases(LiveRecords& records, const Incoming& request) {
  QueryReader query(request.query);
  CaseListFilter filter;
  filter.states = query.names<CaseState>("state");
  filter.make = query.text("make");
  filter.engine_family = query.text("engine_family");
  filter.opened_since = query.day("opened_since");
  filter.closed_since = query.day("closed_since");
  const auto limit =
      static_cast<std::size_t>(query.whole("limit", 1, kMaxPage).value_or(kDefaultPage));
  if (const auto read = query.finish(); !read) return refusal(read.error());
  const auto caused = filter_cause(filter, query.text("cause"), records.vocabulary());
  if (!caused) return refusal(caused.error());
  const auto driven = filter_vehicle(filter, query.text("vehicle"));
  if (!driven) return refusal(driven.error());
  const std::string question = request.path + "?" + request.query.question();
  const auto before = cursor_position(query.text("cursor"), question);
  if (!before) return refusal(before.error());

  auto cases = records.list(filter, CaseId{static_cast<std::uint32_t>(*before)}, limit + 1);
  if (!cases) return refusal(cases.error());
  std::string next;
  if (cases->size() > limit) {
    cases->pop_back();
    next = page_cursor(cases->back().id.value, question);
  }
  return {200, "application/json", case_list_json(*cases, next, records.vocabulary())};
}

Reply post_case(LiveRecords& records, const Incoming& request) {
  return once(records, request, 201, [&](const std::optional<Receipt>& receipt) {
    auto intake = intake_from_json(request.body);
    if (!intake) return refusal(intake.error());
    const auto recorded = records.add(std::move(*intake), receipt);
    return recorded ? recorded_reply(201, *recorded) : refusal(recorded.error());
  });
}

Reply get_case(LiveRecords& records, const Incoming& request) {
  QueryReader query(request.query);
  const auto as_of = query.whole("as_of", 1, INT64_MAX);
  if (const auto read = query.finish(); !read) return refusal(read.error());
  const auto stored = records.read(
      request.parts[0], as_of ? std::optional<Revision>(Revision{*as_of}) : std::nullopt);
  if (!stored) return refusal(stored.error());
  return tagged_reply(request, entity_tag(stored->revision), case_to_json(stored->record));
}

Reply get_case_history(LiveRecords& records, const Incoming& request) {
  QueryReader query(request.query);
  const bool full = query.flag("full");
  const auto limit =
      static_cast<std::size_t>(query.whole("limit", 1, kMaxPage).value_or(kDefaultPage));
  if (const auto read = query.finish(); !read) return refusal(read.error());
  const std::string question = request.path + "?" + request.query.question();
  const auto after = cursor_position(query.text("cursor"), question);
  if (!after) return refusal(after.error());

  auto history = records.history(request.parts[0], Revision{*after}, limit + 1);
  if (!history) return refusal(history.error());
  std::string next;
  if (history->changes.size() > limit) {
    history->changes.pop_back();
    next = page_cursor(history->changes.back().revision.value, question);
  }
  return {200, "application/json",
          case_history_json(request.parts[0], history->before, history->changes,
                            full ? ShowRecord::kYes : ShowRecord::kNo, next)};
}

Reply patch_case_by_ref(LiveRecords& records, const Incoming& request) {
  return once(records, request, 200, [&](const std::optional<Receipt>& receipt) {
    const auto now = records.read(request.parts[0]);
    if (!now) return refusal(now.error());
    return change_case(records, request, *now, std::nullopt, request.body, receipt);
  });
}

Reply close_case(LiveRecords& records, const Incoming& request) {
  return once(records, request, 200, [&](const std::optional<Receipt>& receipt) {
    const auto patch = closing_patch_from_json(request.body, today());
    if (!patch) return refusal(patch.error());
    const auto now = records.read(request.parts[0]);
    if (!now) return refusal(now.error());
    const CaseState state = now->record.state;
    if (state == CaseState::kOpen || state == CaseState::kWaiting) {
      return change_case(records, request, *now, now->revision, *patch, receipt);
    }
    return refusal({ErrorCode::kConflict,
                    request.parts[0],
                    fmt::format("is {}; only an open or waiting case is closed", name_of(state)),
                    {}});
  });
}

}  // namespace shoplore
