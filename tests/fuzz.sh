#!/usr/bin/env bash
# Random notes, frames and pictures, for so many seconds a target: bash tests/fuzz.sh 60 [SEED]
# What fails is printed with its seed; give that seed to see it again, and add the case to ExtremeTests.
set -euo pipefail
cd "$(dirname "$0")/.."
export CsCheck_Time="${1:-60}"
if [ $# -gt 1 ]; then export CsCheck_Seed="$2"; fi
dotnet build tests/Unit -v q
dotnet test tests/Unit --no-build --filter "FullyQualifiedName~HealthNotes.Tests.Fuzz"
