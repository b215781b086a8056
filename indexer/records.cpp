#include "indexer/records.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "indexer/case_links.hpp"
#include "indexer/case_rules.hpp"
#include "indexer/file_lock.hpp"
#include "indexer/identity_removal.hpp"
#include "indexer/index_writer.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

// Cases an import stores in one transaction: large enough that fsync does not dominate.
constexpr std::size_t kImportBatch = 1'000;
constexpr std::size_t kWarningsKept = 20;

// A name for a line that brings none, the same for the same content: importing a file again
// recognises what it stored before. 64-bit FNV-1a (RFC 9923), of the cleaned record: no identity
// goes into it.
std::string content_ref(const Case& record) {
  std::uint64_t hash = 0xcbf29ce484222325U;
  for (const char c : case_to_json(record)) {
    hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3U;
  }
  return fmt::format("line-{:016x}", hash);
}

// What an import that stopped has done all the same.
Error after_storing(Error error, std::int64_t lines) {
  if (lines == 0) return error;
  error.message += fmt::format(
      "; lines 1 to {} are stored, and importing the mended file again stores only the rest",
      lines);
  return error;
}

Error at_line(Error error, std::int64_t line) {
  const std::string place = fmt::format("line {}", line);
  error.place = error.place.empty() ? place : place + ", " + error.place;
  for (Problem& problem : error.problems) problem.place = place + ", " + problem.place;
  return error;
}

}  // namespace

struct Records::Impl {
  ShopFolder folder;
  Vocabulary vocabulary;
  IdentityKey key;
  Store store;
  Recogniser recogniser;
  IndexFollower follower;

  Impl(ShopFolder the_folder, Vocabulary the_vocabulary, IdentityKey the_key, Store the_store)
      : folder(std::move(the_folder)),
        vocabulary(std::move(the_vocabulary)),
        key(std::move(the_key)),
        store(std::move(the_store)),
        recogniser(vocabulary),
        follower(folder, store, vocabulary) {}

  // The only way to a record that may be stored.
  Result<CleanCase> accepted(Intake intake) const {
    auto clean = remove_identities(std::move(intake), key, recogniser.names());
    if (!clean) return clean;
    if (auto kept = check_rules(clean->record(), vocabulary); !kept) return fail(kept.error());
    return clean;
  }

  // A line without a ref is named after its content; the n-th of equal lines after n as well.
  Result<CleanCase> accepted_line(const std::string& line, std::map<std::string, int>& seen) const {
    auto intake = intake_from_json(line);
    if (!intake) return fail(intake.error());
    if (!intake->record.ref.empty()) return accepted(std::move(*intake));
    auto clean = accepted(*intake);
    if (!clean) return clean;
    intake->record.ref = content_ref(clean->record());
    const int before = seen[intake->record.ref]++;
    if (before > 0) intake->record.ref += fmt::format("-{}", before + 1);
    return accepted(std::move(*intake));
  }

  Result<Recorded> store_change(const StoredCase& before, std::optional<Revision> expected,
                                Intake intake, Role role,
                                const std::optional<Receipt>& receipt = {}) {
    auto clean = accepted(std::move(intake));
    if (!clean) return fail(clean.error());
    if (is_link_changed(before.record, clean->record())) {
      if (auto linked = check_link(clean->record(), store); !linked) return fail(linked.error());
    }
    auto stored = store.change(before.id, expected, *clean, role, receipt);
    if (!stored) return fail(stored.error());
    return Recorded{std::move(*stored), clean->warnings()};
  }
};

namespace {

Result<Vocabulary> vocabulary_of(const ShopFolder& folder) {
  return Vocabulary::load(folder.vocabulary());
}

}  // namespace

Records::Records(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
Records::~Records() = default;
Records::Records(Records&&) noexcept = default;

Result<Records> Records::create(const ShopFolder& folder) {
  if (auto made = make_shop_folder(folder); !made) return fail(made.error());
  if (auto store = Store::create(folder.records()); !store) return fail(store.error());
  return open(folder);
}

Result<Records> Records::open(const ShopFolder& folder) {
  if (auto there = require_shop_folder(folder); !there) return fail(there.error());
  auto vocabulary = vocabulary_of(folder);
  if (!vocabulary) return fail(vocabulary.error());
  auto key = IdentityKey::load(folder.key());
  if (!key) return fail(key.error());
  auto store = Store::open(folder.records());
  if (!store) return fail(store.error());
  return Records(
      std::make_unique<Impl>(folder, std::move(*vocabulary), std::move(*key), std::move(*store)));
}

Result<Recorded> Records::add(Intake intake, Role role, const std::optional<Receipt>& receipt) {
  auto clean = impl_->accepted(std::move(intake));
  if (!clean) return fail(clean.error());
  if (auto linked = check_link(clean->record(), impl_->store); !linked) {
    return fail(linked.error());
  }
  auto added = impl_->store.add({&*clean, 1}, role, receipt);
  if (!added) {
    Error error = added.error();
    if (error.place == "0") error.place = "/ref";  // the only case of the batch
    return fail(std::move(error));
  }
  return Recorded{std::move(added->front().stored), clean->warnings()};
}

Result<Recorded> Records::change(std::string_view ref, std::optional<Revision> expected,
                                 std::string_view patch, Role role,
                                 const std::optional<Receipt>& receipt) {
  const auto before = impl_->store.read(ref);
  if (!before) return fail(before.error());
  auto intake = patch_case(before->record, patch);
  if (!intake) return fail(intake.error());
  // A patch is of the record as it was read: without a stated revision the one just read counts,
  // so that two changes at once cannot silently undo each other.
  return impl_->store_change(*before, expected.value_or(before->revision), std::move(*intake), role,
                             receipt);
}

Result<Recorded> Records::replace(const StoredCase& before, Case record, Role role,
                                  const std::optional<Receipt>& receipt) {
  return impl_->store_change(before, before.revision, {std::move(record), {}}, role, receipt);
}

Receipt Records::receipt_of(std::string_view key, std::string_view request, int status) const {
  return {impl_->key.token_of_request(std::string("key:").append(key)),
          impl_->key.token_of_request(std::string("whole:").append(request)), status};
}

Result<std::string> Records::token_of(const Identity& identity) const {
  const auto clean = remove_identities({{}, identity}, impl_->key, impl_->recogniser.names());
  if (!clean) return fail(clean.error());
  return clean->record().vehicle.token;
}

Result<Recorded> Records::add_findings(std::string_view ref, std::string_view text, Role role,
                                       const Identity& identity) {
  const auto before = impl_->store.read(ref);
  if (!before) return fail(before.error());
  Intake intake{before->record, identity};
  if (intake.record.state != CaseState::kOpen && intake.record.state != CaseState::kWaiting) {
    return fail(
        ErrorCode::kInvalidInput, std::string(ref),
        fmt::format("is {}; findings go to an open or waiting case", name_of(intake.record.state)));
  }
  if (!is_utf8(text)) return fail(ErrorCode::kInvalidInput, "findings", "not valid UTF-8");
  if (intake.record.notes.size() + 1 + text.size() > kMaxTextBytes) {
    return fail(ErrorCode::kTooLarge, "/notes",
                fmt::format("would be longer than {} bytes", kMaxTextBytes));
  }
  add_recognised(intake.record, impl_->recogniser.recognise(text));
  if (!intake.record.notes.empty()) intake.record.notes += "\n";
  intake.record.notes += text;
  return impl_->store_change(*before, before->revision, std::move(intake), role);
}

Result<Recorded> Records::restore(std::string_view ref, Revision revision, Role role) {
  const auto now = impl_->store.read(ref);
  if (!now) return fail(now.error());
  const auto then = impl_->store.read(now->id, revision);
  if (!then || then->revision != revision) {
    return fail(ErrorCode::kNotFound, std::string(ref),
                fmt::format("has no revision {}; see its history", revision.value));
  }
  return replace(*now, then->record, role);
}

Result<ImportReport> Records::import(std::istream& lines,
                                     const std::function<void(std::int64_t)>& progress) {
  ImportReport report;
  std::vector<CleanCase> batch;
  std::vector<std::int64_t> numbers;
  std::map<std::string, int> seen;
  std::int64_t stored_lines = 0;
  const auto stopped = [&](Error error) {
    return fail(after_storing(std::move(error), stored_lines));
  };
  const auto flush = [&]() -> Result<void> {
    auto added = impl_->store.add(batch, Role::kImport);
    if (!added) {
      Error error = added.error();
      if (error.code != ErrorCode::kConflict) return fail(std::move(error));
      const auto position = static_cast<std::size_t>(std::stoul(error.place));
      return fail(ErrorCode::kConflict, fmt::format("line {}, /ref", numbers[position]),
                  error.message);
    }
    for (const Added& one : *added) {
      ++(one.addition == Addition::kAdded ? report.added : report.same_already);
    }
    if (!numbers.empty()) {
      stored_lines = numbers.back();
      progress(stored_lines);
    }
    batch.clear();
    numbers.clear();
    return {};
  };

  std::string line;
  for (std::int64_t number = 1; std::getline(lines, line); ++number) {
    if (line.find_first_not_of(" \t\r") == line.npos) continue;
    auto clean = impl_->accepted_line(line, seen);
    if (!clean) return stopped(at_line(clean.error(), number));
    for (const std::string& warning : clean->warnings()) {
      if (report.warnings.size() < kWarningsKept) {
        report.warnings.push_back(fmt::format("line {}: {}", number, warning));
      }
    }
    batch.push_back(std::move(*clean));
    numbers.push_back(number);
    if (batch.size() < kImportBatch) continue;
    if (auto stored = flush(); !stored) return stopped(stored.error());
  }
  if (lines.bad()) {
    return stopped({ErrorCode::kInternal, "", "the lines could not be read to the end", {}});
  }
  if (auto stored = flush(); !stored) return stopped(stored.error());
  return report;
}

Result<std::int64_t> Records::export_to(std::ostream& out) const {
  std::int64_t count = 0;
  auto done = impl_->store.for_each_latest([&](const Change& change) -> Result<void> {
    if (auto readable = case_from_json(change.body); !readable) {
      return fail(ErrorCode::kDamagedStore, fmt::format("case {}", change.id.value),
                  describe(readable.error()));
    }
    out << change.body << '\n';
    ++count;
    if (!out) return fail(ErrorCode::kNoPermission, "", "the export could not be written");
    return {};
  });
  if (!done) return fail(done.error());
  return count;
}

Result<FollowReport> Records::follow(std::chrono::milliseconds patience) {
  return impl_->follower.follow(patience);
}

Result<FollowReport> Records::reindex(std::chrono::milliseconds patience) {
  return impl_->follower.rebuild(patience);
}

Result<std::vector<std::string>> Records::verify() {
  if (auto sound = impl_->store.verify(); !sound) return fail(sound.error());
  if (auto followed = follow(std::chrono::seconds(30)); !followed) return fail(followed.error());
  // Nobody may move the index while it is compared with the records.
  auto lock = FileLock::acquire(impl_->folder.index() / "lock", std::chrono::seconds(30));
  if (!lock) return fail(lock.error());
  const auto generation = current_generation(impl_->folder);
  if (!generation) return fail(generation.error());
  const auto state = index_state(*generation);
  if (!state) return fail(state.error());
  auto contents = index_contents(*generation);
  if (!contents) return fail(contents.error());

  std::int64_t cases = 0, counted = 0;
  auto compared = impl_->store.for_each_latest([&](const Change& change) -> Result<void> {
    // The index is as of its revision; somebody may have written since.
    const auto as_of = impl_->store.read(change.id, state->revision);
    const bool is_later = !as_of && as_of.error().code == ErrorCode::kNotFound;
    if (is_later) return {};
    if (!as_of) return fail(as_of.error());
    ++cases;
    const std::string place = fmt::format("case {}", as_of->record.ref);
    if (auto kept = check_rules(as_of->record, impl_->vocabulary); !kept) {
      return fail(ErrorCode::kDamagedStore, place, describe(kept.error()));
    }
    const auto found = contents->find(change.id);
    const bool counts = as_of->record.state == CaseState::kClosed;
    if (counts != (found != contents->end())) {
      return fail(ErrorCode::kDamagedIndex, place,
                  counts ? "counts, but is not in the index; run: shoplore reindex"
                         : "does not count, but is in the index; run: shoplore reindex");
    }
    if (!counts) return {};
    ++counted;
    const auto document = index_document(change.id, as_of->record, impl_->vocabulary);
    if (found->second != document_contents(document)) {
      return fail(ErrorCode::kDamagedIndex, place,
                  "differs between records and index; run: shoplore reindex");
    }
    contents->erase(found);
    return {};
  });
  if (!compared) return fail(compared.error());
  if (!contents->empty()) {
    return fail(ErrorCode::kDamagedIndex,
                fmt::format("document {}", contents->begin()->first.value),
                "is in the index but not in the records; run: shoplore reindex");
  }
  return std::vector<std::string>{
      fmt::format("records.db: sound, {} cases, revision {}", cases, state->revision.value),
      fmt::format("index: {} counted cases, equal to the records", counted)};
}

const Store& Records::store() const {
  return impl_->store;
}
const Vocabulary& Records::vocabulary() const {
  return impl_->vocabulary;
}
const Recogniser& Records::recogniser() const {
  return impl_->recogniser;
}
const ShopFolder& Records::folder() const {
  return impl_->folder;
}

}  // namespace shoplore
