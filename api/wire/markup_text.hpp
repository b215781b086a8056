// Text inside HTML, XML and SVG: what would be markup written as references.
//
// Pure function, any thread; it cannot fail.
#pragma once

#include <string>
#include <string_view>

namespace shoplore {

// &, <, >, " and ' as references, so that it may stand between tags and in attributes; control
// characters, which XML 1.0 forbids, are left out but for tab and line end.
[[nodiscard]] std::string markup_text(std::string_view text);

}  // namespace shoplore
