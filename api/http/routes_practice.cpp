#include "api/http/routes.hpp"
#include "api/wire/practice_json.hpp"

namespace shoplore {
namespace {

constexpr const char* kType = "application/json";

// Runs `use` at the desk; what it makes is the reply's body.
template <class Use>
Result<std::string> at_desk(LiveRecords& records, const Use& use) {
  std::string body;
  const auto done =
      records.read_with([&](const Snapshot& snapshot, const Store& store) -> Result<void> {
        const PracticeDesk desk(records.folder(), {snapshot, store, records.vocabulary()});
        auto made = use(desk);
        if (!made) return fail(made.error());
        body = std::move(*made);
        return {};
      });
  if (!done) return fail(done.error());
  return body;
}

Reply reply_of(const Result<std::string>& body) {
  return body ? Reply{200, kType, *body} : refusal(body.error());
}

Result<std::string> shown(const Result<RoundView>& round, const Vocabulary& vocabulary) {
  if (!round) return fail(round.error());
  return round_json(*round, vocabulary);
}

Result<std::string> shown(const Result<PracticeDesk::Committed>& committed,
                          const Vocabulary& vocabulary) {
  if (!committed) return fail(committed.error());
  return committed_json(*committed, vocabulary);
}

Result<std::string> handle_of(const Incoming& request) {
  QueryReader query(request.query);
  std::string handle = query.text("apprentice");
  if (const auto read = query.finish(); !read) return fail(read.error());
  const auto checked = check_handle(handle);
  if (!checked) return fail(ErrorCode::kInvalidInput, "?apprentice", checked.error().message);
  return handle;
}

}  // namespace

Reply post_practice_round(LiveRecords& records, const Incoming& request) {
  const auto wish = round_wish_from_json(request.body);
  if (!wish) return refusal(wish.error());
  std::string id;
  const auto body = at_desk(records, [&](const PracticeDesk& desk) -> Result<std::string> {
    const auto round = desk.start(*wish);
    if (round) id = round->id;
    return shown(round, records.vocabulary());
  });
  // Records with nothing to ask are no missing page.
  if (!body && body.error().code == ErrorCode::kNotFound) return refusal(body.error(), 409);
  if (!body) return refusal(body.error());
  return {201, kType, *body, {{"Location", request.path + "/" + id}}};
}

Reply get_practice_round(LiveRecords& records, const Incoming& request) {
  return reply_of(at_desk(records, [&](const PracticeDesk& desk) {
    return shown(desk.read(request.parts[0]), records.vocabulary());
  }));
}

Reply post_practice_belief(LiveRecords& records, const Incoming& request) {
  const auto beliefs = beliefs_from_json(request.body);
  if (!beliefs) return refusal(beliefs.error());
  return reply_of(at_desk(records, [&](const PracticeDesk& desk) {
    return shown(desk.believe(request.parts[0], *beliefs), records.vocabulary());
  }));
}

Reply post_practice_check(LiveRecords& records, const Incoming& request) {
  const auto check = asked_check_from_json(request.body);
  if (!check) return refusal(check.error());
  return reply_of(at_desk(records, [&](const PracticeDesk& desk) {
    return shown(desk.check(request.parts[0], *check), records.vocabulary());
  }));
}

Reply post_practice_commit(LiveRecords& records, const Incoming& request) {
  const auto commitment = commitment_from_json(request.body);
  if (!commitment) return refusal(commitment.error());
  return reply_of(at_desk(records, [&](const PracticeDesk& desk) {
    return shown(desk.commit(request.parts[0], *commitment), records.vocabulary());
  }));
}

Reply get_practice_feedback(LiveRecords& records, const Incoming& request) {
  return reply_of(at_desk(records, [&](const PracticeDesk& desk) {
    return shown(desk.feedback(request.parts[0]), records.vocabulary());
  }));
}

Reply get_practice_progress(LiveRecords& records, const Incoming& request) {
  const auto handle = handle_of(request);
  if (!handle) return refusal(handle.error());
  const auto record = read_apprentice(records.folder(), *handle);
  if (!record) return refusal(record.error());
  return {200, kType, progress_json(progress_of(*record), records.vocabulary())};
}

Reply delete_practice_progress(LiveRecords& records, const Incoming& request) {
  const auto handle = handle_of(request);
  if (!handle) return refusal(handle.error());
  const auto forgotten = forget_apprentice(records.folder(), *handle);
  if (!forgotten) return refusal(forgotten.error());
  return {204, "", "", {}};
}

}  // namespace shoplore
