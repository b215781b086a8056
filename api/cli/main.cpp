#include <iostream>

#include "api/cli/program.hpp"

int main(int count, char** arguments) {
  std::ios::sync_with_stdio(false);
  return shoplore::run_program({arguments + 1, arguments + count}, std::cin, std::cout, std::cerr);
}
