// The demo workshop with the truth behind it: its records through the whole pipeline, and cases of
// the same world that its records do not hold.
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <vector>

#include "corpus-demo/generator.hpp"
#include "indexer/records.hpp"
#include "query/ranking/past_cases.hpp"
#include "query/snapshot.hpp"

namespace shoplore::testing {

// Nobody knows the true rates behind the showcases: a claim about rates leaves them out.
enum class Showcases { kIn, kOut };

class DemoShop {
 public:
  // `change` is made to every record before it is imported.
  explicit DemoShop(std::int64_t closed_cases = 2'400, Showcases showcases = Showcases::kIn,
                    const std::function<void(DemoCase&)>& change = {});
  ~DemoShop();
  DemoShop(const DemoShop&) = delete;
  DemoShop& operator=(const DemoShop&) = delete;

  struct Closed {
    CaseId id;
    DemoCase drawn;
  };
  // The drawn closed cases in its records; showcases, whose truth nobody knows, are not here.
  [[nodiscard]] const std::vector<Closed>& closed() const { return closed_; }
  [[nodiscard]] const World& world() const { return world_; }
  [[nodiscard]] Records& records() const { return *records_; }
  [[nodiscard]] const Vocabulary& vocabulary() const { return records_->vocabulary(); }
  [[nodiscard]] const Snapshot& snapshot() const { return *snapshot_; }
  [[nodiscard]] const Ledger& ledger() const { return snapshot_->ledger(); }

  // A ranking fitted to it with that seed.
  [[nodiscard]] RankingModel fitted(std::uint64_t seed) const;

  // Closed cases drawn anew from the same world.
  [[nodiscard]] std::vector<DemoCase> unseen(std::int64_t cases, std::uint64_t seed) const;

  // The number of the drawn case's true cause; nothing when the records hold none of it.
  [[nodiscard]] std::optional<CauseNumber> cause_of(const DemoCase& drawn) const;

 private:
  World world_ = demo_world();
  std::filesystem::path home_;
  std::unique_ptr<Records> records_;
  std::shared_ptr<const Snapshot> snapshot_;
  std::vector<Closed> closed_;
};

}  // namespace shoplore::testing
