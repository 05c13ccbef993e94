package org.conetender.core.guard;

import java.util.Optional;
import java.util.Set;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Reconsidered;
import org.conetender.core.batch.Stage;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Image;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Belief;
import org.conetender.core.judge.Beside;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Span;
import org.conetender.core.unit.Units;

/**
 * What a guard is shown of one cone: never more than it may judge by, and nothing it could change.
 *
 * @param settings what was decided before the start
 * @param cone the cone's own settings
 * @param book the whole book
 * @param coneBook this cone's part of it
 * @param judged what we believe of this cone
 * @param scene what happens around it
 */
public record View(Settings settings, Cone cone, Book book, ConeBook coneBook, ConeJudgement judged,
                   Scene scene) {

    /** What is set holds for so long even if no tick follows (style.md, leases). */
    static final long LEASE_MS = 4 * Units.SECOND_MS;

    /**
     * A person is told this long before air returns: two minutes (design.md, dangers), two ticks, and what
     * the cap may fall by meanwhile (guess: a hundredth of it for two steps of the probe).
     */
    static final long NOTICE_MS = 2 * Units.MINUTE_MS + 15 * Units.SECOND_MS;

    /**
     * @param image what this tick was told
     * @param begun when this life of the process began
     * @param wants what the cone would do if nothing withheld it
     * @param site what the other cones want
     * @param beside what it has to do with them
     * @param caps how long air may be off, for this batch
     * @param unwritten what other readings of the record withhold ({@link Unwritten})
     */
    public record Scene(Image image, Moment begun, Wants wants, SiteLoad site, Beside beside,
                        Caps caps, Set<Power> unwritten) {

        /** The same scene under another reading, in which the stage wants the air off or not. */
        public Scene wanting(boolean airOff) {
            return new Scene(image, begun, new Wants(wants.heat(), airOff, wants.heatWasOn()), site, beside,
                    caps, unwritten);
        }

        /** The same scene, in which other readings withhold these. */
        public Scene unwritten(Set<Power> powers) {
            return new Scene(image, begun, wants, site, beside, caps, powers);
        }
    }

    /**
     * @param heat whether the heating law wants the heater on in this tick
     * @param airOff whether the stage wants the air off
     * @param heatWasOn whether the heater was on in the tick before
     */
    public record Wants(boolean heat, boolean airOff, boolean heatWasOn) {}

    /**
     * @param wattsBefore watts of the heaters that are served before this one
     * @param wallUntrustedForMs how long the wall clock has not been trusted in this life
     */
    public record SiteLoad(double wattsBefore, long wallUntrustedForMs) {}

    /**
     * How long air may be off with animals in the water, all counted from the moment it went off.
     *
     * @param settledMs the configured cap, the house's and what density and oxygen allow (science.md §7.3)
     * @param drawingMs the same while a person draws
     * @param waitMs how long settling lasts within them
     */
    public record Caps(long settledMs, long drawingMs, long waitMs) {

        /** A separation needs at least this long to be worth it (design.md, the life of a batch). */
        public static final long SHORTEST_WAIT_MS = 4 * Units.MINUTE_MS;

        public boolean tooHurried() {
            return waitMs < SHORTEST_WAIT_MS;
        }
    }

    public Moment now() {
        return scene.image().now();
    }

    /** How long ago that moment was, as far as the clocks tell; an interval across boots. */
    public Span since(Moment m) {
        return book.since(m, now());
    }

    public Batch batch() {
        return coneBook.batch();
    }

    public Stage stage() {
        return batch().stage();
    }

    public Belief water() {
        return judged.belief();
    }

    /** Milliseconds since the stage's air went off; 0 while it is meant to be on. Unknown is for ever. */
    public long airOffForMs() {
        Moment off = stage().airOff();
        return off == null ? 0 : since(off).mostMs();
    }

    /** How long air may be off in this stage, ms from the moment it went off. */
    public long airOffCapMs() {
        return stage() instanceof Stage.Drawing ? scene.caps().drawingMs() : scene.caps().settledMs();
    }

    /**
     * Whether the air returns within so many ms, such as {@link #NOTICE_MS}. It returns a lease before the
     * cap: to leave it off for this tick is to leave it off until the lease ends, should no other tick come.
     */
    boolean airBack(long withinMs) {
        return airOffForMs() >= airOffCapMs() - LEASE_MS - withinMs;
    }

    /** How long the air valve has been shut since it was first reported so, ms; for ever where unknown. */
    long valveShutForMs() {
        if (!batch().marks().valveShut()) {
            return 0;
        }
        Optional<Moment> shut = Optional.empty();
        for (Fact f : coneBook().facts()) {
            if (f.change() instanceof Change.Told(Ask.Did(Step s))) {
                shut = s == Step.VALVE_OPEN ? Optional.empty()
                        : s == Step.VALVE_SHUT ? shut.or(() -> Optional.of(f.at())) : shut;
            }
        }
        return shut.map(m -> since(m).mostMs()).orElse(Long.MAX_VALUE);
    }

    /** When the first animals of this batch swam, as far as was noted; empty before. */
    Optional<Moment> animalsSince() {
        Optional<Moment> since = Optional.empty();
        for (Fact f : coneBook().facts()) {
            boolean back = f.change() instanceof Change.Moved(String s, String _)
                    && s.equals(Reconsidered.INCUBATING);
            boolean first = f.change() instanceof Change.Moved(String s, String _) && s.equals("hatching")
                    || f.change() instanceof Change.Told(Ask.Did(Step d)) && d == Step.FIRST_SEEN;
            since = back ? Optional.empty() : first ? since.or(() -> Optional.of(f.at())) : since;
        }
        return since;
    }

    /** Whether this life of the process began after that moment. */
    public boolean restartedSince(Moment m) {
        return !m.sameBoot(scene.begun()) || m.monoMs() < scene.begun().monoMs();
    }

    /** Whether that guard has latched and waits for a person. */
    public Optional<ConeBook.Latch> latch(String guard) {
        return book.latch(coneBook, guard);
    }

    /** Whether hands were reported in the water within their time. */
    public boolean handsIn() {
        return Handled.within(batch().marks().handsIn(), this::since, Handled.HANDS_MS);
    }

    /** Whether the water was touched so lately that its probes prove nothing. */
    public boolean handled() {
        return Handled.lately(batch(), this::since);
    }
}
