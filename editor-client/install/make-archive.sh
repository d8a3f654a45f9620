#!/usr/bin/env bash
# Makes the archive for computers without .NET: out/hnote-RID.tar.gz with the native program, the web editor, shell completions, the language,
# the samples, the questions in SQL, the licence and the notices of the libraries in it.   make-archive.sh [RID]   (linux-x64 unless said otherwise; HNOTE_NATIVE names
# a folder that is published already)
set -euo pipefail
cd "$(dirname "$0")/../.."
rid=${1:-linux-x64}
native=${HNOTE_NATIVE:-out/native}
if [ ! -x "$native/hnote" ]; then
  compiler=(); command -v clang >/dev/null || compiler=(-p:CppCompilerAndLinker=gcc)
  dotnet publish server/Cli -c Release -r "$rid" -o "$native" "${compiler[@]}" -v q
fi
name=hnote-$rid
folder=out/archive/$name
rm -rf "$folder"
mkdir -p "$folder/completions"
find "$native" -maxdepth 1 -type f ! -name '*.dbg' ! -name '*.pdb' ! -name '*.xml' -exec cp {} "$folder/" \;
for shell in bash zsh fish; do "$native/hnote" completion "$shell" > "$folder/completions/hnote.$shell"; done
[ -f "$native/web/index.html" ] && cp -r "$native/web" "$folder/" || echo "the archive has no web editor: run editor-client/web/build.sh before the publish" >&2
cp LICENSE grammar/LANGUAGE.md "$folder/"
mkdir "$folder/samples"
cp -r samples/*.hnote samples/*.jpg samples/questions "$folder/samples/"
bash editor-client/install/make-readme.sh "$folder"
cp -r server/Cli/schemas "$folder/"
cp server/Export/Fhir/NOTICES.md "$folder/NOTICES-fhir.md"
bash editor-client/install/make-notices.sh "$folder/NOTICES.txt"
cat > "$folder/INSTALL.txt" <<'TEXT'
Copy hnote, and the library file and the folder `web` beside it, into a folder on your PATH, for instance ~/.local/bin. Then:

  hnote new                       start a note
  hnote check marlow.hnote        what is wrong or worrying in it
  hnote page marlow.hnote         the page for the clinic

Completions: source completions/hnote.bash from ~/.bashrc (or the one for your shell).
It compares and describes; it makes no diagnosis. A veterinarian decides.
TEXT
chmod -R u=rwX,go=rX "$folder"
tar -C out/archive --sort=name --owner=0 --group=0 --numeric-owner --mtime=@0 -czf "out/$name.tar.gz" "$name"
echo "out/$name.tar.gz"
