// The case record: one complaint on one vehicle, from booking in to outcome.
//
// Plain values. JSON form and field-by-field reading live in case_json.hpp, the rules a record
// must keep in case_rules.hpp. Ids name vocabulary entries. An absent optional means "nobody
// looked or wrote it down", which is never the same as "looked at and not there".
//
// As JSON (all optional but schema, state and opened; closed also needs closed and cause):
//   {"schema":1, "ref":"case-7", "state":"closed", "source":"counter",
//   "visit":{"kind":"complaint"},
//    "opened":"2026-03-02", "closed":"2026-03-04",
//    "vehicle":{"make":"Brackwater","model":"Tidal","model_year":2016,"engine_family":"BW16D",
//               "fuel":"diesel","mileage_km":142000,"token":"0f3c..."},
//    "complaint":"flat uphill",
//    "symptoms":[{"id":"lack_of_power","state":"present","when":["uphill"]}], "scanned":"yes",
//    "codes":[{"code":"P0299","status":"stored","seen":"arrival"}],
//    "checks":[{"id":"wastegate_linkage_by_hand","verdict":"fail"}],
//    "earlier_repairs":[{"fix":{"action":"replace","component":"turbocharger"},"by":"elsewhere"}],
//    "cause":{"component":"wastegate_linkage","failure":"seized_open","proof":"seen"},
//    "correction":{"fixes":[{"action":"replace","component":"wastegate_linkage"}]},
//    "outcome":{"status":"stayed_fixed","as_of":"2026-09-01"}}
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "indexer/enum_names.hpp"
#include "indexer/quantities.hpp"

namespace shoplore {

// Only kClosed counts. kNoComplaint is a visit without a complaint (service, inspection): it shows
// that a fix lasted and that a vehicle lived without a failure. kWithdrawn was recorded by mistake.
enum class CaseState { kOpen, kWaiting, kClosed, kEnded, kEnquiry, kNoComplaint, kWithdrawn };
enum class Source { kCounter, kPhone, kTow };
enum class VisitKind { kComplaint, kService, kInspection, kPrePurchase, kBreakdown };
enum class EndedHow { kDeclined, kTemporary, kSentOut, kNotReproduced, kScrapped };
enum class Fuel { kPetrol, kDiesel, kHybrid, kElectric, kGas };
enum class Transmission { kManual, kAutomatic };
enum class Presence { kPresent, kAbsent };
enum class HowOften { kOnce, kSometimes, kOften, kAlways };
enum class YesNo { kYes, kNo };
enum class CodeStatus { kStored, kPending, kPermanent, kActive, kHistory };
enum class CodeSeen { kArrival, kAfterClearing, kAfterFix };
enum class Verdict { kPass, kFail, kUnclear };
enum class Later { kRight, kMisled };
enum class RepairedBy { kHere, kElsewhere, kOwner };
enum class Proof { kSeen, kMeasured, kCuredByFix, kPresumed };
enum class PartGrade { kMaker, kEquivalent, kUsed, kRebuilt, kCustomers };
enum class OutcomeStatus { kStayedFixed, kCameBack, kUnknown };
enum class ComebackReason { kSameCause, kWrongCause, kPart, kWorkmanship, kUnrelated };

struct Vehicle {
  std::string make, model;        // as the workshop writes them; may be empty
  std::optional<int> model_year;  // 1950 to 2100
  std::string engine_family;      // the code the workshop uses; may be empty
  std::optional<Fuel> fuel;
  std::optional<Transmission> transmission;
  std::optional<Kilometres> mileage_km;  // 0 to 3,000,000
  std::string token;                     // keyed pseudonym of VIN or plate (identity_token.hpp)
};

struct Visit {
  VisitKind kind = VisitKind::kComplaint;
  std::string ref;  // shared by the cases of one visit; may be empty
};

struct Symptom {
  std::string id;
  Presence state = Presence::kPresent;
  std::vector<std::string> when;  // condition ids
  std::optional<HowOften> how_often;
  std::optional<YesNo> reproduced;  // here, in this workshop
};

struct FreezeFrameValue {
  std::string name;
  double value = 0;
  std::string unit;
};

struct Code {
  std::string code;  // "P0299", see fault_code.hpp
  CodeStatus status = CodeStatus::kStored;
  CodeSeen seen = CodeSeen::kArrival;
  std::string failure_type;  // two hex digits or empty
  std::string module;
  std::vector<FreezeFrameValue> freeze_frame;
};

struct ExpectedRange {
  std::optional<double> low, high;
};

// A reading is a number, or one of the words OL (open circuit) and out_of_range.
struct Reading {
  std::optional<double> number;
  std::string word;
};

struct Check {
  std::string id;
  std::optional<Reading> reading;
  std::string unit;
  std::optional<ExpectedRange> expected;
  std::string where;
  std::vector<std::string> conditions;  // condition ids
  Verdict verdict = Verdict::kUnclear;
  std::optional<Minutes> minutes;
  std::optional<Later> later;  // what the final cause said of the verdict
  std::string note;
};

struct Fix {
  std::string action, component;
  friend auto operator<=>(const Fix&, const Fix&) = default;
};

// Work done for this complaint before this case. It had not cured it: they are here complaining.
struct EarlierRepair {
  Fix fix;
  RepairedBy by = RepairedBy::kElsewhere;
  std::optional<YesNo> helped_for_a_while;
  std::optional<Date> when;
  std::optional<Kilometres> distance_km;  // driven since
};

struct WorkSign {
  std::string id, component, note;
};

struct Cause {
  std::string component, failure;
  Proof proof = Proof::kPresumed;
};

struct Part {
  std::string part;
  double quantity = 1;
  PartGrade grade = PartGrade::kEquivalent;
  std::string brand;
  std::optional<double> cost;
};

struct Hours {
  std::optional<double> diagnosis, clocked, charged;
};

struct Correction {
  std::vector<Fix> fixes;
  std::vector<Part> parts;
  std::optional<Hours> hours;
  std::optional<double> cost_total;
  std::string currency;  // ISO 4217
  std::vector<std::string> removals;
  std::vector<std::string> traps;
};

struct Declined {
  std::string work;
  YesNo safety = YesNo::kNo;
  std::optional<Date> warned_on;
};

struct Verification {
  std::string id;
  Verdict verdict = Verdict::kUnclear;
};

struct Outcome {
  OutcomeStatus status = OutcomeStatus::kUnknown;
  std::optional<Date> as_of;
  std::optional<Kilometres> mileage_km;
  std::optional<ComebackReason> reason;  // only of kCameBack
};

struct Case {
  std::string ref;  // the workshop's handle; the store gives "case-<id>" when empty
  CaseState state = CaseState::kOpen;
  std::optional<Source> source;
  std::optional<Visit> visit;
  std::string job_number;
  Date opened;
  std::optional<Date> closed;
  std::optional<EndedHow> ended;
  Vehicle vehicle;
  std::string complaint, notes;
  std::map<std::string, std::string> facts;
  std::vector<Symptom> symptoms;
  std::optional<YesNo> scanned;
  std::vector<Code> codes;
  std::vector<Check> checks;
  std::optional<std::vector<EarlierRepair>> earlier_repairs;  // empty list: asked, there were none
  std::optional<YesNo> work_looked_for;
  std::vector<WorkSign> work_signs;
  std::optional<Cause> cause;
  std::vector<Cause> contributing, also_found;
  std::optional<Correction> correction;
  std::vector<Declined> declined;
  std::vector<Verification> verification;
  std::optional<Outcome> outcome;
  std::string follows;  // ref of the case this one is a comeback of
};

template <>
inline constexpr EnumTable<CaseState, 7> kEnumNames<CaseState>{
    {{CaseState::kOpen, "open"},
     {CaseState::kWaiting, "waiting"},
     {CaseState::kClosed, "closed"},
     {CaseState::kEnded, "ended"},
     {CaseState::kEnquiry, "enquiry"},
     {CaseState::kNoComplaint, "no_complaint"},
     {CaseState::kWithdrawn, "withdrawn"}}};
template <>
inline constexpr EnumTable<Source, 3> kEnumNames<Source>{
    {{Source::kCounter, "counter"}, {Source::kPhone, "phone"}, {Source::kTow, "tow"}}};
template <>
inline constexpr EnumTable<VisitKind, 5> kEnumNames<VisitKind>{
    {{VisitKind::kComplaint, "complaint"},
     {VisitKind::kService, "service"},
     {VisitKind::kInspection, "inspection"},
     {VisitKind::kPrePurchase, "pre_purchase"},
     {VisitKind::kBreakdown, "breakdown"}}};
template <>
inline constexpr EnumTable<EndedHow, 5> kEnumNames<EndedHow>{
    {{EndedHow::kDeclined, "declined"},
     {EndedHow::kTemporary, "temporary"},
     {EndedHow::kSentOut, "sent_out"},
     {EndedHow::kNotReproduced, "not_reproduced"},
     {EndedHow::kScrapped, "scrapped"}}};
template <>
inline constexpr EnumTable<Fuel, 5> kEnumNames<Fuel>{{{Fuel::kPetrol, "petrol"},
                                                      {Fuel::kDiesel, "diesel"},
                                                      {Fuel::kHybrid, "hybrid"},
                                                      {Fuel::kElectric, "electric"},
                                                      {Fuel::kGas, "gas"}}};
template <>
inline constexpr EnumTable<Transmission, 2> kEnumNames<Transmission>{
    {{Transmission::kManual, "manual"}, {Transmission::kAutomatic, "automatic"}}};
template <>
inline constexpr EnumTable<Presence, 2> kEnumNames<Presence>{
    {{Presence::kPresent, "present"}, {Presence::kAbsent, "absent"}}};
template <>
inline constexpr EnumTable<HowOften, 4> kEnumNames<HowOften>{{{HowOften::kOnce, "once"},
                                                              {HowOften::kSometimes, "sometimes"},
                                                              {HowOften::kOften, "often"},
                                                              {HowOften::kAlways, "always"}}};
template <>
inline constexpr EnumTable<YesNo, 2> kEnumNames<YesNo>{{{YesNo::kYes, "yes"}, {YesNo::kNo, "no"}}};
template <>
inline constexpr EnumTable<CodeStatus, 5> kEnumNames<CodeStatus>{
    {{CodeStatus::kStored, "stored"},
     {CodeStatus::kPending, "pending"},
     {CodeStatus::kPermanent, "permanent"},
     {CodeStatus::kActive, "active"},
     {CodeStatus::kHistory, "history"}}};
template <>
inline constexpr EnumTable<CodeSeen, 3> kEnumNames<CodeSeen>{
    {{CodeSeen::kArrival, "arrival"},
     {CodeSeen::kAfterClearing, "after_clearing"},
     {CodeSeen::kAfterFix, "after_fix"}}};
template <>
inline constexpr EnumTable<Verdict, 3> kEnumNames<Verdict>{
    {{Verdict::kPass, "pass"}, {Verdict::kFail, "fail"}, {Verdict::kUnclear, "unclear"}}};
template <>
inline constexpr EnumTable<Later, 2> kEnumNames<Later>{
    {{Later::kRight, "right"}, {Later::kMisled, "misled"}}};
template <>
inline constexpr EnumTable<RepairedBy, 3> kEnumNames<RepairedBy>{
    {{RepairedBy::kHere, "here"},
     {RepairedBy::kElsewhere, "elsewhere"},
     {RepairedBy::kOwner, "owner"}}};
template <>
inline constexpr EnumTable<Proof, 4> kEnumNames<Proof>{{{Proof::kSeen, "seen"},
                                                        {Proof::kMeasured, "measured"},
                                                        {Proof::kCuredByFix, "cured_by_fix"},
                                                        {Proof::kPresumed, "presumed"}}};
template <>
inline constexpr EnumTable<PartGrade, 5> kEnumNames<PartGrade>{
    {{PartGrade::kMaker, "maker"},
     {PartGrade::kEquivalent, "equivalent"},
     {PartGrade::kUsed, "used"},
     {PartGrade::kRebuilt, "rebuilt"},
     {PartGrade::kCustomers, "customers"}}};
template <>
inline constexpr EnumTable<OutcomeStatus, 3> kEnumNames<OutcomeStatus>{
    {{OutcomeStatus::kStayedFixed, "stayed_fixed"},
     {OutcomeStatus::kCameBack, "came_back"},
     {OutcomeStatus::kUnknown, "unknown"}}};
template <>
inline constexpr EnumTable<ComebackReason, 5> kEnumNames<ComebackReason>{
    {{ComebackReason::kSameCause, "same_cause"},
     {ComebackReason::kWrongCause, "wrong_cause"},
     {ComebackReason::kPart, "part"},
     {ComebackReason::kWorkmanship, "workmanship"},
     {ComebackReason::kUnrelated, "unrelated"}}};

}  // namespace shoplore
