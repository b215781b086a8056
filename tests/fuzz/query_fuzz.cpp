// Any bytes as the query of a request, and as a pasted answer of a control unit.
#include <cstddef>
#include <cstdint>
#include <string>

#include "api/http/query_string.hpp"
#include "indexer/case_record.hpp"
#include "indexer/fault_code.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace shoplore;
  const std::string text(data, data + size);
  if (const auto query = QueryString::parse(text, "q make state* since limit")) {
    QueryReader read(*query);
    static_cast<void>(read.text("q"));
    static_cast<void>(read.day("since"));
    static_cast<void>(read.whole("limit", 1, 100));
    static_cast<void>(read.flag("make"));
    static_cast<void>(read.names<CaseState>("state"));
    static_cast<void>(read.finish());
  }
  if (const auto code = parse_fault_code(text)) {
    const auto again = parse_fault_code(code->text());
    if (!again || again->text() != code->text()) __builtin_trap();
  }
  return 0;
}
