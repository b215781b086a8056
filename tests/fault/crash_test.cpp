// Kills the program at random moments of adding, editing and importing, and lets two write at
// once: every acknowledged change must be there afterwards, and the index equal to the records.
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <random>
#include <set>
#include <sstream>
#include <thread>

#include "indexer/records.hpp"

namespace shoplore {
namespace {

constexpr std::uint64_t kSeed = 77;
constexpr std::chrono::seconds kPatience{30};

Case closed_case(const std::string& ref) {
  Case record;
  record.ref = ref;
  record.state = CaseState::kClosed;
  record.opened = record.closed.emplace(parse_date("2026-03-02").value());
  record.symptoms.push_back({"lack_of_power", Presence::kPresent, {}, {}, {}});
  record.cause = Cause{"turbocharger", "worn", Proof::kSeen};
  return record;
}

class Crash : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string pattern =
        (std::filesystem::temp_directory_path() / "shoplore-crash-XXXXXX").string();
    home_ = mkdtemp(pattern.data());
    folder_.root = home_ / "shop";
    ASSERT_TRUE(Records::create(folder_));
  }
  void TearDown() override { std::filesystem::remove_all(home_); }

  // Adds, edits and imports until killed; a line in `log` acknowledges each stored change.
  [[noreturn]] void write_until_killed(const std::string& prefix, const std::string& log,
                                       int ready) {
    auto records = Records::open(folder_);
    std::ofstream acknowledged(log, std::ios::app);
    if (!records || ::write(ready, "!", 1) != 1) _exit(3);
    for (int i = 0;; ++i) {
      const std::string ref = prefix + std::to_string(i);
      if (i % 5 == 4) {
        std::stringstream lines;
        for (int k = 0; k < 20; ++k) {
          lines << case_to_json(closed_case(ref + "-" + std::to_string(k))) << "\n";
        }
        if (!records->import(lines, [](std::int64_t) {})) _exit(4);
        acknowledged << "import " << ref << std::endl;
      } else {
        if (!records->add({closed_case(ref), {}}, Role::kTechnician)) _exit(5);
        acknowledged << "add " << ref << std::endl;
        if (i % 3 == 0) {
          if (!records->change(ref, {}, R"({"notes":"edited"})", Role::kTechnician)) _exit(6);
          acknowledged << "edit " << ref << std::endl;
        }
      }
      if (i % 4 == 0 && !records->follow(kPatience)) _exit(7);
    }
  }

  void expect_acknowledged(Records& records, const std::string& log) {
    std::ifstream lines(log);
    std::string what, ref;
    while (lines >> what >> ref) {
      const auto stored = records.store().read(what == "import" ? ref + "-19" : ref);
      ASSERT_TRUE(stored) << what << " " << ref << " was acknowledged and is lost";
      if (what != "edit") continue;
      EXPECT_EQ(stored->record.notes, "edited") << ref;
    }
  }

  std::filesystem::path home_;
  ShopFolder folder_;
};

TEST_F(Crash, NothingAcknowledgedIsLostByAHundredKills) {
  std::mt19937_64 random(kSeed);
  std::cout << "seed " << kSeed << "\n";
  const std::string log = home_ / "acknowledged";
  for (int kill_number = 0; kill_number < 100; ++kill_number) {
    int ready[2];
    ASSERT_EQ(pipe(ready), 0);
    const pid_t child = fork();
    if (child == 0) write_until_killed("k" + std::to_string(kill_number) + "-", log, ready[1]);
    // Counted from when it begins to write, however slow this build is at starting.
    ::close(ready[1]);
    char begun = 0;
    ASSERT_EQ(::read(ready[0], &begun, 1), 1) << "the writer could not open the shop";
    ::close(ready[0]);
    std::this_thread::sleep_for(std::chrono::milliseconds(random() % 110));
    ::kill(child, SIGKILL);
    int status = 0;
    ::waitpid(child, &status, 0);
    ASSERT_TRUE(WIFSIGNALED(status)) << "the writer failed by itself, exit " << WEXITSTATUS(status);
    if (kill_number % 10 != 9) continue;
    auto records = Records::open(folder_);
    ASSERT_TRUE(records) << describe(records.error());
    const auto verified = records->verify();
    ASSERT_TRUE(verified) << describe(verified.error());
    expect_acknowledged(*records, log);
  }
  EXPECT_GT(Records::open(folder_)->store().case_count().value(), 100);
}

TEST_F(Crash, TwoWritersAtOnceLoseNothingAndSeeNoLock) {
  std::vector<pid_t> children;
  for (const char* name : {"a", "b"}) {
    const pid_t child = fork();
    if (child == 0) {
      auto records = Records::open(folder_);
      for (int i = 0; records && i < 100; ++i) {
        if (!records->add({closed_case(name + std::to_string(i)), {}}, Role::kTechnician)) _exit(1);
        if (i % 10 == 0 && !records->follow(kPatience)) _exit(2);
      }
      _exit(records ? 0 : 3);
    }
    children.push_back(child);
  }
  for (const pid_t child : children) {
    int status = 0;
    ::waitpid(child, &status, 0);
    EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0) << WEXITSTATUS(status);
  }
  auto records = Records::open(folder_);
  ASSERT_TRUE(records);
  EXPECT_EQ(records->store().case_count().value(), 200);
  const auto verified = records->verify();
  EXPECT_TRUE(verified) << describe(verified.error());
}

}  // namespace
}  // namespace shoplore
