// Keeps index/ in step with records.db by replaying its changes.
//
// Only closed cases are in the index. Whoever holds index/lock replays; others leave it to them.
// A missing, foreign, outdated or unreadable index, or more than kBulk changes to replay, makes
// a new generation offline and names it current atomically; readers of the old one go on.
// Lifetime: refers to folder, store and vocabulary. Threads: one at a time.
// Fails with kBusy when another process holds the lock longer than the given patience,
// kNoPermission when index/ cannot be written.
#pragma once

#include <chrono>
#include <filesystem>
#include <string>

#include "indexer/quantities.hpp"
#include "indexer/result.hpp"
#include "indexer/shop_folder.hpp"
#include "indexer/store.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

// Above this many changes a new generation is quicker than replaying.
inline constexpr std::int64_t kBulk = 5'000;

// What following did, for people and tests.
enum class Followed { kNothingToDo, kReplayed, kRebuilt };
struct FollowReport {
  Followed followed = Followed::kNothingToDo;
  Revision revision;        // of the index afterwards
  std::string why_rebuilt;  // "the index was missing"; empty unless kRebuilt
};

class IndexFollower {
 public:
  IndexFollower(const ShopFolder& folder, const Store& store, const Vocabulary& vocabulary);

  // Brings the index to the store's latest revision. Commits are at most 1,000 documents and at
  // least 200 ms apart, because readers may miss a block of a generation that moves faster.
  [[nodiscard]] Result<FollowReport> follow(std::chrono::milliseconds patience);

  // Builds a new generation from the records whatever the present one is like.
  [[nodiscard]] Result<FollowReport> rebuild(std::chrono::milliseconds patience);

 private:
  // Both require the lock.
  [[nodiscard]] Result<FollowReport> replay(const std::filesystem::path& generation, Revision from);
  [[nodiscard]] Result<FollowReport> build(const std::string& why);

  const ShopFolder& folder_;
  const Store& store_;
  const Vocabulary& vocabulary_;
  std::chrono::steady_clock::time_point last_commit_{};
};

// Folder of the generation in use; kNotFound when there is none.
[[nodiscard]] Result<std::filesystem::path> current_generation(const ShopFolder& folder);

}  // namespace shoplore
