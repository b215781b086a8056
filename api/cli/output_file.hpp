// Writing the file that the command line names. One thread.
#pragma once

#include <functional>
#include <ostream>
#include <string>

#include "indexer/result.hpp"

namespace shoplore {

// What `write` puts into the stream, named only when whole, so that half a file is never taken for
// one; a file of that name is replaced. Hands on the error of `write`; kNotFound or kNoPermission,
// naming the file, when it cannot be written.
[[nodiscard]] Result<void> write_output(const std::string& file,
                                        const std::function<Result<void>(std::ostream&)>& write);

// Likewise, of a text at hand.
[[nodiscard]] Result<void> write_output(const std::string& file, const std::string& text);

}  // namespace shoplore
