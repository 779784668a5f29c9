#!/bin/sh
# A keeper at the real window, under Xvfb with xdotool: start from rolls, drag a corner, undo, redo, save, close,
# reopen. The report before and after must be equal. Every step waits half a second, as a hand does, and the time
# from a cold start to figures is told.
#
#   tests/window/keeper.sh target/release/netfold FOLDER
#
# DISPLAY names an empty screen of 1280 x 800. FOLDER is new; pictures of each step go there.
set -eu
netfold=$(realpath "$1")
driving=$(realpath "$(dirname "$0")/driving.sh")
mkdir -p "$2"
cd "$2"
. "$driving"
export XDG_STATE_HOME="$here/state"

step() {
    sleep 0.5
    steps=$((steps + 1))
    echo "  $steps. $1"
}

steps=0
began=$(date +%s%N)
start
step "the window is open on the example farm"
xdotool mousemove 430 22 click 1
step "clicked: Start with your own rolls"
picture question
xdotool key Return
step "Enter: Lay it out"
step "read nets, braces, strip minutes and volts"
took_ms=$((($(date +%s%N) - began) / 1000000))
picture laid
echo "from a cold start to figures: $took_ms ms, $steps steps"
[ "$took_ms" -lt 60000 ] || fail "that took longer than a minute"

xdotool key ctrl+s
step "Ctrl+S: the chooser asks where to"
xdotool type first
xdotool key Return
step "saved as first.netfold.json"
[ -s first.netfold.json ] || fail "nothing was saved"
cp first.netfold.json as-laid.json

# Corner 4, where the laid run is fitted into the map.
xdotool mousemove 290 144 mousedown 1
sleep 0.2
for by in 10 20 30 40; do
    xdotool mousemove $((290 - by)) $((144 - by / 2))
    sleep 0.05
done
xdotool mouseup 1
step "dragged corner 4"
picture dragged
xdotool key ctrl+s
step "saved"
cmp -s first.netfold.json as-laid.json && fail "the drag changed nothing"
cp first.netfold.json as-dragged.json
xdotool key ctrl+z
step "undone"
xdotool key ctrl+s
step "saved"
cmp first.netfold.json as-laid.json || fail "undo did not give back the plan"
xdotool key ctrl+y
step "redone"
xdotool key ctrl+s
step "saved"
cmp first.netfold.json as-dragged.json || fail "redo did not give back the plan"
"$netfold" report first.netfold.json --json >before.json
close

start
step "reopened: the last plan"
picture reopened
xdotool key ctrl+shift+s
step "Ctrl+Shift+S"
xdotool key ctrl+a
xdotool type again
xdotool key Return
step "saved as again.netfold.json"
close
"$netfold" report again.netfold.json --json >after.json
cmp before.json after.json || fail "the report before and after differ"
ls state/netfold/journals 2>/dev/null | grep -q . && fail "a journal was left behind by a clean close"
echo "the report before and after is equal"
