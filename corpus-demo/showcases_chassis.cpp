#include "corpus-demo/showcases.hpp"

namespace shoplore {

std::vector<std::string_view> chassis_showcases() {
  return {};
}

}  // namespace shoplore
