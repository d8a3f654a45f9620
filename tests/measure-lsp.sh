#!/usr/bin/env bash
# How fast the language server follows, native and JIT, beside two well-known servers from npm on files of as many lines.
#   tests/measure-lsp.sh                                   everything (some minutes)
#   tests/measure-lsp.sh --only native --sizes 10000       only this
#   tests/measure-lsp.sh --only native,json --edits 50
# HNOTE_BINARY names another native binary. The servers from npm are installed once, outside of the project.
set -euo pipefail
cd "$(dirname "$0")/.."
case " $* " in
  *" --only "*) wanted=" $* " ;;
  *) wanted="native,jit" ;;
esac
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1
if [[ $wanted == *native* && -z ${HNOTE_BINARY:-} && " $* " != *" --binary "* && ! -x out/native/hnote ]]; then
  compiler=()
  command -v clang >/dev/null || compiler=(-p:CppCompilerAndLinker=gcc)
  dotnet publish server/Cli -c Release -r linux-x64 -o out/native "${compiler[@]}" -v q
fi
if [[ $wanted == *jit* && ! -e server/Cli/bin/Release/net10.0/hnote.dll ]]; then
  dotnet build server/Cli -c Release -v q
fi
exec node tests/Measure/lsp.mjs "$@"
