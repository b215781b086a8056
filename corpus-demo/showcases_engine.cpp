#include "corpus-demo/showcases.hpp"

namespace shoplore {

std::vector<std::string_view> engine_showcases() {
  return {};
}

}  // namespace shoplore
