package org.conetender.app.plot;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.conetender.core.hatch.Replay;
import org.conetender.core.hatch.Speed;
import org.conetender.core.hatch.ThermometerLog;
import org.conetender.core.hatch.Zones;
import org.junit.jupiter.api.Test;

/** No words of a picture lie over others, whatever is told of a batch. */
class LetteringTest {

    private static final long START = Instant.parse("2026-03-01T18:00:00Z").toEpochMilli();
    private static final long MINUTE = 60_000;
    private static final List<String> STAGES = List.of("hydrating", "incubating", "hatching", "ready",
            "settling", "settled", "drawing");

    private static ThermometerLog log(Random dice, int minutes) {
        List<Long> ms = new ArrayList<>();
        for (int i = 0; i <= minutes; i += dice.nextInt(60) == 0 ? 200 : 5) {
            ms.add(START + i * MINUTE);
        }
        double c = 25 + 3 * dice.nextDouble();
        return ThermometerLog.of(ms.stream().mapToLong(x -> x).toArray(),
                ms.stream().mapToDouble(_ -> c).toArray());
    }

    private static Hatch hatch(ThermometerLog log, Hatch.Axis axis, List<Hatch.Look> looks) {
        return new Hatch(log, log.replay(new Replay.Question(Speed.UNKNOWN_LOT, Zones.USUAL, log.firstMs(),
                new Replay.Surroundings(20, 2))), axis, looks);
    }

    @Test
    void ofAForecastWithLooks() throws Exception {
        Random dice = new Random(7);
        for (int run = 0; run < 60; run++) {
            List<Hatch.Look> looks = new ArrayList<>(List.of(
                    new Hatch.Look(-8 - dice.nextInt(3), 0, "none yet"),
                    new Hatch.Look(-5 - dice.nextInt(3), 0, "first seen")));
            for (int i = 0; i < dice.nextInt(4); i++) {
                double share = dice.nextDouble();
                looks.add(new Hatch.Look(-4 * dice.nextDouble(), share,
                        Math.round(100 * share) + " % counted"));
            }
            Hatch h = hatch(log(dice, 1_100 + dice.nextInt(600)), new Hatch.Axis(ZoneId.of("UTC"), true,
                    List.of()), looks);
            HatchPicture p = new HatchPicture(h, "Ready", List.of("one"));
            assertThat(Lettering.over(p)).as("run " + run).isEmpty();
            assertThat(Lettering.all(p)).as("run " + run)
                    .containsAll(looks.stream().map(Hatch.Look::words).toList());
        }
    }

    @Test
    void ofABatchThatWas() throws Exception {
        Random dice = new Random(7);
        Set<String> kept = new TreeSet<>();
        for (int run = 0; run < 60; run++) {
            ThermometerLog log = log(dice, 900 + dice.nextInt(2_000));
            long end = log.timeMs(log.size() - 1);
            boolean clock = dice.nextBoolean();
            List<Long> breaks = new ArrayList<>();
            List<BatchPicture.Stretch> stages = new ArrayList<>();
            List<BatchPicture.Mark> marks = new ArrayList<>();
            List<BatchPicture.Switched> switched = new ArrayList<>();
            long from = START;
            for (String stage : STAGES) {
                long to = Math.min(end, from + dice.nextInt(700) * MINUTE);
                stages.add(new BatchPicture.Stretch(stage, from, to));
                switched.add(new BatchPicture.Switched(new BatchPicture.Stretch("", from, to), 0.3, 1, 0,
                        dice.nextInt(4) == 0 ? OptionalDouble.empty()
                                : OptionalDouble.of(24 + dice.nextInt(9) / 2.0)));
                if (dice.nextInt(3) > 0) {
                    marks.add(new BatchPicture.Mark(from, to, "air-failed-animals"));
                }
                if (!clock && dice.nextInt(3) == 0) {
                    breaks.add(to);
                }
                from = to;
            }
            BatchPicture p = new BatchPicture(hatch(log, new Hatch.Axis(ZoneId.of("UTC"), clock, breaks),
                    List.of()), "a/12", List.of("one"), new BatchPicture.Did(stages, marks, List.of(),
                    switched));
            assertThat(Lettering.over(p)).as("run " + run).isEmpty();
            kept.addAll(Lettering.all(p));
        }
        assertThat(kept).as("what has room is told").containsAll(STAGES).contains("air-failed-animals")
                .anyMatch(w -> w.startsWith("set 2"));
    }
}
