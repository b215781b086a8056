#include "indexer/scan_bytes_reader.hpp"

#include <fmt/format.h>

#include <set>

#include "indexer/no_codes_reader.hpp"
#include "indexer/scan_bytes.hpp"

namespace shoplore {
namespace {

Span span_of(ByteRange range) {
  return {range.begin, range.end};
}

std::string how_read(const CodeReply& reply) {
  return fmt::format("bytes taken as a reply with {} codes: {}", name_of(reply.status),
                     reply.form == ReplyForm::kCounted ? "the second byte counts them"
                                                       : "three of two bytes each, no count");
}

void keep_codes(NotePage& page, const CodeReply& reply, std::set<std::string>& said) {
  const std::string how = how_read(reply);
  for (const ReplyCode& each : reply.codes) {
    RecognisedItem item = recognised_item(ItemKind::kCode, each.code.text(), span_of(each.at));
    if (said.insert(how).second) item.reading_chosen = how;
    item.code.emplace();
    item.code->code = item.id;
    item.code->status = reply.status;
    page.keep(std::move(item));
  }
}

}  // namespace

void read_scan_bytes(NotePage& page) {
  std::set<std::string> said;
  for (const CodeReply& reply : find_code_replies(page.text())) {
    for (const ByteRange& range : reply.covered) page.claim(page.tokens_at(span_of(range)));
    if (reply.codes.empty() && reply.status == CodeStatus::kStored) {
      const Span span = page.span_of(page.tokens_at(span_of(reply.covered.back())));
      page.keep(recognised_item(ItemKind::kScanned, std::string(kNoCodes), span));
    }
    keep_codes(page, reply, said);
  }
}

}  // namespace shoplore
