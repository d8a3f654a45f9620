#!/usr/bin/env bash
# Measures the language server over its pipe beside two well-known ones, in one run: see MeasureLsp/measure.mjs.
# Needs the .NET 10 SDK, a C compiler and node; the other two servers come from npm into out/measure-lsp.
#   usage: tests/measure-lsp.sh [--only native,jit,yaml,json] [--sizes 1000,10000,100000] [--rounds 60]
set -euo pipefail
cd "$(dirname "$0")/.."
compiler=()
command -v clang >/dev/null || compiler=(-p:CppCompilerAndLinker=gcc)
dotnet publish server/Cli -c Release -r linux-x64 -o out/native "${compiler[@]}" -v q >/dev/null
case " $* " in *--only*) jit=$(echo "$*" | grep -c jit || true);; *) jit=1;; esac
[ "$jit" -eq 0 ] || dotnet publish server/Cli -c Release -p:PublishAot=false -o out/jit -v q >/dev/null
others=out/measure-lsp
if [ ! -d $others/node_modules ]; then
  mkdir -p $others
  npm install --silent --no-fund --no-audit --prefix $others yaml-language-server@1.25.0 vscode-langservers-extracted@4.10.0
fi
cat >$others/servers.json <<JSON
[
  { "name": "native", "file": "notes", "command": "out/native/hnote", "args": ["lsp", "--today", "2026-11-25"] },
  { "name": "jit", "file": "notes", "command": "dotnet", "args": ["out/jit/hnote.dll", "lsp", "--today", "2026-11-25"] },
  { "name": "json", "file": "json", "pull": true, "command": "node", "args": ["$others/node_modules/vscode-langservers-extracted/bin/vscode-json-language-server", "--stdio"] },
  { "name": "yaml", "file": "yaml", "command": "node", "args": ["$others/node_modules/yaml-language-server/bin/yaml-language-server", "--stdio"],
    "settings": { "yaml": { "validate": true, "schemaStore": { "enable": false } } } }
]
JSON
exec node tests/MeasureLsp/measure.mjs --servers $others/servers.json "$@"
