#include "indexer/module_names.hpp"

#include <gtest/gtest.h>

#include <string>

namespace shoplore {
namespace {

std::string before(const std::string& text) {
  const auto span = module_before(text, text.size());
  return span ? text.substr(span->begin, span->end - span->begin) : "";
}

std::string after(const std::string& text) {
  const auto found = module_after(text, 0);
  return found ? text.substr(found->name.begin, found->name.end - found->name.begin) : "";
}

TEST(ModuleNames, BeforeACode) {
  const std::pair<const char*, const char*> rows[] = {
      {"ECM: ", "ECM"},
      {"[ABS] ", "ABS"},
      {"abs ", "abs"},
      {"Engine control unit: ", "Engine control unit"},
      {"Engine control unit ", "Engine control unit"},
      {"power steering module - ", "power steering module"},
      {"flat uphill, ECM ", "ECM"},
      {"from the ECM ", "ECM"},
      {"BCM 2: ", "BCM 2"},
      {"Airbag: ", "Airbag"},
      {"TCM scan: ", "TCM"},
      {"first\nTCM ", "TCM"}};
  for (const auto& [text, name] : rows) EXPECT_EQ(before(text), name) << text;
}

TEST(ModuleNames, OrdinaryWordsBeforeACodeAreNone) {
  for (const char* text :
       {"engine ", "airbag ", "new ecu ", "rough engine ", "light: ", "fuel: ", "front: ", "ECM\n",
        "", "misfire: ", "abs light ", "scan: ", "TCM scan "}) {
    EXPECT_EQ(before(text), "") << text;
  }
}

TEST(ModuleNames, AfterACode) {
  EXPECT_EQ(after(" (ECM)"), "ECM");
  EXPECT_EQ(after(" [Engine]"), "Engine");
  EXPECT_EQ(after(" in the engine control unit"), "engine control unit");
  EXPECT_EQ(after(" from TCM, flat"), "TCM");
  for (const char* text :
       {" in engine bay", " ECM", " (engine runs)", " on hot engine", "", "\nin ECM"}) {
    EXPECT_EQ(after(text), "") << text;
  }
}

TEST(ModuleNames, AfterAStatusABareNameIsEnough) {
  const auto after_status = [](const std::string& text) {
    const auto found = module_after(text, 0, Follows::kStatus);
    return found ? text.substr(found->name.begin, found->name.end - found->name.begin) : "";
  };
  const std::pair<const char*, const char*> rows[] = {{" TCM. shudders", "TCM"},
                                                      {" ABS - lamp on", "ABS"},
                                                      {" in gateway.", "gateway"},
                                                      {" in the abs module", "abs module"},
                                                      {", module BMS.", "BMS"},
                                                      {" module: EPS", "EPS"},
                                                      {", module BMS scanned", ""},
                                                      {" ABS lamp on", ""},
                                                      {", ABS.", "ABS"},
                                                      {", ABS lamp on", ""},
                                                      {", ABS: C0035", ""},
                                                      {", engine", ""},
                                                      {" in engine bay", ""},
                                                      {" engine", ""}};
  for (const auto& [text, name] : rows) EXPECT_EQ(after_status(text), name) << text;
  EXPECT_EQ(after(", module BMS"), "BMS");
}

TEST(ModuleNames, ShortNamesAreKeptInOneForm) {
  const std::pair<const char*, const char*> rows[] = {{"abs module", "ABS"},
                                                      {"ABS unit", "ABS"},
                                                      {"bcm 2", "BCM 2"},
                                                      {"BCM module 2", "BCM 2"},
                                                      {"scr control unit", "SCR"},
                                                      {"Engine", "Engine"},
                                                      {"airbag module", "airbag module"},
                                                      {"gateway", "gateway"}};
  for (const auto& [name, called] : rows) EXPECT_EQ(module_called(name), called) << name;
}

}  // namespace
}  // namespace shoplore
