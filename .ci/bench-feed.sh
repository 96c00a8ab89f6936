#!/bin/bash
# Serves one site with swardbook and the same bytes as files with nginx, on the
# same machine in the same run, and prints requests per second of processor time
# that each server spent, and their ratio: plain, compressed, and answered with
# 304. The aim is a ratio of at least 0.5. Rates by the clock would be those of
# whoever else is at work on the machine.
#
#   .ci/bench-feed.sh [SECONDS OF EACH MEASUREMENT]
#
# It installs nginx-light and wrk with apt-get if they are missing. Three rounds
# are interleaved and the best of each is taken.
set -euo pipefail
cd "$(dirname "$0")/.."
seconds=${1:-4}
if ! command -v nginx >/dev/null || ! command -v wrk >/dev/null; then
	apt-get install -y -q nginx-light wrk >/dev/null
	service nginx stop >/dev/null 2>&1 || true # the package starts one of its own
fi
work=$(mktemp -d)
chmod 755 "$work"
stop() {
	[ -f "$work/nginx.pid" ] && kill "$(cat "$work/nginx.pid")" || true
	[ -n "${feed:-}" ] && kill "$feed" && wait "$feed" || true
	rm -rf "$work"
}
trap stop EXIT

go build -o "$work/swardbook" ./cmd/swardbook
mkdir "$work/sites"
cp examples/reading-garden/site.toml "$work/sites/garden.toml"
"$work/swardbook" publish "$work/sites" -o "$work/files" --base http://127.0.0.1:8481 >/dev/null
find "$work/files" -type f -exec gzip -k {} +
chmod -R a+rX "$work/files"
cat >"$work/nginx.conf" <<CONF
worker_processes auto;
pid $work/nginx.pid;
error_log $work/nginx.log;
events { worker_connections 1024; }
http {
	include /etc/nginx/mime.types;
	types { text/calendar ics; }
	charset utf-8;
	charset_types text/calendar;
	access_log off;
	sendfile on;
	tcp_nopush on;
	open_file_cache max=100;
	keepalive_requests 1000000;
	gzip_static on;
	gzip_vary on;
	add_header Cache-Control no-cache;
	add_header X-Content-Type-Options nosniff;
	add_header Referrer-Policy no-referrer;
	add_header Cross-Origin-Resource-Policy same-origin;
	server { listen 127.0.0.1:8482; root $work/files; }
}
CONF
nginx -c "$work/nginx.conf"
"$work/swardbook" serve "$work/sites" --addr 127.0.0.1:8481 --quiet 2>"$work/feed.log" &
feed=$!
for _ in $(seq 50); do curl -sf -o /dev/null http://127.0.0.1:8481/ && break; sleep 0.1; done

for file in program.ics program.html; do
	cmp <(curl -sf "http://127.0.0.1:8481/garden/$file") <(curl -sf "http://127.0.0.1:8482/garden/$file")
	cmp <(curl -sf --compressed "http://127.0.0.1:8481/garden/$file") <(curl -sf --compressed "http://127.0.0.1:8482/garden/$file")
done

tag() { curl -sfI "http://127.0.0.1:$1/garden/$2" | tr -d '\r' | sed -n 's/^[Ee][Tt]ag: //p'; }
# spent PORT: processor time of a server so far, in seconds
spent() {
	local of=$feed
	[ "$1" = 8481 ] || of="$(cat "$work/nginx.pid") $(cat /proc/"$(cat "$work/nginx.pid")"/task/*/children)"
	for p in $of; do sed 's/.*) //' "/proc/$p/stat"; done | awk -v tick="$(getconf CLK_TCK)" '{ s += $12 + $13 } END { print s / tick }'
}
# once PORT FILE HEADER: requests per second of processor time
once() {
	local before requests
	before=$(spent "$1")
	requests=$(wrk -t 1 -c 32 -d "${seconds}s" ${3:+-H "$3"} "http://127.0.0.1:$1/garden/$2" | sed -n 's/^ *\([0-9]*\) requests in .*/\1/p')
	awk "BEGIN { print $requests / ($(spent "$1") - $before) }"
}
best() { printf '%s\n' "$@" | sort -g | tail -1; }

echo "$(nproc) processors, $(sed -n 's/^model name[^:]*: //p' /proc/cpuinfo | head -1), $(go version | cut -d' ' -f3), $(nginx -v 2>&1 | cut -d' ' -f3), load before $(cut -d' ' -f1 /proc/loadavg)"
printf '%-28s %12s %12s %7s\n' "requests a processor second" "swardbook" "nginx" "ratio"
measure() { # NAME FILE OUR-HEADER THEIR-HEADER
	local ours=() theirs=()
	for _ in 1 2 3; do
		ours+=("$(once 8481 "$2" "$3")")
		theirs+=("$(once 8482 "$2" "$4")")
	done
	local o t
	o=$(best "${ours[@]}") t=$(best "${theirs[@]}")
	printf '%-28s %12.0f %12.0f %7.2f\n' "$1" "$o" "$t" "$(awk "BEGIN { print $o / $t }")"
}
size() { stat -c %s "$work/files/garden/$1"; }
measure "calendar, $(size program.ics) bytes" program.ics "" ""
measure "calendar, gzip $(size program.ics.gz)" program.ics "Accept-Encoding: gzip" "Accept-Encoding: gzip"
measure "calendar, 304" program.ics "If-None-Match: $(tag 8481 program.ics)" "If-None-Match: $(tag 8482 program.ics)"
measure "sheet, $(size program.html) bytes" program.html "" ""
measure "sheet, gzip $(size program.html.gz)" program.html "Accept-Encoding: gzip" "Accept-Encoding: gzip"
