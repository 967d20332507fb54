#include "app/desk_program.hpp"
#include "ledger/store/given_arguments.hpp"

int main(int argc, char** argv) {
  seamtakt::GivenArguments given(argc, argv);
  return seamtakt::desk::run_desk(given.count(), given.values());
}
