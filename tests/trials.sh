#!/usr/bin/env bash
# Trials with known truth, at full size: draws notes whose truth is known, reads each after every entry as its owner would have,
# and prints false alarms and delays beside their goals and, where it is known, the best possible. Exit code 1 when a goal is missed by
# more than chance (two standard errors).
#   usage: tests/trials.sh [NOTES] [SEED] [PART OF A NAME]
set -euo pipefail
cd "$(dirname "$0")/.."
dotnet build tests/Trials -c Release -v q -p:RunAnalyzers=false >/dev/null
exec dotnet tests/Trials/bin/Release/net10.0/HealthNotes.Trials.dll "$@"
