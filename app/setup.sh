# Shared by start.sh and test.sh: what the program needs, and how to get it.
# Sourced by sh, so it holds functions and settings only.
# shellcheck shell=sh

# migrated_fynedo: widgets are changed on their own goroutine only.
# sqlite_fts5: the notebook's search.
TAGS='migrated_fynedo sqlite_fts5'
export GOTOOLCHAIN=local
export GOFLAGS="${GOFLAGS:-} -buildvcs=false"

# The packages by what they are for, as Debian and Ubuntu name them. The run
# libraries are opened by name, so no linker would ask for them.
BUILD='gcc libc6-dev pkg-config libgl1-mesa-dev xorg-dev ca-certificates'
RUN='libgl1 libgl1-mesa-dri libx11-6 libxcursor1 libxrandr2 libxinerama1 libxi6 libxxf86vm1 libxrender1 libx11-xcb1 xdg-utils xdg-user-dirs poppler-utils'
CHECK='xvfb xdotool qpdf'

GO_WANTED=1.22 # the go line of go.mod

may_install() { [ "$(id -u)" = 0 ] || command -v sudo >/dev/null 2>&1; }

as_root() {
	if [ "$(id -u)" = 0 ]; then
		"$@"
	else
		sudo "$@"
	fi
}

# update_lists: another program's broken package source shouldn't stop this one.
update_lists() {
	as_root apt-get update -qq || echo "Some package lists couldn't be renewed; going on with those at hand." >&2
}

missing() {
	for package in "$@"; do
		[ "$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null)" = installed ] || printf '%s ' "$package"
	done
}

install() {
	echo "Installing: $*"
	may_install && update_lists &&
		as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$@" >/dev/null &&
		return 0
	cat >&2 <<-END
		That needs an administrator (root, or sudo) and the package sources. As root, run
		  apt-get update && apt-get install --no-install-recommends $*
		and call this again.
	END
	exit 1
}

# need_packages GROUP…: installs what of the groups (build, run, check) is missing.
need_packages() {
	wanted=''
	for group in "$@"; do
		case $group in
		build) wanted="$wanted $BUILD" ;;
		run) wanted="$wanted $RUN" ;;
		check) wanted="$wanted $CHECK" ;;
		esac
	done
	if ! command -v apt-get >/dev/null 2>&1 || ! command -v dpkg-query >/dev/null 2>&1; then
		echo "This is no Debian or Ubuntu. If the build fails, install what these packages hold:$wanted" >&2
		return 0
	fi
	# shellcheck disable=SC2086
	lacking=$(missing $wanted)
	# shellcheck disable=SC2086
	[ -z "$lacking" ] || install $lacking
}

go_serves() {
	command -v go >/dev/null 2>&1 || return 1
	have=$(go env GOVERSION | sed 's/^go//; s/[^0-9.].*//')
	[ "$(printf '%s\n%s\n' "$GO_WANTED" "$have" | sort -V | head -n 1)" = "$GO_WANTED" ]
}

# need_go: finds a Go that serves, installs the distribution's, or says which.
need_go() {
	go_serves && return 0
	for dir in /usr/local/go/bin /usr/lib/go-*/bin; do
		[ -x "$dir/go" ] || continue
		PATH="$dir:$PATH"
		export PATH
		go_serves && return 0
	done
	if command -v apt-get >/dev/null 2>&1; then
		if may_install; then update_lists; fi
		newest=$(apt-cache search --names-only '^golang-1\.[0-9]+-go$' | sed 's/^golang-\(1\.[0-9]*\)-go.*/\1/' | sort -V | tail -n 1)
		if [ -n "$newest" ] && [ "$(printf '%s\n%s\n' "$GO_WANTED" "$newest" | sort -V | head -n 1)" = "$GO_WANTED" ]; then
			install "golang-$newest-go"
			PATH="/usr/lib/go-$newest/bin:$PATH"
			export PATH
			go_serves && return 0
		fi
	fi
	cat >&2 <<-END
		Loopbook needs Go $GO_WANTED or newer, and this system offers none.
		  Debian 12: add the suite "bookworm-backports" to the package sources and call this again, or
		  any system: take Go from https://go.dev/dl/ , unpack it to /usr/local/go, and call this again.
	END
	exit 1
}

# staticcheck_version: the release that understands the Go at hand.
staticcheck_version() {
	case $(go env GOVERSION) in
	go1.22* | go1.23*) echo v0.5.1 ;;
	go1.24* | go1.25*) echo v0.6.1 ;;
	*) echo v0.8.2 ;;
	esac
}

# gotestsum_version: the release that builds with the Go at hand. It counts the
# tests in its last line.
gotestsum_version() {
	case $(go env GOVERSION) in
	go1.22* | go1.23*) echo v1.12.0 ;;
	*) echo v1.13.0 ;;
	esac
}
