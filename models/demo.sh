#!/bin/sh
# Builds coopwright and makes the plan packs of the example designs in models/designs, into out/.
set -eu
cd "$(dirname "$0")/.."
.ci/packages
cmake -S . -B build -G Ninja -DBUILD_TESTING=OFF
cmake --build build --target coopwright
for design in models/designs/*.xml; do
  build/coopwright make "$design" -o "out/$(basename "$design" .xml)"
done
