// Every line is cut at commas and the like into pieces; a piece of nothing but hex (and a label)
// is a frame. A frame is a whole reply or a part of one that is put together by its identifier.
#include "indexer/scan_bytes.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <string>

namespace shoplore {
namespace {

struct Byte {
  std::uint8_t value = 0;
  ByteRange at;
};
using Bytes = std::vector<Byte>;

// A piece of a line that is nothing but hex.
struct Frame {
  std::optional<std::uint32_t> id;  // CAN identifier
  std::optional<unsigned> index;    // of "0:", "1:"
  std::optional<unsigned> length;   // a line of three hex digits: how many bytes follow
  Bytes bytes;
  ByteRange at;
  bool labelled = false;  // a word or the request says that these are bytes
  bool whole_line = false;
  bool one_word = false;  // written without blanks, decimal digits only
};

int hex_value(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  if (c >= 'A' && c <= 'F') return c - 'A' + 10;
  if (c >= 'a' && c <= 'f') return c - 'a' + 10;
  return -1;
}
bool is_hex(std::string_view word) {
  return !word.empty() &&
         std::all_of(word.begin(), word.end(), [](char c) { return hex_value(c) >= 0; });
}
std::uint32_t number(std::string_view hex) {
  std::uint32_t value = 0;
  for (const char c : hex) value = value * 16 + static_cast<std::uint32_t>(hex_value(c));
  return value;
}

std::string lower(std::string_view word) {
  std::string text(word);
  for (char& c : text) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return text;
}

bool is_label(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"mode", "service", "svc", "sid", "response", "reply", "resp", "rx", "raw", "bytes", "hex",
       "answer", "obd", "obd2", "dump", "frame"});
  return std::find(words.begin(), words.end(), lower(word)) != words.end();
}

bool is_reply(std::uint8_t byte) {
  return byte == 0x43 || byte == 0x47 || byte == 0x4A;
}

// Splits a piece into words at blanks and at the marks that stand around bytes.
class PieceReader {
 public:
  PieceReader(std::string_view text, ByteRange at) : text_(text), frame_{} { frame_.at = at; }

  std::optional<Frame> read() {
    std::size_t i = frame_.at.begin;
    const auto word_end = [&](std::size_t from) {
      return std::min(text_.substr(0, frame_.at.end).find_first_of(kMarks, from), frame_.at.end);
    };
    for (i = skip(i); i < frame_.at.end; i = skip(i)) {
      const std::size_t end = word_end(i);
      if (!read_word({i, end})) return std::nullopt;
      i = end;
    }
    if (frame_.bytes.empty() && !frame_.length) return std::nullopt;
    drop_request();
    frame_.one_word = words_ == 1 && only_decimals_;
    return std::move(frame_);
  }

 private:
  static constexpr std::string_view kMarks = " \t:=<>$[]";

  std::size_t skip(std::size_t i) const {
    while (i < frame_.at.end && kMarks.find(text_[i]) != kMarks.npos) ++i;
    return i;
  }

  bool read_word(ByteRange at) {
    const std::string_view word = text_.substr(at.begin, at.end - at.begin);
    if (word == "->" || word == "-") return true;
    if (frame_.bytes.empty() && !frame_.id && is_label(word)) return frame_.labelled = true;
    if (!is_hex(word)) return false;
    ++words_;
    only_decimals_ = only_decimals_ && std::all_of(word.begin(), word.end(),
                                                   [](char c) { return c >= '0' && c <= '9'; });
    const bool first = frame_.bytes.empty() && !frame_.id && !frame_.index;
    if (first && word.size() == 1 && at.end < text_.size() && text_[at.end] == ':') {
      frame_.index = number(word);
      return true;
    }
    if (first && word.size() == 3) return read_three(word);
    if (first && word.size() > 8 && word.size() % 2 == 1 && word[0] == '7') {
      frame_.id = number(word.substr(0, 3));
      at.begin += 3;
    } else if (first && word.size() >= 8 && lower(word.substr(0, 6)) == "18daf1") {
      frame_.id = number(word.substr(0, 8));
      at.begin += 8;
    }
    return add_bytes(at);
  }

  bool read_three(std::string_view word) {
    if (word[0] == '7') {
      frame_.id = number(word);
    } else {
      frame_.length = number(word);
    }
    return true;
  }

  bool add_bytes(ByteRange at) {
    if (frame_.length || (at.end - at.begin) % 2 == 1) return false;
    for (std::size_t i = at.begin; i < at.end; i += 2) {
      frame_.bytes.push_back({static_cast<std::uint8_t>(number(text_.substr(i, 2))), {i, i + 2}});
    }
    return true;
  }

  // "03 43 ..." and "18 DA F1 10 ...".
  void drop_request() {
    Bytes& bytes = frame_.bytes;
    const bool wide = !frame_.id && bytes.size() > 5 && bytes[0].value == 0x18 &&
                      bytes[1].value == 0xDA && bytes[2].value == 0xF1;
    if (wide) {
      frame_.id = 0x18DAF100U | bytes[3].value;
      bytes.erase(bytes.begin(), bytes.begin() + 4);
    }
    const bool asked = bytes.size() > 1 && is_reply(bytes[1].value) &&
                       bytes[0].value + 0x40 == bytes[1].value && !frame_.id;
    if (!asked) return;
    frame_.labelled = true;
    bytes.erase(bytes.begin());
  }

  std::string_view text_;
  Frame frame_;
  std::size_t words_ = 0;
  bool only_decimals_ = true;
};

std::vector<Frame> frames_of(std::string_view text) {
  constexpr std::string_view kCuts = ",;().|";
  std::vector<Frame> frames;
  std::size_t line = 0;
  while (line < text.size()) {
    const std::size_t line_end = std::min(text.find_first_of("\r\n", line), text.size());
    for (std::size_t i = line; i < line_end;) {
      // Within the line only: a search to the text's end for every piece would be quadratic.
      const std::size_t cut = text.substr(0, line_end).find_first_of(kCuts, i);
      const std::size_t end = std::min(cut, line_end);
      if (auto frame = PieceReader(text, {i, end}).read()) {
        frame->whole_line = i == line && end == line_end;
        frames.push_back(std::move(*frame));
      }
      i = end + 1;
    }
    line = line_end + 1;
  }
  return frames;
}

CodeStatus status_of_reply(std::uint8_t service) {
  if (service == 0x47) return CodeStatus::kPending;
  return service == 0x4A ? CodeStatus::kPermanent : CodeStatus::kStored;
}

// The bytes that adapters and controllers fill frames with, as they would look as a code.
bool is_filling(std::uint16_t code) {
  return code == 0xAAAA || code == 0x5555 || code == 0xCCCC || code == 0xFFFF;
}

// The reply these bytes are, by their number; empty when they are none.
std::optional<CodeReply> decode(const Bytes& bytes, bool is_can) {
  if (bytes.size() < 2 || !is_reply(bytes[0].value)) return std::nullopt;
  CodeReply reply;
  reply.status = status_of_reply(bytes[0].value);
  const std::size_t data = bytes.size() - 1;
  const bool counted = data == 1 + 2 * static_cast<std::size_t>(bytes[1].value);
  if (!counted && (is_can || data != 6)) return std::nullopt;
  reply.form = counted ? ReplyForm::kCounted : ReplyForm::kThreeCodes;
  for (std::size_t i = counted ? 2 : 1; i < bytes.size(); i += 2) {
    const auto value = static_cast<std::uint16_t>(bytes[i].value * 256 + bytes[i + 1].value);
    if (is_filling(value)) return std::nullopt;
    if (value == 0) continue;
    reply.codes.push_back({fault_code_from_bytes(value), {bytes[i].at.begin, bytes[i + 1].at.end}});
  }
  return reply;
}

// Sum of the bytes (ISO 9141-2, ISO 14230-2), or CRC-8 with polynomial 1D (SAE J1850).
bool checks_out(const Bytes& bytes) {
  unsigned sum = 0, crc = 0xFF;
  for (std::size_t i = 0; i + 1 < bytes.size(); ++i) {
    sum += bytes[i].value;
    crc ^= bytes[i].value;
    for (int bit = 0; bit < 8; ++bit) crc = (crc & 0x80U) != 0 ? (crc << 1U) ^ 0x11DU : crc << 1U;
  }
  const unsigned last = bytes.back().value;
  return last == (sum & 0xFFU) || last == ((crc ^ 0xFFU) & 0xFFU);
}

// Puts frames together. Frames without identifier share one thread, keyed by 0.
class Assembler {
 public:
  std::vector<CodeReply> replies(const std::vector<Frame>& frames) {
    for (const Frame& frame : frames) add(frame);
    return std::move(replies_);
  }

 private:
  struct Open {
    std::size_t length = 0;
    unsigned next = 0;
    Bytes bytes;
    std::vector<ByteRange> covered;
  };

  void add(const Frame& frame) {
    if (frame.length) {
      if (frame.whole_line) open_[0] = {*frame.length, 0, {}, {frame.at}};
    } else if (frame.index) {
      go_on(0, *frame.index, frame, frame.bytes);
    } else if (frame.id) {
      add_can(frame);
    } else {
      add_plain(frame);
    }
  }

  void add_can(const Frame& frame) {
    constexpr std::size_t kLongest = 8;  // a classic CAN frame
    if (frame.bytes.size() > kLongest) return;
    const unsigned head = frame.bytes.empty() ? 0 : frame.bytes[0].value;
    const Bytes rest(frame.bytes.begin() + (frame.bytes.empty() ? 0 : 1), frame.bytes.end());
    if (head >> 4U == 0 && head > 0 && head <= rest.size()) {
      finish(Bytes(rest.begin(), rest.begin() + head), {frame.at}, true);
    } else if (head >> 4U == 1 && !rest.empty()) {
      open_[*frame.id] = {(head & 0xFU) * 256U + rest[0].value, 0, {}, {}};
      go_on(*frame.id, 0, frame, Bytes(rest.begin() + 1, rest.end()));
    } else if (head >> 4U == 2) {
      go_on(*frame.id, head & 0xFU, frame, rest);
    } else if (is_reply(static_cast<std::uint8_t>(head))) {
      finish(frame.bytes, {frame.at}, true);  // identifier shown, length byte hidden
    }
  }

  void go_on(std::uint32_t id, unsigned index, const Frame& frame, const Bytes& bytes) {
    const auto there = open_.find(id);
    if (there == open_.end()) return;
    Open& open = there->second;
    if (index != open.next) return void(open_.erase(there));
    open.next = (index + 1) % 16;
    open.bytes.insert(open.bytes.end(), bytes.begin(), bytes.end());
    open.covered.push_back(frame.at);
    if (open.bytes.size() < open.length) return;
    open.bytes.resize(open.length);
    const Open whole = std::move(open);
    open_.erase(there);
    finish(whole.bytes, whole.covered, true);
  }

  void add_plain(const Frame& frame) {
    constexpr std::size_t kHeaded = 11, kHeader = 3;
    const Bytes& bytes = frame.bytes;
    if (bytes.size() == kHeaded && is_reply(bytes[kHeader].value)) {
      if (!checks_out(bytes)) return;
      return finish(Bytes(bytes.begin() + kHeader, bytes.end() - 1), {frame.at}, false);
    }
    // A whole CAN frame without its identifier: length byte, reply, filling.
    const bool is_frame = bytes.size() == 8 && bytes[0].value < 8 && is_reply(bytes[1].value);
    if (is_frame) {
      const auto end = bytes.begin() + 1 + bytes[0].value;
      return finish(Bytes(bytes.begin() + 1, end), {frame.at}, true);
    }
    if (bytes.size() < 4 && !frame.labelled && !frame.whole_line) return;
    if (frame.one_word && !frame.labelled && bytes.size() < 7) return;
    finish(bytes, {frame.at}, false);
  }

  void finish(const Bytes& bytes, std::vector<ByteRange> covered, bool is_can) {
    auto reply = decode(bytes, is_can);
    if (!reply) return;
    reply->covered = std::move(covered);
    replies_.push_back(std::move(*reply));
  }

  std::map<std::uint32_t, Open> open_;
  std::vector<CodeReply> replies_;
};

}  // namespace

std::vector<CodeReply> find_code_replies(std::string_view text) {
  return Assembler().replies(frames_of(text));
}

}  // namespace shoplore
