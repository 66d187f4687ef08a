#include <iostream>

#include "cli/run.h"

int main(int count, char** values) {
  return cli::run(std::vector<std::string>(values + 1, values + count), std::cout, std::cerr);
}
