#include "indexer/case_links.hpp"

#include <fmt/format.h>

#include <vector>

namespace shoplore {
namespace {

std::vector<Problem> problems_between(const Case& record, const Case& earlier) {
  std::vector<Problem> problems;
  const std::string& ref = earlier.ref;
  if (earlier.state != CaseState::kClosed) {
    problems.push_back({"/follows", fmt::format("{} is {}; a comeback is of a closed case", ref,
                                                name_of(earlier.state))});
  }
  if (!record.ref.empty() && earlier.follows == record.ref) {
    problems.push_back({"/follows", fmt::format("{} follows this case itself", ref)});
  }
  const std::string &token = record.vehicle.token, &other = earlier.vehicle.token;
  if (!token.empty() && !other.empty() && token != other) {
    problems.push_back({"/follows", fmt::format("{} is of another vehicle", ref)});
  }
  if (earlier.closed && record.opened < *earlier.closed) {
    problems.push_back(
        {"/opened", fmt::format("is {}, before {} was closed on {}", format_date(record.opened),
                                ref, format_date(*earlier.closed))});
  }
  const auto then = earlier.vehicle.mileage_km, now = record.vehicle.mileage_km;
  if (then && now && *now < *then) {
    problems.push_back(
        {"/vehicle/mileage_km", fmt::format("{} km is less than the {} km at the repair of {}",
                                            now->value, then->value, ref)});
  }
  return problems;
}

}  // namespace

Result<void> check_link(const Case& record, const Store& store) {
  if (record.follows.empty()) return {};
  const auto earlier = store.read(record.follows);
  if (!earlier && earlier.error().code == ErrorCode::kNotFound) {
    return fail(ErrorCode::kInvalidInput, "/follows",
                fmt::format("there is no case {} to follow", record.follows));
  }
  if (!earlier) return fail(earlier.error());
  auto problems = problems_between(record, earlier->record);
  if (problems.empty()) return {};
  std::string place = problems.front().place;
  return fail({ErrorCode::kInvalidInput, std::move(place), "the case cannot follow the other one",
               std::move(problems)});
}

bool is_link_changed(const Case& before, const Case& after) {
  return before.follows != after.follows || before.opened != after.opened ||
         before.vehicle.token != after.vehicle.token ||
         before.vehicle.mileage_km != after.vehicle.mileage_km;
}

}  // namespace shoplore
