package org.conetender.core.guard;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.Bridge;
import org.conetender.core.hatch.Growth;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Lasted;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Units;

/**
 * Danger: a power cut that stopped the air for too long once nauplii swim. The batch is doubtful.
 *
 * <p>A machine without a battery clock cannot tell at first how long it was off. A person is told at once
 * that it may have been long; the batch is marked only when the length is known, or after an hour without
 * a clock, and such a mark is taken back when the clock turns up and shows that the cut was short. After that
 * hour a cut that was borne stays so, though the cap falls later with water that warms or is not seen.
 * One that comes upon another time without air is judged with what was still missing ({@link Lack}).
 */
public final class PowerCut implements Guard {

    /** A batch that comes to hatching this soon after the start got there in the cut (guess: a few ticks). */
    private static final long HATCHED_MEANWHILE_MS = Units.MINUTE_MS;

    /** Water that nobody has read yet counts as the warmest; nothing is marked for that so soon (guess). */
    private static final long SEEN_WITHIN_MS = Units.MINUTE_MS;

    private static final String OFF = "the power was off for ";
    private static final String UNKNOWN = "an unknown time";
    private static final String UPON = ", soon after another time without air,";

    @Override
    public String id() {
        return "power-cut";
    }

    @Override
    public List<Finding> look(View v) {
        List<Finding> found = new ArrayList<>();
        for (Lack lack : lacks(v)) {
            Boots.Cut c = lack.cut();
            boolean surely = c.off().leastMs() > borneMs(lack.owed().leastMs(), v);
            if (c.off().mostMs() > borneMs(lack.owed().mostMs(), v)) {
                String why = OFF + words(c.off()) + (lack.owed().mostMs() > 0 ? UPON : "")
                        + " with nauplii in the water";
                Finding f = Finding.veto(id(), why).alarm(AlarmKind.DOUBTFUL);
                found.add(seen(v) && (surely || c.off().bounded() || waited(c, v)) ? f.doubting(why) : f);
            }
        }
        // What was marked goes on being told, though what it was reckoned from is withdrawn or forgotten.
        List<String> back = takesBack(v);
        for (String mark : v.stage().hasAnimals() ? marks(v) : List.<String>of()) {
            if (!back.contains(mark) && found.stream().noneMatch(f -> f.what().equals(mark))) {
                found.add(Finding.veto(id(), mark).alarm(AlarmKind.DOUBTFUL).doubting(mark));
            }
        }
        return found;
    }

    private static boolean seen(View v) {
        return v.water().known() || v.now().monoMs() - v.scene().begun().monoMs() >= SEEN_WITHIN_MS;
    }

    private static List<Lack> lacks(View v) {
        List<Boots.Cut> cuts = cuts(v);
        return cuts.stream().noneMatch(c -> judged(c, v)) ? List.of()
                : Lack.of(cuts, v.book().boots().heard(v.now()), v.coneBook()).stream()
                        .filter(l -> judged(l.cut(), v)).toList();
    }

    /** How long a cut may be that found so much missing: all in all what they bear in other lacks of air. */
    private static long borneMs(long owedMs, View v) {
        long settledMs = v.scene().caps().settledMs();
        return owedMs == 0 ? settledMs : Math.min(settledMs, AirFailed.borneMs(v.scene().caps()) - owedMs);
    }

    /**
     * A mark is void while no nauplii swim: the report that they do was withdrawn. While they do it is void
     * once every length is known and no cut has its: it was marked without a clock, or by a wrong one.
     */
    @Override
    public List<String> takesBack(View v) {
        List<String> marks = marks(v);
        if (marks.isEmpty() || !v.stage().develops()) {
            return List.of();
        }
        if (!v.stage().hasAnimals()) {
            return marks;
        }
        if (!seen(v)) {
            // What takes its place is not marked yet, and without a mark a cut of long ago is not looked at.
            return List.of();
        }
        Boots boots = v.book().boots().heard(v.now());
        // Of boots so long ago that they are forgotten nobody can say so.
        if (v.animalsSince().filter(m -> boots.index(m.boot()) >= 0).isEmpty()) {
            return List.of();
        }
        List<String> lengths = boots.cuts().stream().map(c -> OFF + words(c.off()))
                .toList();
        return cuts(v).stream().anyMatch(c -> !c.off().bounded()) ? List.of()
                : marks.stream().filter(d -> lengths.stream().noneMatch(d::startsWith)).toList();
    }

    private static String words(Span off) {
        return off.bounded() ? Lasted.words(off) : off.leastMs() < Units.MINUTE_MS ? UNKNOWN
                : "between " + Lasted.words(off.leastMs()) + " and " + UNKNOWN;
    }

    /** Whether a clock has been waited for long enough since the power came back. */
    private static boolean waited(Boots.Cut c, View v) {
        return v.since(backAt(c, v)).leastMs() >= Growth.WAIT_MS;
    }

    /** Whether it is recent enough to be held against the cap of now, or marked already. */
    private static boolean judged(Boots.Cut c, View v) {
        return v.since(backAt(c, v)).leastMs() < Growth.WAIT_MS + 2 * HATCHED_MEANWHILE_MS
                || !marks(v).isEmpty();
    }

    private static List<String> marks(View v) {
        List<String> doubts = v.batch().marks().words().doubts();
        return doubts.isEmpty() ? doubts : doubts.stream().filter(d -> d.startsWith(OFF)).toList();
    }

    private static Moment backAt(Boots.Cut c, View v) {
        return new Moment(v.book().boots().heard(v.now()).known().get(c.from() + 1).id(), 0, 0, false);
    }

    /** The cuts that animals lived through, or may have hatched in: a later batch has no part in them. */
    private static List<Boots.Cut> cuts(View v) {
        // Between the boots lie the cuts: none is known in the first.
        boolean uncut = v.book().boots().known().size() == 1 && v.book().boots().index(v.now().boot()) == 0;
        Optional<Moment> since = uncut || !v.stage().hasAnimals() ? Optional.empty() : v.animalsSince();
        if (since.isEmpty()) {
            return List.of();
        }
        Boots boots = v.book().boots().heard(v.now());
        int first = boots.index(since.get().boot()) - (hatchedMeanwhile(v, since.get()) ? 1 : 0);
        return boots.cuts(first);
    }

    /** Whether they were first noted so soon after the cut that they may have swum in it already. */
    private static boolean hatchedMeanwhile(View v, Moment since) {
        List<Bridge> bridges = v.coneBook().bridges();
        boolean open = !bridges.isEmpty() && bridges.getLast().to().sameBoot(since)
                && since.monoMs() - bridges.getLast().to().monoMs() < Growth.WAIT_MS + HATCHED_MEANWHILE_MS;
        return open || since.sameBoot(v.scene().begun())
                && Math.abs(since.monoMs() - v.scene().begun().monoMs()) < HATCHED_MEANWHILE_MS;
    }
}
