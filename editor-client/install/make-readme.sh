#!/usr/bin/env bash
# Writes the README for who has the program and not its sources: make-readme.sh FOLDER. What stands between `<!-- sources -->` and its end
# is left out, as are pictures; a link to a file that does not lie in FOLDER becomes plain words.
set -euo pipefail
folder=$(cd "$1" && pwd)
cd "$(dirname "$0")/../.."
node -e '
const { existsSync, readFileSync, writeFileSync } = require("node:fs");
const text = readFileSync("README.md", "utf8").replace(/<!-- sources -->[^]*?<!-- \/sources -->\n\n?/g, "").replace(/^!\[.*\n\n?/gm, "");
const here = (target) => target.replace("grammar/LANGUAGE.md", "LANGUAGE.md");
writeFileSync(`${process.argv[1]}/README.md`, text.replace(/\[([^\]]*)\]\(([^)]*)\)/g, (link, words, target) =>
  target.startsWith("https:") ? link : existsSync(`${process.argv[1]}/${here(target)}`) ? `[${here(words)}](${here(target)})` : here(words)));
' "$folder"
