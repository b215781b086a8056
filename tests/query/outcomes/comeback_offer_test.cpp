#include "query/outcomes/comeback_offer.hpp"

#include <gtest/gtest.h>

#include "tests/query/outcomes/record_shop.hpp"

namespace shoplore {
namespace {

using testing::linkage_replaced;
using testing::opened_case;
using testing::turbo_replaced;
using enum ComebackReason;

class ComebackOffers : public testing::RecordShop {
 protected:
  std::vector<std::string> offered(const Case& present) const {
    const auto offers = comeback_offers(present, records_->store(), records_->vocabulary());
    EXPECT_TRUE(offers);
    std::vector<std::string> refs;
    for (const ComebackOffer& offer : *offers) refs.push_back(offer.ref);
    return refs;
  }
};

using Refs = std::vector<std::string>;

TEST_F(ComebackOffers, SayWhatWasDoneAndHowLongAgo) {
  add(turbo_replaced("done", "2026-03-01", 120'000));
  const auto offers = comeback_offers(opened_case("", "2026-05-10", 124'100), records_->store(),
                                      records_->vocabulary());
  ASSERT_EQ(offers->size(), 1U);
  const ComebackOffer& offer = offers->front();
  EXPECT_EQ(offer.ref, "done");
  EXPECT_EQ(offer.since, std::chrono::days{70});
  EXPECT_EQ(offer.km_since, Kilometres{4'100});
  EXPECT_EQ(offer.cause, "turbocharger:worn");
  EXPECT_EQ(offer.fixes, Refs{"replace turbocharger"});
  EXPECT_EQ(offer.shared.symptoms, Refs{"lack_of_power"});
}

TEST_F(ComebackOffers, AreWithinTwoYearsOfTheWork) {
  add(turbo_replaced("done", "2024-03-01", 120'000));
  EXPECT_EQ(offered(opened_case("", "2026-03-01", 150'000)), Refs{"done"}) << "730 days";
  EXPECT_EQ(offered(opened_case("", "2026-03-02", 150'000)), Refs{});
  EXPECT_EQ(offered(opened_case("", "2024-03-01", 150'000)), Refs{}) << "the same visit";
}

TEST_F(ComebackOffers, NeedTheSameVehicleAndSomethingInCommon) {
  add(turbo_replaced("done", "2026-03-01", 120'000));
  Case present = opened_case("", "2026-05-10", 124'000);
  present.vehicle.token = std::string(32, 'b');
  EXPECT_EQ(offered(present), Refs{});
  present.vehicle.token.clear();
  EXPECT_EQ(offered(present), Refs{});
  present = opened_case("", "2026-05-10", 124'000);
  present.symptoms.front().id = "rough_idle";
  EXPECT_EQ(offered(present), Refs{});
  present.symptoms.front() = {"lack_of_power", Presence::kAbsent, {}, {}, {}};
  EXPECT_EQ(offered(present), Refs{});
}

TEST_F(ComebackOffers, OfTheSameCauseNeedNoSymptom) {
  add(turbo_replaced("done", "2026-03-01", 120'000));
  Case present = turbo_replaced("", "2026-05-10", 124'000);
  present.symptoms.front().id = "rough_idle";
  EXPECT_EQ(offered(present), Refs{"done"});
}

TEST_F(ComebackOffers, StandWithTheLatestWorkFirst) {
  add(turbo_replaced("first", "2025-03-01", 110'000));
  add(linkage_replaced("second", "2026-03-01", 120'000));
  EXPECT_EQ(offered(opened_case("", "2026-05-10", 124'000)), (Refs{"second", "first"}));
}

TEST_F(ComebackOffers, AreSilentOnceLinkedOrVouchedFor) {
  add(turbo_replaced("done", "2026-03-01", 120'000));
  Case back = opened_case("back", "2026-05-10", 124'000);
  EXPECT_EQ(offered(back), Refs{"done"});
  back.follows = "done";
  add(back);
  EXPECT_EQ(offered(back), Refs{});
  EXPECT_EQ(offered(opened_case("", "2026-07-01", 126'000)), Refs{}) << "another follows it";

  Case held = linkage_replaced("held", "2026-03-01", 120'000);
  held.outcome = Outcome{OutcomeStatus::kStayedFixed, parse_date("2026-07-01").value(), {}, {}};
  add(held);
  EXPECT_EQ(offered(opened_case("", "2026-07-01", 126'000)), Refs{});
  EXPECT_EQ(offered(opened_case("", "2026-07-02", 126'000)), Refs{"held"});
}

TEST_F(ComebackOffers, AreOfCasesNotOfEnquiriesAndServices) {
  add(turbo_replaced("done", "2026-03-01", 120'000));
  for (const CaseState state :
       {CaseState::kEnquiry, CaseState::kNoComplaint, CaseState::kEnded, CaseState::kWithdrawn}) {
    Case present = opened_case("", "2026-05-10", 124'000);
    present.state = state;
    EXPECT_EQ(offered(present), Refs{}) << name_of(state);
  }
}

PastVisit of_cause(std::string cause) {
  PastVisit visit;
  visit.cause = std::move(cause);
  return visit;
}

TEST(PossibleReasons, FollowFromTheTwoCauses) {
  PastVisit earlier = of_cause("turbocharger:worn");
  earlier.fixes = {"replace turbocharger"};
  using Reasons = std::vector<ComebackReason>;
  EXPECT_EQ(possible_reasons(earlier, of_cause("")),
            (Reasons{kSameCause, kWrongCause, kPart, kWorkmanship, kUnrelated}));
  EXPECT_EQ(possible_reasons(earlier, of_cause("turbocharger:worn")),
            (Reasons{kSameCause, kPart, kWorkmanship}));
  EXPECT_EQ(possible_reasons(earlier, of_cause("turbocharger:leaking")),
            (Reasons{kWrongCause, kPart, kWorkmanship, kUnrelated}));
  EXPECT_EQ(possible_reasons(earlier, of_cause("wastegate_linkage:seized_open")),
            (Reasons{kWrongCause, kWorkmanship, kUnrelated}));
}

}  // namespace
}  // namespace shoplore
