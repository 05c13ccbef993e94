#!/bin/bash
# gpio-trial.sh CLASSPATH: tries the GPIO adapter on the lines of the kernel's gpio-sim, as root, and says what it saw.
# CLASSPATH must be readable by every user. For a machine, virtual or not, that drives nothing: it energises lines on purpose and kills their holder.
# Needs (Debian 13): openjdk-25-jre-headless gpiod strace, a kernel with gpio-sim and its trace events.
# Exit 0: everything was as expected. Nothing in the default build runs this.
set -u
CP=$1
JAVA="java -XX:+UseSerialGC -XX:TieredStopAtLevel=1 --enable-native-access=ALL-UNNAMED -cp $CP org.conetender.adapter.gpio.GpioTrial"
TRACE=/sys/kernel/tracing
OUT=$(mktemp -d)
FAILED=0

heading() { printf '\n== %s\n' "$*"; }
expect() { # expect WHAT WANTED SEEN
    if [ "$2" = "$3" ]; then printf 'ok    %s: %s\n' "$1" "$3"
    else printf 'WRONG %s: wanted %s, saw %s\n' "$1" "$2" "$3"; FAILED=$((FAILED + 1)); fi
}
contains() { # contains WHAT PATTERN FILE, a real one: it is read twice
    if grep -qE -- "$2" "$3"; then printf 'ok    %s: %s\n' "$1" "$(grep -E -- "$2" "$3" | head -1)"
    else printf 'WRONG %s: nothing like "%s" in:\n' "$1" "$2"; tail -5 "$3"; FAILED=$((FAILED + 1)); fi
}
await() { # await SECONDS COMMAND...: until it succeeds
    local end=$((SECONDS + $1)); shift
    until "$@" > /dev/null 2>&1; do [ $SECONDS -lt $end ] || return 1; sleep 0.1; done
}
value() { cat "$SIM/sim_gpio$1/value"; }
wires() { echo "heat=$(value 2) lamp=$(value 3)"; }
pull() { echo "pull-$2" > "$SIM/sim_gpio$1/pull"; }
start() { $JAVA hold "$CHIP" "$1" > "$OUT/log" 2>&1 & PID=$!; await 60 grep -q "tick 0 a.lamp" "$OUT/log"; }
ended() { wait "$PID"; CODE=$?; }
# Every level the kernel gave to a line since the last clearing: gpio_value events, "line level" a row.
levels() {
    sed -nE 's/.* ([0-9.]+): gpio_value: ([0-9]+) set ([01]).*/\1 \2 \3/p' $TRACE/trace \
        | awk -v base="$BASE" -v line="$1" '$2 - base == line { printf "%s%s", sep, $3; sep = " " }'
}
# Seconds between the last two levels given to a line, by the kernel's own stamps.
last_span() {
    sed -nE 's/.* ([0-9.]+): gpio_value: ([0-9]+) set ([01]).*/\1 \2/p' $TRACE/trace \
        | awk -v base="$BASE" -v line="$1" '$2 - base == line { span = $1 - at; at = $1 } END { printf "%.3f", span }'
}
clear_trace() { echo > $TRACE/trace; }

heading "a chip of 30 lines, the wires pulled to off as a relay board would"
modprobe gpio-sim 2> /dev/null || insmod "/lib/modules/$(uname -r)/extra/gpio-sim.ko"
D=/sys/kernel/config/gpio-sim/trial; mkdir -p $D/bank0
echo pinctrl-bcm2711 > $D/bank0/label; echo 30 > $D/bank0/num_lines; echo 1 > $D/live
CHIP=/dev/$(cat $D/bank0/chip_name)
SIM=/sys/devices/platform/$(cat $D/dev_name)/$(cat $D/bank0/chip_name)
mountpoint -q /sys/kernel/debug || mount -t debugfs none /sys/kernel/debug
mountpoint -q $TRACE || mount -t tracefs none $TRACE
BASE=$(sed -nE "s/^$(cat $D/bank0/chip_name): .*GPIOs ([0-9]+)-.*/\1/p" /sys/kernel/debug/gpio)
echo 1 > $TRACE/events/gpio/enable
PERSIST=/sys/module/gpio_sim/parameters/persist_outputs
persist() { [ -e $PERSIST ] && echo "$1" > $PERSIST; }
persist 0
echo "kernel $(uname -r), $CHIP, lines from $BASE, $(java -version 2>&1 | head -1)"
pull 2 up; pull 3 down
expect "before" "heat=1 lamp=0" "$(wires)"

heading "start: the level inside the request (heat is active low, so off is high)"
clear_trace
strace -f --seccomp-bpf -e trace=ioctl -o "$OUT/strace" $JAVA hold "$CHIP" 2 > "$OUT/log" 2>&1 & PID=$!
await 120 grep -q ' open$' "$OUT/log"
expect "at request" "heat=1 lamp=0" "$(wires)"
contains "heat's request carries off" 'GET_LINE.*offsets=\[2\].*OUTPUT, num_attrs=1, attrs=\[\{values=0' "$OUT/strace"
contains "lamp's request carries off" 'GET_LINE.*offsets=\[3\].*OUTPUT, num_attrs=1, attrs=\[\{values=0' "$OUT/strace"
expect "line requests in all" 4 "$(grep -c GPIO_V2_GET_LINE_IOCTL "$OUT/strace")"
gpioinfo -c "$CHIP" 2 3 5 6
await 60 grep -q 'tick 1 a.lamp' "$OUT/log"
expect "levels given to heat, request first, then energised" "1 0 0" "$(levels 2)"
expect "levels given to lamp, request first, then energised" "0 1 1" "$(levels 3)"
expect "energised" "heat=0 lamp=1" "$(wires)"

heading "a tick that hangs: the keeper lets go after the lease of 4 s"
await 30 grep -q 'lapses 2' "$OUT/log"
grep -E 'tick 1|lapses' "$OUT/log"
expect "let go" "heat=1 lamp=0" "$(wires)"
echo "      from the last renewal to the letting go: heat $(last_span 2) s, lamp $(last_span 3) s"

heading "contacts follow their wires (a.level is active low)"
pull 5 down; pull 6 up; sleep 2.5; tail -3 "$OUT/log" > "$OUT/now"
contains "level closed" "a.level CLOSED" "$OUT/now"
contains "air proof closed" "a.air-proof CLOSED" "$OUT/now"
pull 5 up; pull 6 down; sleep 2.5; tail -3 "$OUT/log" > "$OUT/now"
contains "level open" "a.level OPEN" "$OUT/now"
contains "air proof open" "a.air-proof OPEN" "$OUT/now"
pkill -TERM -P $PID; ended

for kept in 0 1; do
    heading "SIGTERM while energised, persist_outputs=$kept"
    persist $kept || { echo "not tried: this gpio-sim has no persist_outputs"; continue; }
    start 1000; expect "energised" "heat=0 lamp=1" "$(wires)"
    clear_trace; kill -TERM "$PID"; ended
    expect "exit code" 143 "$CODE"
    expect "after SIGTERM" "heat=1 lamp=0" "$(wires)"
    echo "      levels given on the way out: heat $(levels 2), lamp $(levels 3)"

    heading "SIGKILL while energised, persist_outputs=$kept"
    start 1000; expect "energised" "heat=0 lamp=1" "$(wires)"
    kill -KILL "$PID"; ended
    if [ $kept = 0 ]; then expect "the pulls decide" "heat=1 lamp=0" "$(wires)"
    else expect "STILL ENERGISED, nobody holds it" "heat=0 lamp=1" "$(wires)"; fi
    $JAVA safe "$CHIP" > "$OUT/safe" 2>&1; expect "one-shot, exit code" 0 $?
    cat "$OUT/safe"
    expect "after the one-shot" "heat=1 lamp=0" "$(wires)"
    gpioinfo -c "$CHIP" 2 3
done

heading "a start after SIGKILL finds the line energised: off inside the request"
if persist 1; then
    start 1000; kill -KILL "$PID"; ended; expect "left behind" "heat=0 lamp=1" "$(wires)"
    clear_trace; $JAVA hold "$CHIP" 0 > "$OUT/log" 2>&1 & PID=$!
    await 60 grep -q ' open$' "$OUT/log"; expect "at request" "heat=1 lamp=0" "$(wires)"
    expect "levels given to heat" "1" "$(levels 2)"; kill -TERM "$PID"; ended
else echo "not tried: this gpio-sim has no persist_outputs"; fi

heading "a whole process that stands still: its keeper stands with it, only a watchdog helps"
start 1000; kill -STOP "$PID"; sleep 6; expect "6 s after SIGSTOP, STILL ENERGISED" "heat=0 lamp=1" "$(wires)"
kill -CONT "$PID"; kill -TERM "$PID"; ended; expect "after SIGTERM" "heat=1 lamp=0" "$(wires)"

heading "a line that is in use"
gpioset -c "$CHIP" -C fan 3=1 & HOLDER=$!; await 10 test "$(value 3)" = 1; await 10 sh -c "gpioinfo -c $CHIP 3 | grep -q fan"
persist 1 || true
$JAVA hold "$CHIP" 1 > "$OUT/busy" 2>&1; expect "start refused, exit code" 1 $?
contains "says who" "'fan' has it" "$OUT/busy"; expect "heat" 1 "$(value 2)"
$JAVA safe "$CHIP" > "$OUT/safe" 2>&1; expect "one-shot, exit code" 1 $?; cat "$OUT/safe"
contains "the other is made safe" "a.heat: de-energised" "$OUT/safe"
kill "$HOLDER"; wait "$HOLDER" 2> /dev/null; persist 0 || true

heading "a line too many, a chip that is not there, a user who may not"
$JAVA beyond "$CHIP" > "$OUT/beyond" 2>&1; contains "too many" "lines 0 to 29 only" "$OUT/beyond"
$JAVA hold /dev/gpiochip77 1 > "$OUT/absent" 2>&1; contains "absent" "there is no GPIO chip" "$OUT/absent"
chmod 600 "$CHIP"
setpriv --reuid 65534 --regid 65534 --clear-groups $JAVA hold "$CHIP" 1 > "$OUT/denied" 2>&1
contains "denied" "this user may not" "$OUT/denied"

echo 0 > $TRACE/events/gpio/enable
echo 0 > $D/live; rmdir $D/bank0 $D
printf '\n%s\n' "$([ $FAILED = 0 ] && echo 'everything as expected' || echo "$FAILED expectations were not met")"
[ $FAILED = 0 ]
