#include "indexer/identity_removal.hpp"

#include <gtest/gtest.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <random>
#include <type_traits>

namespace shoplore {
namespace {

using Json = nlohmann::json;

// Nobody but remove_identities can make one.
static_assert(!std::is_default_constructible_v<CleanCase>);
static_assert(!std::is_constructible_v<CleanCase, Case>);
static_assert(!std::is_constructible_v<CleanCase, Case, std::vector<std::string>>);

constexpr unsigned kSeed = 20260302;

const IdentityKey& key() {
  static const IdentityKey made = [] {
    std::string pattern =
        (std::filesystem::temp_directory_path() / "shoplore-removal-XXXXXX").string();
    const std::filesystem::path folder = ::mkdtemp(pattern.data());
    auto result = IdentityKey::create(folder / "key");
    std::filesystem::remove_all(folder);
    return *result;
  }();
  return made;
}

// A case with every field the record has, so that every string of it can be planted.
constexpr std::string_view kFullCase = R"({"schema":1,"ref":"case-7","state":"closed",
  "source":"counter","visit":{"kind":"complaint","ref":"visit-3"},"job_number":"J-1204",
  "opened":"2026-03-02","closed":"2026-03-04","ended":"temporary",
  "vehicle":{"make":"Brackwater","model":"Tidal","model_year":2016,"engine_family":"BW16D",
    "fuel":"diesel","transmission":"manual","mileage_km":142000,
    "token":"0123456789abcdef0123456789abcdef"},
  "complaint":"flat uphill","notes":"linkage stiff","facts":{"duty":"taxi"},
  "symptoms":[{"id":"lack_of_power","state":"present","when":["uphill"],"how_often":"often",
    "reproduced":"yes"}],"scanned":"yes",
  "codes":[{"code":"P0299","status":"stored","seen":"arrival","failure_type":"16",
    "module":"engine","freeze_frame":[{"name":"speed","value":2150,"unit":"rpm"}]}],
  "checks":[{"id":"linkage_by_hand","reading":"OL","unit":"ohm","expected":{"low":1,"high":2},
    "where":"left side","conditions":["cold"],"verdict":"fail","minutes":5,"later":"right",
    "note":"would not move"}],
  "earlier_repairs":[{"fix":{"action":"replace","component":"turbocharger"},"by":"elsewhere",
    "helped_for_a_while":"no","when":"2025-11-01","distance_km":900}],
  "work_looked_for":"yes",
  "work_signs":[{"id":"fastener_missing","component":"heat_shield","note":"one bolt"}],
  "cause":{"component":"wastegate_linkage","failure":"seized_open","proof":"seen"},
  "contributing":[{"component":"heat_shield","failure":"missing","proof":"seen"}],
  "also_found":[{"component":"hose","failure":"split","proof":"seen"}],
  "correction":{"fixes":[{"action":"replace","component":"wastegate_linkage"}],
    "parts":[{"part":"linkage","quantity":1,"grade":"maker","brand":"Cormont","cost":40}],
    "hours":{"diagnosis":1,"clocked":2,"charged":2},"cost_total":250,"currency":"EUR",
    "removals":["heat_shield"],"traps":["the shield bolts snap"]},
  "declined":[{"work":"front tyres","safety":"yes","warned_on":"2026-03-04"}],
  "verification":[{"id":"road_test_uphill","verdict":"pass"}],
  "outcome":{"status":"came_back","as_of":"2026-09-01","mileage_km":150000,"reason":"part"},
  "follows":"case-2"})";

Json full_case() {
  return Json::parse(kFullCase);
}

// JSON Pointers of every string in the case.
std::vector<std::string> string_places() {
  std::vector<std::string> places;
  const Json flat = full_case().flatten();
  for (const auto& [place, value] : flat.items()) {
    if (value.is_string()) places.push_back(place);
  }
  return places;
}

Result<CleanCase> clean(const Json& json, Identity identity, const WordsToKeep& keep = {}) {
  auto record = case_from_json(json.dump());
  if (!record) return fail(record.error());
  return remove_identities({std::move(*record), std::move(identity)}, key(), keep);
}

// Letters and digits in one case, so that no spelling of an identity hides.
std::string plain(std::string_view text) {
  std::string letters;
  for (char c : text) {
    if (std::isalnum(static_cast<unsigned char>(c)) != 0) {
      letters += static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
    }
  }
  return letters;
}

struct Planted {
  Identity identity;   // what the counter knows
  std::string typed;   // how it stands in the text
  std::string secret;  // what must not survive, letters and digits only
};

// The name, of many: invented words that no record of a workshop holds.
std::vector<Planted> known_identities() {
  return {{{"1M8GDM9AXKP042788", "", ""}, "1m8 gdm9ax-kp042788", "1M8GDM9AXKP042788"},
          {{"", "ZK 345 PQR", ""}, "zk-345 pqr", "ZK345PQR"},
          {{"", "W 12", ""}, "w12", "W12"},
          {{"", "", "Anneke Tarvel"}, "mrs TARVEL", "TARVEL"},
          {{"", "", "Anneke Tarvel"}, "anneke.tarvel", "ANNEKE"}};
}

std::vector<Planted> unknown_identities() {
  return {{{}, "1M8GDM9AXKP042788", "1M8GDM9AXKP042788"},
          {{}, "AB12 CDE", "AB12CDE"},
          {{}, "+44 1632 960123", "441632960123"},
          {{}, "01632-960123", "01632960123"},
          {{}, "zebu@example.org", "ZEBU"}};
}

void expect_nothing_survives(const Planted& planted, const std::vector<std::string>& places) {
  int planted_in = 0;
  for (const std::string& place : places) {
    for (const std::string around : {"", "a ", ". "}) {
      Json json = full_case();
      json[Json::json_pointer(place)] = around + planted.typed + (around.empty() ? "" : " b");
      const auto cleaned = clean(json, planted.identity);
      if (!cleaned) continue;  // an enum, a date or a length that reading refuses
      ++planted_in;
      std::string written = case_to_json(cleaned->record());
      EXPECT_EQ(plain(written).find(planted.secret), std::string::npos)
          << place << " keeps " << planted.typed << ": " << written;
      EXPECT_TRUE(case_from_json(written)) << place;
    }
  }
  EXPECT_GE(planted_in, 30);
}

TEST(IdentityRemoval, NoKnownIdentitySurvivesInAnyString) {
  for (const Planted& planted : known_identities()) {
    expect_nothing_survives(planted, string_places());
  }
}

TEST(IdentityRemoval, NoUnknownIdentityOfAShapeSurvivesInAnyStringButAReference) {
  for (const Planted& planted : unknown_identities()) {
    std::vector<std::string> places = string_places();
    // Phone numbers are not looked for in references: job numbers look the same.
    const bool digits_only =
        plain(planted.typed).find_first_not_of("0123456789") == std::string::npos;
    std::erase_if(places, [&](const std::string& place) {
      return digits_only && (place == "/ref" || place == "/follows" || place == "/visit/ref" ||
                             place == "/job_number");
    });
    expect_nothing_survives(planted, places);
  }
}

TEST(IdentityRemoval, FactNamesAreCleanedAndNoneIsLost) {
  Json json = full_case();
  json["facts"] = {{"AB12 CDE", "x"}, {"AB12 CDF", "y"}, {"duty", "zebu@example.org"}};
  const auto cleaned = clean(json, {});
  ASSERT_TRUE(cleaned);
  const std::map<std::string, std::string> expected{
      {"[removed]", "x"}, {"[removed] 2", "y"}, {"duty", "[removed]"}};
  EXPECT_EQ(cleaned->record().facts, expected);
}

TEST(IdentityRemoval, ACaseWithoutIdentityIsLeftExactlyAsItIs) {
  const auto cleaned = clean(full_case(), {});
  ASSERT_TRUE(cleaned) << describe(cleaned.error());
  EXPECT_EQ(Json::parse(case_to_json(cleaned->record())), full_case());
  EXPECT_TRUE(cleaned->warnings().empty());
}

TEST(IdentityRemoval, NamesTheVocabularyKnowsStayThoughTheCustomerBearsThem) {
  const WordsToKeep keep({"Brackwater", "turbocharger", "heat_shield"});
  Json json = full_case();
  json["notes"] = "brackwater rang";
  const auto cleaned = clean(json, {"", "", "Brackwater"}, keep);
  ASSERT_TRUE(cleaned);
  EXPECT_EQ(cleaned->record().vehicle.make, "Brackwater");
  EXPECT_EQ(cleaned->record().notes, "[removed] rang");
}

TEST(IdentityRemoval, VinTakesPrecedenceOverPlate) {
  const auto both = clean(full_case(), {"1M8GDM9AXKP042788", "AB12CDE", ""});
  const auto plate = clean(full_case(), {"", "ab12 cde", ""});
  ASSERT_TRUE(both && plate);
  EXPECT_EQ(both->record().vehicle.token, key().token_of_vin("1M8GDM9AXKP042788"));
  EXPECT_EQ(plate->record().vehicle.token, key().token_of_plate("AB12CDE"));
}

TEST(IdentityRemoval, TokenOfAnEarlierRecordStaysWithoutAnIdentity) {
  const auto cleaned = clean(full_case(), {"", "", "Anneke"});
  ASSERT_TRUE(cleaned);
  EXPECT_EQ(cleaned->record().vehicle.token, "0123456789abcdef0123456789abcdef");
}

TEST(IdentityRemoval, InvalidVinIsRefusedAtItsPlaceWithoutRepeatingIt) {
  for (const char* vin : {"1M8GDM9AXKP04278", "1M8GDM9AXKPO42788"}) {
    const auto cleaned = clean(full_case(), {vin, "", ""});
    ASSERT_FALSE(cleaned);
    EXPECT_EQ(cleaned.error().code, ErrorCode::kInvalidInput);
    EXPECT_EQ(cleaned.error().place, "/identity/vin");
    EXPECT_EQ(describe(cleaned.error()).find("1M8G"), std::string::npos);
  }
}

TEST(IdentityRemoval, PlateWithoutLettersOrDigitsIsRefused) {
  const auto cleaned = clean(full_case(), {"", "-", ""});
  ASSERT_FALSE(cleaned);
  EXPECT_EQ(cleaned.error().place, "/identity/plate");
}

TEST(IdentityRemoval, WrongCheckCharacterIsAWarning) {
  const auto cleaned = clean(full_case(), {"1M8GDM9A1KP042788", "", ""});
  ASSERT_TRUE(cleaned);
  ASSERT_EQ(cleaned->warnings().size(), 1U);
  EXPECT_EQ(cleaned->warnings()[0].find("1M8G"), std::string::npos);
}

TEST(IdentityRemoval, ReferencesStillReferToOneAnother) {
  Json first = full_case();
  first["ref"] = "AB12CDE-1";
  Json second = full_case();
  second["ref"] = "case-8";
  second["follows"] = "AB12CDE-1";
  const auto one = clean(first, {"", "AB12CDE", ""});
  const auto two = clean(second, {});
  ASSERT_TRUE(one && two);
  EXPECT_TRUE(one->record().ref.starts_with("removed-")) << one->record().ref;
  EXPECT_EQ(one->record().ref, two->record().follows);
  EXPECT_EQ(two->record().ref, "case-8");
}

TEST(IdentityRemoval, WhatIsCleanedCanAlwaysBeReadBack) {
  Json json = full_case();
  json["vehicle"]["model"] = "a@b.cd a@b.cd a@b.cd a@b.cd a@b.cd a@b.cd a@b.cd a@b.cd";
  std::string notes;
  while (notes.size() < 19'990) notes += "a@b.cd\xC3\xA9, ";
  json["notes"] = notes.substr(0, notes.size() - notes.size() % 10);
  const auto cleaned = clean(json, {});
  ASSERT_TRUE(cleaned) << describe(cleaned.error());
  const auto again = case_from_json(case_to_json(cleaned->record()));
  EXPECT_TRUE(again) << describe(again.error());
}

TEST(IdentityRemoval, CleaningTwiceChangesNothing) {
  Json json = full_case();
  json["notes"] = "Tarvel, AB12 CDE, 01632 960123";
  const auto once = clean(json, {"", "", "Tarvel"});
  ASSERT_TRUE(once);
  const auto twice = remove_identities({once->record(), {"", "", "Tarvel"}}, key(), {});
  ASSERT_TRUE(twice);
  EXPECT_EQ(case_to_json(once->record()), case_to_json(twice->record()));
}

TEST(IdentityRemoval, QuestionLosesWhatHasAShape) {
  EXPECT_EQ(remove_identities_from_question("AB12 CDE BW16D P0299, ring 01632 960123", {}),
            "[removed] BW16D P0299, ring [removed]");
}

// Random identities, typed at random, among the words of a workshop.
class Inventor {
 public:
  Identity identity() { return {vin(), plate(), name() + " " + name()}; }

  std::string phone() {
    return pick({"+44 ", "0", "0044-"}) + digits(3, '1') + pick({" ", "-", "/", ""}) +
           digits(6, '0');
  }
  std::string email() { return name() + "@" + name() + pick({".org", ".co.uk"}); }
  std::string pick(const std::vector<std::string>& from) { return from[below(from.size())]; }

  // Random letter case, and separators where they may stand.
  std::string typed(const std::string& number, std::size_t chance) {
    std::string text;
    for (std::size_t i = 0; i < number.size(); ++i) {
      if (i > 0 && below(chance) == 0) text += pick({" ", "-", "\xC2\xA0", "."});
      text += below(2) == 0 ? static_cast<char>(std::tolower(static_cast<unsigned char>(number[i])))
                            : number[i];
    }
    return text;
  }
  std::string noise() {
    return pick(
        {" P0299 ", " 142000 km, ", "\n", " turbo. ", " (BW16D) ", ": ", " \xE2\x80\x93 ", "/ "});
  }
  std::size_t below(std::size_t limit) {
    return std::uniform_int_distribution<std::size_t>(0, limit - 1)(random_);
  }

 private:
  std::string from(std::string_view letters, std::size_t count) {
    std::string text;
    while (text.size() < count) text += letters[below(letters.size())];
    return text;
  }
  std::string digits(std::size_t count, char first) {
    return first + from("0123456789", count - 1);
  }
  std::string vin() {
    return from("ABCDEFGHJKLMNPRSTUVWXYZ0123456789", 13) + from("0123456789", 4);
  }
  std::string plate() {
    return from("BCDFGHJKLMNPRSTVWXYZ", 1 + below(3)) + from("123456789", 1 + below(4)) +
           from("BCDFGHJKLMNPRSTVWXYZ", 1 + below(3));
  }
  std::string name() { return "Q" + from("xzwjvkq", 3 + below(6)) + from("aeiou", 1); }

  std::mt19937 random_{kSeed};
};

TEST(IdentityRemoval, RandomGivenIdentitiesNeverSurvive) {
  SCOPED_TRACE(testing::Message() << "seed " << kSeed);
  Inventor invent;
  for (int round = 0; round < 3000; ++round) {
    const Identity identity = invent.identity();
    const std::string phone = invent.phone(), email = invent.email();
    const std::string text = "start" + invent.noise() + invent.typed(identity.vin, 5) +
                             invent.noise() + invent.typed(identity.plate, 3) + invent.noise() +
                             invent.typed(identity.customer, 1000) + invent.noise() + phone +
                             invent.noise() + email + " end";
    const std::string cleaned = remove_identities_from_text(text, identity, {});
    const std::string left = plain(cleaned);
    for (const std::string& secret :
         {identity.vin, identity.plate, identity.customer, phone, email}) {
      // A plate of two or three characters may stand in other words by chance.
      if (plain(secret).size() < 5) continue;
      ASSERT_EQ(left.find(plain(secret)), std::string::npos) << text << "\n" << cleaned;
    }
    ASSERT_TRUE(cleaned.starts_with("start")) << cleaned;
    ASSERT_TRUE(cleaned.ends_with(" end")) << cleaned;
  }
}

TEST(IdentityRemoval, AnyBytesAreTaken) {
  SCOPED_TRACE(testing::Message() << "seed " << kSeed);
  Inventor invent;
  for (int round = 0; round < 3000; ++round) {
    std::string text;
    const std::size_t size = invent.below(60);
    for (std::size_t i = 0; i < size; ++i) {
      text += invent.below(3) == 0 ? static_cast<char>(invent.below(256))
                                   : "0+-. (aB@1"[invent.below(10)];
    }
    const std::string cleaned = remove_identities_from_text(text, {text, text, text}, {});
    EXPECT_EQ(remove_identities_from_text("", {}, {}), "");
    EXPECT_LE(cleaned.size(), 10 * text.size() + 9);
  }
}

}  // namespace
}  // namespace shoplore
