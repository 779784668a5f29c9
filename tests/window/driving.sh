# What the scripts beside this share: a real window that is started, driven and closed. Sourced with `netfold` set;
# the current folder is new and takes what the window writes.

here=$(pwd)
export XDG_RUNTIME_DIR="$here/run" LIBGL_ALWAYS_SOFTWARE=1
mkdir -p run
chmod 700 run
pid=
trap '[ -z "$pid" ] || kill "$pid" 2>/dev/null || true' EXIT

# Starts the window with these arguments and waits until it has the keys.
start() {
    "$netfold" "$@" 2>>window.log &
    pid=$!
    window=$(timeout 30 xdotool search --sync --onlyvisible --pid "$pid" | head -n 1)
    xdotool windowfocus --sync "$window"
    sleep 1
}
picture() { import -window root "$1.png"; }
fail() {
    echo "$1" >&2
    picture failed
    exit 1
}
# Closes it as a keeper does, and waits until it is gone.
close() {
    xdotool key ctrl+q
    for _ in $(seq 50); do
        kill -0 "$pid" 2>/dev/null || { wait "$pid"; pid=; return; }
        sleep 0.1
    done
    fail "the window did not close"
}
