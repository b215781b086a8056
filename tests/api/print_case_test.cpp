#include "api/cli/print_case.hpp"

#include <gtest/gtest.h>

#include "indexer/case_json.hpp"

namespace shoplore {
namespace {

StoredCase stored(const char* json) {
  auto record = case_from_json(json);
  if (!record) ADD_FAILURE() << describe(record.error());
  return {CaseId{7}, Revision{12}, record.value_or(Case{})};
}

const Vocabulary& vocabulary() {
  static const Vocabulary loaded = Vocabulary::built_in().value();
  return loaded;
}

TEST(PrintCase, ShowsWhatTheRecordStates) {
  const StoredCase one = stored(R"({"ref":"case-7","state":"closed","opened":"2026-03-02",
      "closed":"2026-03-04","vehicle":{"make":"Brackwater","model_year":2016,"mileage_km":142000,
      "token":"0123456789abcdef0123456789abcdef"},"complaint":"flat uphill",
      "symptoms":[{"id":"lack_of_power","when":["uphill"]},
                  {"id":"whistle_under_load","state":"absent"},{"id":"stalls","state":"absent"}],
      "scanned":"yes","earlier_repairs":[],
      "checks":[{"id":"wastegate_linkage_by_hand","verdict":"fail","reading":7.300000000000001}],
      "cause":{"component":"wastegate_linkage","failure":"seized_open","proof":"seen"},
      "correction":{"fixes":[{"action":"replace","component":"wastegate_linkage"}]},
      "outcome":{"status":"stayed_fixed","as_of":"2026-09-01"}})");
  EXPECT_EQ(print_case(one, vocabulary(), {80, Colour::kOff}),
            R"(case-7  closed  (revision 12)
  dates          opened 2026-03-02, closed 2026-03-04
  vehicle        2016 Brackwater, 142,000 km
                 known to the shop by its pseudonym
  complaint      flat uphill
  symptom        lack of power (uphill)
  not there      whistle under load, stalls
  codes          scanned, none
  earlier repair asked, there was none
  check          move the wastegate linkage by hand: fail, 7.3
  cause          wastegate linkage, seized open (seen)
  fix            replace wastegate linkage
  outcome        stayed fixed, as of 2026-09-01
)");
}

TEST(PrintCase, HistoryNamesTheChangedFields) {
  const std::vector<Change> history = {
      {Revision{1}, CaseId{7}, 1'772'460'309, Role::kTechnician,
       R"({"schema":1,"state":"open","opened":"2026-03-02"})"},
      {Revision{12}, CaseId{7}, 1'772'460'310, Role::kOwner,
       R"({"schema":1,"state":"closed","opened":"2026-03-02","closed":"2026-03-04"})"}};
  // 1772460309 is 2026-03-02T14:05:09Z (date -u -d @1772460309).
  EXPECT_EQ(print_history(history, {80, Colour::kOff}),
            "       1  2026-03-02T14:05:09Z  technician  schema, state, opened\n"
            "      12  2026-03-02T14:05:10Z  owner       state, closed\n");
}

}  // namespace
}  // namespace shoplore
