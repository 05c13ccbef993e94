package org.conetender.agent;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.conetender.core.Larkmoor;
import org.conetender.core.face.Names;
import org.conetender.core.guard.Guards;
import org.conetender.core.image.ContactSample;
import org.conetender.core.image.ProbeSample;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Request;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.port.Contact;
import org.conetender.port.Probe;
import org.conetender.port.Requests;
import org.conetender.port.Store;
import org.conetender.port.Switch;
import org.conetender.port.Transport.Outgoing;
import org.conetender.sim.SimBroker;
import org.conetender.sim.SimClock;
import org.conetender.sim.SimStore;
import org.conetender.sim.SimSupervisor;

/** The three agents run by hand: devices that always work, a broker and a disk that do as they are told. */
final class HandBench {

    final SimBroker broker = new SimBroker();
    /** Of the next life. */
    SimStore.Disk disk = new SimStore.Disk();
    final SimClock clock = new SimClock(1, 1_772_442_000_000L);
    final SimSupervisor supervisor = new SimSupervisor();
    final List<Outgoing> heard = new ArrayList<>();
    final Map<String, Boolean> levels = new TreeMap<>();
    final Socket socket = new Socket();
    /** Of the next life. */
    Settings settings = Larkmoor.with();
    /** Outputs that refuse to be set. */
    final Set<String> stuck = new TreeSet<>();
    /** A write to the record neither ends nor fails. */
    boolean hangs;
    /** Every output in the order in which it was set in the last round. */
    final List<String> order = new ArrayList<>();
    private SimStore store;
    private Agents agents;

    /** Requests that came through the local socket, and their answers. */
    static final class Socket implements Requests {
        final List<Request> waiting = new ArrayList<>();
        final List<String> answers = new ArrayList<>();

        @Override
        public List<Request> poll(int most) {
            List<Request> out = new ArrayList<>(waiting.subList(0, Math.min(most, waiting.size())));
            waiting.removeAll(out);
            return out;
        }

        @Override
        public void answer(Request request, boolean accepted, String sentence) {
            answers.add(request.id() + " " + accepted + " " + sentence);
        }
    }

    HandBench() {
        broker.listen(heard::add);
        begin();
    }

    /** A new life of the process. */
    void begin() {
        if (store != null) {
            store.crash();
            broker.daemonDied();
        }
        try {
            store = SimStore.open(disk);
            Names names = Names.of("homie", settings);
            Ports ports = new Ports(clock, devices(), store, new Ports.Outside(
                    broker.connect(names.root() + "/$state"), socket, supervisor));
            agents = Agents.begin(settings, Guards.ALL, ports, names);
        } catch (Store.StoreException e) {
            throw new IllegalStateException(e);
        }
    }

    private Ports.Devices devices() {
        List<Probe> probes = new ArrayList<>();
        List<Contact> contacts = new ArrayList<>();
        List<Switch> switches = new ArrayList<>();
        for (Cone c : settings.cones()) {
            probes.add(probe(c.id() + "-water"));
            contacts.add(contact(c.id() + ".level"));
            for (String what : new String[] {"heat", "cut-out", "air-pause", "lamp", "trigger"}) {
                switches.add(output(c.id() + "." + what));
            }
        }
        return new Ports.Devices(probes, contacts, switches);
    }

    private static Probe probe(String id) {
        return new Probe() {
            @Override
            public String id() {
                return id;
            }

            @Override
            public ProbeSample latest(long nowMonoMs) {
                return new ProbeSample(id, new Reading.Value(27), 0);
            }
        };
    }

    private static Contact contact(String id) {
        return new Contact() {
            @Override
            public String id() {
                return id;
            }

            @Override
            public ContactSample.Level read() {
                return ContactSample.Level.CLOSED;
            }
        };
    }

    private Switch output(String id) {
        return new Switch() {
            @Override
            public String id() {
                return id;
            }

            @Override
            public boolean hold(boolean energised, long validForMs) {
                levels.put(id, energised);
                order.add((energised ? "on " : "off ") + id);
                return !stuck.contains(id);
            }
        };
    }

    HandBench rounds(int n) {
        for (int i = 0; i < n; i++) {
            order.clear();
            if (hangs) {
                agents.control().doWork();
                agents.publish().doWork();
            } else {
                agents.round();
            }
            clock.advance(ControlAgent.TICK_MS);
        }
        return this;
    }

    String shown(String topic) {
        return broker.payload("homie/5/" + topic);
    }

    /** What was sent there, in order, since the beginning or the last {@code heard.clear()}. */
    List<String> sent(String topic) {
        return heard.stream().filter(o -> o.topic().equals("homie/5/" + topic)).map(Outgoing::payload)
                .toList();
    }

    void set(String topic, String payload) {
        broker.set("homie/5/" + topic + "/set", payload);
    }
}
