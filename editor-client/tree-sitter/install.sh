#!/usr/bin/env bash
# Makes the parser and puts it, with its colours, where an editor looks: install.sh helix|neovim|emacs
# Needs tree-sitter's command (TREE_SITTER names another one) and a C compiler.
set -euo pipefail
config=${XDG_CONFIG_HOME:-$HOME/.config}
case ${1:-} in
  helix) parser=$config/helix/runtime/grammars/hnote.so queries=$config/helix/runtime/queries/hnote ;;
  neovim) parser=$config/nvim/parser/hnote.so queries=$config/nvim/queries/hnote ;;
  emacs) parser=${EMACS_FOLDER:-$HOME/.emacs.d}/tree-sitter/libtree-sitter-hnote.so queries= ;;
  *) echo "usage: install.sh helix|neovim|emacs" >&2; exit 2 ;;
esac
tool=$(command -v "${TREE_SITTER:-tree-sitter}") || { echo "the command tree-sitter is missing: install it, or set TREE_SITTER" >&2; exit 1; }
tool=$(realpath "$tool")
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cp "$here/grammar.js" "$here/package.json" "$work"
(cd "$work" && "$tool" generate --no-bindings >/dev/null)
mkdir -p "$(dirname "$parser")" ${queries:+"$queries"}
"${CC:-cc}" -O2 -shared -fPIC -I "$work/src" "$work/src/parser.c" -o "$parser"
[ -z "$queries" ] || cp "$here/queries/highlights.scm" "$queries/"
echo "$parser"
