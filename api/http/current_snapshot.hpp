// The snapshot all answers are made from, swapped for a fresher one while they are made.
//
// Any thread. Readers keep theirs for as long as they hold it.
#pragma once

#include <memory>
#include <mutex>
#include <utility>

#include "query/snapshot.hpp"

namespace shoplore {

// Not std::atomic<std::shared_ptr>: g++ 12 releases its readers' side with
// relaxed ordering, which the thread sanitizer reports. The lock is held to copy a pointer.
class CurrentSnapshot {
 public:
  explicit CurrentSnapshot(std::shared_ptr<const Snapshot> first) : snapshot_(std::move(first)) {}
  std::shared_ptr<const Snapshot> load() const {
    const std::lock_guard lock(mutex_);
    return snapshot_;
  }
  void store(std::shared_ptr<const Snapshot> fresh) {
    const std::lock_guard lock(mutex_);
    snapshot_.swap(fresh);  // the old one may die, after the lock is gone
  }

 private:
  mutable std::mutex mutex_;
  std::shared_ptr<const Snapshot> snapshot_;
};

}  // namespace shoplore
