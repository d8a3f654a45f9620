#!/usr/bin/env bash
# How time grows with the length of a note, for every word a line can start with, and for pairs that work on one another:
# the time of a note of LINES lines beside one of half as many. A ratio near 2 is as it should be; `pairs` takes every pair of words.
#   usage: tests/growth.sh [LINES] [PART OF A NAME | pairs]     ends with 1 when a kind grows faster than the note
set -euo pipefail
cd "$(dirname "$0")/.."
dotnet build tests/Growth -c Release -v q -p:RunAnalyzers=false >/dev/null
exec dotnet tests/Growth/bin/Release/net10.0/HealthNotes.Growth.dll "$@"
