// Makes what was seen more often lately (kept_lately.hpp) once a day beside a running server.
//
// On a thread of its own; answers go on meanwhile. Where it fails it is tried again on the next
// day. Lifetime: waits for running work when it dies. Threads: consider() from one.
#pragma once

#include <future>
#include <memory>

#include "indexer/quantities.hpp"
#include "query/snapshot.hpp"

namespace shoplore {

class BackgroundLately {
 public:
  explicit BackgroundLately(ShopFolder folder) : folder_(std::move(folder)) {}

  // Starts when the kept result is of another day than `day` and nothing is running. Cheap when
  // not.
  void consider(const std::shared_ptr<const Snapshot>& snapshot, Date day);

 private:
  ShopFolder folder_;
  Date considered_{};
  std::future<void> running_;
};

}  // namespace shoplore
