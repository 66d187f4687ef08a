#!/bin/sh
# Builds coopwright with its tests and runs them all.
set -eu
cd "$(dirname "$0")/.."
.ci/packages --tests
cmake -S . -B build -G Ninja -DBUILD_TESTING=ON
cmake --build build
cd build
status=0
ctest --output-on-failure --timeout 600 -j "$(nproc)" -O ctest.log || status=$?
# One plain closing line: "412 passed, 0 failed".
sed -n 's/.*tests passed, \([0-9]*\) tests* failed out of \([0-9]*\)/\1 \2/p' ctest.log |
  { read -r failed all && echo "$((all - failed)) passed, $failed failed"; }
exit $status
