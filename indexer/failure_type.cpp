#include "indexer/failure_type.hpp"

namespace shoplore {

FailureTypeGroup failure_type_group(std::uint8_t failure_type) {
  const int high = failure_type >> 4;
  return high > 9 ? FailureTypeGroup::kReservedOrUnknown : static_cast<FailureTypeGroup>(high);
}

}  // namespace shoplore
