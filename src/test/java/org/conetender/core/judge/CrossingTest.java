package org.conetender.core.judge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntPredicate;
import org.conetender.core.judge.Question.Part;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whose heater warms this water, asked of the water itself. Neighbours are b and c; this cone is off. */
class CrossingTest {

    private static final double ROOM_C = 20;

    private final Basin basin = new Basin(Basin.Build.USUAL, 27, 5);
    private final Traits traits = Basin.Build.USUAL.configured(1);
    private Crossing crossing = Crossing.NONE;
    private boolean bDead;
    private int second;
    /** Whether its heat waits for a person. */
    private boolean locked;
    /** What is to be held, °C; so high that nothing is too warm to ask, where it is not about that. */
    private double aimC = 40;

    /**
     * Lets seconds pass. @param b whether the heater of b is wanted  @param c of c  @param heats this water
     */
    private void pass(int seconds, IntPredicate b, IntPredicate c, String heats) {
        for (int i = 0; i < seconds; i++, second++) {
            boolean bOn = b.test(second) && !crossing.pauses("b") && !bDead;
            boolean cOn = c.test(second) && !crossing.pauses("c");
            boolean shorted = heats.contains("shorted") && bOn && !crossing.risk().tooWarm();
            basin.power = shorted || heats.equals("b") && bOn || heats.contains("c") && cOn
                    || heats.contains("own") && !crossing.risk().tooWarm() ? Basin.Power.WELDED
                    : Basin.Power.DEAD;
            Map<String, Crossing.Other> others = new TreeMap<>(Map.of(
                    "b", new Crossing.Other(bOn, 1, bDead, false),
                    "c", new Crossing.Other(cOn, 1, false, false)));
            crossing = crossing.after(new Crossing.Seen(1, basin.second(false),
                    new Crossing.Own(traits, 0, 0, ROOM_C, aimC, false, cutOut(), false), others));
        }
    }

    private Crossing.Second cutOut() {
        return locked ? Crossing.Second.LOCKED : crossing.risk().tooWarm() ? Crossing.Second.OPEN
                : Crossing.Second.CONDUCTS;
    }

    private static final IntPredicate ON = s -> true;
    private static final IntPredicate OFF = s -> false;

    private Part part() {
        return crossing.question().map(Question::part).orElse(Part.CLOSED);
    }

    @Test
    void aHeaterThatWarmsItIsFoundByOffOnAndOff() {
        pass(300, OFF, OFF, "b");
        assertThat(crossing.question()).as("nothing warms it").isEmpty();
        pass(150, ON, OFF, "b");
        assertThat(part()).isEqualTo(Part.ALL_OFF);
        pass(900, ON, OFF, "b");
        assertThat(crossing.warmedBy()).contains("b");
        assertThat(basin.waterC).isLessThan(28);
    }

    /** @param behindALock whether its own heat waits for a person meanwhile */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void ofTwoThatAreOnTheRightOneIsFound(boolean behindALock) {
        locked = behindALock;
        pass(1_800, ON, ON, "c");
        assertThat(crossing.warmedBy()).contains("c");
    }

    @Test
    void itsOwnSwitchThatIsWeldedIsToldFromTheOthersWithinTwoMinutes() {
        pass(300, OFF, OFF, "");
        pass(150, ON, ON, "own");
        assertThat(part()).isEqualTo(Part.ALL_OFF);
        pass(120, ON, ON, "own");
        assertThat(part()).isEqualTo(Part.CLOSED);
        pass(1_800, ON, ON, "own");
        assertThat(crossing.warmedBy()).isEmpty();
    }

    /** Its own switch is welded, and it is a third of a degree too warm when that begins. */
    @Test
    void beyondAQuarterOfADegreeItsOwnSwitchHeatsNoFurtherWhileOthersAreAsked() {
        double most = warmest("own", Part.CLOSED);
        assertThat(most).isBetween(aimC + 0.25, aimC + 0.6);
        assertThat(crossing.warmedBy()).isEmpty();
    }

    @Test
    void andTheHeaterOfAnotherIsFoundBehindThatCutOut() {
        assertThat(warmest("b", Part.NAMED)).isGreaterThan(aimC + 0.25);
        assertThat(crossing.warmedBy()).contains("b");
    }

    /** Its own cut-out breaks that way to its heater: opened for long it would hide whose output it is. */
    @Test
    void andAnOutputThatReachesThisHeaterIsFoundThoughThatCutOutStopsIt() {
        assertThat(warmest("shorted", Part.NAMED)).isBetween(aimC + 0.25, aimC + 0.6);
        assertThat(crossing.warmedBy()).contains("b");
    }

    /** How far it cools meanwhile costs it no heat, and it is asked about though it is too warm. */
    @Test
    void behindALockTheHeaterOfAnotherIsFoundThoughItCools() {
        aimC = 20;
        locked = true;
        pass(450, s -> s > 300, OFF, "b");
        assertThat(part()).isEqualTo(Part.ALL_OFF);
        double fromC = basin.waterC;
        pass(650, OFF, OFF, "");
        assertThat(basin.waterC).isLessThan(fromC - 0.5);
        assertThat(crossing.open()).isTrue();
        double mostC = 0;
        for (int i = 0; i < 1_200 && part() != Part.NAMED; i++) {
            pass(1, ON, OFF, "b");
            mostC = Math.max(mostC, basin.waterC);
        }
        assertThat(crossing.warmedBy()).contains("b");
        assertThat(mostC).isLessThan(fromC + 0.5);
    }

    /** The warmest water until the question ends so, °C. */
    private double warmest(String heats, Part end) {
        aimC = basin.waterC;
        pass(300, OFF, OFF, "");
        basin.waterC = aimC + 0.3;
        double most = aimC;
        boolean open = false;
        for (int i = 0; i < 3_600 && (crossing.question().isEmpty() || part() != end); i++) {
            pass(1, ON, OFF, heats);
            most = Math.max(most, basin.waterC);
            open |= crossing.risk().tooWarm();
        }
        assertThat(part()).isEqualTo(end);
        assertThat(open).as("its cut-out was open").isTrue();
        return most;
    }

    /** Hands, or warm water poured in, while others are on. @param kelvin by which it warms */
    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.5, 1})
    void warmthThatComesOnceNamesNobody(double kelvin) {
        for (int times = 0; times < 5; times++) {
            pass(600, ON, OFF, "");
            basin.waterC += kelvin;
            pass(900, ON, OFF, "");
            assertThat(crossing.warmedBy()).isEmpty();
        }
    }

    /** The room warms it by two fifths of what its heater could; nobody measures that. */
    @Test
    void aWarmRoomNamesNobodyHoweverTheOthersAreSwitched() {
        basin.roomC = 35;
        basin.lossFactor = 0.9;
        basin.waterC = 22;
        pass(3 * 3_600, s -> s % 600 < 300, s -> s % 900 < 200, "");
        assertThat(crossing.warmedBy()).isEmpty();
        assertThat(basin.waterC).as("it warmed by itself").isGreaterThan(24);
    }

    @Test
    void whoWasOnWithoutWarmingItIsNotAskedWhenItsOwnSwitchWelds() {
        pass(3_600, s -> s % 600 < 300, OFF, "");
        double before = basin.waterC;
        pass(120, ON, OFF, "own");
        assertThat(basin.waterC).as("it warms").isGreaterThan(before + 0.1);
        assertThat(crossing.question()).isEmpty();
    }

    /** A heater at a quarter of its power, which is then found to do nothing where it belongs. */
    @Test
    void aHeaterThatDoesNothingWhereItBelongsIsNotWaitedFor() {
        pass(700, s -> s % 240 < 60, OFF, "b");
        bDead = true;
        pass(60, OFF, OFF, "b");
        assertThat(crossing.warmedBy()).contains("b");
    }

    @Test
    void waterThatIsHandledEndsTheQuestionAndWhatWasNamedStays() {
        pass(500, ON, OFF, "b");
        assertThat(crossing.open()).isTrue();
        Crossing.Seen any = new Crossing.Seen(1, Double.NaN,
                new Crossing.Own(traits, 0, 0, ROOM_C, 40, false, Crossing.Second.CONDUCTS,
                            false), Map.of());
        assertThat(crossing.unseen(any, false).open()).isFalse();
        pass(900, ON, OFF, "b");
        assertThat(crossing.unseen(any, false).warmedBy()).contains("b");
    }

    /** A day beside neighbours that come and go, in noise of its own. @param seed of it */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void aCalmDayIsHardlyEverAskedAbout(long seed) {
        Basin day = new Basin(Basin.Build.USUAL, 27, seed);
        Crossing x = Crossing.NONE;
        int open = 0;
        for (int s = 0; s < 86_400; s++) {
            boolean on = s % 700 < 200 && !x.pauses("b");
            x = x.after(new Crossing.Seen(1, day.second(false),
                    new Crossing.Own(traits, 0, 0, ROOM_C, 40, false, Crossing.Second.CONDUCTS,
                            false),
                    Map.of("b", new Crossing.Other(on, 1, false, false))));
            open += x.open() ? 1 : 0;
        }
        assertThat(x.warmedBy()).isEmpty();
        assertThat(open).as("seconds").isLessThan(900);
    }
}
