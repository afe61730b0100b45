#!/bin/sh
# What a double click on NameBand.app does: opens the worktable for "My names" beside it, and says in a small window where that
# is; closing that window ends the program. From a zip or a disk that cannot be written, macOS starts it somewhere else: then the
# names lie in the folder NameBand of the home folder.
here=$(CDPATH= cd -- "$(dirname -- "$0")" && pwd) || exit 1
beside=$(CDPATH= cd -- "$here/../../.." && pwd) || exit 1
job="$beside/My names"
case $here in */AppTranslocation/*) job="$HOME/NameBand/My names" ;; esac
mkdir -p -- "$job" 2>/dev/null && [ -w "$job" ] || job="$HOME/NameBand/My names"
mkdir -p -- "$job" || exit 1

# The address lets its holder see all names: only this account may read what the program says.
umask 077
said=$(mktemp) || exit 1
"$here/../Resources/program/nameband" page "$job" >"$said" 2>&1 &
program=$!
trap 'kill "$program" 2>/dev/null; wait "$program" 2>/dev/null; rm -f -- "$said"' EXIT
trap 'exit 0' HUP INT TERM
until grep -q '^http:' "$said" || ! kill -0 "$program" 2>/dev/null; do sleep 0.1; done

quoted() { printf '%s' "$1" | sed 's/[\\"]/\\&/g'; }
if address=$(grep -m 1 '^http:' "$said"); then
  text="The worktable is open in your browser. If it is not, open this address there: $address

Your names lie in $job

Nothing is lost when you close it: all is saved at every change."
else
  text="NameBand could not start. It said: $(cat "$said")"
fi
# By its input, so that the address stands in no list of what runs here.
osascript - <<EOT
display dialog "$(quoted "$text")" with title "NameBand" buttons {"Close NameBand"} default button 1
EOT
