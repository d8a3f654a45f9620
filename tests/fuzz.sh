#!/usr/bin/env bash
# Random notes, frames, pictures and calendars, for so many seconds a target: bash tests/fuzz.sh 60 [SEED]
# What fails is printed with its seed; give that seed to see it again, and add the case to ExtremeTests.
set -euo pipefail
cd "$(dirname "$0")/.."
export CsCheck_Time="${1:-60}"
if [ $# -gt 1 ]; then export CsCheck_Seed="$2"; fi
for project in tests/Unit tests/Cli; do
  dotnet build "$project" -v q -p:RunAnalyzers=false
  dotnet test "$project" --no-build --filter "FullyQualifiedName~FuzzTests"
done
