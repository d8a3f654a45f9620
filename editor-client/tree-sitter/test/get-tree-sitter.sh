#!/usr/bin/env bash
# Gets tree-sitter's command for the test of the grammar: get-tree-sitter.sh DIR makes DIR/tree-sitter. About ten seconds, on Debian.
# npm's package downloads its program from outside the registry, and Debian 12 has none: this unpacks the one of Debian 13 beside the
# system, with the libc that it needs. Nothing is installed, and no user has to be root.
set -euo pipefail
dir=${1:?usage: get-tree-sitter.sh DIR}
mkdir -p "$dir"; dir=$(cd "$dir" && pwd)
[ -x "$dir/tree-sitter" ] && exit 0
mirror=$(awk '/^URIs:/ { print $2; exit } /^deb / { print $2; exit }' /etc/apt/sources.list.d/debian.sources /etc/apt/sources.list 2>/dev/null || true)
mkdir -p "$dir"/{state/lists/partial,cache/archives/partial,root}
echo "deb [signed-by=/usr/share/keyrings/debian-archive-keyring.gpg] ${mirror:-http://deb.debian.org/debian} trixie main" >"$dir/sources.list"
apt=(apt-get -q -o Dir::State="$dir/state" -o Dir::State::status=/dev/null -o Dir::Cache="$dir/cache" -o Dir::Etc::sourcelist="$dir/sources.list"
  -o Dir::Etc::sourceparts=/dev/null -o APT::Install-Recommends=false -o Debug::NoLocking=1 -o APT::Sandbox::User="$(id -un)")
"${apt[@]}" update >/dev/null
"${apt[@]}" install -y --download-only tree-sitter-cli libc6 >/dev/null
for package in "$dir"/cache/archives/*.deb; do dpkg-deb -x "$package" "$dir/root"; done
rm -rf "$dir/cache" "$dir/state"
lib=$(echo "$dir"/root/usr/lib/*-linux-gnu)
loader=$(echo "$lib"/ld-linux*.so.*)
printf '#!/bin/sh\nexec "%s" --library-path "%s" "%s/root/usr/bin/tree-sitter" "$@"\n' "$loader" "$lib" "$dir" >"$dir/tree-sitter.new"
chmod +x "$dir/tree-sitter.new"
mv "$dir/tree-sitter.new" "$dir/tree-sitter"
