#!/bin/sh
# Installs what is missing, builds Loopbook and opens it. Without a display it
# shows the main job as text instead.
set -eu
cd "$(dirname "$0")/.."
. app/setup.sh
need_packages build run
need_go
echo "Building Loopbook (the first time takes some minutes)"
go build -tags "$TAGS" -o loopbook ./app
# The window speaks X11; a Wayland desktop answers that too, and sets DISPLAY.
if [ -n "${DISPLAY:-}" ]; then
	exec ./loopbook "$@"
fi
echo "Loopbook's window needs a display, and there is none here. The main job as text:"
echo
exec ./loopbook tour
