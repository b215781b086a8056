// The ledger, the index counter and brute force over the records must agree exactly.
#include <gtest/gtest.h>
#include <xapian.h>

#include <cstdlib>
#include <filesystem>
#include <iostream>

#include "indexer/records.hpp"
#include "query/index_counter.hpp"
#include "query/snapshot.hpp"
#include "tests/query/workshop.hpp"

namespace shoplore::testing {
namespace {

constexpr std::uint64_t kSeed = 20'260'302;
constexpr std::chrono::seconds kPatience{10};

class Counters : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string pattern =
        (std::filesystem::temp_directory_path() / "shoplore-counters-XXXXXX").string();
    folder_.root = std::filesystem::path(mkdtemp(pattern.data())) / "shop";
    auto records = Records::create(folder_);
    ASSERT_TRUE(records) << describe(records.error());
    records_ = std::make_unique<Records>(std::move(*records));
    std::cout << "seed " << kSeed << "\n";
  }
  void TearDown() override { std::filesystem::remove_all(folder_.root.parent_path()); }

  void add_cases(int count) {
    for (int i = 0; i < count; ++i) {
      auto added = records_->add({random_case(random_), {}}, Role::kTechnician);
      ASSERT_TRUE(added) << describe(added.error());
      cases_[added->stored.id.value] = added->stored.record;
    }
  }

  // Takes the fields that `object` of the new record lacks out of the old one's too.
  static void name_missing(std::string& patch, const std::string& object,
                           std::initializer_list<const char*> fields) {
    const std::string opening = "\"" + object + "\":{";
    const auto at = patch.find(opening);
    if (at == std::string::npos) return;
    for (const char* field : fields) {
      const auto end = patch.find('}', at);
      const std::string name = "\"" + std::string(field) + "\":";
      const auto found = patch.find(name, at);
      if (found != std::string::npos && found < end) continue;
      patch.insert(at + opening.size(), name + "null,");
    }
  }

  // Writes a record over a case the way a person does: a patch of every field.
  void put(std::uint32_t id, Case record) {
    record.ref = cases_.at(id).ref;
    std::string patch = case_to_json(record);
    // A merge patch keeps fields that it does not name, so those the new record lacks are removed.
    for (const char* field : {"closed", "symptoms", "scanned", "codes", "checks", "earlier_repairs",
                              "cause", "correction", "outcome"}) {
      if (patch.find("\"" + std::string(field) + "\":") == std::string::npos) {
        patch.insert(patch.size() - 1, ",\"" + std::string(field) + "\":null");
      }
    }
    name_missing(patch, "vehicle", {"engine_family", "mileage_km", "model_year", "token"});
    name_missing(patch, "outcome", {"as_of", "mileage_km", "reason"});
    auto changed = records_->change(record.ref, std::nullopt, patch, Role::kTechnician);
    ASSERT_TRUE(changed) << describe(changed.error());
    cases_[id] = changed->stored.record;
  }

  // Edits, reopens or withdraws a case at random.
  void change_one() {
    auto at = cases_.begin();
    std::advance(at, static_cast<std::ptrdiff_t>(random_() % cases_.size()));
    Case record = random_case(random_);
    if (random_() % 3 == 0) {
      record = at->second;
      record.state = random_() % 2 == 0 ? CaseState::kWithdrawn : CaseState::kOpen;
      if (record.state == CaseState::kOpen)
        record.closed.reset(), record.cause.reset(), record.outcome.reset();
    }
    put(at->first, std::move(record));
  }

  // Both by id, with the day each came back as its record has it.
  void expect_same_cases(const std::vector<CaseCause>& fast, const std::vector<CaseCause>& slow) {
    ASSERT_EQ(fast.size(), slow.size());
    for (std::size_t i = 0; i < fast.size(); ++i) {
      EXPECT_EQ(fast[i].id, slow[i].id);
      EXPECT_EQ(fast[i].cause, slow[i].cause);
      const Case& record = cases_.at(fast[i].id.value);
      std::optional<int> days;
      const bool back = record.outcome && record.outcome->status == OutcomeStatus::kCameBack;
      if (back && record.outcome->as_of) {
        days = static_cast<int>((record.outcome->as_of->days - record.closed->days).count());
      }
      EXPECT_EQ(fast[i].came_back_days, days);
      EXPECT_EQ(slow[i].came_back_days, days);
    }
  }

  void expect_agreement(const Snapshot& snapshot, int questions) {
    int matched = 0;
    for (int i = 0; i < questions; ++i) {
      const CountQuestion question = random_question(random_);
      const PlainCount expected = count_plainly(cases_, question);
      if (expected.cases > 0) ++matched;
      const Ledger& ledger = snapshot.ledger();
      const auto fast = ledger.tally(question);
      ASSERT_TRUE(fast);
      ASSERT_EQ(plain(*fast, ledger.causes()), expected) << "ledger, question " << i;
      ASSERT_EQ(ledger.matching(question).size(), expected.cases);
      auto used = snapshot.with_index([&](Xapian::Database& index) -> Result<void> {
        const auto slow = IndexCounter(index, ledger.causes()).tally(question);
        EXPECT_TRUE(slow);
        EXPECT_EQ(plain(*slow, ledger.causes()), expected) << "index, question " << i;
        expect_same_cases(*ledger.cases(question),
                          *IndexCounter(index, ledger.causes()).cases(question));
        return {};
      });
      ASSERT_TRUE(used);
    }
    EXPECT_GT(matched, questions / 3) << "questions that match nothing prove little";
  }

  ShopFolder folder_;
  std::unique_ptr<Records> records_;
  CasesById cases_;
  std::mt19937_64 random_{kSeed};
};

TEST_F(Counters, AgreeOnRandomQuestionsAlsoAfterEditsReopeningsAndWithdrawals) {
  add_cases(600);
  ASSERT_TRUE(records_->follow(kPatience));
  auto snapshot = Snapshot::open(folder_);
  ASSERT_TRUE(snapshot);
  expect_agreement(**snapshot, 500);

  for (int i = 0; i < 300; ++i) change_one();
  add_cases(20);
  ASSERT_TRUE(records_->follow(kPatience));
  auto refreshed = Snapshot::refreshed(*snapshot, folder_, records_->store());
  ASSERT_TRUE(refreshed);
  ASSERT_NE(*refreshed, *snapshot);
  expect_agreement(**refreshed, 500);
  auto verified = records_->verify();
  EXPECT_TRUE(verified) << describe(verified.error());

  // Built anew from the records it must say the same.
  ASSERT_TRUE(records_->reindex(kPatience));
  auto anew = Snapshot::open(folder_);
  ASSERT_TRUE(anew);
  expect_agreement(**anew, 200);
}

TEST_F(Counters, AnOpenCaseNeverCounts) {
  Case record = random_case(random_);
  while (record.state != CaseState::kOpen) record = random_case(random_);
  ASSERT_TRUE(records_->add({record, {}}, Role::kTechnician));
  ASSERT_TRUE(records_->follow(kPatience));
  EXPECT_EQ((*Snapshot::open(folder_))->ledger().case_count(), 0U);
}

}  // namespace
}  // namespace shoplore::testing
