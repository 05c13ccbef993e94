package org.conetender.agent;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiFunction;
import org.conetender.core.Result;
import org.conetender.core.State;
import org.conetender.core.guard.Finding;
import org.conetender.core.image.ContactSample;
import org.conetender.core.image.Image;
import org.conetender.core.image.ProbeSample;
import org.conetender.core.image.Request;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;
import org.conetender.port.Contact;
import org.conetender.port.Probe;
import org.conetender.port.Switch;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One tick: sense, let the core judge and decide, act, hand the rest on, feed the watchdog last. Owns
 * the state; its thread is the only one that touches probes, contacts and switches.
 */
public final class ControlAgent implements Agent {

    /** House figures (style.md, leases): a tick a second, every hold lasts four. */
    public static final long TICK_MS = 1_000;
    public static final long LEASE_MS = 4_000;
    /** A tick that ends later than this after it began does not feed the watchdog. */
    private static final long ON_TIME_MS = 2_000;
    private static final int MOST_REQUESTS_A_TICK = 16;
    private static final Logger LOG = LoggerFactory.getLogger(ControlAgent.class);

    private final Ports ports;
    private final Mail mail;
    private final BiFunction<State, Image, Result> tick;
    private final Map<String, Switch> switches = new HashMap<>();
    private State state;
    private Map<String, List<Finding>> findings = Map.of();
    private List<Result.Reply> replies = List.of();
    private long dueMs = -1;
    private long ticks;
    /** Outputs that could not be set in the last tick, and how often that has happened in all. */
    private final Set<String> unset = new TreeSet<>();
    private long unsetTimes;

    ControlAgent(Ports ports, Mail mail, BiFunction<State, Image, Result> tick, State state) {
        this.ports = ports;
        this.mail = mail;
        this.tick = tick;
        this.state = state;
        for (Switch s : ports.devices().switches()) {
            switches.put(s.id(), s);
        }
    }

    @Override
    public String name() {
        return "control";
    }

    @Override
    public int doWork() {
        Moment now = ports.clock().now();
        long late = dueMs < 0 ? 0 : Math.max(0, now.monoMs() - dueMs);
        dueMs = now.monoMs() + TICK_MS;
        Result r = tick.apply(state, sense(now, late));
        act(r.outputs());
        state = r.next();
        findings = r.findings();
        replies = r.words().replies();
        mail.record(r.record());
        mail.show(r, now);
        answerSocket(r);
        supervise(now);
        return 1;
    }

    private Image sense(Moment now, long lateMs) {
        List<ProbeSample> probes = new ArrayList<>();
        for (Probe p : ports.devices().probes()) {
            probes.add(p.latest(now.monoMs()));
        }
        List<ContactSample> contacts = new ArrayList<>();
        for (Contact c : ports.devices().contacts()) {
            contacts.add(new ContactSample(c.id(), c.read()));
        }
        List<Request> requests = new ArrayList<>(mail.requests(MOST_REQUESTS_A_TICK));
        requests.addAll(ports.outside().requests().poll(MOST_REQUESTS_A_TICK));
        return new Image(now, probes, contacts, new Image.Inbox(requests, mail.commits()),
                new Image.Pipes(mail.storeTrouble(), mail.historyTrouble.get(), mail.brokerTrouble(), lateMs,
                        unset));
    }

    /** Off before on, so that a limit is never exceeded for a moment. */
    private void act(Map<String, Boolean> outputs) {
        unset.clear();
        for (boolean level : new boolean[] {false, true}) {
            for (Map.Entry<String, Boolean> o : outputs.entrySet()) {
                if (o.getValue() == level) {
                    hold(o.getKey(), level);
                }
            }
        }
    }

    private void hold(String id, boolean level) {
        Switch s = switches.get(id);
        if (s == null) {
            throw new IllegalStateException("no switch is wired for output " + id);
        }
        if (!s.hold(level, LEASE_MS)) {
            unset.add(id);
            if (unsetTimes++ % 60 == 0) {
                LOG.warn("output {} could not be set ({} refusals so far)", id, unsetTimes);
            }
        }
    }

    private void answerSocket(Result r) {
        for (Result.Reply reply : r.words().replies()) {
            if (reply.request().from().face().equals("socket")) {
                ports.outside().requests().answer(reply.request(), reply.accepted(), reply.sentence());
            }
        }
    }

    private void supervise(Moment began) {
        ticks++;
        if (ticks == 1) {
            ports.outside().supervisor().ready();
        }
        if (ports.clock().now().monoMs() - began.monoMs() <= ON_TIME_MS) {
            ports.outside().supervisor().alive();
        }
        if (ticks % 60 == 1) {
            ports.outside().supervisor().status(summary());
        }
    }

    private String summary() {
        List<String> parts = new ArrayList<>();
        state.book().cones().forEach((id, book) -> parts.add(id + " " + book.batch().stage().word()));
        return String.join(", ", parts) + "; " + state.live().alarms().raised().size() + " alarms";
    }

    /** Hands the record the facts that this life ended in good order; no tick may follow. */
    void leave(Settings settings) {
        mail.record(new Result.Record(List.of(state.leaving(settings, ports.clock().now())),
                Optional.empty()));
    }

    /** What the guards found in the last tick, by cone; for the simulation, on the control thread only. */
    public Map<String, List<Finding>> findings() {
        return findings;
    }

    /** What was answered in the last tick; for the simulation, on the control thread only. */
    public List<Result.Reply> replies() {
        return replies;
    }

    /** The state after the last tick; for the simulation's invariants, on the control thread only. */
    public State state() {
        return state;
    }
}
