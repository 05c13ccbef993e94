package org.conetender.agent;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.conetender.app.config.ConfigLoader;
import org.conetender.app.config.Outcome;
import org.conetender.core.Result;
import org.conetender.core.State;
import org.conetender.core.Tick;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.alarm.Alarms;
import org.conetender.core.alarm.Message;
import org.conetender.core.face.Names;
import org.conetender.core.guard.Guards;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.settings.Settings;
import org.conetender.port.Requests;
import org.conetender.port.Store;
import org.conetender.port.Transport;
import org.conetender.sim.Bench;
import org.conetender.sim.SimStore;
import org.conetender.sim.SimSupervisor;
import org.conetender.sim.World;
import org.junit.jupiter.api.Test;

/** What the face says and takes back, to a broker that remembers. */
class PublishAgentTest {

    private static final Settings LARKMOOR =
            ((Outcome.Accepted) ConfigLoader.load(Path.of("config/larkmoor.toml"))).config().settings();
    private static final Names NAMES = Names.of("homie", LARKMOOR);

    private final Memory broker = new Memory();
    private final Socket socket = new Socket();
    private final World world = new World(LARKMOOR, 1, Bench.byTheBook(20));

    @Test
    void whatAnEarlierLifeLeftIsTakenBack() throws Store.StoreException {
        broker.retained.put("homie/5/larkmoor-a/$alert/welded", "yesterday's alarm");
        broker.retained.put("homie/5/larkmoor-a/hatch/ready-at", "2026-01-01T00:00:00+00:00");
        broker.retained.put("homie/5/larkmoor-a/hand/answer", "an answer of yesterday");
        rounds(begin(), 5);
        assertThat(broker.retained).doesNotContainKeys("homie/5/larkmoor-a/$alert/welded",
                "homie/5/larkmoor-a/hatch/ready-at", "homie/5/larkmoor-a/hand/answer");
        assertThat(broker.retained).containsKey("homie/5/larkmoor-a/hatch/stage");
    }

    @Test
    void aConeThatSomebodyMadeUpGetsNoTopics() throws Store.StoreException {
        Agents agents = begin();
        socket.next = Optional.of(new Request("x-1", Request.Origin.fresh("socket", "1"), "z/#",
                new Ask.Withdraw("last")));
        rounds(agents, 5);
        assertThat(socket.answers).singleElement().asString().contains("There is no cone");
        assertThat(broker.retained.keySet()).noneMatch(t -> t.contains("larkmoor-z"));
    }

    @Test
    void whoAsksForAnAnswerIsToldWhetherItWasAccepted() throws Store.StoreException {
        Agents agents = begin();
        broker.incoming.add(set("started"));
        broker.incoming.add(set("drawing"));
        broker.incoming.add(set("nonsense"));
        rounds(agents, 5);
        assertThat(broker.answers).hasSize(3).anyMatch(a -> a.startsWith("ok Cone a: 'started' is recorded."))
                .anyMatch(a -> a.startsWith("refused Not understood: there is no step 'nonsense'"));
        assertThat(broker.answers).filteredOn(a -> a.startsWith("refused")).hasSize(2);
    }

    /** What rings is sent again: so it counts as never sent, and then no tree has it any more. */
    @Test
    void anAlertThatRingsOnceMoreAndEndsBeforeItIsPublishedIsTakenBack() throws Store.StoreException {
        Alarm welded = new Alarm("a", AlarmKind.WELDED, "planted", "planted", Alarm.Held.BY_CAUSE,
                new Alarm.Course(world.clock().now(), OptionalLong.empty(), true), new Alarm.Told(1,
                OptionalLong.empty(), 0, OptionalLong.empty(), List.of(), Alarm.Way.ALONE, false, false),
                new Alarm.Aside(Optional.empty(), OptionalLong.empty()));
        List<List<Alarm>> rings = new ArrayList<>(List.of(List.of(), List.of(welded)));
        List<List<Alarm>> stands = new ArrayList<>(List.of(List.of(welded), List.of(welded)));
        Tick real = new Tick(LARKMOOR, Guards.ALL);
        Agents agents = Agents.begin(LARKMOOR, (before, image) -> told(real.step(before, image),
                stands.isEmpty() ? List.of() : stands.removeFirst(),
                rings.isEmpty() ? List.of() : rings.removeFirst()), ports(), NAMES);
        rounds(agents, 1);
        assertThat(broker.retained).containsKey("homie/5/larkmoor-a/$alert/welded");
        agents.control().doWork();
        rounds(agents, 2);
        assertThat(broker.retained).doesNotContainKey("homie/5/larkmoor-a/$alert/welded");
    }

    private static Result told(Result r, List<Alarm> stands, List<Alarm> rings) {
        State.Live l = r.next().live();
        Alarms alarms = new Alarms(stands.stream().collect(Collectors.toMap(Alarm::key, a -> a)),
                l.alarms().seen(), l.alarms().shelves(), l.alarms().calls());
        return new Result(new State(r.next().ledger(), new State.Live(l.begun(), l.cones(), alarms,
                l.timers(), l.beat(), l.diary(), l.day())), r.outputs(), r.record(), new Result.Words(
                r.words().replies(), rings.isEmpty() ? List.of() : List.of(new Message(rings, false)),
                r.words().notes()), r.findings());
    }

    private static Transport.Incoming set(String step) {
        return new Transport.Incoming("homie/5/larkmoor-a/hand/step/set", step, false,
                Map.of("response-topic", "answers/me", "request-id", "r-" + step));
    }

    private Agents begin() throws Store.StoreException {
        return Agents.begin(LARKMOOR, Guards.ALL, ports(), NAMES);
    }

    private Ports ports() throws Store.StoreException {
        World.Devices d = world.devices();
        return new Ports(world.clock(), new Ports.Devices(List.copyOf(d.probes().values()),
                List.copyOf(d.contacts().values()), List.copyOf(d.switches().values())),
                SimStore.open(new SimStore.Disk()), new Ports.Outside(broker, socket, new SimSupervisor()));
    }

    private void rounds(Agents agents, int times) {
        for (int i = 0; i < times; i++) {
            world.step(1_000);
            agents.round();
        }
    }

    /** A broker that keeps what is retained and is always there. */
    private static final class Memory implements Transport {
        final Map<String, String> retained = new TreeMap<>();
        final List<Incoming> incoming = new ArrayList<>();
        final List<String> answers = new ArrayList<>();

        @Override
        public boolean offer(Outgoing m) {
            assertThat(m.topic()).doesNotContain("#");
            if (m.topic().equals("answers/me")) {
                answers.add(m.payload());
            } else if (m.retained() && m.payload().isEmpty()) {
                retained.remove(m.topic());
            } else if (m.retained()) {
                retained.put(m.topic(), m.payload());
            }
            return true;
        }

        @Override
        public List<Incoming> poll(int most) {
            List<Incoming> all = List.copyOf(incoming);
            incoming.clear();
            return all;
        }

        @Override
        public Link link() {
            return new Link(1, Optional.empty());
        }

        @Override
        public void close() {
            // Nothing is held.
        }
    }

    private static final class Socket implements Requests {
        Optional<Request> next = Optional.empty();
        final List<String> answers = new ArrayList<>();

        @Override
        public List<Request> poll(int most) {
            List<Request> out = next.stream().toList();
            next = Optional.empty();
            return out;
        }

        @Override
        public void answer(Request request, boolean accepted, String sentence) {
            answers.add(accepted + " " + sentence);
        }
    }
}
