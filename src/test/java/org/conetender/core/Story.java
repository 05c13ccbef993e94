package org.conetender.core;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.Message;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Fact;
import org.conetender.core.guard.Finding;
import org.conetender.core.guard.Guard;
import org.conetender.core.guard.Guards;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Image;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Proving;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;

/**
 * A daemon without a shell: state, clock, devices and record in one hand. A story lets time pass,
 * changes one thing, and looks at what the next ticks decided. One thread, nothing waits.
 */
public final class Story {

    private static final long MORNING_MS = Instant.parse("2026-03-02T09:00:00Z").toEpochMilli();

    public final Senses senses;
    public final Paper paper = new Paper();
    /** What the store says to have lost, at every beginning from now on. */
    public final List<String> damages = new ArrayList<>();
    /** Why temperatures are not kept, from now on. */
    public Optional<String> noHistory = Optional.empty();
    /** Outputs that could not be set, from now on. */
    public final Set<String> unset = new TreeSet<>();
    private final Settings settings;
    private final Tick tick;
    private final List<Request> inbox = new ArrayList<>();
    private final List<Result.Reply> replies = new ArrayList<>();
    private final List<Message> messages = new ArrayList<>();
    private final List<Result.Note> notes = new ArrayList<>();
    private Consumer<Story> each = s -> { };
    private Moment now = new Moment("boot-1", 600_000, MORNING_MS, true);
    private State state;
    private Result last;
    private long tickMs = 1_000;
    private long asked;
    private boolean trying;

    public Story(Settings settings) {
        this(settings, Guards.ALL);
    }

    public Story(Settings settings, List<Guard> guards) {
        this.settings = settings;
        this.senses = new Senses(settings);
        this.tick = new Tick(settings, guards);
        begin();
        tick();
    }

    /** Larkmoor with these fittings, and all guards but that one. */
    public static Story without(Class<? extends Guard> guard, Larkmoor.Fitting... fittings) {
        return without(guard, Larkmoor.with(fittings));
    }

    public static Story without(Class<? extends Guard> guard, Settings settings) {
        return new Story(settings, Guards.ALL.stream().filter(g -> !guard.isInstance(g)).toList());
    }

    public static Story at(Larkmoor.Fitting... fittings) {
        return new Story(Larkmoor.with(fittings));
    }

    /** Called after every tick: a plant, or an invariant. */
    public Story each(Consumer<Story> what) {
        each = what;
        return this;
    }

    /** One tick at the present moment, after which time has moved on. */
    public Result tick() {
        return tick(0);
    }

    /** One tick that begins so late, ms. */
    public Result tick(long lateMs) {
        List<Request> came = List.copyOf(inbox);
        inbox.clear();
        last = tick.step(state, new Image(now, senses.probes(now.monoMs()), senses.contacts(),
                new Image.Inbox(came, paper.takeCommits()),
                new Image.Pipes(paper.trouble(), noHistory, Optional.empty(), lateMs, unset)));
        state = known(last.next());
        paper.take(last.record());
        replies.addAll(last.words().replies());
        messages.addAll(last.words().messages());
        notes.addAll(last.words().notes());
        settings.cones().stream().filter(c -> c.fittings().heat().kind() != Cone.HeatKind.NONE)
                .forEach(c -> senses.second(c, heats(c), tickMs / 1_000.0));
        each.accept(this);
        now = now.plusMs(tickMs);
        return last;
    }

    private boolean heats(Cone c) {
        return on(c.id() + ".heat") && (!c.fittings().heat().cutOut() || on(c.id() + ".cut-out"));
    }

    /** Ticks until so much time has passed; more than an hour in steps of five seconds. */
    public Story pass(Duration d) {
        long until = now.monoMs() + d.toMillis();
        tickMs = d.toMinutes() > 60 ? 5_000 : 1_000;
        while (now.monoMs() < until) {
            tick();
        }
        tickMs = 1_000;
        return this;
    }

    public Story minutes(long m) {
        return pass(Duration.ofMinutes(m));
    }

    public Story seconds(long s) {
        return pass(Duration.ofSeconds(s));
    }

    /** Sends a request and ticks until it is answered, four times at most. */
    public Result.Reply ask(String cone, Ask ask) {
        Request r = send(cone, ask);
        for (int i = 0; i < 4; i++) {
            tick();
            for (Result.Reply reply : last.words().replies()) {
                if (reply.request().equals(r)) {
                    return reply;
                }
            }
        }
        throw new AssertionError("no answer to " + ask);
    }

    /** Sends a request that nobody waits for. */
    public Request send(String cone, Ask ask) {
        Request r = new Request("r-" + ++asked, Request.Origin.fresh("test", ""), cone, ask);
        inbox.add(r);
        return r;
    }

    public void send(Request r) {
        inbox.add(r);
    }

    public Result.Reply did(String cone, Step step) {
        return ask(cone, new Ask.Did(step));
    }

    /** Reports these steps of cone a, each of which must be accepted. */
    public Story does(Step... steps) {
        for (Step s : steps) {
            Result.Reply r = did("a", s);
            if (!r.accepted()) {
                throw new AssertionError(r.sentence());
            }
        }
        return this;
    }

    /** A new life of the process. @param boot id of the kernel's boot  @param downMs how long nothing ran */
    public Story restart(String boot, long downMs) {
        paper.died();
        inbox.clear();
        long mono = boot.equals(now.boot()) ? now.monoMs() + downMs : 20_000;
        now = new Moment(boot, mono, now.wallMs() + downMs, now.wallTrusted());
        begin();
        return this;
    }

    /** A life of the process that is left in good order; another begins where it stood. */
    public Story stopAndStart(long downMs) {
        paper.keep(state.leaving(settings, now));
        return restart(now.boot(), downMs);
    }

    private void begin() {
        List<Fact> damage = Damage.facts(paper.facts(), damages, now);
        if (!damage.isEmpty()) {
            paper.keep(damage);
        }
        List<Fact> opening = Opening.facts(settings, paper.facts(), paper.checkpoint(), now);
        state = known(State.begin(settings, paper.facts(), paper.checkpoint(), now));
        paper.keep(opening);
    }

    /** From now on the switches are tried before the first heat of a batch, as they are in life. */
    public Story trying() {
        trying = true;
        return this;
    }

    /** Stories of other dangers are spared the trial of the switches: to them they have been tried. */
    private State known(State s) {
        if (trying) {
            return s;
        }
        Map<String, ConeLive> cones = new TreeMap<>(s.live().cones());
        cones.replaceAll((id, c) -> c.judged().proving().part().failed() ? c
                : c.judged(c.judged().proven(Proving.DONE)));
        State.Live l = s.live();
        return new State(s.ledger(), new State.Live(l.begun(), cones, l.alarms(), l.timers(), l.beat(),
                l.diary(), l.day()));
    }

    /** The wall clock jumps, and is trusted or not from now on. */
    public Story wall(long jumpMs, boolean trusted) {
        now = new Moment(now.boot(), now.monoMs(), now.wallMs() + jumpMs, trusted);
        return this;
    }

    /** Whether that output is on in one of the next ticks, so many at most; stops there. */
    public boolean comesOn(String output, int ticks) {
        for (int i = 0; i < ticks; i++) {
            tick();
            if (on(output)) {
                return true;
            }
        }
        return false;
    }

    public boolean on(String output) {
        return last.outputs().get(output);
    }

    public Batch batch(String cone) {
        return state.book().cone(cone).batch();
    }

    public String stage() {
        return batch("a").stage().word();
    }

    public State state() {
        return state;
    }

    public Result last() {
        return last;
    }

    public Moment now() {
        return now;
    }

    public Settings settings() {
        return settings;
    }

    /** Ids of the alarms of that cone which a person has been told of and which still stand. */
    public List<String> standing(String cone) {
        return state.live().alarms().raised().stream().filter(a -> a.cone().equals(cone))
                .map(a -> a.kind().id()).toList();
    }

    /** How often that alarm was told so far. */
    public long told(String alarm) {
        return told().stream().filter(a -> a.kind().id().equals(alarm)).count();
    }

    /** The alarms of all messages so far. */
    public List<Alarm> told() {
        return messages.stream().flatMap(m -> m.alarms().stream()).toList();
    }

    public List<Message> messages() {
        return messages;
    }

    public List<Result.Reply> replies() {
        return replies;
    }

    /** What was said about that request before its answer. */
    public List<String> notes(Request r) {
        return notes.stream().filter(n -> n.request().equals(r)).map(Result.Note::sentence).toList();
    }

    /** Words of the findings of that guard at cone a in the last tick. */
    public List<String> found(String guard) {
        return findings().filter(f -> f.guard().equals(guard)).map(Finding::what).toList();
    }

    private Stream<Finding> findings() {
        return last.findings().get("a").stream();
    }
}
