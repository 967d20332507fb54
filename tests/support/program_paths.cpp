#include "support/program_paths.hpp"

namespace seamtakt {

const char* seamtakt_program() {
  return SEAMTAKT_PROGRAM;
}

const char* demo_log_program() {
  return SEAMTAKT_DEMO_LOG;
}

const char* save_driver() {
  return SEAMTAKT_SAVE_DRIVER;
}

const char* store_driver() {
  return SEAMTAKT_STORE_DRIVER;
}

const char* iofault_library() {
  return SEAMTAKT_IOFAULT;
}

const char* cutdisk_program() {
#ifdef SEAMTAKT_CUTDISK
  return SEAMTAKT_CUTDISK;
#else
  return "";
#endif
}

}  // namespace seamtakt
