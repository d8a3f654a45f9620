#!/usr/bin/env bash
# Makes every artefact of a release from a tag, in a clean copy, so that nothing that is not committed gets in: the archive with the native
# program, the tool packages, the extension with the native server and the one for any system, a bill of materials for each, and SHA256SUMS.   release.sh TAG [OUT]
# The same tag gives the same files, byte by byte, with the same SDK and compiler; CHECK=1 makes all of them twice and compares them.
set -euo pipefail
cd "$(dirname "$0")/../.."
tag=${1:?usage: release.sh TAG [OUT]}
out=$(mkdir -p "${2:-out/release}" && cd "${2:-out/release}" && pwd)
commit=$(git rev-parse --verify "$tag^{commit}")
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
SOURCE_DATE_EPOCH=$(git log -1 --format=%ct "$commit")
export SOURCE_DATE_EPOCH TZ=UTC CI=true DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 MSBUILDDISABLENODEREUSE=1

make() { # into the folder $1; always at one path, which a native program would otherwise remember
  rm -rf "$work/health-notes"
  git clone -q --no-checkout . "$work/health-notes"
  git -C "$work/health-notes" checkout -q --detach "$commit"
  (
    cd "$work/health-notes"
    version=$(sed -n 's:.*<Version>\(.*\)</Version>.*:\1:p' Directory.Build.props)
    [ "${tag#v}" = "$version" ] || [ -n "${ANY_TAG:-}" ] || { echo "the tag $tag is not the version $version" >&2; exit 1; }
    compiler=(); command -v clang >/dev/null || compiler=(-p:CppCompilerAndLinker=gcc)
    dotnet restore --locked-mode -v q
    bash editor-client/web/build.sh >"$work/web.log" 2>&1 || { tail -5 "$work/web.log" >&2; exit 1; }
    dotnet publish server/Cli -c Release -r linux-x64 -o out/native "${compiler[@]}" -v q
    bash editor-client/install/make-archive.sh linux-x64 >/dev/null
    bash editor-client/install/make-tool.sh out/packages
    (cd editor-client/vscode && npm ci --ignore-scripts --no-audit --no-fund --silent && npm run package --silent -- universal && npm run package --silent) >"$work/extension.log" 2>&1 || { tail -5 "$work/extension.log" >&2; exit 1; }
    cp out/hnote-linux-x64.tar.gz out/packages/*.nupkg editor-client/vscode/*.vsix "$1/"
    cp out/bom.cdx.json "$1/hnote-bom.cdx.json"
    cp editor-client/vscode/bom.cdx.json "$1/extension-bom.cdx.json"
  )
  (cd "$1" && find . -maxdepth 1 -type f ! -name SHA256SUMS -printf '%P\n' | LC_ALL=C sort | xargs sha256sum >SHA256SUMS)
}

rm -f "$out"/*.tar.gz "$out"/*.nupkg "$out"/*.vsix "$out"/*.cdx.json "$out"/SHA256SUMS
make "$out"
if [ -n "${CHECK:-}" ]; then
  mkdir "$work/again"
  make "$work/again"
  diff "$out/SHA256SUMS" "$work/again/SHA256SUMS" && echo "made twice, and the same"
fi
cat "$out/SHA256SUMS"
cat <<TEXT
not made: a native program is compiled on a system of its own kind, and this makes linux-x64 alone. Missing are, for linux-arm64, osx-x64,
osx-arm64, win-x64 and win-arm64: hnote-SYSTEM.tar.gz, hnote.SYSTEM.VERSION.nupkg and health-notes-PLATFORM.vsix. There, hnote.any.VERSION.nupkg
(with .NET 10) and health-notes-universal.vsix take their place.
TEXT
