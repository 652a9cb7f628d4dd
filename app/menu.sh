#!/bin/sh
# Puts Loopbook among the programs of this user's desktop, or takes it away again: sh app/menu.sh [--remove].
# The entry follows the Desktop Entry Specification and starts the program where it was built.
set -eu
cd "$(dirname "$0")/.."
home=$(pwd)
entry="${XDG_DATA_HOME:-$HOME/.local/share}/applications/loopbook.desktop"

# text: a value's backslashes are doubled. command: an argument in quotes has its own before that, and no field codes.
text() { printf '%s' "$1" | sed 's/\\/\\\\/g'; }
command() { text "$(printf '%s' "$1" | sed 's/[\\"`$]/\\&/g; s/%/%%/g')"; }

case "${1:-}" in
'') ;;
--remove)
	rm -f "$entry"
	echo "Loopbook is no longer among the programs. The notebook was not touched."
	exit 0
	;;
*)
	echo "usage: sh app/menu.sh [--remove]" >&2
	exit 2
	;;
esac
if [ ! -x loopbook ]; then
	echo "Loopbook isn't built yet. Call sh app/start.sh first, then this again." >&2
	exit 1
fi
mkdir -p "$(dirname "$entry")"
cat >"$entry" <<END
[Desktop Entry]
Type=Application
Version=1.5
Name=Loopbook
Comment=Cooling loops: measure, diagnose, prove, keep
Exec="$(command "$home/loopbook")"
Icon=$(text "$home/assets/pictures/icon.svg")
Terminal=false
Categories=Science;Engineering;
StartupWMClass=Loopbook
END
echo "Loopbook is among the programs now ($entry)."
echo "It starts from $home; if that folder moves, call this again."
