#include "tests/api/shop.hpp"

#include <gtest/gtest.h>

#include <cstdlib>
#include <stdexcept>

namespace shoplore::testing {

namespace {

namespace fs = std::filesystem;

fs::path temporary_folder() {
  std::string pattern = (fs::temp_directory_path() / "shoplore-test-XXXXXX").string();
  if (mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("no temporary folder");
  return pattern;
}

std::string open_case(const std::string& more) {
  return R"({"state":"open","opened":"2026-03-02")" + more + "}";
}

}  // namespace

std::string closed_case(const std::string& ref, const std::string& component,
                        const std::string& failure, const std::string& whistle) {
  return R"({"schema":1,"ref":")" + ref +
         R"(","state":"closed","opened":"2026-03-02","closed":"2026-03-04",)"
         R"("vehicle":{"make":"Brackwater","model":"Tidal","model_year":2016,)"
         R"("engine_family":"BW16D","fuel":"diesel","mileage_km":142000},)"
         R"("complaint":"flat uphill","symptoms":[{"id":"lack_of_power","state":"present"},)"
         R"({"id":"whistle_under_load","state":")" +
         whistle +
         R"("}],"scanned":"yes","codes":[{"code":"P0299","status":"stored","seen":"arrival"}],)"
         R"("cause":{"component":")" +
         component + R"(","failure":")" + failure +
         R"(","proof":"seen"},"correction":{"fixes":[{"action":"replace","component":")" +
         component + R"("}]},"outcome":{"status":"stayed_fixed","as_of":"2026-09-01"}})";
}

TestShop::TestShop() : around_(temporary_folder()), folder_(around_ / "shop") {
  EXPECT_EQ(run({"init"}).exit_code, 0);
  std::string lines;
  for (int i = 1; i <= 8; ++i) {
    const std::string ref = "old-" + std::to_string(i);
    lines += i <= 6 ? closed_case(ref, "wastegate_linkage", "seized_open", "absent")
                    : closed_case(ref, "charge_air_hose", "split", "present");
    lines += "\n";
  }
  const Ended imported = run({"import", "-"}, lines);
  EXPECT_EQ(imported.exit_code, 0) << imported.err;
}

TestShop::~TestShop() {
  std::error_code ignored;
  fs::remove_all(around_, ignored);
}

std::vector<std::string> TestShop::command(const std::vector<std::string>& arguments) const {
  std::vector<std::string> words = {SHOPLORE_BINARY, "--shop", folder_.string()};
  words.insert(words.end(), arguments.begin(), arguments.end());
  return words;
}

Ended TestShop::run(const std::vector<std::string>& arguments, const std::string& input) const {
  return run_program({command(arguments), input});
}

std::string TestShop::exported() const {
  const Ended ended = run({"export"});
  EXPECT_EQ(ended.exit_code, 0) << ended.err;
  EXPECT_NE(ended.out, "");
  return ended.out;
}

std::vector<BadCase> bad_cases() {
  return {
      {"malformed JSON", R"({"state":"open",)", "", "malformed JSON", 400},
      {"not an object", "[]", "", "expected an object", 400},
      {"unknown field", open_case(R"(,"colour":"red")"), "/colour", "known field", 400},
      {"unknown symptom", open_case(R"(,"symptoms":[{"id":"sings","state":"present"}])"),
       "/symptoms/0/id", "sings", 400},
      {"a day that is not", R"({"state":"open","opened":"2026-02-30"})", "/opened", "2026-02-30",
       400},
      {"closed before opened",
       R"({"state":"closed","opened":"2026-03-02","closed":"2026-03-01",)"
       R"("cause":{"component":"charge_air_hose","failure":"split"}})",
       "/closed", "", 400},
      {"closed without cause", R"({"state":"closed","opened":"2026-03-02","closed":"2026-03-04"})",
       "/cause", "", 400},
      {"negative mileage", open_case(R"(,"vehicle":{"mileage_km":-1})"), "/vehicle/mileage_km", "",
       400},
      {"2 MiB note", open_case(R"(,"notes":")" + std::string(2 << 20, 'x') + "\""), "", "at most",
       413},
      {"invalid UTF-8", open_case(",\"notes\":\"caf\xe9\""), "", "UTF-8", 400},
      {"code P02G9", open_case(R"(,"scanned":"yes","codes":[{"code":"P02G9"}])"), "/codes/0/code",
       "P02G9", 400},
      {"a number beyond any", open_case(R"(,"vehicle":{"mileage_km":1e999})"), "", "", 400},
      {"a ref that is taken", R"({"ref":"old-1","state":"open","opened":"2026-03-02"})", "/ref", "",
       409},
  };
}

std::vector<BadQuestion> bad_questions() {
  return {
      {"10,000 characters", std::string(10'000, 'x'), "4000"},
      {"empty", "", ""},
      {"spaces only", "   ", ""},
  };
}

}  // namespace shoplore::testing
