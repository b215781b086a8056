#include "corpus-demo/showcases.hpp"

namespace shoplore {

std::vector<std::string_view> electrics_showcases() {
  return {};
}

}  // namespace shoplore
