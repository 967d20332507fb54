#pragma once

namespace seamtakt {

/// The words of caution, the same in --help, reports, desk and README.
const char* caution_text();

}  // namespace seamtakt
