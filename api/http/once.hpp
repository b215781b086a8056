// A change asked for under an Idempotency-Key is done once, however often the request is sent
// (the IETF draft httpapi-idempotency-key-header).
//
// | the request                                          | gets                                  |
// |------------------------------------------------------|---------------------------------------|
// | without the header                                   | done                                  |
// | with a key not seen in the last two days             | done, and its reply kept              |
// | again, word for word                                 | the same reply, Shoplore-Repeated: true
// | | the key with another method, path, If-Match or body  | 422 | | the key while the first is
// still under way           | 409, Retry-After                      | | a key that is no quoted
// string of 1 to 128 bytes     | 400                                   | Kept are hashes under the
// shop's key and what was done, in the transaction that did it; a refused request changed nothing,
// keeps nothing and is tried anew. Any thread.
#pragma once

#include <functional>

#include "api/http/dispatch.hpp"

namespace shoplore {

// `change` gets the receipt to keep, if any; `status` is that of its reply when it succeeds.
[[nodiscard]] Reply once(LiveRecords& records, const Incoming& request, int status,
                         const std::function<Reply(const std::optional<Receipt>&)>& change);

// The reply to a case recorded: 201 says where it is. ETag: its revision.
[[nodiscard]] Reply recorded_reply(int status, const Recorded& recorded);

}  // namespace shoplore
