#!/bin/sh
# Opens the worktable for the folder given after the name of this file, or for "My names" beside it.
here=$(CDPATH= cd -- "$(dirname -- "$0")" && pwd) || exit 1
job=${1:-"$here/My names"}
mkdir -p -- "$job" || exit 1
program="$here/program/nameband"
[ -x "$program" ] || program="$here/NameBand.app/Contents/Resources/program/nameband" # macOS
exec "$program" page "$job"
