#include "indexer/identity_mentions.hpp"

#include <gtest/gtest.h>

#include "indexer/identity_removal.hpp"

namespace shoplore {
namespace {

const WordsToKeep kKeep({"BW16D", "CX20T", "DN22DT", "EL50", "blend-door gear", "check valve"});

std::string cleaned(std::string_view text, const Identity& identity = {}) {
  return remove_identities_from_text(text, identity, kKeep);
}

struct Row {
  const char* text;
  const char* expected;
};

TEST(IdentityMentions, ShapesAreFoundInAnyText) {
  const Row rows[] = {// VINs
                      {"vin 1M8GDM9AXKP042788 noted", "vin [removed] noted"},
                      {"1m8gdm9axkp042788", "[removed]"},
                      {"VIN1M8GDM9AXKP042788", "[removed]"},
                      // e-mail addresses
                      {"mail anne.t+car@example.org.", "mail [removed]."},
                      {"<an\xC3\xA9@ex-ample.co.uk>", "<[removed]>"},
                      // phones
                      {"ring +44 1632 960123 pls", "ring [removed] pls"},
                      {"+441632960123", "[removed]"},
                      {"+49 (0)30 1234567", "[removed]"},
                      {"+33 1 23 45 67 89", "[removed]"},
                      {"tel. 01632 960123", "tel. [removed]"},
                      {"(01632) 960 123 after 5", "[removed] after 5"},
                      {"0171/2345678", "[removed]"},
                      {"0171-234 56 78, keys in box", "[removed], keys in box"},
                      {"01.23.45.67.89", "[removed]"},
                      {"0044 1632 960123", "[removed]"},
                      {"01632 960123 142000 km", "[removed] 142000 km"},
                      {"01632 960123, 01632 960124", "[removed], [removed]"},
                      {"030 1234567 0171 2345678 late", "[removed] late"},
                      {"555-012-3456", "[removed]"},
                      {"(555) 012-3456", "[removed]"},
                      {"mob: 7700 900123", "mob: [removed]"},
                      {"call on 960123", "call on [removed]"},
                      {"01632\u00A0960\u2011123", "[removed]"},
                      {"03.03.2026 01632 960123", "03.03.2026 [removed]"},
                      // plates
                      {"AB12 CDE in for MOT", "[removed] in for MOT"},
                      {"ab12cde in for mot", "[removed] in for mot"},
                      {"AB12-CDE", "[removed]"},
                      {"ab-123-cd again", "[removed] again"},
                      {"AB 123 CD", "[removed]"},
                      {"A123 BCD", "[removed]"},
                      {"A12BCD", "[removed]"},
                      {"ABC 123D", "[removed]"},
                      {"1234 BCD", "[removed]"},
                      {"1234BCD", "[removed]"},
                      {"B-AB 1234 towed", "[removed] towed"},
                      {"HH-X 12E", "[removed]"},
                      {"161-D-12345", "[removed]"},
                      {"12-abc-3", "[removed]"},
                      {"1-ABC-234", "[removed]"},
                      {"ABC-123", "[removed]"},
                      {"KBC123", "[removed]"},
                      {"reg ab12 cde", "reg [removed]"},
                      {"Reg. no: WA 12345", "Reg. no: [removed]"},
                      {"number plate is KR 1AB23", "number plate is [removed]"}};
  for (const Row& row : rows) EXPECT_EQ(cleaned(row.text), row.expected) << row.text;
}

// What a workshop writes all day, and nobody's identity.
constexpr const char* kNearMisses[] = {
    "2016 Brackwater Tidal BW16D 142k km P0299 flat uphill, no whistle",
    "142000 km",
    "142 000 km, 180k, 88,000 miles",
    "0142000 km on the clock",
    "P0299-00, P0299:16, U0100 and C0031 B1000",
    "P0299 P0300 P0301 stored, P0171 pending",
    "205/55 R16 91V all round, 195/65R15, 235/35ZR19 XL",
    "2026-03-02 to 2026-03-04",
    "02.03.2026 02.03.26 02/03/2026 2/3/26",
    "booked 02.03.2026 142000 km",
    "03/2026 next test",
    "torque 120 Nm + 90 deg, then 45 Nm",
    "AT 120 NM TURN 90 DEG",
    "at20bar, to15bar, by10deg",
    "0.5 mm gap, +0.5 V, -1.2 A",
    "fuel trims +2.5 +12.5 13.58 14.10",
    "compression 12.5 12.4 12.6 9.8 bar",
    "comp 0 120 120 118",
    "14.2V@2000rpm, 12.6V@idle",
    "1500 RPM 2000 RPM 800rpm",
    "2016 DPF fitted, 2012 TDC ok",
    "ABS 12V feed ok, ECU 5V ref",
    "EGR-100 and MAP-101 swapped",
    "EGR123 MAF123 CYL123",
    "M10 NUT M8 x 1.25 M12 BOLT R134A",
    "BW16D head off, CX20T same, EL50 no",
    "BW16D-EL50 bracket",
    "5W-30 C3 oil 4.5 l, 75W-90, DOT 4",
    "blend-door gear stripped",
    "12 V battery 70Ah 640A EN",
    "HV 400 DC isolated",
    "DC-DC 14 V",
    "front NSF tyre 3 mm, OSR 4 mm",
    "resistance 4.7 kohm at pin 12, OL at pin 3",
    "pin 3A, fuse F12 15A, relay K4",
    "part no 06A 115 561 B",
    "p/n 0281002315",
    "part number 0 281 002 315",
    "serial no: 0012345678",
    "software 0345 0012 0071",
    "0 281 002 315",
    "clutch plate 240mm, 23 splines",
    "pressure plate 12 bolts",
    "reg 14.4 V charging, reg 12 volts low",
    "injector 2 leak off 120 ml in 60 s",
    "cyl 1 2 3 4 0.9 0.8 0.9 1.1",
    "10:30 to 11:45, 2.5 h",
    "van will not start, hot soak 20 min",
    "16 V 2000 diesel, 8 V petrol",
    "1.6 16V, 2.0 TDI 140",
    "costs 1234.50, paid 02.03.",
    "relearn 3 times, key on 10 s, key off 30 s",
    "lambda 0.998 1.002, CO 0.02 %",
    "cylinder 3 coil swapped to 1, misfire moved",
    "warranty ref 00123456, order 0012345678",
    "E85 MIX, G12 COOLANT, K12 VVT noise, D16 CDI",
    "C101 MULTI PLUG wet, fuse F34 20A, G101 GROUND",
    "FUEL RAIL 250 BAR AT 2000 RPM",
    "injector codes 8A7K 9BC2 77D1",
    "glow plugs 1 2 3 4 0.6 0.6 OL 0.6 ohm",
    "case-7 and case-1204, job 2026-0012345",
    "10-12-MM spanner, 2-MAR-26",
    "freeze frame 2150 rpm 88 deg 64 % load 1.31 bar"};

TEST(IdentityMentions, PhoneNumberIsFoundThoughReadingsFollow) {
  for (const char* readings : {" 120 118 119 120 122 119 118 120 119 121 120 118 119 120 118",
                               " 12.5 12.6 12.4", " 2 new tyres", " 9.8 bar", " 142000 km"}) {
    const std::string text = cleaned(std::string("01632 960123") + readings);
    EXPECT_TRUE(text.starts_with("[removed]")) << text;
  }
  EXPECT_EQ(cleaned("01632 960123 2 new tyres"), "[removed] 2 new tyres");
}

TEST(IdentityMentions, OrdinaryNotesSurviveUnchanged) {
  ASSERT_GE(std::size(kNearMisses), 40U);
  for (const char* text : kNearMisses) EXPECT_EQ(cleaned(text), text);
}

TEST(IdentityMentions, OrdinaryNotesSurviveAKnownIdentity) {
  const Identity identity{"1M8GDM9AXKP042788", "AB12CDE", "Anneke van Tarvel"};
  for (const char* text : kNearMisses) EXPECT_EQ(cleaned(text, identity), text);
}

TEST(IdentityMentions, GivenPlateIsFoundInAnySpelling) {
  const Identity identity{"", "ZK 345 PQR", ""};
  for (const char* text : {"ZK345PQR", "zk345pqr", "zk 345 pqr", "Zk-345-Pqr", "ZK 3 45 PQR",
                           "zk\u00A0345\u2011pqr", "xZK345PQRx", "z k 3 4 5 p q r"}) {
    EXPECT_EQ(cleaned(text, identity).find("345"), std::string::npos) << text;
  }
  EXPECT_EQ(cleaned("zk 345", identity), "zk 345");
}

TEST(IdentityMentions, ShortGivenPlateStandsAlone) {
  const Identity identity{"", "A 12", ""};
  EXPECT_EQ(cleaned("A12 is in, a 12 too", identity), "[removed] is in, [removed] too");
  EXPECT_EQ(cleaned("BA12 A123 P0A12", identity), "BA12 A123 P0A12");
}

TEST(IdentityMentions, GivenVinIsFoundInAnySpellingAndByItsEnd) {
  const Identity identity{"1M8GDM9AXKP042788", "", ""};
  for (const char* text : {"1M8 GDM9AX KP042788", "1m8-gdm9a-x-kp-042788", "1M8GDM9AXKP\n042788",
                           "VIN:1M8GDM9AXKP042788X", "ends KP042788", "ends 042788"}) {
    EXPECT_EQ(cleaned(text, identity).find("2788"), std::string::npos) << text;
  }
}

TEST(IdentityMentions, GivenNameIsFoundWholeAndInPartsWhateverItsCase) {
  const Identity identity{"", "", "José O'Nerál-Tarvel"};
  const Row rows[] = {{"JOSE rang", "[removed] rang"},
                      {"mr tarvel's van", "mr [removed]'s van"},
                      {"Tarvels van", "[removed] van"},
                      {"oneral, Onerál", "[removed], [removed]"},
                      {"jos\xC3\xA9_2", "[removed]_2"},
                      {"tarvel2", "[removed]2"},
                      {"josetarvel", "josetarvel"},
                      {"joseoneraltarvel", "[removed]"},
                      {"tarvelling general joseph", "tarvelling general joseph"}};
  for (const Row& row : rows) EXPECT_EQ(cleaned(row.text, identity), row.expected) << row.text;
}

TEST(IdentityMentions, ShortNamesAreFoundWholeOnly) {
  const Identity identity{"", "", "Bo Li"};
  EXPECT_EQ(cleaned("BO LI and bo-li, li-ion", identity), "[removed] and [removed], li-ion");
}

TEST(IdentityMentions, NamesOfOtherScriptsAreFound) {
  EXPECT_EQ(cleaned("звонил ПЕТРОВСК сам", {"", "", "Петровск"}), "звонил [removed] сам");
}

TEST(IdentityMentions, NameParticlesAreLeftAlone) {
  EXPECT_EQ(cleaned("the van of van Tarvel", {"", "", "van Tarvel"}), "the van of [removed]");
}

TEST(IdentityMentions, GivenIdentityIsFoundThoughItIsAWordToKeep) {
  EXPECT_EQ(cleaned("BW16D", {"", "BW16D", ""}), "[removed]");
  EXPECT_EQ(cleaned("Mrs Gear came", {"", "", "Gear"}), "Mrs [removed] came");
}

TEST(IdentityMentions, WordsToKeepAreNoPlates) {
  EXPECT_EQ(cleaned("KBC123"), "[removed]");
  EXPECT_EQ(remove_identities_from_text("KBC123", {}, WordsToKeep({"kbc123"})), "KBC123");
}

TEST(IdentityMentions, ReferencesTrustStrongShapesOnly) {
  const auto found = [](std::string_view text) {
    return !find_mentions(text, {}, kKeep, TextKind::kReference).empty();
  };
  for (const char* text : {"AB12CDE", "AB-123-CD", "1M8GDM9AXKP042788", "a@example.org"}) {
    EXPECT_TRUE(found(text)) << text;
  }
  for (const char* text :
       {"case-7", "JOB-123", "INV123", "0012345678", "2026-0012345", "A123BCD"}) {
    EXPECT_FALSE(found(text)) << text;
  }
}

TEST(IdentityMentions, MentionsAreInOrderAndApart) {
  const std::string text = "AB12 CDE 01632 960123 anne@example.org AB12 CDE";
  const auto mentions = find_mentions(text, {"", "AB12CDE", "Anne"}, kKeep);
  ASSERT_EQ(mentions.size(), 4U);
  for (std::size_t i = 1; i < mentions.size(); ++i) {
    EXPECT_LT(mentions[i - 1].end, mentions[i].begin);
  }
}

TEST(IdentityMentions, RemovingTwiceChangesNothing) {
  const Identity identity{"", "AB12CDE", "Anneke Tarvel"};
  const std::string once = cleaned("Tarvel AB12CDE 01632 960123 a@example.org", identity);
  EXPECT_EQ(once, "[removed] [removed] [removed] [removed]");
  EXPECT_EQ(cleaned(once, identity), once);
}

TEST(IdentityMentions, BytesOfAReplyAreNoPhoneNumber) {
  for (const char* text :
       {"43 02 01 43 01 35", "flat uphill\n7E8 06 43 02 01 43 01 35\nno codes",
        "00A\n0: 43 04 01 43 01 35\n1: 02 99 03 01 00 00 00", "mode 03: 4304014301350299C073"}) {
    EXPECT_EQ(cleaned(text), text);
  }
  // Two bytes too many, so it is none.
  EXPECT_EQ(cleaned("43 02 01 43 01 35 66 77"), "43 [removed]");
  Identity given;
  given.plate = "0143 0135";
  EXPECT_EQ(cleaned("43 02 01 43 01 35", given), "43 02 [removed]");
}

}  // namespace
}  // namespace shoplore
