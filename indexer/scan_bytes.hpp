// Fault codes in the raw bytes that a control unit answered to services 03, 07 and 0A of SAE J1979
// (replies 43, 47 and 4A), as adapters print them and people paste them.
//
// | form                                        | example |
// |---------------------------------------------|--------------------------------------------------|
// | counted (CAN, ISO 15765-4): a count byte,   | 43 01 01 43 | | then two bytes a code | | | three
// codes, filled with 00 00, no count    | 43 01 33 00 00 00 00                             | | (ISO
// 9141-2, ISO 14230-4)                   |                                                  | |
// with a CAN identifier and length byte       | 7E8 06 43 02 01 43 01 35                         |
// | with three header bytes and a checksum      | 48 6B 10 43 01 33 00 00 00 00 3A | | several CAN
// frames (ISO 15765-2)            | 00E / 0: 43 06 01 43 01 35 / 1: 01 71 ...        | | the same
// with identifiers                   | 7E8 10 0E 43 06 ... / 7E8 21 01 71 ...           | Blanks
// between bytes may be missing; the request ("03") or a word ("mode 03:", "raw") may stand before.
// Which form it is follows from the length: a count must fit the number of bytes exactly, and
// without a count there are exactly six. What fits neither, a wrong checksum or a frame missing is
// no reply at all. So are bytes among other words, "43 00" within a line, and decimal digits in one
// word with no sign that they are bytes ("43010143"). Pure functions, any thread; linear.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "indexer/case_record.hpp"
#include "indexer/fault_code.hpp"

namespace shoplore {

// Half-open byte range in the text.
struct ByteRange {
  std::size_t begin = 0, end = 0;
  friend bool operator==(const ByteRange&, const ByteRange&) = default;
};

enum class ReplyForm { kCounted, kThreeCodes };

struct ReplyCode {
  FaultCode code;
  ByteRange at;
};

struct CodeReply {
  CodeStatus status = CodeStatus::kStored;  // 43 stored, 47 pending, 4A permanent
  ReplyForm form = ReplyForm::kCounted;
  std::vector<ReplyCode> codes;    // 00 00 left out
  std::vector<ByteRange> covered;  // every piece of the text that belongs to the reply
};

// In the order in which they are complete.
[[nodiscard]] std::vector<CodeReply> find_code_replies(std::string_view text);

}  // namespace shoplore
