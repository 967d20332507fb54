# seamtakt_add_shards(NAME PROGRAM COUNT [VARIABLE=VALUE...]): the tests of a GoogleTest program as COUNT tests of ctest, which
# may run at once. A process for each of some 2,700 tests would take longer to start than most of them to run; a single one is
# `PROGRAM --gtest_filter=...`.
function(seamtakt_add_shards name program count)
  math(EXPR last "${count} - 1")
  foreach(shard RANGE ${last})
    add_test(NAME ${name}.${shard} COMMAND ${program} --gtest_brief=1)
    set_tests_properties(${name}.${shard} PROPERTIES
      ENVIRONMENT "GTEST_TOTAL_SHARDS=${count};GTEST_SHARD_INDEX=${shard};${ARGN}")
  endforeach()
endfunction()
