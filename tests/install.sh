#!/usr/bin/env bash
# Installs hnote from what is built here, in each of its forms, into a folder of its own, and does the main job with it.
# Nothing is fetched for hnote itself. HNOTE_NATIVE names a native program that is published already.
set -euo pipefail
cd "$(dirname "$0")/.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cp samples/marlow.hnote "$work/"

try() { # the program in $1 checks, and makes the page
  local program=$1 page=$work/$2.html code=0
  "$program" check "$work/marlow.hnote" --today 2026-11-25 >/dev/null || code=$?
  [ "$code" -le 1 ] || { echo "$2: check ended with $code" >&2; exit 1; }
  "$program" page "$work/marlow.hnote" --today 2026-11-25 --out "$page" >/dev/null
  grep -q '<h1' "$page" || { echo "$2: the page has no heading" >&2; exit 1; }
  echo "ok $2"
}

bash editor-client/install/make-notices.sh >/dev/null
dotnet pack server/Cli -c Release -o "$work/packages" -v q
bash editor-client/install/make-tool.sh "$work/per-system"
for kind in packages per-system; do
  # outside of the project, whose packages come from one place only
  (cd "$work" && dotnet tool install hnote --tool-path "$work/$kind-tool" --add-source "$work/$kind" --version 0.1.0 >/dev/null)
  for file in LICENSE NOTICES.txt bom.cdx.json README.md; do
    [ -s "$(find "$work/$kind-tool/.store" -name "$file" | head -1)" ] || { echo "the tool of $kind lacks $file" >&2; exit 1; }
  done
  try "$work/$kind-tool/hnote" "$kind"
done

bash editor-client/install/make-archive.sh linux-x64 >/dev/null
cp out/hnote-linux-x64.tar.gz "$work/first.tar.gz"
bash editor-client/install/make-archive.sh linux-x64 >/dev/null
cmp "$work/first.tar.gz" out/hnote-linux-x64.tar.gz || { echo "the archive made twice is not the same" >&2; exit 1; }
tar -C "$work" -xzf out/hnote-linux-x64.tar.gz
for file in LICENSE NOTICES.txt bom.cdx.json README.md LANGUAGE.md samples/marlow.hnote INSTALL.txt completions/hnote.bash completions/hnote.zsh completions/hnote.fish; do
  [ -s "$work/hnote-linux-x64/$file" ] || { echo "the archive lacks $file" >&2; exit 1; }
done
for readme in "$work/hnote-linux-x64/README.md" "$(find "$work/per-system-tool/.store" -name README.md | head -1)"; do
  for target in $(grep -oE '\]\([^)#]+' "$readme" | sed 's/^](//' | grep -v '^https:' || true); do
    [ -e "$(dirname "$readme")/$target" ] || { echo "$readme has a dead link: $target" >&2; exit 1; }
  done
  if grep -nE 'dotnet (run|pack|test)|editor-client/' "$readme"; then echo "$readme names what only the sources have" >&2; exit 1; fi
done
if [ -d out/web ]; then "$work/hnote-linux-x64/hnote" web --out "$work/web" >/dev/null && [ -s "$work/web/index.html" ] || { echo "the archive has no web editor" >&2; exit 1; }; fi
try "$work/hnote-linux-x64/hnote" archive
cmp -s "$work/packages.html" "$work/archive.html" && cmp -s "$work/per-system.html" "$work/archive.html" || { echo "they make different pages" >&2; exit 1; }
