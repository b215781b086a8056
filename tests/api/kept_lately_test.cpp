// What is kept of a shop's lately, and how a server makes it once a day.
#include "api/wire/kept_lately.hpp"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "api/http/background_lately.hpp"
#include "tests/query/demo_shop.hpp"

namespace shoplore::testing {
namespace {

const Date kDay = parse_date("2026-11-02").value();

std::shared_ptr<const Snapshot> snapshot_of(const DemoShop& shop) {
  return Snapshot::open(shop.records().folder()).value();
}

TEST(KeptLately, ReadsWhatWasMade) {
  const DemoShop shop(300);
  const ShopFolder folder = shop.records().folder();
  EXPECT_FALSE(read_lately(folder).value());
  const KeptLately made =
      make_lately(folder, shop.ledger(), shop.snapshot().revision(), kDay).value();
  const auto read = read_lately(folder).value();
  ASSERT_TRUE(read);
  EXPECT_EQ(read->json, made.json);
  EXPECT_EQ(read->made, kDay);
  EXPECT_EQ(read->revision, shop.snapshot().revision());
  const auto json = nlohmann::json::parse(read->json);
  EXPECT_EQ(json["months"]["last"], "2026-10");
  EXPECT_EQ(json["rows"].size(), read->risen + read->fallen);
  EXPECT_EQ(json["pairings"].size(), read->pairings);
}

TEST(KeptLately, AShopWithoutCasesKeepsThatThereIsNothing) {
  const DemoShop shop(20);
  const auto made = make_lately(shop.records().folder(), Ledger(), Revision{7}, kDay);
  ASSERT_TRUE(made);
  EXPECT_EQ(made->risen + made->fallen + made->pairings, 0U);
}

TEST(KeptLately, AFileOfAnotherFormIsNamed) {
  const DemoShop shop(20);
  const ShopFolder folder = shop.records().folder();
  for (const char* text : {"", "{}", "not json", R"({"made":"yesterday","revision":1})"}) {
    std::ofstream(folder.lately()) << text;
    const auto read = read_lately(folder);
    ASSERT_FALSE(read) << text;
    EXPECT_EQ(read.error().code, ErrorCode::kDamagedIndex);
    EXPECT_EQ(read.error().place, folder.lately().string());
  }
}

TEST(BackgroundLately, MakesItOncePerDay) {
  const DemoShop shop(300);
  const ShopFolder folder = shop.records().folder();
  { BackgroundLately(folder).consider(snapshot_of(shop), kDay); }  // waits
  ASSERT_TRUE(read_lately(folder).value());
  EXPECT_EQ(read_lately(folder).value()->made, kDay);
  // The same day again: what is there stays as it is.
  const auto written = std::filesystem::last_write_time(folder.lately());
  { BackgroundLately(folder).consider(snapshot_of(shop), kDay); }
  EXPECT_EQ(std::filesystem::last_write_time(folder.lately()), written);
  const Date next{kDay.days + std::chrono::days(1)};
  { BackgroundLately(folder).consider(snapshot_of(shop), next); }
  EXPECT_EQ(read_lately(folder).value()->made, next);
}

TEST(BackgroundLately, MendsADamagedFile) {
  const DemoShop shop(50);
  const ShopFolder folder = shop.records().folder();
  std::ofstream(folder.lately()) << "half a fi";
  { BackgroundLately(folder).consider(snapshot_of(shop), kDay); }
  EXPECT_TRUE(read_lately(folder));
}

}  // namespace
}  // namespace shoplore::testing
