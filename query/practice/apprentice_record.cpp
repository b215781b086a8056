#include "query/practice/apprentice_record.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "indexer/file_lock.hpp"
#include "indexer/json_form.hpp"

namespace shoplore {

template <class Io>
void fields(Io& io, Of<Repetition> auto& r) {
  io.required("easiness", r.easiness);
  io.required("in_a_row", r.in_a_row);
  io.required("interval_days", r.interval_days);
  io.required("last", r.last);
  io.required("due", r.due);
}

template <class Io>
void fields(Io& io, Of<PractisedSubject> auto& s) {
  io.required("kind", s.kind);
  io.text("subject", s.subject);
  io.required("repetition", s.repetition);
}

template <class Io>
void fields(Io& io, Of<SaidPart> auto& s) {
  io.required("percent", s.percent);
  io.required("right", s.right);
}

template <class Io>
void fields(Io& io, Of<PracticeResult> auto& r) {
  io.required("kind", r.kind);
  io.text("subject", r.subject);
  io.text("case", r.case_ref);
  io.required("drawn", r.drawn);
  io.required("day", r.day);
  io.required("points", r.points);
  io.required("grade", r.grade);
  io.required("right", r.right);
  io.optional("said", r.said);
  io.defaulted("records_points", r.records_points);
  io.defaulted("minutes", r.minutes);
  io.defaulted("best_minutes", r.best_minutes);
  io.defaulted("unheeded", r.unheeded);
  io.optional("symptoms", r.symptoms);
}

template <class Io>
void fields(Io& io, Of<Belief> auto& b) {
  io.text("cause", b.cause);
  io.required("percent", b.percent);
}

template <class Io>
void fields(Io& io, Of<PracticeStep> auto& s) {
  io.required("kind", s.kind);
  io.optional("beliefs", s.beliefs);
  io.optional("check", s.check);
  io.optional("verdict", s.verdict);
  io.text("reading", s.reading);
  io.defaulted("unsafe", s.unsafe);
}

template <class Io>
void fields(Io& io, Of<PracticeRound> auto& r) {
  io.required("id", r.id);
  io.required("kind", r.kind);
  io.text("subject", r.subject);
  io.text("case", r.case_ref);
  io.text("choices", r.choices);
  io.optional("difficulty", r.difficulty);
  io.required("drawn", r.drawn);
  io.required("started", r.started);
  io.optional("steps", r.steps);
  io.text("committed", r.committed);
}

namespace {

namespace fs = std::filesystem;

constexpr int kSchema = 1;
constexpr std::size_t kMaxBytes = 8 * 1024 * 1024;
constexpr std::chrono::milliseconds kPatience{10'000};
constexpr const char* kEnding = ".json";

// All but the lists, which grow longer than those of a request may be.
struct Heading {
  int schema = kSchema;
  std::string apprentice;
  std::int64_t rounds_started = 0;
};

template <class Io>
void fields(Io& io, Of<Heading> auto& h) {
  io.required("schema", h.schema);
  io.required("apprentice", h.apprentice);
  io.required("rounds_started", h.rounds_started);
}

fs::path file_of(const ShopFolder& folder, std::string_view handle) {
  return folder.practice() / (std::string(handle) + kEnding);
}

template <class T>
Json list_form(const std::vector<T>& values) {
  Json list = Json::array();
  for (const T& each : values) list.push_back(json_of(each));
  return list;
}

// Takes the list out of the file's object.
template <class T>
Result<void> take_list(Json& file, const std::string& key, std::vector<T>& target) {
  if (!file.is_object() || !file.contains(key) || !file.at(key).is_array()) {
    return fail(ErrorCode::kInvalidInput, "/" + key, "expected a list");
  }
  for (const Json& json : file.at(key)) {
    auto each = struct_from_json<T>(json, "an entry of /" + key);
    if (!each) return fail(each.error());
    target.push_back(std::move(*each));
  }
  file.erase(key);
  return {};
}

Result<ApprenticeRecord> record_from(std::string_view text) {
  auto file = parse_json(text, kMaxBytes);
  if (!file) return fail(file.error());
  ApprenticeRecord record;
  if (auto taken = take_list(*file, "subjects", record.subjects); !taken)
    return fail(taken.error());
  if (auto taken = take_list(*file, "results", record.results); !taken) return fail(taken.error());
  if (auto taken = take_list(*file, "rounds", record.rounds); !taken) return fail(taken.error());
  const auto heading = struct_from_json<Heading>(*file, "the file");
  if (!heading) return fail(heading.error());
  record.apprentice = heading->apprentice;
  record.rounds_started = heading->rounds_started;
  return record;
}

Json form_of(const ApprenticeRecord& record) {
  Json form = json_of(Heading{kSchema, record.apprentice, record.rounds_started});
  form["subjects"] = list_form(record.subjects);
  form["results"] = list_form(record.results);
  return form;
}

// Drops what has had its time.
void bound(ApprenticeRecord& record, Date today) {
  std::erase_if(record.rounds, [&](const PracticeRound& round) {
    return round.started.days + std::chrono::days(kRoundDays) < today.days;
  });
  const auto drop_oldest = [](auto& list, std::size_t most) {
    if (list.size() > most)
      list.erase(list.begin(), list.end() - static_cast<std::ptrdiff_t>(most));
  };
  drop_oldest(record.rounds, kMostRounds);
  drop_oldest(record.results, kMostResults);
  drop_oldest(record.subjects, kMostSubjects);
}

Result<void> make_room_for_one_more(const ShopFolder& folder) {
  std::error_code error;
  std::size_t files = 0;
  for (fs::directory_iterator it(folder.practice(), error), end; !error && it != end;
       it.increment(error)) {
    files += it->path().extension() == kEnding ? 1U : 0U;
  }
  if (files < kMostApprentices) return {};
  return fail(ErrorCode::kTooLarge, folder.practice().string(),
              fmt::format("{} apprentices have practised here, no more are kept; delete a handle "
                          "no longer used with: shoplore practice delete",
                          files));
}

Result<FileLock> locked(const ShopFolder& folder) {
  std::error_code error;
  fs::create_directories(folder.practice(), error);
  if (!error) fs::permissions(folder.practice(), fs::perms::owner_all, error);
  if (error) {
    return fail(ErrorCode::kNoPermission, folder.practice().string(),
                "cannot be made: " + error.message());
  }
  return FileLock::acquire(folder.practice() / "lock", kPatience);
}

}  // namespace

Result<void> check_handle(std::string_view handle) {
  const auto letters =
      std::min(handle.find_first_not_of("abcdefghijklmnopqrstuvwxyz"), handle.size());
  const std::string_view digits = handle.substr(letters);
  const bool fits = letters >= 1 && letters <= 2 && !digits.empty() && digits.size() <= 3 &&
                    digits.find_first_not_of("0123456789") == digits.npos;
  if (fits) return {};
  return fail(ErrorCode::kInvalidInput, "apprentice",
              "expected a handle that is nobody's name: one or two small letters and one to three "
              "digits, as in a1");
}

Result<ApprenticeRecord> read_apprentice(const ShopFolder& folder, const std::string& handle) {
  if (auto checked = check_handle(handle); !checked) return fail(checked.error());
  const fs::path path = file_of(folder, handle);
  std::error_code ignored;
  if (!fs::exists(path, ignored)) {
    return fail(ErrorCode::kNotFound, handle, "nobody has practised under this handle");
  }
  std::ifstream file(path);
  if (!file) return fail(ErrorCode::kNoPermission, path.string(), "cannot be read");
  std::stringstream text;
  text << file.rdbuf();
  auto record = record_from(text.str());
  if (record) return record;
  return fail(ErrorCode::kDamagedStore, path.string(),
              "is not as written: " + describe(record.error()) +
                  "; shoplore practice delete removes it, and practice begins anew");
}

Result<void> change_apprentice(const ShopFolder& folder, const std::string& handle,
                               const std::function<Result<void>(ApprenticeRecord&)>& change) {
  if (auto checked = check_handle(handle); !checked) return fail(checked.error());
  const auto lock = locked(folder);
  if (!lock) return fail(lock.error());
  auto record = read_apprentice(folder, handle);
  if (!record) {
    if (record.error().code != ErrorCode::kNotFound) return fail(record.error());
    if (auto room = make_room_for_one_more(folder); !room) return room;
    record = ApprenticeRecord{handle, 0, {}, {}, {}};
  }
  if (auto changed = change(*record); !changed) return changed;
  bound(*record, today());
  Json form = form_of(*record);
  form["rounds"] = list_form(record->rounds);
  return replace_file(file_of(folder, handle), form.dump() + "\n");
}

Result<void> forget_apprentice(const ShopFolder& folder, const std::string& handle) {
  if (auto checked = check_handle(handle); !checked) return checked;
  const fs::path path = file_of(folder, handle);
  std::error_code error;
  if (!fs::exists(path, error)) {
    return fail(ErrorCode::kNotFound, handle, "nobody has practised under this handle");
  }
  const auto lock = locked(folder);
  if (!lock) return fail(lock.error());
  fs::remove(path, error);
  if (error) return fail(ErrorCode::kNoPermission, path.string(), error.message());
  return {};
}

std::string exported_json(const ApprenticeRecord& record) {
  return form_of(record).dump();
}

}  // namespace shoplore
