#!/usr/bin/env bash
# Makes the web editor: the server for a browser's worker, and the page around it, in out/web. Needs the .NET SDK, Node and npm.
set -euo pipefail
cd "$(dirname "$0")"
dotnet publish worker -c Release ${CI:+-p:RestoreLockedMode=true} -v q -o ../../out/web-server
npm ci --ignore-scripts --no-audit --no-fund
npx tsc --noEmit
node build.mjs ../../out/web-server ../../out/web
