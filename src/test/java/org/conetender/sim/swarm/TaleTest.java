package org.conetender.sim.swarm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.LongStream;
import org.conetender.sim.Air;
import org.conetender.sim.Fault;
import org.conetender.sim.SimContact;
import org.conetender.sim.SimProbe;
import org.conetender.sim.SimStore;
import org.conetender.sim.SimSwitch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A story as text, and as the seed draws it. */
class TaleTest {

    @Test
    void everyStoryIsReadAgainAsItWasWritten() {
        for (long seed = 0; seed < 300; seed++) {
            Tale tale = Tales.of(seed, 48);
            assertThat(Tale.parse(tale.text())).as("seed %d", seed).isEqualTo(tale);
        }
    }

    @Test
    void everyStoryHasTroubleAndOmitsMostKindsOfIt() {
        Set<Deed> deeds = EnumSet.noneOf(Deed.class);
        for (long seed = 0; seed < 300; seed++) {
            Tale tale = Tales.of(seed, 24);
            tale.events().forEach(e -> deeds.add(e.deed()));
            assertThat(tale.events().stream().map(Event::deed).distinct().count()).as("seed %d", seed)
                    .isLessThan(Deed.values().length - 2);
        }
        deeds.add(Deed.BEGIN); // which only hands write
        assertThat(deeds).containsExactlyInAnyOrder(Deed.values());
        assertThat(LongStream.range(0, 300).filter(s -> Tales.of(s, 24).events().isEmpty()).count())
                .as("two cones that were to be swapped and are one").isLessThan(6);
    }

    /** What the simulator can do wrong and no seed ever drew would be claimed and never tried. */
    @Test
    void everyFaultThereIsIsDrawn() {
        Set<String> drawn = new TreeSet<>();
        for (long seed = 0; seed < 1_500; seed++) {
            Tales.of(seed, 36).events().forEach(e -> drawn.add(e.deed() + " " + String.join(" ", e.words())
                    .replaceFirst(" [0-9]+s$", "").replaceFirst(e.deed() == Deed.SITE || e.deed() == Deed.DISK
                            || e.deed() == Deed.ROOM_PROBE || e.deed() == Deed.BUS ? "^$" : "^\\S+ ", "")));
        }
        assertThat(drawn).containsAll(all("PROBE 0 ", SimProbe.Fault.values()))
                .containsAll(all("ROOM_PROBE ", SimProbe.Fault.ABSENT, SimProbe.Fault.FROZEN,
                        SimProbe.Fault.DRIFTING, SimProbe.Fault.NOISY, SimProbe.Fault.POWER_ON,
                        SimProbe.Fault.SLOW))
                .containsAll(all("BUS ", SimProbe.Fault.SLOW, SimProbe.Fault.ABSENT))
                .containsAll(all("SWITCH heat ", SimSwitch.Fault.values()))
                .containsAll(all("SWITCH cut-out ", SimSwitch.Fault.values()))
                .containsAll(all("CONTACT level ", SimContact.Fault.values()))
                .containsAll(all("CONTACT air-proof ", SimContact.Fault.values()))
                .containsAll(all("AIR ", Air.Fault.TORN_DIAPHRAGM, Air.Fault.HOSE_OFF,
                        Air.Fault.PUMP_STOPPED))
                .containsAll(all("WATER ", Fault.Water.values()))
                // A wrong clock is a deed of its own.
                .containsAll(all("SITE ", Arrays.stream(Fault.Trouble.values())
                        .filter(t -> t != Fault.Trouble.CLOCK_WRONG).toArray(Fault.Trouble[]::new)))
                .containsAll(all("DISK ", SimStore.Mood.FULL, SimStore.Mood.FAILING, SimStore.Mood.SLOW));
    }

    private static List<String> all(String of, Enum<?>... kinds) {
        return Arrays.stream(kinds).map(Deed::word).filter(w -> !w.equals("none")).map(w -> of + w).toList();
    }

    @Test
    void whatIsEmptyOrBeginsWithAHashSaysNothing() {
        Tale t = Tale.parse("# found on a Thursday\n\nstory larkmoor-plain careful seed 3 hours 2\n"
                + "01:00:00 kill now\n# and then\n00:30:00 say a drained\n");
        assertThat(t.events()).extracting(Event::text).containsExactly("00:30:00 say a drained",
                "01:00:00 kill now");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "story larkmoor-plain careful seed 3 hours | line 1: a story begins with a line such as",
        "story larkmoor careful seed 3 hours 2 | line 1: 'larkmoor' is none of: larkmoor-plain",
        "00:00:01 kill now | line 1: a story begins with a line such as"})
    void aWrongHeadSaysWhatToWrite(String text, String says) {
        assertThatThrownBy(() -> Tale.parse(text)).hasMessageStartingWith(says).message().endsWith(".");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "1:00:00 kill now | write hours:minutes:seconds and a deed",
        "02:00:00 kill now | the story is over after 2 hours; give it more",
        "01:00:00 jump now | nothing is called 'jump'; there are probe, swap_probes",
        "01:00:00 say a settel | 'settel' is none of: started, filled",
        "01:00:00 kill later | 'later' is none of: now, control",
        "01:00:00 switch a heat welded | switch takes 4 words: the id of a cone; heat,",
        "01:00:00 switch z heat welded 60s | there is no cone 'z' in that room",
        "01:00:00 switch a heat welded 60 | '60' is none of: seconds, such as 600s"})
    void aWrongLineIsNamedByItsNumber(String line, String says) {
        assertThatThrownBy(() -> Tale.parse("story larkmoor-plain careful seed 3 hours 2\n" + line))
                .hasMessageStartingWith("line 2: " + says);
    }
}
