// Fits the ranking again beside a running server, once enough cases have come in.
//
// One fit at a time, on a thread of its own with connections of its own; answers go on meanwhile
// with the knobs they had. A fit that fails leaves the knobs as they
// were and is tried again once more has been recorded.
// Lifetime: waits for a running fit when it dies. Threads: consider() from one.
#pragma once

#include <functional>
#include <future>
#include <memory>

#include "query/snapshot.hpp"

namespace shoplore {

class BackgroundFit {
 public:
  // `fitted` is called on the fit's thread when new knobs are there to be read.
  BackgroundFit(ShopFolder folder, std::function<void()> fitted);

  // Starts a fit on this snapshot when one is due and none is running. Cheap when not.
  void consider(std::shared_ptr<const Snapshot> snapshot, const Vocabulary& vocabulary);

 private:
  ShopFolder folder_;
  std::function<void()> fitted_;
  Revision considered_{-1};
  std::future<void> running_;  // last, so that it is waited for first
};

}  // namespace shoplore
