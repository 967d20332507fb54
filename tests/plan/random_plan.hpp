#pragma once

#include <cstdint>
#include <string>

/// A small valid plan with random keys present, in random order, with random values and free keys, as JSON
/// text on one line. It is made from the field tables, so a new field is in it at once.
std::string random_plan(std::uint64_t seed);
