#include "api/cli/print_mileage.hpp"

#include <gtest/gtest.h>

#include <sstream>

#include "tests/query/failure_mileage/visit_lists.hpp"

namespace shoplore {
namespace {

using testing::kHose;
using testing::kLinkage;
using testing::Told;
using testing::vehicle_told;

const Vocabulary& vocabulary() {
  static const Vocabulary loaded = *Vocabulary::built_in();
  return loaded;
}

std::string printed(const std::vector<VehicleHistory>& histories, std::size_t width = 80,
                    const VehicleScope& scope = {}) {
  const auto answer = failure_mileage(histories, {kLinkage, scope});
  EXPECT_TRUE(answer) << describe(answer.error());
  return print_mileage(*answer, vocabulary(), {width, Colour::kOff});
}

// One line, so that a claim does not depend on where lines break.
std::string flat(const std::string& text) {
  std::istringstream words(text);
  std::string line;
  for (std::string word; words >> word;) line += (line.empty() ? "" : " ") + word;
  return line;
}

#define EXPECT_SAYS(text, part) EXPECT_NE(flat(text).find(part), std::string::npos) << (text)
#define EXPECT_SILENT_OF(text, part) EXPECT_EQ(flat(text).find(part), std::string::npos) << (text)

VehicleHistory lived(std::int64_t to, const std::string& end, std::vector<std::string> fixes = {}) {
  return vehicle_told("bw16d", {{"service", 10'000}, {end, to, std::move(fixes)}});
}

std::vector<VehicleHistory> shop(int failed, int whole) {
  std::vector<VehicleHistory> histories;
  for (int i = 0; i < failed; ++i) histories.push_back(lived(60'000 + 7'000 * i, kLinkage));
  for (int i = 0; i < whole; ++i) histories.push_back(lived(80'000 + 9'000 * i, "service"));
  return histories;
}

TEST(PrintMileage, NoLineIsWiderThanThePage) {
  for (const std::size_t width : {60U, 80U, 120U}) {
    std::istringstream lines(printed(shop(8, 20), width));
    for (std::string line; std::getline(lines, line);) {
      EXPECT_LE(display_width(line), width) << line;
    }
  }
}

TEST(PrintMileage, SaysWhoIsCountedAndWhoIsNot) {
  auto histories = shop(4, 6);
  histories.push_back(vehicle_told("bw16d", {{kLinkage, 99'000}}));
  histories.push_back(vehicle_told("bw16d", {{"service", 99'000}}));
  histories.push_back(vehicle_told("bw16d", {{"service", {}}}));
  histories.push_back(vehicle_told("bw16d", {{"service", 9'000}, {"service", 8'000}}));
  histories.push_back(vehicle_told("", {{"service", 9'000}, {"service", 18'000}}));
  const std::string text = printed(histories);
  EXPECT_SAYS(text, "10 vehicles of engine family BW16D, followed from the first visit here");
  EXPECT_SAYS(text, ": 4 failed in");
  EXPECT_SAYS(text, "1 came in with it at the first visit");
  EXPECT_SAYS(text,
              "1 with nothing driven between visits; 1 without mileage; 1 whose mileage runs "
              "backwards; 1 of an engine family not written down");
}

TEST(PrintMileage, AnEstimateBeyondTheLongestLifeIsNoFigure) {
  std::vector<VehicleHistory> histories;
  for (int i = 0; i < 12; ++i) histories.push_back(lived(100'000 + 10'000 * i, kLinkage));
  for (int i = 0; i < 60; ++i) histories.push_back(lived(120'000 + 3'000 * i, "service"));
  const std::string text = printed(histories);
  EXPECT_SAYS(text, "B50, Weibull > 297,000 not seen > 185,000 not seen");
  EXPECT_SAYS(text, "Not seen: at ages at which too few were followed");
  EXPECT_SILENT_OF(printed(shop(20, 2)), "not seen");
}

TEST(PrintMileage, AnIntervalThatTellsNothingIsNotShown) {
  const std::string text = printed(shop(3, 40));
  EXPECT_SAYS(text, "B10, Weibull - too few to tell - too few to tell");
  EXPECT_SAYS(text, "Whether it wears out cannot be told from so few.");
  EXPECT_SILENT_OF(text, "shape");
}

TEST(PrintMileage, ReplacedPartsAreSetApartWithThoseNeverSeenAgain) {
  const std::vector<std::string> renewed{"replace wastegate_linkage"};
  std::vector<VehicleHistory> histories = shop(3, 3);
  for (std::int64_t i = 0; i < 5; ++i) {
    histories.push_back(
        vehicle_told("bw16d", {{kLinkage, 90'000, renewed}, {"service", 100'000 + 5'000 * i}}));
  }
  histories.push_back(vehicle_told("bw16d", {{kLinkage, 90'000, renewed}}));
  const std::string text = printed(histories);
  EXPECT_SAYS(text,
              "5 of 6 parts fitted were seen again and followed from that km: none failed in "
              "100,000 km (62,100 mi) driven, the longest went 30,000 km (18,600 mi)");
  EXPECT_SILENT_OF(printed(shop(3, 3)), "After it was replaced");
}

TEST(PrintMileage, FewOrUnfitFailuresAreSaidInWords) {
  EXPECT_SAYS(printed(shop(2, 5)), "Nothing is estimated from fewer than 3 failures");
  EXPECT_SILENT_OF(printed(shop(2, 5)), "B10");
  std::vector<VehicleHistory> same;
  for (int i = 0; i < 4; ++i) same.push_back(lived(80'000, kLinkage));
  EXPECT_SAYS(printed(same), "No life could be fitted: all failures are at 80000");
  EXPECT_SAYS(printed({vehicle_told("bw16d", {{kLinkage, 99'000}})}),
              "No vehicle was seen with the part whole and again later");
}

TEST(PrintMileage, NothingOnRecordIsSaid) {
  EXPECT_SAYS(printed({lived(50'000, kHose)}),
              "No case of wastegate linkage, seized open is on record, so there is nothing to "
              "tell. Looked through 1 vehicle.");
  EXPECT_SAYS(printed(shop(3, 3), 80, {"Elvetia", ""}), "No vehicle (make Elvetia) is on record.");
}

}  // namespace
}  // namespace shoplore
