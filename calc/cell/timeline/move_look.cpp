#include "cell/timeline/move_look.hpp"

#include <algorithm>

namespace seamtakt {

const MoveLook& look_of(MoveKind kind) {
  return *std::find_if(std::begin(move_looks), std::end(move_looks),
                       [&](const MoveLook& look) { return look.kind == kind; });
}

}  // namespace seamtakt
