#include "api/http/page_cursor.hpp"

#include <fmt/format.h>

#include <charconv>

namespace shoplore {

namespace {

// 64-bit FNV-1a (RFC 9923).
std::uint64_t mark_of(std::string_view question) {
  std::uint64_t hash = 0xcbf29ce484222325U;
  for (const char c : question) hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3U;
  return hash;
}

}  // namespace

std::string page_cursor(std::int64_t position, std::string_view question) {
  return fmt::format("{}-{:016x}", position, mark_of(question));
}

Result<std::int64_t> cursor_position(std::string_view cursor, std::string_view question) {
  if (cursor.empty()) return 0;
  std::int64_t position = 0;
  const auto read = std::from_chars(cursor.data(), cursor.data() + cursor.size(), position);
  const bool whole =
      read.ec == std::errc{} && position > 0 && cursor == page_cursor(position, question);
  if (whole) return position;
  return fail(ErrorCode::kInvalidInput, "?cursor",
              "is not one of this list with these filters; begin again without it");
}

}  // namespace shoplore
