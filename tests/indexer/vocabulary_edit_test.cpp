#include "indexer/vocabulary_edit.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/wait.h>
#include <unistd.h>

#include <fstream>
#include <iterator>

#include "indexer/file_lock.hpp"

namespace shoplore {
namespace {

namespace fs = std::filesystem;
using ::testing::HasSubstr;
using ::testing::Not;

// Longer than any run of the races takes, sanitized and on a busy machine.
constexpr std::chrono::minutes kPatience{5};

class VocabularyEdit : public ::testing::Test {
 protected:
  void SetUp() override {
    std::string pattern = (fs::path(::testing::TempDir()) / "shoplore-edit-XXXXXX").string();
    ASSERT_NE(mkdtemp(pattern.data()), nullptr);
    around_ = pattern;
    folder_ = around_ / "vocabulary";
  }
  void TearDown() override { fs::remove_all(around_); }

  Result<EditReport> edit(const EntryEdit& edit) const {
    return edit_vocabulary(folder_, edit, kPatience);
  }
  std::string text_of(const std::string& file) const {
    std::ifstream in(folder_ / file);
    return {std::istreambuf_iterator<char>(in), {}};
  }
  void write(const std::string& file, const std::string& text) const {
    fs::create_directories(folder_);
    std::ofstream(folder_ / file) << text;
  }
  std::string fingerprint() const {
    const auto loaded = Vocabulary::load(folder_);
    EXPECT_TRUE(loaded) << describe(loaded.error());
    return loaded ? loaded->fingerprint() : "";
  }

  fs::path around_, folder_;
};

EntryEdit new_symptom(const std::string& id, const std::string& name) {
  EntryEdit edit;
  edit.id = id;
  edit.if_missing = IfMissing::kAdd;
  edit.name = name;
  return edit;
}

EntryEdit retiring(const std::string& id, const std::string& why) {
  EntryEdit edit;
  edit.id = id;
  edit.retired = why;
  return edit;
}

TEST_F(VocabularyEdit, WritesTheFileFormOneEntryALine) {
  ASSERT_TRUE(edit(new_symptom("zwump", "zwump")));
  const auto second = edit(new_symptom("zwamp", "zwamp"));
  ASSERT_TRUE(second) << describe(second.error());
  EXPECT_EQ(second->file, folder_ / "symptom.json");
  EXPECT_EQ(text_of("symptom.json"),
            "{\"kind\":\"symptom\",\"entries\":[\n"
            "  {\"id\":\"zwump\",\"name\":\"zwump\"},\n"
            "  {\"id\":\"zwamp\",\"name\":\"zwamp\"}\n]}\n");
  EXPECT_FALSE(fs::exists(folder_ / "symptom.json.new"));
  const auto loaded = Vocabulary::load(folder_);
  EXPECT_EQ(origin_of(*loaded->find(EntryKind::kSymptom, "zwamp"), *Vocabulary::built_in()),
            EntryOrigin::kOwn);
}

TEST_F(VocabularyEdit, TakingBackLeavesTheVocabularyAsItWas) {
  const std::string before = fingerprint();
  ASSERT_TRUE(edit(retiring("misfire", "too vague")));
  EXPECT_NE(fingerprint(), before);
  const auto loaded = Vocabulary::load(folder_);
  EXPECT_EQ(origin_of(*loaded->find(EntryKind::kSymptom, "misfire"), *Vocabulary::built_in()),
            EntryOrigin::kOverridden);
  ASSERT_TRUE(edit(retiring("misfire", "")));
  EXPECT_EQ(fingerprint(), before);
  EXPECT_THAT(text_of("symptom.json"), Not(HasSubstr("misfire")));
}

TEST_F(VocabularyEdit, AnOwnFileThatHoldsTheEntryIsChangedAndTheRestStays) {
  write("winter.json", R"({"kind":"symptom","entries":[{"id":"zwump","name":"zwump"},
     {"id":"zwamp","name":"zwamp"}]})");
  EntryEdit more = new_symptom("zwump", "zwump");
  more.phrases = {"zwumps"};
  const auto done = edit(more);
  ASSERT_TRUE(done) << describe(done.error());
  EXPECT_EQ(done->file, folder_ / "winter.json");
  EXPECT_THAT(text_of("winter.json"), HasSubstr(R"({"id":"zwamp","name":"zwamp"})"));
  EXPECT_FALSE(fs::exists(folder_ / "symptom.json"));
}

TEST_F(VocabularyEdit, TakingBackAnOverrideOfAnOverrideDoesNotBringTheOldOneUp) {
  write("a.json", R"({"kind":"symptom","entries":[{"id":"misfire","name":"old word"}]})");
  const Entry shipped = *Vocabulary::built_in()->find(EntryKind::kSymptom, "misfire");
  Entry retired = shipped;
  retired.retired = "too vague";
  write("b.json", R"({"kind":"symptom","entries":[)" + entry_line(retired) + "]}");
  ASSERT_TRUE(edit(retiring("misfire", "")));
  EXPECT_EQ(Vocabulary::load(folder_)->display_name(EntryKind::kSymptom, "misfire"), shipped.name);
}

TEST_F(VocabularyEdit, WhatWouldNotLoadIsNotWritten) {
  ASSERT_TRUE(edit(new_symptom("zwump", "zwump")));
  const std::string before = text_of("symptom.json");
  EntryEdit bad = new_symptom("zwamp", "zwamp");
  bad.minutes = 5;
  EXPECT_THAT(describe(edit(bad).error()), HasSubstr("entry 'zwamp': minutes"));
  bad = new_symptom("zwamp", "zwamp");
  bad.cautions = {"no_such_caution"};
  EXPECT_THAT(describe(edit(bad).error()), HasSubstr("no_such_caution"));
  EXPECT_THAT(describe(edit(new_symptom("Z b", "zwamp")).error()), HasSubstr("id:"));
  EXPECT_THAT(describe(edit(new_symptom("../out", "zwamp")).error()), HasSubstr("id:"));
  EXPECT_EQ(text_of("symptom.json"), before);
}

TEST_F(VocabularyEdit, AnUndoWhosePhraseWasTakenMeanwhileIsRefused) {
  ASSERT_TRUE(edit(new_symptom("zwump", "zwump")));
  ASSERT_TRUE(edit(retiring("zwump", "too vague")));
  ASSERT_TRUE(edit(new_symptom("zwamp", "zwump")));
  const auto undone = edit(retiring("zwump", ""));
  ASSERT_FALSE(undone);
  EXPECT_THAT(describe(undone.error()), HasSubstr("also one of"));
}

TEST_F(VocabularyEdit, ADamagedOwnFileIsNamedAndLeftAlone) {
  write("own.json", "{");
  const auto done = edit(new_symptom("zwump", "zwump"));
  ASSERT_FALSE(done);
  EXPECT_THAT(done.error().place, HasSubstr("own.json"));
  EXPECT_EQ(text_of("own.json"), "{");
  EXPECT_FALSE(fs::exists(folder_ / "symptom.json"));
}

TEST_F(VocabularyEdit, AFileOfAnotherKindInThePlaceIsNotOverwritten) {
  write("symptom.json", R"({"kind":"component","entries":[{"id":"zwump","name":"zwump"}]})");
  const auto done = edit(new_symptom("zwamp", "zwamp"));
  ASSERT_FALSE(done);
  EXPECT_EQ(done.error().code, ErrorCode::kConflict);
  EXPECT_THAT(text_of("symptom.json"), HasSubstr("component"));
}

TEST_F(VocabularyEdit, WritersThatRaceLoseNoEdit) {
  constexpr int kWriters = 6, kEach = 5;
  std::vector<pid_t> children;
  for (int writer = 0; writer < kWriters; ++writer) {
    const pid_t child = fork();
    ASSERT_GE(child, 0);
    if (child == 0) {
      int failures = 0;
      for (int i = 0; i < kEach; ++i) {
        const std::string id = "own" + std::to_string(writer) + "_" + std::to_string(i);
        if (!edit(new_symptom(id, "zwump " + id))) ++failures;
      }
      _exit(failures);
    }
    children.push_back(child);
  }
  for (const pid_t child : children) {
    int status = 0;
    waitpid(child, &status, 0);
    EXPECT_EQ(status, 0);
  }
  const auto loaded = Vocabulary::load(folder_);
  ASSERT_TRUE(loaded) << describe(loaded.error());
  EXPECT_EQ(loaded->entries(EntryKind::kSymptom).size(),
            Vocabulary::built_in()->entries(EntryKind::kSymptom).size() + kWriters * kEach);
}

TEST_F(VocabularyEdit, ALockThatIsHeldIsBusy) {
  fs::create_directories(folder_);
  const auto held = FileLock::acquire(folder_ / "lock", std::chrono::milliseconds(0));
  ASSERT_TRUE(held);
  const auto done =
      edit_vocabulary(folder_, new_symptom("zwump", "zwump"), std::chrono::milliseconds(20));
  ASSERT_FALSE(done);
  EXPECT_EQ(done.error().code, ErrorCode::kBusy);
}

}  // namespace
}  // namespace shoplore
