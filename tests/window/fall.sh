#!/bin/sh
# The real window, killed while it is being worked in: what the next start takes back must hold every edit that
# was made a second or more before the kill. A driven keeper moves a corner by a tenth of a metre with each key.
#
#   tests/window/fall.sh target/release/netfold FOLDER [KILLS]
#
# DISPLAY names an empty screen of 1280 x 800. FOLDER is new.
set -eu
netfold=$(realpath "$1")
farm=$(realpath "$(dirname "$0")/../../assets/demo/kettle-field.netfold.json")
driving=$(realpath "$(dirname "$0")/driving.sh")
kills=${3:-5}
mkdir -p "$2"
cd "$2"
. "$driving"

now_ms() { echo $(($(date +%s%N) / 1000000)); }

kill_number=0
while [ "$kill_number" -lt "$kills" ]; do
    kill_number=$((kill_number + 1))
    export XDG_STATE_HOME="$here/state-$kill_number"
    cp "$farm" plan.netfold.json
    start plan.netfold.json
    # Corner 3 of the example, where the farm is fitted into the map.
    xdotool mousemove 443 353 click 1
    sleep 0.5
    keys=0
    : >times
    # Another moment each time, without chance: from 0.7 to 3.6 s.
    last_ms=$(($(now_ms) + 700 + kill_number * 617 % 2900))
    while [ "$(now_ms)" -lt "$last_ms" ]; do
        xdotool key Right
        now_ms >>times
        keys=$((keys + 1))
    done
    kill -9 "$pid"
    killed_ms=$(now_ms)
    wait "$pid" 2>/dev/null || true
    pid=
    cmp -s plan.netfold.json "$farm" || { echo "the file was touched" >&2; exit 1; }
    start plan.netfold.json
    # What was left behind is offered; Enter takes it back.
    xdotool key Return
    sleep 0.5
    xdotool key ctrl+s
    sleep 0.5
    close
    python3 - "$farm" "$killed_ms" <<'PYTHON'
import json, sys
east = lambda path: json.load(open(path))["runs"][0]["outline"][2][0]
kept = round((east("plan.netfold.json") - east(sys.argv[1])) / 0.1)
times = [int(line) for line in open("times")]
due = sum(1 for time in times if time <= int(sys.argv[2]) - 1000)
print(f"{len(times)} edits, {due} of them a second old, {kept} taken back")
sys.exit(0 if due <= kept <= len(times) and kept > 0 else f"{due - kept} edits were lost")
PYTHON
done
echo "$kills kills: nothing older than a second was lost"
