// What the customer is given to sign: what stands on it, and what must not.
#include "api/wire/approval_html.hpp"

#include <gtest/gtest.h>

#include <regex>

namespace shoplore {
namespace {

#define EXPECT_SAYS(text, part) EXPECT_NE((text).find(part), std::string::npos) << (text)
#define EXPECT_SAYS_NOT(text, part) EXPECT_EQ((text).find(part), std::string::npos) << (text)

const Vocabulary& words() {
  static const Vocabulary vocabulary = Vocabulary::built_in().value();
  return vocabulary;
}

Case open_case() {
  Case record;
  record.ref = "case-77";
  record.job_number = "J-1234";
  record.state = CaseState::kOpen;
  record.vehicle.make = "Brackwater";
  record.vehicle.model = "Tidal";
  record.vehicle.model_year = 2016;
  record.vehicle.engine_family = "BW16D";
  record.vehicle.mileage_km = Kilometres{142'000};
  record.vehicle.token = "0f3c9a5d1b7e48260f3c9a5d1b7e4826";
  record.complaint = "flat uphill";
  Check& check = record.checks.emplace_back();
  check.id = "wastegate_linkage_by_hand";
  check.verdict = Verdict::kFail;
  return record;
}

RepairPlan plan() {
  RepairPlan plan;
  plan.cause = {"wastegate_linkage:seized_open", "wastegate_linkage", "seized_open", 40};
  plan.case_ref = "case-77";
  plan.cases = 40;
  plan.vehicles = 39;
  plan.proposed = ProposedWork{{"replace wastegate_linkage"}, ProposedBecause::kLastedAYear, 30};
  plan.parts.out_of = 30;
  plan.parts.parts = {{"wastegate linkage", "wastegate_linkage", 30, 1},
                      {"Grandbrand linkage kit", "", 28, 1},
                      {"spark plug", "spark_plug", 3, 4}};
  plan.currency.name = "EUR";
  plan.work = {{WorkFigure::kClockedHours,
                WorkAlike::kSameFixes,
                VehiclesAlike::kAll,
                30,
                Spread{1.2, 1.9, 2.8},
                {}},
               {WorkFigure::kCost,
                WorkAlike::kSameFixes,
                VehiclesAlike::kAll,
                30,
                Spread{183.4, 240, 332.1},
                {}}};
  plan.traps = {{"a trap", {"case-3"}}};
  return plan;
}

std::string page(const RepairPlan& plan, const Case& record) {
  const auto html = approval_html(plan, record, words());
  EXPECT_TRUE(html) << describe(html.error());
  return html.value_or("");
}

TEST(ApprovalHtml, SaysWhatIsToBeSigned) {
  const std::string html = page(plan(), open_case());
  for (const char* part :
       {"J-1234", "2016 Brackwater Tidal", "142,000 km", "flat uphill",
        "move the wastegate linkage by hand: not in order", "wastegate linkage, seized open",
        "replace wastegate linkage", "EUR 180 to 340", "estimate", "1.2 to 2.8 hours",
        "What could change it", "we ask you first", "Yes, do this work", "No, do not do it",
        "Signature"}) {
    EXPECT_SAYS(html, part);
  }
}

TEST(ApprovalHtml, NamesTheFailedPartsRepairBeforeWhatGoesWithIt) {
  RepairPlan with_more = plan();
  with_more.proposed->fixes = {"free_off wastegate_actuator", "replace wastegate_linkage"};
  const std::string html = page(with_more, open_case());
  const auto linkage = html.find("replace wastegate linkage");
  const auto actuator = html.find("free off wastegate actuator");
  ASSERT_NE(actuator, std::string::npos);
  EXPECT_LT(linkage, actuator);
}

TEST(ApprovalHtml, HoldsNothingOfTheWorkshopsOwn) {
  std::string html = page(plan(), open_case());
  for (const char* part : {"case-77", "case-3", "a trap", "BW16D", "0f3c", "Grandbrand",
                           "wastegate_linkage", "spark plug"}) {
    EXPECT_SAYS_NOT(html, part);
  }
  html.erase(0, html.find("<body>"));
  EXPECT_SAYS_NOT(html, "%");
  EXPECT_FALSE(std::regex_search(html, std::regex("\\bcases?\\b"))) << html;
}

TEST(ApprovalHtml, LoadsNothingAndRunsNothing) {
  const std::string html = page(plan(), open_case());
  for (const char* part : {"<script", "http:", "https:", "src=", "href=", "url(", "@import", "<img",
                           "<link", "javascript:"}) {
    EXPECT_SAYS_NOT(html, part);
  }
  EXPECT_SAYS(html, "default-src 'none'");
}

TEST(ApprovalHtml, EscapesEveryText) {
  Case record = open_case();
  const std::string bad = "<script>alert(\"x\")</script>&'";
  record.complaint = record.job_number = record.vehicle.make = record.vehicle.model = bad;
  record.checks[0].unit = bad;
  record.checks[0].reading = Reading{4.5, ""};
  record.checks[0].id = "<i>";
  RepairPlan made = plan();
  made.currency.name = bad;
  made.proposed->fixes = {"<b> <u>"};
  made.parts.parts[0].name = bad;
  const std::string html = page(made, record);
  EXPECT_SAYS_NOT(html, "<script");
  EXPECT_SAYS_NOT(html, "<i>");
  EXPECT_SAYS_NOT(html, "<u>");
  EXPECT_SAYS(html, "&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt;&amp;&#39;");
}

TEST(ApprovalHtml, WithoutEnoughOfTheSameWorkThereIsNoPrice) {
  RepairPlan few = plan();
  few.work[1].spread.reset();
  few.work[1].values = {200, 300};
  EXPECT_SAYS(page(few, open_case()), "We cannot estimate this");
  RepairPlan other = plan();
  other.work[1].work = WorkAlike::kAnyFixes;
  EXPECT_SAYS(page(other, open_case()), "We cannot estimate this");
  EXPECT_SAYS_NOT(page(other, open_case()), "EUR");
}

TEST(ApprovalHtml, IsAskedForBeforeTheWorkOnly) {
  for (const auto& [state, name] : kEnumNames<CaseState>) {
    Case record = open_case();
    record.state = state;
    const auto html = approval_html(plan(), record, words());
    const bool before = state == CaseState::kOpen || state == CaseState::kWaiting;
    EXPECT_EQ(html.has_value(), before) << name;
    if (before) continue;
    EXPECT_EQ(html.error().code, ErrorCode::kConflict) << name;
    EXPECT_EQ(html.error().place, "case-77") << name;
  }
}

TEST(ApprovalHtml, NothingRecordedIsNothingToPropose) {
  RepairPlan none = plan();
  none.proposed.reset();
  const auto html = approval_html(none, open_case(), words());
  ASSERT_FALSE(html);
  EXPECT_EQ(html.error().code, ErrorCode::kNotFound);
  EXPECT_SAYS(html.error().message, "wastegate linkage, seized open");
}

}  // namespace
}  // namespace shoplore
