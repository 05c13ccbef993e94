#!/bin/bash
# onewire-trial.sh CLASSPATH: tries the 1-wire adapter on the kernel's own w1 and w1_therm, as root, and says what it saw.
# CLASSPATH must be readable by every user. The bus master is simulated, the drivers above it and the files are the kernel's.
# Needs (Debian 13): openjdk-25-jre-headless, the module w1_sim as README.md here describes it.
# Exit 0: everything was as expected. Nothing in the default build runs this.
set -u
CP=$1
JAVA="java -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -cp $CP org.conetender.adapter.onewire.OneWireTrial"
SIM=/sys/module/w1_sim/parameters
COUNT=8
PERIOD=2000         # ms, the daemon's own
OUT=$(mktemp -d)
FAILED=0
PID=

heading() { printf '\n== %s\n' "$*"; }
wrong() { printf 'WRONG %s\n' "$*"; FAILED=$((FAILED + 1)); }
now() { awk '{ printf "%d", $1 * 1000 }' /proc/uptime; }
last() { grep " ${P[$1]} " "$OUT/log" | tail -1 | cut -d' ' -f3-; }      # "age-ms reading" of probe number $1
reading() { last "$1" | cut -d' ' -f2-; }
seen() { # seen SECONDS NUMBER PATTERN: waits until the reader holds such a reading of that probe
    local end=$((SECONDS + $1))
    until reading "$2" | grep -qE -- "$3"; do
        if [ $SECONDS -ge $end ]; then wrong "probe $2: nothing like '$3' within $1 s, but: $(last "$2")"; return 1; fi
        sleep 0.25
    done
    printf 'ok    probe %s: %s\n' "$2" "$(reading "$2")"
}
told() { # told PATTERN: what a person is told
    for _ in $(seq 60); do grep -qE "^told .*$1" "$OUT/log" && break; sleep 0.25; done
    if grep -qE "^told .*$1" "$OUT/log"; then printf 'ok    %s\n' "$(grep -E "^told .*$1" "$OUT/log" | head -1)"
    else wrong "nothing is told like '$1'"; fi
}
# Values that probe $1 showed since uptime $2, apart from those that match $3.
strange() { awk -v p="${P[$1]}" -v t="$2" -v ok="$3" '$1 > t && $2 == p && $4 == "value" && $5 !~ ok { print $5 }' "$OUT/log" | sort -u | tr '\n' ' '; }
oldest() { awk -v p="${P[$1]}" -v t="$2" '$1 > t && $2 == p && $3 > a { a = $3 } END { print a + 0 }' "$OUT/log"; }
faults() { echo "$1" > $SIM/fault; }
all() { local s=$1; for _ in $(seq 2 $COUNT); do s=$s,$1; done; echo "$s"; }
start() { # start [COMMAND...]: the reader, perhaps as another user
    : > "$OUT/log"; "$@" $JAVA $PERIOD "${P[@]:1}" > "$OUT/log" 2>&1 & PID=$!
}
stop() { kill "$PID"; wait "$PID" 2> /dev/null; }
# How far apart the conversions of the first and last probe of one cycle end, ms, rounded to tenths of a second.
spread() {
    local line a b; line=$(tail -$((COUNT + 1)) "$OUT/log" | grep -v told)
    awk 'NF > 3 && $4 == "value" { end[$2] = $1 - $3 } END { for (p in end) { if (!n++ || end[p] < lo) lo = end[p]; if (end[p] > hi) hi = end[p] } print hi - lo }' <<< "$line"
}
least_spread() { local best=999999 s; for _ in $(seq 40); do s=$(spread); [ "$s" -lt $best ] && best=$s; sleep 0.25; done; echo "$best"; }

heading "a bus of $COUNT probes under the real w1_therm"
modprobe w1_therm; rmmod w1_sim 2> /dev/null; modprobe w1_sim count=$COUNT || exit 1
for _ in $(seq 60); do [ "$(ls -d /sys/bus/w1/devices/28-* 2> /dev/null | wc -l)" = $COUNT ] && break; sleep 1; done
P=(none); for d in /sys/bus/w1/devices/28-*; do P+=("${d##*/}"); done
MASTER=$(readlink -f /sys/bus/w1/devices/"${P[1]}"/..)
[ ${#P[@]} = $((COUNT + 1)) ] || wrong "$((${#P[@]} - 1)) probes were found, not $COUNT"
faults "$(all 0)"; echo 21500,19250,20000,20000,20000,20000,20000,20000 > $SIM/temp
echo "kernel $(uname -r), $MASTER, $(java -version 2>&1 | head -1)"
ls -l "$MASTER/therm_bulk_read"

heading "temperatures, also where the kernel's number alone could be a broken wire"
start; seen 60 1 '^value 21\.5$'; seen 5 2 '^value 19\.25$'
echo 26938,0,-63,-10125,20000,20000,20000,20000 > $SIM/temp
seen 10 1 '^value 26\.937$'; seen 5 2 '^value 0\.0$'; seen 5 3 '^value -0\.062$'; seen 5 4 '^value -10\.125$'
contained=$(grep -c '^told' "$OUT/log"); [ "$contained" = 0 ] && echo "ok    nothing to tell" || { wrong "told:"; grep '^told' "$OUT/log"; }

heading "root triggers a bulk conversion: $COUNT probes take as long as one"
T=$(now); sleep 8; AGE=$(oldest 8 "$T"); APART=$(least_spread)
echo "      conversions of one cycle end $APART ms apart; the oldest reading was $AGE ms old"
[ "$APART" -lt 500 ] || wrong "not converted together"

heading "each fault of a probe, the others beside it"
echo "$(all 24000)" > $SIM/temp; seen 15 1 '^value 24\.0$'; seen 5 2 '^value 24\.0$'
n=1
for fault in '2 checksum|no answer' '3 85\.000' '4 every byte is zero' '1 no answer|absent'; do
    T=$(now); faults "0,${fault%% *},0,0,0,0,0,0"
    seen 40 2 "^(faulty .*(${fault#* })|absent)"
    seen 20 1 '^value 24\.0$'
    echo "      oldest reading of probe 1 meanwhile: $(oldest 1 "$T") ms"
    S=$(strange 2 "$T" '^24\.0$')$(strange 1 "$T" '^24\.0$'); [ -z "$S" ] && echo "ok    never a temperature" || wrong "became a temperature: $S"
    faults "$(all 0)"; seen 40 2 '^value 24\.0$'
done

heading "every probe gone, as with a cut cable, then back"
faults "$(all 1)"; seen 60 1 '^(faulty|absent)'; seen 60 8 '^(faulty|absent)'
faults "$(all 0)"; seen 60 1 '^value 24\.0$'; seen 30 8 '^value 24\.0$'

heading "a probe stays away until the kernel drops its folder (ten searches, 100 s), and comes back"
faults 0,1,0,0,0,0,0,0; seen 240 2 '^absent'; seen 5 1 '^value 24\.0$'
faults "$(all 0)"; seen 60 2 '^value 24\.0$'; seen 10 1 '^value 24\.0$'; stop

heading "a coarse probe is told of"
echo 9 > /sys/bus/w1/devices/"${P[3]}"/resolution; start; seen 60 3 '^value 24\.0$'; told "${P[3]} reads in steps of 0.5"
stop; echo 12 > /sys/bus/w1/devices/"${P[3]}"/resolution

heading "a user without the right to trigger: one after another"
AS="setpriv --reuid 65534 --regid 65534 --clear-groups"
start $AS; seen 90 8 '^value 24\.0$'; told 'therm_bulk_read cannot be written'; sleep 10
T=$(now); sleep 20; echo "      oldest reading of probe 8: $(oldest 8 "$T") ms; conversions of one cycle end $(least_spread) ms apart"
stop

heading "somebody else's bulk conversion waits: the old value is never taken for a new one"
echo trigger > "$MASTER/therm_bulk_read"; echo "$(all 30000)" > $SIM/temp; T=$(now)
start $AS; seen 90 1 '^value 30\.0$'; seen 90 8 '^value 30\.0$'
S=$(strange 1 "$T" '^30\.0$')$(strange 8 "$T" '^30\.0$'); [ -z "$S" ] && echo "ok    24.0 never came again" || wrong "shown though stale: $S"
stop

rmmod w1_sim
printf '\n%s\n' "$([ $FAILED = 0 ] && echo 'everything as expected' || echo "$FAILED expectations were not met")"
[ $FAILED = 0 ]
