#pragma once

namespace seamtakt::desk {

/// The whole program: the window, or a report or pictures without a display. The exit code is the contract's:
/// 0 done, 2 bad usage or input, 3 the machine failed.
int run_desk(int argc, char** argv);

}  // namespace seamtakt::desk
