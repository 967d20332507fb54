#include "app/desk_program.hpp"

int main(int argc, char** argv) {
  return seamtakt::desk::run_desk(argc, argv);
}
