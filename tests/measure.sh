#!/usr/bin/env bash
# Measures what the notes of a release claim, in one run on one machine: native parsing speed, and whole-process time of
# hnote native against hnote.dll. Prints medians and ratios. Needs the .NET 10 SDK and a C compiler.
#   usage: tests/measure.sh [RUNS]
set -euo pipefail
cd "$(dirname "$0")/.."
runs=${1:-31}
compiler=()
command -v clang >/dev/null || compiler=(-p:CppCompilerAndLinker=gcc)
rid=$(dotnet --info | awk '/RID:/ {print $2}')
case $rid in linux-*|*musl*) ;; *) rid=linux-x64 ;; esac
dotnet publish server/Cli -c Release -r "$rid" -o out/native "${compiler[@]}" -v q >/dev/null
dotnet publish tests/Throughput -c Release -r "$rid" -o out/throughput "${compiler[@]}" -v q >/dev/null
dotnet publish server/Cli -c Release -p:PublishAot=false -o out/jit -v q >/dev/null

sample=samples/marlow.hnote
echo "parser, native:"
echo "  one copy:   $(out/throughput/HealthNotes.Throughput $sample 1 200)"
echo "  ten copies: $(out/throughput/HealthNotes.Throughput $sample 10 40)"
echo "analysis, native, the sample's entries again and again over the years:"
out/throughput/HealthNotes.Throughput analysis $sample

median() { # command...
  for _ in $(seq "$runs"); do
    local start end
    start=$(date +%s%N); "$@" >/dev/null 2>&1 || true; end=$(date +%s%N)
    echo $(((end - start) / 1000))
  done | sort -n | sed -n "$((runs / 2 + 1))p"
}

printf '%-34s %10s %10s %8s\n' "whole process, $(wc -l < $sample) lines" native JIT ratio
for what in "check $sample" "check --json $sample" "page $sample --out out/page.html" "values --json $sample" "--version"; do
  # shellcheck disable=SC2086
  native=$(median out/native/hnote $what); jit=$(median dotnet out/jit/hnote.dll $what)
  printf '%-34s %7d.%d ms %6d.%d ms %7s\n' "$(echo "$what" | cut -c1-34)" $((native / 1000)) $((native % 1000 / 100)) $((jit / 1000)) $((jit % 1000 / 100)) "$(awk "BEGIN{printf \"%.1f\", $jit/$native}")"
done
