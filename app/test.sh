#!/bin/sh
# Installs what is missing and runs every check and test. The last line is the
# test runner's own count.
set -eu
cd "$(dirname "$0")/.."
. app/setup.sh
need_packages build run check
need_go
export DBUS_SESSION_BUS_ADDRESS=disabled:

say() { printf '%s\n' "== $*"; }

say "gofmt"
unformatted=$(gofmt -l app assets cases diagram report)
if [ -n "$unformatted" ]; then
	echo "not formatted: $unformatted"
	exit 1
fi
say "go vet"
go vet -tags "$TAGS" ./...
say "staticcheck"
go run "honnef.co/go/tools/cmd/staticcheck@$(staticcheck_version)" -tags "$TAGS" ./...
say "go test"
go run "gotest.tools/gotestsum@$(gotestsum_version)" --format pkgname -- -tags "$TAGS" ./...
