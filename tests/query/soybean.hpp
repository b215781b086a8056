// The large soybean disease data set (UCI; Michalski & Chilausky 1980; 683 cases, 19 diseases, 35
// attributes, some unknown) as a workshop's records, through the whole pipeline: imported as
// closed cases whose attributes are facts, indexed, and opened as a snapshot.
//
// The data come from Debian's `weka` package (examples/soybean.arff), which tests/run unpacks.
#pragma once

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "indexer/records.hpp"
#include "query/ranking/past_cases.hpp"
#include "query/snapshot.hpp"

namespace shoplore::testing {

class SoybeanShop {
 public:
  SoybeanShop();
  ~SoybeanShop();
  SoybeanShop(const SoybeanShop&) = delete;
  SoybeanShop& operator=(const SoybeanShop&) = delete;

  // In file order. Facts are named "00 date", "01 plant-stand" ..., so that items sort by
  // attribute as in the file, then by value.
  [[nodiscard]] const std::vector<PastCase>& cases() const { return cases_; }
  [[nodiscard]] const Ledger& ledger() const { return snapshot_->ledger(); }
  [[nodiscard]] const Snapshot& snapshot() const { return *snapshot_; }
  [[nodiscard]] std::string disease(CauseNumber cause) const;

 private:
  std::filesystem::path home_;
  std::unique_ptr<Records> records_;
  std::shared_ptr<const Snapshot> snapshot_;
  std::vector<PastCase> cases_;
};

}  // namespace shoplore::testing
