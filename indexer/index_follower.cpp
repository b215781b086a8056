// Replay: read changes after the index's revision, keep the last of each case, write a batch with
// the revision reached. A crash between batches leaves a smaller revision: the rest is replayed.
#include "indexer/index_follower.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <fstream>
#include <map>
#include <system_error>
#include <thread>

#include "indexer/case_json.hpp"
#include "indexer/file_lock.hpp"
#include "indexer/index_writer.hpp"

namespace shoplore {
namespace {

namespace fs = std::filesystem;
using Batch = std::map<CaseId, std::optional<IndexDocument>>;

constexpr std::size_t kBatchChanges = 1'000;
constexpr std::chrono::milliseconds kBetweenCommits{200};

fs::path name_file(const ShopFolder& folder) {
  return folder.index() / "current";
}

Result<void> put(Batch& batch, const Change& change, const Vocabulary& vocabulary) {
  auto record = case_from_json(change.body);
  if (!record) {
    return fail(ErrorCode::kDamagedStore, fmt::format("case {}", change.id.value),
                describe(record.error()));
  }
  std::optional<IndexDocument>& entry = batch[change.id];
  entry.reset();
  if (record->state == CaseState::kClosed) entry = index_document(change.id, *record, vocabulary);
  return {};
}

// Why the generation cannot be gone on with; empty when it can.
std::string why_unusable(const Result<fs::path>& generation, const IndexOrigin& origin,
                         Revision store_revision, Result<IndexState>& state) {
  if (!generation) return "the index was missing";
  state = index_state(*generation);
  if (!state) return "the index was unreadable";
  if (state->format != kIndexFormat) return "the index had another format";
  if (state->origin.store_id != origin.store_id) return "the index was of other records";
  if (state->origin.vocabulary != origin.vocabulary) return "the vocabulary changed";
  if (state->revision > store_revision) return "the index was ahead of the records";
  if (store_revision.value - state->revision.value > kBulk) return "many changes came at once";
  return "";
}

// An index can always be thrown away, its folder with it: made again here.
Result<FileLock> locked(const ShopFolder& folder, std::chrono::milliseconds patience) {
  std::error_code ignored;
  fs::create_directories(folder.index(), ignored);
  return FileLock::acquire(folder.index() / "lock", patience);
}

// Largest number in index/ plus one: a number is never used twice, so a reader cannot mistake
// a new generation for the one it has open.
int next_number(const ShopFolder& folder) {
  int largest = 0;
  std::error_code ignored;
  for (const auto& entry : fs::directory_iterator(folder.index(), ignored)) {
    const std::string name = entry.path().filename().string();
    int number = 0;
    const auto [end, error] = std::from_chars(name.data(), name.data() + name.size(), number);
    if (error == std::errc() && end == name.data() + name.size()) {
      largest = std::max(largest, number);
    }
  }
  return largest + 1;
}

// Readers that have an old generation open keep it: its files live until they close them.
void remove_other_generations(const ShopFolder& folder, const fs::path& current) {
  std::error_code ignored;
  for (const auto& entry : fs::directory_iterator(folder.index(), ignored)) {
    if (entry.is_directory(ignored) && entry.path() != current) {
      fs::remove_all(entry.path(), ignored);
    }
  }
}

}  // namespace

Result<fs::path> current_generation(const ShopFolder& folder) {
  // Twice: between reading the name and looking for it, a newer generation may take its place.
  for (int tries = 0; tries < 2; ++tries) {
    std::ifstream file(name_file(folder));
    int number = 0;
    if (!(file >> number)) break;
    fs::path generation = folder.index() / std::to_string(number);
    std::error_code ignored;
    if (fs::is_directory(generation, ignored)) return generation;
  }
  return fail(ErrorCode::kNotFound, folder.index().string(), "there is no index yet");
}

IndexFollower::IndexFollower(const ShopFolder& folder, const Store& store,
                             const Vocabulary& vocabulary)
    : folder_(folder), store_(store), vocabulary_(vocabulary) {}

Result<FollowReport> IndexFollower::follow(std::chrono::milliseconds patience) {
  const IndexOrigin origin{store_.store_id(), vocabulary_.fingerprint()};
  const auto target = store_.revision();
  if (!target) return fail(target.error());
  Result<IndexState> state;
  const auto is_current = [&] {
    return why_unusable(current_generation(folder_), origin, *target, state).empty() &&
           state->revision == *target;
  };
  // Looked at without the lock first: most questions find nothing to do and must not wait.
  if (is_current()) return FollowReport{Followed::kNothingToDo, *target, ""};

  auto lock = locked(folder_, patience);
  if (!lock) return fail(lock.error());
  const auto generation = current_generation(folder_);
  if (const std::string why = why_unusable(generation, origin, *target, state); !why.empty()) {
    return build(why);
  }
  return replay(*generation, state->revision);
}

Result<FollowReport> IndexFollower::rebuild(std::chrono::milliseconds patience) {
  auto lock = locked(folder_, patience);
  if (!lock) return fail(lock.error());
  return build("asked for");
}

Result<FollowReport> IndexFollower::replay(const fs::path& generation, Revision from) {
  auto writer = IndexWriter::open(generation, Writing::kLive);
  if (!writer) return fail(writer.error());
  FollowReport report{Followed::kNothingToDo, from, ""};
  while (true) {
    const auto changes = store_.changes_after(report.revision, kBatchChanges);
    if (!changes) return fail(changes.error());
    if (changes->empty()) return report;
    Batch batch;
    for (const Change& change : *changes) {
      if (auto done = put(batch, change, vocabulary_); !done) return fail(done.error());
    }
    std::this_thread::sleep_until(last_commit_ + kBetweenCommits);
    report.revision = changes->back().revision;
    report.followed = Followed::kReplayed;
    auto written =
        writer->write(batch, report.revision, {store_.store_id(), vocabulary_.fingerprint()});
    if (!written) return fail(written.error());
    last_commit_ = std::chrono::steady_clock::now();
  }
}

Result<FollowReport> IndexFollower::build(const std::string& why) {
  const fs::path generation = folder_.index() / std::to_string(next_number(folder_));
  const IndexOrigin origin{store_.store_id(), vocabulary_.fingerprint()};
  // The revision is read before the records: what comes in between is replayed again, harmlessly.
  const auto reached = store_.revision();
  if (!reached) return fail(reached.error());
  {
    auto writer = IndexWriter::open(generation, Writing::kOffline);
    if (!writer) return fail(writer.error());
    Batch batch;
    const auto flush = [&]() -> Result<void> {
      auto written = writer->write(batch, *reached, origin);
      batch.clear();
      return written;
    };
    auto read = store_.for_each_latest([&](const Change& change) -> Result<void> {
      if (auto done = put(batch, change, vocabulary_); !done) return done;
      if (!batch[change.id]) batch.erase(change.id);
      return batch.size() < 20 * kBatchChanges ? Result<void>{} : flush();
    });
    if (!read) return fail(read.error());
    if (auto written = flush(); !written) return fail(written.error());
  }
  auto named = replace_file(name_file(folder_), generation.filename().string() + "\n");
  if (!named) return fail(named.error());
  remove_other_generations(folder_, generation);
  last_commit_ = std::chrono::steady_clock::now();
  return FollowReport{Followed::kRebuilt, *reached, why};
}

}  // namespace shoplore
