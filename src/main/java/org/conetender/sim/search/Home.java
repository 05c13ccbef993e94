package org.conetender.sim.search;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.conetender.core.ConeLive;
import org.conetender.core.Result;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.batch.Fits;
import org.conetender.core.batch.Lives;
import org.conetender.core.batch.Stage;
import org.conetender.core.face.NextStep;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Units;

/**
 * No dead ends: from everywhere a person finds back, and the next step that is named is one that is taken.
 */
final class Home {

    /** What is waited for before locks are seen to, and how often they are. */
    private static final int QUIET_MINUTES = 25;
    private static final int ROUNDS = 3;
    /** What is asked for as "report 'word'", or as "acknowledge 'alarm'". */
    private static final Pattern NAMED = Pattern.compile("(report|acknowledge) '([a-z-]+)'");
    /** While one of these stands its own words come first. */
    private static final Set<String> FIRST = Set.of("air-failed", "air-failed-animals", "record",
            "air-stuck");

    private final Settings settings;
    private final Turn turn;
    private final Set<Long> proven = new HashSet<>();

    Home(Settings settings, Turn turn) {
        this.settings = settings;
        this.turn = turn;
    }

    /** What the next-step sentence asks for first, if nothing more urgent is told. */
    Optional<Ask> named(Node n) {
        String says = NextStep.of(settings, settings.cones().getFirst(), n.book(), new NextStep.When(
                n.world().now(), restMs(n.live()), Optional.empty(), n.state().book().lives(),
                Optional.empty(), OptionalLong.empty(), false));
        turn.check(!says.isBlank(), "next-step", "nothing is said of what comes next");
        boolean later = says.contains("Not before") || n.world().paper().trouble().isPresent()
                || n.world().faults() > 0
                || n.state().live().alarms().standing().values().stream()
                .anyMatch(a -> FIRST.contains(a.kind().id()));
        Matcher m = NAMED.matcher(says);
        return later || !m.find() ? Optional.empty()
                : m.group(1).equals("acknowledge") ? Optional.of(new Ask.Acknowledge(m.group(2)))
                : Step.of(m.group(2)).map(Ask.Did::new);
    }

    /** After that was said: it must not be refused where it was asked for. */
    void taken(Node before, Ask ask, Result r) {
        // What the water can bear may run out in the very second in which it is said.
        boolean ranOut = ask.equals(new Ask.Did(Step.SETTLE)) && restMs(before.live()) == 0
                && restMs(r.next().live().cones().get(Fitted.CONE)) > 0;
        turn.check(ranOut || r.words().replies().stream().allMatch(Result.Reply::accepted), "next-step", "'"
                + ask.word()
                + "' is asked for while the batch is " + before.batch().stage().word() + ", and refused: "
                + r.words().replies().stream().map(Result.Reply::sentence).toList());
    }

    private static long restMs(ConeLive live) {
        return live.judged().air().breath().restMs();
    }

    /** After everything was said that does not fit: each of it is refused at once, with a reason. */
    void refused(Node before, Result r) {
        List<String> said = Turn.misfits(before).stream().map(Request::id).sorted().toList();
        List<String> no = r.words().replies().stream().filter(x -> !x.accepted() && !x.sentence().isBlank())
                .map(x -> x.request().id()).sorted().toList();
        turn.check(no.containsAll(said), "misfit", "a step that does not fit was not refused");
    }

    /** Whatever stands, 'drained' and 'cleaned' end it, in the tick in which they are said. */
    void reachable(Node n, Node after, Step step) {
        Stage s = after.batch().stage();
        turn.check(step == Step.CLEANED ? s instanceof Stage.Clean : s instanceof Stage.Drained, "dead-end",
                "'" + step.word() + "' leaves the batch " + s.word() + " that was "
                        + n.batch().stage().word());
    }

    /** Whether either of the two fits. */
    void leaves(Node n) {
        turn.check(Fits.refusal(n.book(), Step.CLEANED).isEmpty()
                || Fits.refusal(n.book(), Step.DRAINED).isEmpty(), "dead-end",
                "neither 'drained' nor 'cleaned' fits while the batch is " + n.batch().stage().word());
    }

    /**
     * A person mends what is wrong, empties and cleans the cone, looks at every alarm: then nothing is
     * locked, and a new batch is begun. Tried once for all states that are locked, told and recorded alike.
     */
    void works(Node n) {
        if (!proven.add(standing(n))) {
            return;
        }
        Node at = mended(n);
        for (Step s : List.of(Step.DRAINED, Step.CLEANED)) {
            if (Fits.refusal(at.book(), s).isEmpty()) {
                at = seconds(said(at, new Ask.Did(s)), 2);
            }
        }
        for (int i = 0; i < QUIET_MINUTES; i++) {
            at = turn.tick(at, Units.MINUTE_MS, List.of());
        }
        for (int i = 0; i < ROUNDS; i++) {
            for (Alarm a : at.state().live().alarms().raised()) {
                at = seconds(said(at, new Ask.Acknowledge(a.kind().id())), 2);
            }
            at = turn.tick(turn.tick(at, Units.MINUTE_MS, List.of()), Units.MINUTE_MS, List.of());
        }
        turn.check(at.batch().stage() instanceof Stage.Clean && at.settled(), "dead-end",
                "cleaned and recorded, the batch is " + at.batch().stage().word());
        Lives lives = at.state().book().lives();
        turn.check(at.book().latches().isEmpty() && lives.lock().isEmpty() && lives.damage().isEmpty(),
                "dead-end", "a lock cannot be released: " + at.book().latches() + lives.lock()
                + lives.damage());
        at = seconds(said(at, new Ask.Did(Step.STARTED)), 3);
        turn.check(at.batch().stage() instanceof Stage.Hydrating && at.settled(), "dead-end",
                "no new batch can be begun; it is " + at.batch().stage().word());
    }

    private Node said(Node n, Ask ask) {
        return turn.tick(n, Units.SECOND_MS, List.of(Turn.request(n, ask)));
    }

    private Node seconds(Node n, int s) {
        Node at = n;
        for (int i = 0; i < s; i++) {
            at = turn.tick(at, Units.SECOND_MS, List.of());
        }
        return at;
    }

    private Node mended(Node n) {
        Node at = n;
        for (Move.Trouble t : Move.Trouble.values()) {
            if (Moves.there(n, t)) {
                at = turn.after(at, new Move.Turns(t, false));
            }
        }
        // The record offers again what it was refused once a minute.
        return seconds(turn.tick(turn.tick(at, Units.MINUTE_MS, List.of()), Units.MINUTE_MS, List.of()), 2);
    }

    private static long standing(Node n) {
        Hash h = new Hash().add(n.batch().stage().word()).add(n.world().paper().mood().ordinal());
        List<String> locks = new ArrayList<>(n.book().latches().stream().map(l -> l.guard()).sorted()
                .toList());
        n.state().book().lives().lock().ifPresent(l -> locks.add(l.guard()));
        n.state().book().lives().damage().ifPresent(l -> locks.add(l.guard()));
        locks.forEach(h::add);
        h.add(n.state().book().lives().aside().size()).add(Math.min(2, n.state().ledger().pending().size()));
        h.add(n.world().faults()).add(n.live().judged().water().doubt())
                .add(n.live().judged().water().departures().size());
        n.state().live().alarms().raised().forEach(a -> h.add(a.kind().ordinal()).add(a.acknowledged())
                .add(a.held().ordinal()));
        return h.high();
    }
}
