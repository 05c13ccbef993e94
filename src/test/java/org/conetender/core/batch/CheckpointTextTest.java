package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.conetender.core.batch.Checkpoint.ConePoint;
import org.conetender.core.batch.Checkpoint.Temperature;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.RoomDay;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CheckpointTextTest {

    private static final Moment AT = new Moment("7f37c4b8-09d9-4a4a-85b5-b1e30d820b95", 956_100,
            1_795_581_286_000L, true);

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void everyCheckpointComesBackAsItWasWritten(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 500; i++) {
            Checkpoint c = RandomFacts.checkpoint(random);
            assertThat(CheckpointText.read(CheckpointText.write(c))).as("seed %d, %d", seed, i).isEqualTo(c);
        }
    }

    @Test
    void eightConesWithLongNamesAndLongFiguresStayWithinAPageOfTheCard() {
        List<Temperature> temperatures = new ArrayList<>();
        temperatures.add(new Temperature("room", -12.123456789012345));
        List<ConePoint> cones = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            String name = "left-shelf-lower-row-cone-" + i;
            temperatures.add(new Temperature(name, 27.0625000000001));
            // Each probe has been dead since another boot: the longest a point can be.
            cones.add(new ConePoint(name, 123_456 + i, new Development(612.1234567890123, 612.3456789012345,
                    12.34567890123456, 11.23456789012345, 10.12345678901234),
                    new Checkpoint.At("1b2e30d8-20b9-4a4a-85b5-7f37c4b809d9", 2_592_000_000L),
                    OptionalDouble.of(24.85), Optional.of(new Checkpoint.Air(0.123456789, 86_400_000))));
        }
        List<RoomDay.Hour> day = Collections.nCopies(RoomDay.HOURS, new RoomDay.Hour(-12.3456789, 4));
        String text = CheckpointText.write(new Checkpoint(AT, temperatures, cones, day));
        assertThat(text.getBytes(StandardCharsets.UTF_8).length).isLessThanOrEqualTo(2_000);
    }

    /** What the release before wrote: idle hours in one sum, and no moment of the cone's own. */
    @Test
    void anOlderCheckpointIsReadWithTheCautiousValues() {
        Checkpoint c = CheckpointText.read("checkpoint-1\tb\t900\t2000\ttrue\t1\t2\n"
                + "temperature\ta\t27.0\ncone\ta\t3\t12.5\t13.0\t0.5\n"
                + "cone\tb\t4\t1.0\t2.0\t0.0\nend");
        assertThat(c.cones().getFirst()).isEqualTo(new ConePoint("a", 3,
                new Development(12.5, 13, 0.5, 0, 0.5),
                new Checkpoint.At("b", 900)));
        Moment unknown = c.momentOf(c.cones().get(1));
        assertThat(new Moment("b", 5_000, 9_000, true).since(unknown).bounded()).isFalse();
    }

    @Test
    void aPointWithoutItsAirIsReadToo() {
        String line = "checkpoint-2\tb\t900\t2000\ttrue\t0\t1\n"
                + "cone\ta\t3\t12.5\t13.0\t0.5\t0\t0\t\t9";
        Checkpoint.At at = new Checkpoint.At("b", 9);
        Development done = new Development(12.5, 13, 0.5, 0, 0);
        assertThat(CheckpointText.read(line + "\nend").cones())
                .containsExactly(new ConePoint("a", 3, done, at));
        assertThat(CheckpointText.read(line + "\t25\nend").cones()).containsExactly(
                new ConePoint("a", 3, done, at, OptionalDouble.of(25), Optional.empty()));
        assertThat(CheckpointText.read(line + "\t\t0.25\t7\nend").air("a")).contains(
                new Checkpoint.Air(0.25, 7));
    }

    @Test
    void aTextCutShortAnywhereIsRefused() {
        String whole = CheckpointText.write(new Checkpoint(AT, List.of(new Temperature("a", 27.5)),
                List.of(new ConePoint("a", 3, new Development(12, 13, 0.5, 0, 0),
                        new Checkpoint.At(AT.boot(), 956_000))),
                Collections.nCopies(RoomDay.HOURS, new RoomDay.Hour(19.87, 2))));
        for (int n = 0; n < whole.length(); n++) {
            String cut = whole.substring(0, n);
            assertThatThrownBy(() -> CheckpointText.read(cut)).as(cut)
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"checkpoint-3\tb\t1\t2\ttrue\t0\t0\nend",
            "checkpoint-2\tb\t1\t2\ttrue\t0\t1\ncone\ta\t1\t5\t4\t0\nend",
            "checkpoint-2\tb\t1\t2\ttrue\t0\t1\ncone\ta\t1\t5\t6\t0\t0\t0\t\t9\twarm\nend",
            "checkpoint-2\tb\t1\t2\ttrue\t0\t1\ncone\ta\t1\t5\t6\t0\t0\t0\t\t9\t25\t26\nend",
            "checkpoint-2\tb\t1\t2\ttrue\t0\t1\ncone\ta\t1\t5\t6\t0\t0\t0\t\t9\t\nend",
            "checkpoint-2\tb\t1\t2\ttrue\t0\t1\ncone\ta\t1\t5\t6\t0\t0\t0\t\t9\t\t1.1\t0\nend",
            "checkpoint-2\tb\t1\t2\ttrue\t0\t1\ncone\ta\t1\t5\t6\t0\t0\t0\t\t9\t\t-0.1\t0\nend",
            "checkpoint-2\tb\t1\t2\ttrue\t0\t1\ncone\ta\t1\t5\t6\t0\t0\t0\t\t9\t25\t1\t-1\nend",
            "checkpoint-2\tb\t1\t2\ttrue\t0\t0\nroom-day\t20/1\nend",
            "checkpoint-2\tb\t1\t2\ttrue\t0\t0\nroom-day\t20/9\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t\t"
                    + "\t\nend",
            "checkpoint-1\tb\t1\t2\tyes\t0\t0\nend",
            "checkpoint-1\tb\t1\t2\ttrue\t-1\t1\nend",
            "checkpoint-1\tb\t1\t2\ttrue\t1\t0\ntemperature\ta\tNaN\nend",
            "checkpoint-1\tb\t1\t2\ttrue\t0\t1\ncone\ta\t1\t5\t4\t0\nend",
            "checkpoint-1\tb\t1\t2\ttrue\t0\t0\nend\n", "checkpoint-1\tb\t1\t2\ttrue\t0\t0\nand",
            "checkpoint-1\tb\t1\t2\ttrue\t0\t1\ntemperature\ta\t27\nend"})
    void aTextThatNobodyWroteIsRefused(String text) {
        assertThatThrownBy(() -> CheckpointText.read(text)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aFigureThatIsNoNumberIsNeverWritten() {
        Checkpoint c = new Checkpoint(AT, List.of(), List.of());
        Checkpoint nan = new Checkpoint(AT, List.of(new Temperature("a", Double.NaN)), List.of());
        assertThat(CheckpointText.read(CheckpointText.write(c))).isEqualTo(c);
        assertThatThrownBy(() -> CheckpointText.write(nan)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aPointOfACheckpointHasItsHourOnlyInTheSameBoot() {
        Moment at = new Moment("boot-1", 60_000, 1_000_000, true);
        Checkpoint c = new Checkpoint(at, List.of(), List.of());
        assertThat(c.momentOf(point("boot-1"))).isEqualTo(new Moment("boot-1", 10_000, 950_000, true));
        assertThat(c.momentOf(point("boot-0"))).isEqualTo(new Moment("boot-0", 10_000, 0, false));
    }

    private static ConePoint point(String boot) {
        return new ConePoint("a", 1, Development.NONE,
                new Checkpoint.At(boot, 10_000));
    }

    /** A page of the card is small. */
    @Test
    void theBootIsWrittenOnceAndAgainOnlyWhereItIsAnother() {
        ConePoint here = new ConePoint("a", 3, Development.NONE, new Checkpoint.At(AT.boot(), 956_000));
        ConePoint before = new ConePoint("b", 3, Development.NONE, new Checkpoint.At("boot-0", 956_000));
        String text = CheckpointText.write(new Checkpoint(AT, List.of(), List.of(here, before)));
        assertThat(text.split(AT.boot(), -1)).hasSize(2);
        assertThat(text).contains("boot-0");
        assertThat(CheckpointText.read(text).cones()).containsExactly(here, before);
    }

    @Test
    void figuresAreKeptToATenThousandth() {
        Checkpoint c = CheckpointText.read(CheckpointText.write(new Checkpoint(AT, List.of(
                new Temperature("a", 27.06254), new Temperature("b", 27.06256),
                new Temperature("c", -27.06256), new Temperature("d", 2e9 + 0.25)), List.of())));
        assertThat(c.temperatures()).extracting(Temperature::degreesC)
                .containsExactly(27.0625, 27.0626, -27.0626, 2e9 + 0.25);
    }
}
