#!/usr/bin/env bash
# Writes the notices of the libraries that are part of hnote: make-notices.sh [FILE]   (out/NOTICES.txt unless said otherwise)
set -euo pipefail
cd "$(dirname "$0")/../.."
mkdir -p out
[ -d editor-client/vscode/node_modules ] || (cd editor-client/vscode && npm ci --ignore-scripts --no-audit --no-fund --silent)
[ -f server/Cli/obj/project.assets.json ] || dotnet restore server/Cli -v q
node editor-client/vscode/notices.mjs "${1:-out/NOTICES.txt}" server/Cli/obj/project.assets.json
