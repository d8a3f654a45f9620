#!/usr/bin/env bash
# Packs the extension with both servers, the native one and WebAssembly: package.sh [PLATFORM]   (linux-x64 unless said otherwise)
# `package.sh universal` packs WebAssembly alone: for Windows, macOS, and editors in a browser.
# Another platform: on such a computer, `dotnet publish server/Cli -c Release -r RID -o out/native`, then
#   HNOTE_NATIVE=out/native bash package.sh PLATFORM
# where PLATFORM and RID are: linux-arm64 linux-arm64, darwin-x64 osx-x64, darwin-arm64 osx-arm64, win32-x64 win-x64, win32-arm64 win-arm64.
set -euo pipefail
cd "$(dirname "$0")"
top=$(cd ../.. && pwd)
platform=${1:-linux-x64}
native=${HNOTE_NATIVE:-$top/out/native}
[ -f "$top/out/web/_framework/dotnet.js" ] || bash ../web/build.sh
[ -d node_modules ] || npm ci --ignore-scripts --no-audit --no-fund
target=(--target "$platform")
if [ "$platform" = universal ]; then
  native= target=()
elif [ ! -x "$native/hnote" ] && [ ! -f "$native/hnote.exe" ]; then
  [ "$platform" = linux-x64 ] || { echo "no native server in $native: publish it on $platform first" >&2; exit 1; }
  compiler=(); command -v clang >/dev/null || compiler=(-p:CppCompilerAndLinker=gcc)
  dotnet publish "$top/server/Cli" -c Release -r linux-x64 -o "$native" "${compiler[@]}" -v q
fi
rm -rf server dist
mkdir -p "server/$platform"
[ -z "$native" ] || cp -R "$native/." "server/$platform/"
rm -rf "server/$platform/web" # the extension has it in dist/wasm
find server \( -name '*.dbg' -o -name '*.pdb' -o -name '*.dSYM' -o -name '*.xml' \) -prune -exec rm -rf {} +
cp "$top/LICENSE" LICENSE
node notices.mjs NOTICES.txt "$top/server/Cli/obj/project.assets.json" extension
npx --no-install vsce package ${target[@]+"${target[@]}"} --no-dependencies --no-rewrite-relative-links --out "health-notes-$platform.vsix"
