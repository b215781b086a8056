// A shop's own words: what the vocabulary does not know still speaks where past complaints used it.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <string>

#include "query/ask.hpp"
#include "query/ranking/past_cases.hpp"
#include "query/snapshot.hpp"
#include "tests/query/outcomes/record_shop.hpp"

namespace shoplore::testing {
namespace {

// Ten cases each of two causes with the same symptom. Eight of the seized linkages "fobble"; that
// is in no vocabulary.
class OwnWords : public RecordShop {
 protected:
  void SetUp() override {
    RecordShop::SetUp();
    for (int i = 0; i < 10; ++i) {
      Case linkage = linkage_replaced("linkage-" + std::to_string(i), "2024-03-01", 100'000);
      linkage.complaint = i < 8 ? "flat, it fobbles" : "flat";
      add(linkage);
      Case turbo = turbo_replaced("turbo-" + std::to_string(i), "2024-03-01", 100'000);
      turbo.complaint = "flat";
      add(turbo);
    }
    ASSERT_TRUE(records_->follow(std::chrono::seconds(10)));
    snapshot_ = *Snapshot::open(records_->folder());
  }
  Answer asked(const Question& question) const {
    return ask(question, *snapshot_, records_->store(), records_->vocabulary(),
               records_->recogniser())
        .value();
  }
  Answer asked(const std::string& text) const {
    Question question;
    question.text = text;
    return asked(question);
  }
  static double linkage(const Answer& answer) {
    for (const LikelyCause& cause : answer.likely_causes) {
      if (cause.component == "wastegate_linkage") return cause.probability;
    }
    return 0;
  }
  static const WhyLine* word_line(const LikelyCause& cause) {
    const auto found = std::find_if(cause.why.begin(), cause.why.end(), [](const WhyLine& line) {
      return kind_of_attribute(line.item.attribute) == "word";
    });
    return found == cause.why.end() ? nullptr : &*found;
  }

  std::shared_ptr<const Snapshot> snapshot_;
};

TEST_F(OwnWords, SpeakForTheCauseWhoseComplaintsUsedThem) {
  const Answer without = asked("flat"), with = asked("flat, fobbling when cold");
  EXPECT_NEAR(linkage(without), .5, .05);
  EXPECT_GT(linkage(with), linkage(without) + .05);
  ASSERT_EQ(with.likely_causes[0].component, "wastegate_linkage");
  const WhyLine* line = word_line(with.likely_causes[0]);
  ASSERT_NE(line, nullptr);
  EXPECT_EQ(line->item.attribute, "word:fobbl");
  EXPECT_EQ(line->with_item, 8U);
  EXPECT_EQ(line->known, 10U);
  EXPECT_EQ(line->with_item_elsewhere, 0U);
  EXPECT_EQ(line->known_elsewhere, 10U);
  EXPECT_GT(line->weight, 0);
  EXPECT_EQ(display_item(line->item, records_->vocabulary()), "the word \"fobbl…\"");
}

// They are no findings: shares, widths and silence stay what the findings make them.
TEST_F(OwnWords, AreNotCountedBy) {
  const Answer answer = asked("flat, fobbling");
  EXPECT_EQ(answer.breadth.back().cases, 20U);
  EXPECT_EQ(answer.likely_causes[0].share.count, 10U);
  EXPECT_EQ(answer.understood.not_understood, std::vector<std::string>{"fobbling"});
  EXPECT_EQ(answer.understood.evidence.size(), 1U);
  EXPECT_TRUE(asked("fobbling").nothing_matches);
}

TEST_F(OwnWords, AWordNobodyWroteMovesNothing) {
  const Answer answer = asked("flat, garbling");
  EXPECT_EQ(linkage(answer), linkage(asked("flat")));
  EXPECT_EQ(word_line(answer.likely_causes[0]), nullptr);
}

TEST_F(OwnWords, OfARecordAskedAgainTheComplaintSpeaksToo) {
  Question question;
  question.record.complaint = "It fobbles";
  question.record.symptoms.push_back({"lack_of_power", Presence::kPresent, {}, {}, {}});
  EXPECT_DOUBLE_EQ(linkage(asked(question)), linkage(asked("flat, fobbling")));
}

TEST_F(OwnWords, TheOddsAreTheSumOfTheLines) {
  for (const LikelyCause& cause : asked("flat, fobbling").likely_causes) {
    double sum = cause.prior + cause.scarcity + cause.pairs + cause.likeness + cause.others;
    for (const WhyLine& line : cause.why) sum += line.weight;
    EXPECT_NEAR(sum, std::log(cause.probability / (1 - cause.probability)), 1e-9);
  }
}

// A closed case asked as if new: with its words only where somebody reads them, and its own cause
// has one complaint less that used them.
TEST_F(OwnWords, OfAPastCaseAreAskedAndLeftOutWithIt) {
  const auto cases =
      past_cases(records_->store(), records_->vocabulary(), snapshot_->ledger()).value();
  ASSERT_EQ(cases.size(), 20U);
  EXPECT_TRUE(question_of(cases[0], nullptr).words.empty());
  const PastQuestion question = question_of(cases[0], &records_->recogniser());
  ASSERT_EQ(question.words, (std::vector<EvidenceItem>{{"word:fobbl", "present"}}));
  EXPECT_TRUE(question_of(cases[1], &records_->recogniser()).words.empty());
  auto items = question.findings;
  items.push_back(question.words[0]);
  const auto counts = snapshot_->ranking().count(items, {}, cases[0].stated).value();
  ASSERT_EQ(counts.words.size(), 1U);
  const CauseNumber own = cases[0].stated.cause;
  EXPECT_EQ(counts.words[0].with[own], 7);
  EXPECT_EQ(counts.words[0].known[own], 9);
}

}  // namespace
}  // namespace shoplore::testing
