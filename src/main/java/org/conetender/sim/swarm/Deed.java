package org.conetender.sim.swarm;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.conetender.core.image.Step;
import org.conetender.sim.Air;
import org.conetender.sim.Fault;
import org.conetender.sim.SimContact;
import org.conetender.sim.SimProbe;
import org.conetender.sim.SimStore;
import org.conetender.sim.SimSwitch;

/** What an event does, and the words that it takes. */
public enum Deed {
    /** A probe lies, or is silent. */
    PROBE(Word.CONE, Word.INDEX, Word.of(SimProbe.Fault.class), Word.TIME),
    /** The first probes of two cones hang in each other's water. */
    SWAP_PROBES(Word.CONE, Word.CONE, Word.TIME),
    /** The wires of two cones' heaters are exchanged, or touch. */
    CROSS(Word.CONE, Word.CONE, Word.of(Fault.Wiring.class), Word.TIME),
    /** A relay, or the line that drives it. */
    SWITCH(Word.CONE, Word.oneOf("heat", "cut-out", "air-pause", "lamp", "trigger", "button-lamp"),
            Word.of(SimSwitch.Fault.class), Word.TIME),
    /** A contact. */
    CONTACT(Word.CONE, Word.oneOf("level", "air-proof", "button"), Word.of(SimContact.Fault.class),
            Word.TIME),
    /** Pump, hose or proof of air. */
    AIR(Word.CONE, Word.of(Air.Fault.class), Word.TIME),
    /** The water itself. */
    WATER(Word.CONE, Word.of(Fault.Water.class), Word.TIME),
    /** The probe in the room. */
    ROOM_PROBE(Word.of(SimProbe.Fault.class), Word.TIME),
    /** The bus with all probes on it. */
    BUS(Word.oneOf("slow", "absent"), Word.TIME),
    /** The house. */
    SITE(Word.of(Fault.Trouble.class), Word.TIME),
    /** Somebody turns an air valve and says nothing. */
    VALVE(Word.CONE, Word.oneOf("shut", "open")),
    /** The process dies. */
    KILL(Word.oneOf("now", "control", "record", "before-commit", "after-commit")),
    /** The process dies and its record is damaged: so many in a hundred of its facts can still be read. */
    DAMAGE(Word.PERCENT),
    /** The process hangs. */
    HANG(Word.TIME),
    /** What the disk does to writes. */
    DISK(Word.of(SimStore.Mood.class), Word.TIME),
    /** The wall clock jumps by so many seconds. */
    CLOCK(Word.SHIFT),
    /** A cone is filled, stocked and reported 'started', by the book; for stories without a keeper. */
    BEGIN(Word.CONE),
    /** A client says a step, whether it is true or not. */
    SAY(Word.CONE, Word.oneOf(Arrays.stream(Step.values()).map(Step::word).toArray(String[]::new))),
    /** A client sets any property to any word. */
    SET(Word.CONE, Word.ANY, Word.ANY),
    /** A message that lay about: retained, or older than it may be. */
    STALE(Word.CONE, Word.ANY, Word.oneOf("retained", "expired"));

    /**
     * One word of an event.
     *
     * @param pattern a regular expression of all that it may be  @param such what it may be, for a person
     */
    private record Word(String pattern, String such) {
        static final Word CONE = new Word("[a-z0-9-]{1,20}", "the id of a cone");
        static final Word INDEX = new Word("[01]", "0 or 1");
        static final Word TIME = new Word("[1-9][0-9]{0,8}s", "seconds, such as 600s");
        static final Word SHIFT = new Word("[+-][0-9]{1,10}s", "seconds with a sign, such as +3600s");
        static final Word PERCENT = new Word("100|[1-9]?[0-9]", "a share in per cent, 0 to 100");
        static final Word ANY = new Word("\\S+", "a word");

        static Word oneOf(String... words) {
            return new Word(String.join("|", words), String.join(", ", words));
        }

        static Word of(Class<? extends Enum<?>> kinds) {
            return oneOf(Arrays.stream(kinds.getEnumConstants()).map(Deed::word)
                    .filter(w -> !w.equals("none")).toArray(String[]::new));
        }
    }

    private final List<Word> takes;

    Deed(Word... takes) {
        this.takes = List.of(takes);
    }

    /** A constant as it stands in a story. */
    static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The constant of that word. */
    static <E extends Enum<E>> E constant(Class<E> kind, String word) {
        return Enum.valueOf(kind, word.toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    static Deed of(String word) {
        return Arrays.stream(values()).filter(d -> d.name().toLowerCase(Locale.ROOT).equals(word)).findFirst()
                .orElseThrow(() -> new IllegalArgumentException("nothing is called '" + word
                        + "'; there are " + Arrays.stream(values()).map(d -> d.name()
                        .toLowerCase(Locale.ROOT)).collect(Collectors.joining(", "))));
    }

    /** @throws IllegalArgumentException when they are not what it takes */
    void check(List<String> words) {
        if (words.size() != takes.size()) {
            throw new IllegalArgumentException(name().toLowerCase(Locale.ROOT) + " takes " + takes.size()
                    + " words: " + takes.stream().map(Word::such).collect(Collectors.joining("; ")));
        }
        for (int i = 0; i < takes.size(); i++) {
            if (!words.get(i).matches(takes.get(i).pattern())) {
                throw new IllegalArgumentException("'" + words.get(i) + "' is none of: "
                        + takes.get(i).such());
            }
        }
    }
}
