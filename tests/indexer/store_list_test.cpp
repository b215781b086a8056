// Lists against the obvious way: a walk over all cases in memory.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <iostream>
#include <random>

#include "indexer/records.hpp"

namespace shoplore {
namespace {

constexpr std::uint64_t kSeed = 20260302;

class StoreList : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string pattern =
        (std::filesystem::temp_directory_path() / "shoplore-list-XXXXXX").string();
    home_ = mkdtemp(pattern.data());
    records_ = std::make_unique<Records>(std::move(*Records::create({home_ / "shop"})));
  }
  void TearDown() override { std::filesystem::remove_all(home_); }

  void add(const Case& record) {
    const auto added = records_->add({record, {}}, Role::kTechnician);
    ASSERT_TRUE(added) << describe(added.error());
  }
  std::vector<std::uint32_t> ids(const CaseListFilter& filter, CaseId before = {},
                                 std::size_t limit = 1'000) const {
    std::vector<std::uint32_t> ids;
    const auto cases = records_->store().list(filter, before, limit);
    EXPECT_TRUE(cases) << describe(cases.error());
    if (!cases) return ids;
    for (const StoredCase& each : *cases) ids.push_back(each.id.value);
    return ids;
  }

  std::filesystem::path home_;
  std::unique_ptr<Records> records_;
};

Date day(const std::string& text) {
  return parse_date(text).value();
}

Case random_case(std::mt19937_64& random) {
  const auto pick = [&](auto list) { return *(list.begin() + random() % list.size()); };
  Case record;
  record.state = pick(std::initializer_list<CaseState>{CaseState::kOpen, CaseState::kWaiting,
                                                       CaseState::kClosed, CaseState::kClosed,
                                                       CaseState::kEnquiry, CaseState::kWithdrawn});
  record.opened = day(pick(std::initializer_list<const char*>{"2026-01-10", "2026-02-10"}));
  record.vehicle.make = pick(std::initializer_list<const char*>{"Arlune", "Cormont", ""});
  record.vehicle.engine_family = pick(std::initializer_list<const char*>{"CM12P", "BW16D"});
  record.vehicle.token = pick(std::initializer_list<const char*>{"", std::string(32, 'a').c_str()});
  if (record.state == CaseState::kClosed) {
    record.closed = day(pick(std::initializer_list<const char*>{"2026-02-11", "2026-03-11"}));
    record.cause =
        Cause{pick(std::initializer_list<const char*>{"turbocharger", "charge_air_hose"}),
              pick(std::initializer_list<const char*>{"worn", "split"}), Proof::kSeen};
  }
  return record;
}

bool passes(const Case& record, const CaseListFilter& filter) {
  const auto among = [](const auto& list, const auto& value) {
    return list.empty() || std::find(list.begin(), list.end(), value) != list.end();
  };
  const Cause cause = record.cause.value_or(Cause{});
  return among(filter.states, record.state) &&
         (filter.make.empty() || filter.make == record.vehicle.make) &&
         (filter.engine_family.empty() || filter.engine_family == record.vehicle.engine_family) &&
         (filter.vehicle.empty() || filter.vehicle == record.vehicle.token) &&
         (!filter.opened_since || record.opened >= *filter.opened_since) &&
         (!filter.closed_since || (record.closed && *record.closed >= *filter.closed_since)) &&
         among(filter.components, cause.component) && among(filter.failures, cause.failure);
}

CaseListFilter random_filter(std::mt19937_64& random) {
  CaseListFilter filter;
  const auto sometimes = [&] { return random() % 4 == 0; };
  if (sometimes()) filter.states = {CaseState::kOpen};
  if (sometimes()) filter.states.insert({CaseState::kWaiting, CaseState::kOpen});
  if (sometimes()) filter.states.insert(CaseState::kClosed);
  if (sometimes()) filter.make = "Arlune";
  if (sometimes()) filter.engine_family = "BW16D";
  if (sometimes()) filter.vehicle = std::string(32, 'a');
  if (sometimes()) filter.opened_since = day("2026-02-10");
  if (sometimes()) filter.closed_since = day("2026-03-01");
  if (sometimes()) filter.components = {"turbocharger", "wastegate_linkage"};
  if (sometimes()) filter.failures = {"worn"};
  return filter;
}

TEST_F(StoreList, EveryFilterIsWhatAWalkOverAllCasesSays) {
  std::mt19937_64 random(kSeed);
  std::cout << "seed " << kSeed << "\n";
  std::vector<Case> cases;
  for (int i = 0; i < 120; ++i) add(cases.emplace_back(random_case(random)));
  std::size_t shown = 0;
  for (int i = 0; i < 300; ++i) {
    const CaseListFilter filter = random_filter(random);
    std::vector<std::uint32_t> expected;
    for (std::size_t k = cases.size(); k > 0; --k) {
      if (passes(cases[k - 1], filter)) expected.push_back(static_cast<std::uint32_t>(k));
    }
    EXPECT_EQ(ids(filter), expected) << "filter number " << i;
    shown += expected.size();
  }
  EXPECT_GT(shown, 1'000U) << "the filters let hardly anything through";
}

TEST_F(StoreList, PagesShowEveryCaseOnceWhileCasesAreAdded) {
  std::mt19937_64 random(kSeed);
  for (int i = 0; i < 20; ++i) add(random_case(random));
  std::vector<std::uint32_t> seen;
  CaseId before;
  while (true) {
    const auto page = ids({}, before, 3);
    if (page.empty()) break;
    seen.insert(seen.end(), page.begin(), page.end());
    before = CaseId{page.back()};
    add(random_case(random));
  }
  std::vector<std::uint32_t> expected;
  for (std::uint32_t id = 20; id > 0; --id) expected.push_back(id);
  EXPECT_EQ(seen, expected);
}

TEST_F(StoreList, ACaseIsListedAsItIsNow) {
  Case record;
  record.opened = day("2026-03-02");
  add(record);
  CaseListFilter open;
  open.states = {CaseState::kOpen};
  EXPECT_EQ(ids(open).size(), 1U);
  ASSERT_TRUE(records_->change("case-1", {}, R"({"state":"withdrawn"})", Role::kTechnician));
  EXPECT_EQ(ids(open).size(), 0U);
}

}  // namespace
}  // namespace shoplore
