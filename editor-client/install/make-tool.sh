#!/usr/bin/env bash
# Makes the packages of the .NET tool: make-tool.sh [FOLDER]   (out/packages unless said otherwise). `dotnet tool install hnote` takes the native
# one on linux-x64 and the one for any system elsewhere. A plain `dotnet pack server/Cli` makes one package for all.
set -euo pipefail
cd "$(dirname "$0")/../.."
folder=${1:-out/packages}
compiler=(); command -v clang >/dev/null || compiler=(-p:CppCompilerAndLinker=gcc)
mkdir -p out/readme && bash editor-client/install/make-readme.sh out/readme
[ -s out/bom.cdx.json ] || bash editor-client/install/make-notices.sh >/dev/null
dotnet pack server/Cli -c Release -o "$folder" -p:ToolPerSystem=true -r linux-x64 "${compiler[@]}" -v q
dotnet pack server/Cli -c Release -o "$folder" -p:ToolPerSystem=true -r any -v q
dotnet pack server/Cli -c Release -o "$folder" -p:ToolPerSystem=true -v q
