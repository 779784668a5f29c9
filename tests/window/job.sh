#!/bin/sh
# One whole job at the real window, under Xvfb with xdotool: from the question about rolls to a saved plan with a second run
# unrolled beside the first, once by the mouse alone and once by the keyboard alone. What the two plans come to must be the
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
    sleep 0.4
    xdotool click 1
    sleep 0.4
}
press() {
    for key in "$@"; do
        xdotool key "$key"
        sleep 0.15
    done
}
# Nine panels on from the last corner, turned by so many degrees.
side() {
    press Tab Tab
    xdotool key ctrl+a
    xdotool type 9
    press Tab
    xdotool key ctrl+a
    xdotool type "$1"
    press Return
    sleep 0.3
}

echo "by the mouse:"
export XDG_STATE_HOME="$here/mouse-state"
start
click 430 22
picture mouse-question
# Lay it out.
click 460 446
sleep 1
picture mouse-laid
# The wheel, twice away from the map.
xdotool mousemove 460 334
for _ in 1 2 3 4 5 6; do xdotool click 5; sleep 0.1; done
sleep 0.5
# Unroll a run: east, south, west, and home.
click 1010 142
picture mouse-tool
for at in $MOUSE_CORNERS; do click "${at%,*}" "${at#*,}"; done
picture mouse-unrolled
