#include "query/outcomes/outcomes_due.hpp"

#include <gtest/gtest.h>

#include "tests/query/outcomes/record_shop.hpp"

namespace shoplore {
namespace {

using testing::opened_case;
using testing::turbo_replaced;

class OutcomesDueList : public testing::RecordShop {
 protected:
  // Every vehicle its own.
  Case repair(const std::string& ref, const char* closed, char vehicle) const {
    Case record = turbo_replaced(ref, closed, 120'000);
    record.vehicle.token = std::string(32, vehicle);
    return record;
  }
  std::vector<std::string> due(const char* today, std::size_t limit = 20) const {
    const auto due =
        outcomes_due(records_->store(), records_->vocabulary(), parse_date(today).value(), limit);
    EXPECT_TRUE(due);
    std::vector<std::string> refs;
    for (const DueOutcome& each : due->cases) refs.push_back(each.ref);
    all_ = due->all;
    return refs;
  }
  mutable std::size_t all_ = 0;
};

using Refs = std::vector<std::string>;

TEST_F(OutcomesDueList, BeginsSixtyDaysAfterTheWork) {
  add(repair("r", "2026-03-01", 'a'));
  EXPECT_EQ(due("2026-04-29"), Refs{});
  EXPECT_EQ(due("2026-04-30"), Refs{"r"});
}

TEST_F(OutcomesDueList, LeavesOutWhatWasHeardOf) {
  for (const char vehicle : std::string("abcde")) {
    add(repair(std::string("r") + vehicle, "2026-03-01", vehicle));
  }
  Case asked = repair("asked", "2026-03-01", 'f');
  asked.outcome = Outcome{OutcomeStatus::kUnknown, parse_date("2026-05-01").value(), {}, {}};
  add(asked);
  Case stayed = repair("stayed", "2026-03-01", '0');
  stayed.outcome = Outcome{OutcomeStatus::kStayedFixed, parse_date("2026-05-01").value(), {}, {}};
  add(stayed);
  Case back = opened_case("back", "2026-04-01", 121'000);
  back.vehicle.token = std::string(32, 'b');
  back.follows = "rb";
  add(back);
  Case service = opened_case("service", "2026-04-01", 121'000);
  service.state = CaseState::kNoComplaint;
  service.symptoms.clear();
  service.vehicle.token = std::string(32, 'c');
  add(service);
  Case looked_only = repair("looked", "2026-03-01", '1');
  looked_only.correction.reset();
  add(looked_only);
  EXPECT_EQ(due("2026-06-01"), (Refs{"re", "rd", "ra"}));
  EXPECT_EQ(due("2026-06-30"), (Refs{"asked", "re", "rd", "ra"})) << "asked 60 days ago";
}

TEST_F(OutcomesDueList, TellsHowManyThereAreAndShowsTheLatest) {
  add(repair("first", "2026-01-01", 'a'));
  add(repair("third", "2026-03-01", 'b'));
  add(repair("second", "2026-02-01", 'c'));
  EXPECT_EQ(due("2026-09-01", 2), (Refs{"third", "second"}));
  EXPECT_EQ(all_, 3U);
}

}  // namespace
}  // namespace shoplore
