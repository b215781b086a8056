// The program as a person meets it: exit codes, what is said where, and that nothing refused
// leaves a trace.
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "tests/api/shop.hpp"

namespace shoplore {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;
using testing::Ended;
using testing::TestShop;

#define EXPECT_SAYS(text, part) EXPECT_NE((text).find(part), std::string::npos) << (text)

TEST(Cli, RefusesBadCasesAndStoresNothing) {
  const TestShop shop;
  const std::string before = shop.exported();
  for (const auto& bad : testing::bad_cases()) {
    SCOPED_TRACE(bad.name);
    const Ended ended = shop.run({"add", "--json", "-"}, bad.json);
    EXPECT_EQ(ended.exit_code, 2);
    EXPECT_EQ(ended.out, "");
    EXPECT_SAYS(ended.err, "shoplore add: ");
    EXPECT_SAYS(ended.err, bad.place);
    EXPECT_SAYS(ended.err, bad.reason);
  }
  EXPECT_EQ(shop.exported(), before);
}

TEST(Cli, RefusesBadPatchesAndStoresNothing) {
  const TestShop shop;
  const std::string before = shop.exported();
  const std::pair<const char*, const char*> rows[] = {
      {R"({"colour":1})", "/colour"},
      {R"({"cause":null})", "/cause"},
      {R"({"closed":"2026-03-01"})", "/closed"},
      {R"({"opened":null})", "/opened"},
      {R"({"state":"gone"})", "/state"},
  };
  for (const auto& [patch, place] : rows) {
    SCOPED_TRACE(patch);
    const Ended ended = shop.run({"add", "--to", "old-1", "--json", "-"}, patch);
    EXPECT_EQ(ended.exit_code, 2);
    EXPECT_SAYS(ended.err, place);
  }
  EXPECT_EQ(shop.exported(), before);
}

TEST(Cli, RefusesBadQuestions) {
  const TestShop shop;
  for (const auto& bad : testing::bad_questions()) {
    SCOPED_TRACE(bad.name);
    const Ended ended = shop.run({"ask", bad.text});
    EXPECT_EQ(ended.exit_code, 2);
    EXPECT_EQ(ended.out, "");
    EXPECT_SAYS(ended.err, "shoplore ask: ");
    EXPECT_SAYS(ended.err, bad.reason);
  }
}

TEST(Cli, RefusesTextThatIsNotUtf8) {
  const TestShop shop;
  const std::string before = shop.exported();
  for (const std::vector<std::string>& words :
       {std::vector<std::string>{"ask", "caf\xe9"}, {"add", "caf\xe9"}, {"find", "caf\xe9"}}) {
    SCOPED_TRACE(words[0]);
    const Ended ended = shop.run(words);
    EXPECT_EQ(ended.exit_code, 2);
    EXPECT_SAYS(ended.err, "UTF-8");
  }
  EXPECT_EQ(shop.exported(), before);
}

TEST(Cli, AnUnknownShopSaysWhatToDo) {
  const TestShop shop;
  const std::string nowhere = (shop.around() / "nowhere").string();
  const Ended ended =
      testing::run_program({{SHOPLORE_BINARY, "--shop", nowhere, "ask", "flat"}, ""});
  EXPECT_EQ(ended.exit_code, 2);
  EXPECT_SAYS(ended.err, "shoplore ask: " + nowhere);
  EXPECT_SAYS(ended.err, "shoplore init --shop " + nowhere);
  EXPECT_FALSE(fs::exists(nowhere));
}

// As another user when we are root, to whom every folder is writable.
Ended run_without_rights(const TestShop& shop, std::vector<std::string> arguments) {
  const fs::path program = shop.around() / "program";
  fs::copy_file(SHOPLORE_BINARY, program, fs::copy_options::overwrite_existing);
  std::vector<std::string> words;
  if (geteuid() == 0) {
    fs::permissions(shop.around(), fs::perms(0711));
    words = {"setpriv", "--reuid=65534", "--regid=65534", "--clear-groups"};
    for (const auto& each : fs::recursive_directory_iterator(shop.folder())) {
      EXPECT_EQ(chown(each.path().c_str(), 65534, 65534), 0);
    }
    EXPECT_EQ(chown(shop.folder().c_str(), 65534, 65534), 0);
  }
  for (const auto& each : fs::recursive_directory_iterator(shop.folder())) {
    fs::permissions(each.path(), fs::perms(each.is_directory() ? 0500 : 0400));
  }
  fs::permissions(shop.folder(), fs::perms(0500));
  words.insert(words.end(), {program.string(), "--shop", shop.folder().string()});
  words.insert(words.end(), arguments.begin(), arguments.end());
  const Ended ended = testing::run_program({words, ""});
  for (const auto& each : fs::recursive_directory_iterator(shop.folder())) {
    fs::permissions(each.path(), fs::perms(each.is_directory() ? 0700 : 0600));
  }
  fs::permissions(shop.folder(), fs::perms(0700));
  return ended;
}

TEST(Cli, AFolderWithoutWritePermissionIsNamed) {
  const TestShop shop;
  const std::string before = shop.exported();
  const Ended ended = run_without_rights(shop, {"add", "flat uphill"});
  EXPECT_EQ(ended.exit_code, 2);
  EXPECT_EQ(ended.out, "");
  EXPECT_SAYS(ended.err, "shoplore add: " + shop.folder().string());
  EXPECT_EQ(shop.exported(), before);
}

TEST(Cli, DamagedRecordsAreNamedAndLeftAlone) {
  const TestShop shop;
  const fs::path records = shop.folder() / "records.db";
  for (const char* journal : {"records.db-wal", "records.db-shm"}) {
    fs::remove(shop.folder() / journal);
  }
  std::ofstream(records, std::ios::binary | std::ios::trunc) << std::string(8'192, 'x');
  for (const char* verb : {"ask", "add", "find"}) {
    SCOPED_TRACE(verb);
    const Ended ended = shop.run({verb, "flat"});
    EXPECT_EQ(ended.exit_code, 2);
    EXPECT_SAYS(ended.err, records.string());
  }
  std::ifstream file(records, std::ios::binary);
  const std::string now{std::istreambuf_iterator<char>(file), {}};
  EXPECT_EQ(now, std::string(8'192, 'x'));
}

TEST(Cli, AMissingIndexIsBuiltAnewAndSaid) {
  const TestShop shop;
  const std::string before = shop.exported();
  const Ended first = shop.run({"ask", "P0299 flat", "--json"});
  fs::remove_all(shop.folder() / "index");
  const Ended rebuilt = shop.run({"ask", "P0299 flat", "--json"});
  EXPECT_EQ(rebuilt.exit_code, 0) << rebuilt.err;
  EXPECT_SAYS(rebuilt.err, "the index was missing");
  EXPECT_EQ(rebuilt.out, first.out);
  EXPECT_EQ(shop.run({"ask", "P0299 flat"}).err, "");
  EXPECT_EQ(shop.exported(), before);
}

TEST(Cli, AnswersCountTheRecords) {
  const TestShop shop;
  const Ended ended = shop.run({"ask", "P0299", "flat,", "no", "whistle", "--json"});
  ASSERT_EQ(ended.exit_code, 0) << ended.err;
  const auto answer = json::parse(ended.out);
  EXPECT_EQ(answer["cases_in_records"], 8);
  EXPECT_EQ(answer["likely_causes"][0]["component"], "wastegate_linkage");
  EXPECT_EQ(answer["likely_causes"][0]["share"]["count"], 6);
}

TEST(Cli, NothingFoundIsExitCodeOne) {
  const TestShop shop;
  EXPECT_EQ(shop.run({"ask", "P0299 flat", "--make", "Cormont"}).exit_code, 1);
  const Ended found = shop.run({"find", "zzzz"});
  EXPECT_EQ(found.exit_code, 1) << found.err;
  EXPECT_SAYS(found.out, "No case matches");
}

TEST(Cli, APipeGetsEightyColumnsWithoutColour) {
  const TestShop shop;
  const Ended ended = shop.run({"ask", "2016 Brackwater P0299 flat uphill, no whistle"});
  ASSERT_EQ(ended.exit_code, 0) << ended.err;
  EXPECT_EQ(ended.out.find('\x1b'), std::string::npos);
  EXPECT_SAYS(ended.out, "6 of ");
  EXPECT_SAYS(ended.out, "Counts are evidence, not a diagnosis.");
}

TEST(Cli, AnAnswerSaysWhatItWasRestrictedTo) {
  const TestShop shop;
  const Ended some = shop.run({"ask", "P0299 flat", "--make", "Brackwater"});
  EXPECT_NE(some.out.find("Counted only  make Brackwater"), std::string::npos) << some.out;
  const Ended none = shop.run({"ask", "P0299 flat", "--make", "Nope"});
  EXPECT_EQ(none.exit_code, 1);
  EXPECT_NE(none.out.find("the filter leaves none"), std::string::npos) << none.out;
  EXPECT_EQ(none.out.find("Never seen here"), std::string::npos) << none.out;
}

TEST(Cli, NothingUnderstoodRanksNothing) {
  const TestShop shop;
  const Ended ended = shop.run({"ask", "car is poorly"});
  EXPECT_EQ(ended.exit_code, 1);
  EXPECT_NE(ended.out.find("Nothing is ranked"), std::string::npos) << ended.out;
}

TEST(Cli, AddSaysWhatItUnderstoodAndWhatItRemoved) {
  const TestShop shop;
  const Ended ended = shop.run({"add", "P0299, frobnicates, rang from 0151 496 0123"});
  ASSERT_EQ(ended.exit_code, 0) << ended.err;
  EXPECT_NE(ended.out.find("P0299"), std::string::npos) << ended.out;
  EXPECT_NE(ended.out.find("\"frobnicates\""), std::string::npos) << ended.out;
  EXPECT_NE(ended.err.find("as somebody's identity: 1"), std::string::npos) << ended.err;
}

TEST(Cli, AClosedCaseIsNotAskedAsEvidenceForItself) {
  const TestShop shop;
  const Ended ended = shop.run({"ask", "--case", "old-1"});
  EXPECT_EQ(ended.exit_code, 2);
  EXPECT_NE(ended.err.find("old-1"), std::string::npos) << ended.err;
}

TEST(Cli, WatchOutAloneSaysOnlyThatAndEndsWithOneWhereNothingStandsOut) {
  const TestShop shop;
  const Ended nothing = shop.run({"ask", "--watch-out", "P0299 flat"});
  EXPECT_EQ(nothing.exit_code, 1);
  EXPECT_SAYS(nothing.out, "Nothing stands out in 8 cases");
  EXPECT_EQ(nothing.out.find("Likely causes"), std::string::npos);
  const Ended cleared =
      shop.run({"ask", "--watch-out", "P0299 flat, codes recently cleared", "--json"});
  EXPECT_EQ(cleared.exit_code, 0);
  EXPECT_EQ(json::parse(cleared.out)["watch_out"][0]["kind"], "codes_cleared");
}

TEST(Cli, AVehicleSeenBeforeIsKnownByItsPlateAndThePlateLeavesNoTrace) {
  const TestShop shop;
  const std::string plate = "QX19 ZZT";
  auto record = json::parse(testing::closed_case("seen-1", "charge_air_hose", "split", "present"));
  record["identity"]["plate"] = plate;
  ASSERT_EQ(shop.run({"add", "--json", "-"}, record.dump()).exit_code, 0);
  const std::string before = shop.exported();
  const Ended ended = shop.run({"ask", "--watch-out", "--plate", "qx19zzt", "P0299 flat"});
  EXPECT_EQ(ended.exit_code, 0);
  EXPECT_SAYS(ended.out, "This vehicle was here once before");
  EXPECT_SAYS(ended.out, "case seen-1");
  EXPECT_EQ(shop.run({"ask", "--watch-out", "--plate", "AA 1 AA", "P0299 flat"}).exit_code, 1);
  const Ended bad = shop.run({"ask", "--vin", "123", "P0299 flat"});
  EXPECT_EQ(bad.exit_code, 2);
  EXPECT_SAYS(bad.err, "vin");
  EXPECT_EQ(shop.exported(), before);
}

TEST(Cli, ACaseLivesFromTextToClosingAndBack) {
  const TestShop shop;
  const std::vector<std::string> text = {"add", "P0299 flat uphill", "--plate", "AB 12 CDE"};
  const Ended added = shop.run(text);
  ASSERT_EQ(added.exit_code, 0) << added.err;
  const std::string ref = added.out.substr(0, added.out.find(' '));
  ASSERT_EQ(shop.run({"add", "--to", ref, "no whistle"}).exit_code, 0);
  const auto record = json::parse(shop.run({"show", ref, "--json"}).out);
  EXPECT_EQ(record["state"], "open");
  EXPECT_EQ(record["codes"][0]["code"], "P0299");
  EXPECT_EQ(record["vehicle"].contains("token"), true);
  const Ended closed = shop.run(
      {"add", "--to", ref, "--json", "-"},
      R"({"state":"closed","closed":"2199-01-01",)"
      R"("cause":{"component":"wastegate_linkage","failure":"seized_open","proof":"seen"}})");
  ASSERT_EQ(closed.exit_code, 0) << closed.err;
  const auto counted = [&shop] {
    return json::parse(shop.run({"ask", "P0299", "--json"}).out)["cases_in_records"];
  };
  EXPECT_EQ(counted(), 9);
  const auto history = json::parse(shop.run({"show", ref, "--history", "--json"}).out);
  ASSERT_EQ(history.size(), 3u);
  const std::string open_revision = history[1]["revision"].dump();
  ASSERT_EQ(shop.run({"add", "--to", ref, "--restore", open_revision}).exit_code, 0);
  EXPECT_EQ(counted(), 8);
  EXPECT_EQ(shop.run({"verify"}).exit_code, 0);
}

TEST(Cli, AChangeOfAnOldRevisionIsRefused) {
  const TestShop shop;
  const auto revision =
      json::parse(shop.run({"show", "old-1", "--history", "--json"}).out)[0]["revision"].get<int>();
  const std::vector<std::string> words = {
      "add", "--to", "old-1", "--json", "-", "--if-revision", std::to_string(revision)};
  EXPECT_EQ(shop.run(words, R"({"notes":"first"})").exit_code, 0);
  const Ended second = shop.run(words, R"({"notes":"second"})");
  EXPECT_EQ(second.exit_code, 2);
  EXPECT_SAYS(shop.exported(), "first");
}

TEST(Cli, ImportNamesTheBadLine) {
  const TestShop shop;
  const std::string good = testing::closed_case("new-1", "charge_air_hose", "split", "present");
  const Ended ended = shop.run({"import", "-"}, good + "\n\n{\"state\":\"open\"}\n");
  EXPECT_EQ(ended.exit_code, 2);
  EXPECT_SAYS(ended.err, "line 3");
  EXPECT_SAYS(ended.err, "/opened");
}

TEST(Cli, ExportImportsToTheSameExport) {
  const TestShop shop;
  const fs::path file = shop.around() / "all.jsonl";
  ASSERT_EQ(shop.run({"export", file.string()}).exit_code, 0);
  const std::string other = (shop.around() / "other").string();
  const auto run_other = [&](const std::vector<std::string>& arguments) {
    std::vector<std::string> words = {SHOPLORE_BINARY, "--shop", other};
    words.insert(words.end(), arguments.begin(), arguments.end());
    return testing::run_program({words, ""});
  };
  ASSERT_EQ(run_other({"init"}).exit_code, 0);
  ASSERT_EQ(run_other({"import", file.string()}).exit_code, 0);
  EXPECT_EQ(run_other({"export"}).out, shop.exported());
}

TEST(Cli, PagesOfFindAreSlicesOfTheWhole) {
  const TestShop shop;
  const auto refs_of = [](const json& page) {
    std::vector<std::string> refs;
    for (const auto& each : page["cases"]) refs.push_back(each["ref"]);
    return refs;
  };
  const auto whole = refs_of(json::parse(shop.run({"find", "flat uphill", "--json"}).out));
  ASSERT_EQ(whole.size(), 8u);
  std::vector<std::string> joined;
  std::vector<std::string> words = {"find", "flat uphill", "--json", "--page-size", "3"};
  for (int pages = 0; pages < 3; ++pages) {
    const auto page = json::parse(shop.run(words).out);
    for (const auto& ref : refs_of(page)) joined.push_back(ref);
    words.resize(5);
    words.insert(words.end(), {"--after", page["next_cursor"].get<std::string>()});
  }
  EXPECT_EQ(joined, whole);
}

TEST(Cli, ServeRefusesOtherHosts) {
  const TestShop shop;
  const Ended ended = shop.run({"serve", "--host", "0.0.0.0", "--port", "0"});
  EXPECT_EQ(ended.exit_code, 2);
  EXPECT_SAYS(ended.err, "shoplore serve: --host");
}

}  // namespace
}  // namespace shoplore
