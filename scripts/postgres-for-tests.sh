#!/usr/bin/env bash
# A throw-away Postgres 15 with pgvector, pg_trgm and unaccent, for the tests and the benchmark.
#
#   scripts/postgres-for-tests.sh start FOLDER   prints the address of a new, empty server on standard output
#   scripts/postgres-for-tests.sh stop FOLDER    ends that server and deletes FOLDER
#
# FOLDER must not exist yet, or be empty; all that the server writes is in it. It listens on 127.0.0.1 at a
# free port, trusts whoever connects, and does not wait for the disk: never put anything in it that matters.
# As root on Debian, what is missing is installed first: Postgres 15 and its headers from the machine's own
# release, pgvector from the source package of the release after it, compiled here (about ten seconds).
# Anywhere else Postgres 15 or newer with pgvector 0.8 or newer must be there already.
set -euo pipefail

say() { echo "postgres-for-tests: $*" >&2; }
fail() { say "$*"; exit 1; }

binaries() {
  local folder
  for folder in $(ls -d /usr/lib/postgresql/*/bin 2>/dev/null | sort -Vr) "$(pg_config --bindir 2>/dev/null || true)"; do
    [ -x "$folder/initdb" ] && [ -x "$folder/postgres" ] && { echo "$folder"; return 0; }
  done
  return 1
}

# The version of an extension that a Postgres offers, or nothing: read from its control file.
offered() {
  local control
  control="$("$1/pg_config" --sharedir)/extension/$2.control"
  [ -r "$control" ] && sed -n "s/^default_version = '\(.*\)'.*/\1/p" "$control"
}

have_all() {
  local bin vector
  bin="$(binaries)" || return 1
  vector="$(offered "$bin" vector)" || return 1
  case "$vector" in 0.[0-7].*) return 1 ;; esac
  offered "$bin" pg_trgm >/dev/null && offered "$bin" unaccent >/dev/null
}

install_on_debian() {
  [ "$(id -u)" = 0 ] || fail "Postgres with pgvector 0.8 is not installed, and only root can install it"
  command -v apt-get >/dev/null || fail "Postgres with pgvector 0.8 is not installed, and there is no apt-get to install it with"
  export DEBIAN_FRONTEND=noninteractive
  say "installing Postgres 15 and what compiles pgvector"
  apt-get update -qq >&2 || fail "apt-get update failed"
  apt-get install -y -qq --no-install-recommends \
    postgresql-15 postgresql-server-dev-15 gcc libc6-dev make xz-utils ca-certificates >&2 </dev/null ||
    fail "apt-get could not install postgresql-15 and postgresql-server-dev-15"
  compile_pgvector
}

# Takes pgvector's source from Debian trixie through apt settings of its own in a temporary folder, so that
# the machine's sources stay as they are, and the archive's address is the one the machine already uses.
compile_pgvector() {
  local archive work
  archive="$(apt-get indextargets --format '$(REPO_URI)' 'Created-By: Packages' 'Label: Debian' | sort -u | head -n 1)"
  [ -n "$archive" ] || fail "the machine's apt sources name no Debian archive"
  work="$(mktemp -d)"
  mkdir -p "$work/lists/partial" "$work/source"
  chmod -R a+rX "$work"
  echo "deb-src $archive trixie main" >"$work/sources.list"
  local apt=(apt-get -qq -o "Dir::Etc::SourceList=$work/sources.list" -o Dir::Etc::SourceParts=/dev/null
    -o "Dir::State::Lists=$work/lists" -o APT::Sandbox::User=root)
  say "taking pgvector's source package"
  (cd "$work/source" && "${apt[@]}" update >&2 && "${apt[@]}" source --download-only pgvector >&2) || {
    rm -rf "$work"
    fail "pgvector's source package could not be had"
  }
  tar -xf "$work"/source/pgvector_*.orig.tar.* -C "$work" || { rm -rf "$work"; fail "pgvector's source could not be unpacked"; }
  say "compiling pgvector"
  # No -march=native: the result may be carried to another processor with the machine's image.
  if ! (cd "$work"/pgvector-* && make -s -j"$(nproc)" OPTFLAGS="" with_llvm=no PG_CONFIG=/usr/lib/postgresql/15/bin/pg_config all install) >&2; then
    rm -rf "$work"
    fail "pgvector did not compile"
  fi
  rm -rf "$work"
}

# Postgres refuses to run as root: there it runs as the user that its package made.
as_server() {
  if [ "$(id -u)" = 0 ]; then runuser -u postgres -- "$@"; else "$@"; fi
}

free_port() {
  node -e 'const s = require("node:net").createServer(); s.listen(0, "127.0.0.1", () => { console.log(s.address().port); s.close(); })'
}

start() {
  local folder="$1" bin port
  [ -z "$(ls -A "$folder" 2>/dev/null)" ] || fail "the folder must be new or empty. Received $folder"
  have_all || install_on_debian
  have_all || fail "Postgres with pgvector 0.8, pg_trgm and unaccent is still not complete after installing"
  bin="$(binaries)"
  mkdir -p "$folder"
  folder="$(cd "$folder" && pwd)"
  [ "$(id -u)" = 0 ] && chown postgres "$folder"
  cd "$folder"
  as_server "$bin/initdb" --pgdata="$folder/data" --username=countermark --auth=trust --encoding=UTF8 \
    --locale=C.UTF-8 --no-sync >"$folder/initdb.log" 2>&1 || fail "initdb failed: see $folder/initdb.log"
  port="$(free_port)"
  cat >>"$folder/data/postgresql.conf" <<CONF
listen_addresses = '127.0.0.1'
port = $port
unix_socket_directories = '$folder'
fsync = off
synchronous_commit = off
full_page_writes = off
shared_buffers = 128MB
max_connections = 100
CONF
  as_server "$bin/pg_ctl" --pgdata="$folder/data" --log="$folder/server.log" --wait --timeout=60 -s start >&2 </dev/null ||
    fail "the server did not start: see $folder/server.log"
  as_server "$bin/createdb" --host=127.0.0.1 --port="$port" --username=countermark countermark
  echo "postgresql://countermark@127.0.0.1:$port/countermark"
}

stop() {
  local folder="$1" bin
  [ -f "$folder/data/PG_VERSION" ] || fail "no server of this script is in $folder"
  bin="$(binaries)" || fail "Postgres is not installed"
  folder="$(cd "$folder" && pwd)"
  cd /
  as_server "$bin/pg_ctl" --pgdata="$folder/data" --mode=immediate -s stop >&2 || true
  rm -rf "$folder"
}

case "${1:-}" in
start | stop) [ $# = 2 ] || fail "one folder is needed. Received $(($# - 1))"; "$1" "$2" ;;
*) fail "the first argument must be start or stop. Received ${1:-nothing}" ;;
esac
