#include "tests/query/demo_shop.hpp"
#include "indexer/case_keys.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <sstream>

#include "query/ranking/knob_fit.hpp"

namespace shoplore::testing {

DemoShop::DemoShop(std::int64_t closed_cases, Showcases showcases,
                   const std::function<void(DemoCase&)>& change) {
  std::string pattern = (std::filesystem::temp_directory_path() / "shoplore-demo-XXXXXX").string();
  home_ = mkdtemp(pattern.data());
  records_ = std::make_unique<Records>(std::move(*Records::create({home_ / "shop"})));
  std::stringstream lines;
  std::uint32_t lines_written = 0;  // cases are numbered in the order they come in
  generate_workshop(world_, records_->vocabulary(), {closed_cases, 1}, [&](const DemoCase& made) {
    if (made.hand == Hand::kShowcase && showcases == Showcases::kOut) return;
    DemoCase drawn = made;
    if (change) change(drawn);
    lines << case_to_json(drawn.record) << "\n";
    ++lines_written;
    if (drawn.record.state == CaseState::kClosed && drawn.pattern) {
      closed_.push_back({CaseId{lines_written}, drawn});
    }
  });
  EXPECT_TRUE(records_->import(lines, [](std::int64_t) {}));
  EXPECT_TRUE(records_->follow(std::chrono::seconds(60)));
  snapshot_ = *Snapshot::open(records_->folder());
}

DemoShop::~DemoShop() {
  std::filesystem::remove_all(home_);
}

RankingModel DemoShop::fitted(std::uint64_t seed) const {
  RankingModel model = RankingModel::of(ledger(), {}).value();
  const auto cases = past_cases(records_->store(), vocabulary(), ledger()).value();
  model.set_knobs(fit_knobs(model, cases, seed, &records_->recogniser()).value().knobs);
  return model;
}

std::vector<DemoCase> DemoShop::unseen(std::int64_t cases, std::uint64_t seed) const {
  std::vector<DemoCase> drawn_cases;
  generate_workshop(world_, vocabulary(), {cases, seed}, [&](const DemoCase& drawn) {
    if (drawn.record.state == CaseState::kClosed && drawn.pattern) drawn_cases.push_back(drawn);
  });
  return drawn_cases;
}

std::optional<CauseNumber> DemoShop::cause_of(const DemoCase& drawn) const {
  return ledger().causes().find(cause_key(*drawn.record.cause, vocabulary()));
}

}  // namespace shoplore::testing
