#!/bin/sh
# One whole job at the real window, under Xvfb with xdotool: from the question about rolls to a saved plan with a second run
# unrolled beside the first, once by the mouse alone and once by the keyboard alone. What both plans come to must be the
# same, line for line.
#
#   tests/window/job.sh target/release/netfold FOLDER
#
# DISPLAY names an empty screen of 1280 x 800. FOLDER is new; pictures of each job go there.
set -eu
netfold=$(realpath "$1")
driving=$(realpath "$(dirname "$0")/driving.sh")
mkdir -p "$2"
cd "$2"
. "$driving"

click() {
    xdotool mousemove "$1" "$2"
    sleep 0.5
    xdotool click 1
    sleep 0.6
}
press() {
    for key in "$@"; do
        xdotool key "$key"
        sleep 0.2
    done
}
# Types over what stands in the field that has the focus.
over() {
    press ctrl+a
    xdotool type "$1"
    sleep 0.2
}
# A side of so many panels, turned by so many degrees: Tab leads to the side, the panels, the turn.
side() {
    press Tab Tab
    over "$1"
    press Tab
    over "$2"
    press Return
}

by_mouse() {
    # Start with your own rolls, lay them out; the wheel takes the map farther away.
    click 430 22
    click 302 390
    sleep 1
    picture mouse-laid
    xdotool mousemove 460 334
    for _ in 1 2 3; do
        xdotool click 5
        sleep 0.3
    done
    sleep 1
    # Unroll a run: east, south, west, and home onto the first corner. Posts catch the corners.
    click 998 241
    click 620 280
    click 803 280
    click 803 437
    click 620 437
    picture mouse-unrolled
    click 620 280
    sleep 1
    picture mouse-closed
    # The plan's menu, Save, and Save in the chooser with the name that it offers.
    click 95 22
    click 80 95
    picture mouse-chooser
    click 456 595
    sleep 1
}

by_keys() {
    # New from rolls, Enter lays them out; R unrolls, arrows lead to the first corner, Space sets it.
    press ctrl+n Return
    sleep 1
    picture keys-laid
    press r
    for _ in $(seq 22); do xdotool key Right; done
    for _ in $(seq 4); do xdotool key Up; done
    sleep 0.5
    press space
    side 7 90
    side 6 90
    side 7 90
    picture keys-unrolled
    press Return
    sleep 1
    picture keys-closed
    press ctrl+s
    picture keys-chooser
    press Return
    sleep 1
}

for hand in mouse keys; do
    echo "by the $hand:"
    export XDG_STATE_HOME="$here/$hand-state"
    mkdir -p "$hand"
    cd "$hand"
    start
    "by_$hand"
    close
    plan=$(ls ./*.netfold.json) || fail "nothing was saved by the $hand"
    "$netfold" report "$plan" >"../$hand.txt"
    cd "$here"
done
grep -q "Run 2" mouse.txt || fail "there is no second run"
# Where the second run lies is each hand's own matter.
for hand in mouse keys; do grep -v "_at:" "$hand.txt" >"$hand-plan.txt"; done
diff mouse-plan.txt keys-plan.txt || fail "the two jobs come to different plans"
echo "by the mouse and by the keyboard the plans come to the same: $(wc -l <mouse.txt) lines"
