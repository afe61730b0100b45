#!/usr/bin/env bash
# Makes what is given away twice from the last commit, in folders of other names and depths, and compares every file of it.
# Ends with status 1 and their names when any differ.
#   tests/two-builds.sh [SYSTEM]      such as win-x64 (so unless told otherwise) or linux-x64
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."
system="${1:-win-x64}"
scratch="$(mktemp -d)"
trap 'rm -rf "$scratch"' EXIT
export UseSharedCompilation=false MSBUILDDISABLENODEREUSE=1
one="$scratch/one" other="$scratch/elsewhere, and deeper/another name"
for at in "$one" "$other"; do
  git clone -q . "$at"
  dotnet build "$at/src/NameBand.Cli/Bundles/Bundles.proj" -v quiet -nologo -p:For="$system" -p:Zip=false
  (
    cd "$at/bundles"
    find . -type f -print0 | LC_ALL=C sort -z | xargs -0 sha256sum
  ) >"$at.sums"
done

grep -hE '/(nameband|NameBand\.[A-Za-z]+)(\.dll|\.exe)?$' "$one.sums"
files="$(grep -c ' \./' "$one.sums")"
if differing="$(diff "$one.sums" "$other.sums")"; then
  echo "$files files, all byte for byte the same in both."
else
  echo "$differing"
  echo "$(grep -c '^< .* \./' <<<"$differing") of $files files differ."
  exit 1
fi
