package org.conetender.app.demo;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import org.conetender.app.Unavailable;
import org.conetender.app.Wiring;
import org.conetender.app.config.Config;
import org.conetender.app.remote.RemoteSite;
import org.conetender.app.view.SiteView;
import org.conetender.core.face.Names;
import org.conetender.sim.Bench;
import org.conetender.sim.Habit;
import org.conetender.sim.Person;
import org.conetender.sim.World;

/**
 * Larkmoor Fry Room in a box: the real daemon, wired as always, its record in a folder that goes away,
 * a real broker on loopback, a simulated world below and a person at the other end of the broker.
 * {@link #second} is the only thing that moves simulated time. One thread.
 */
public final class Demo implements AutoCloseable {

    private static final String CONFIG = "/config/larkmoor.toml";
    /** Half past eight: a day later the hatch is ready before the feed at half past twelve. */
    private static final Instant BEGIN = Instant.parse("2026-03-02T08:30:00Z");
    /** The face is published, and a person looks up, this often, world ms. */
    private static final long LOOK_MS = 5_000;
    private static final long NOTE_MS = 60_000;
    private static final long SECOND_MS = 1_000;

    private final Path folder;
    private final LoopbackBroker broker;
    private final World world;
    private final Wiring wiring;
    private final RemoteSite site;
    private final ThroughBroker through;
    private final Person person;
    private final ZoneId zone;
    private final Announcements announced = new Announcements();

    private Demo(Parts parts, Wiring wiring, RemoteSite site) {
        this.folder = parts.folder();
        this.broker = parts.broker();
        this.world = parts.world();
        this.wiring = wiring;
        this.site = site;
        this.zone = parts.config().settings().site().feeding().zone();
        this.through = new ThroughBroker(site);
        this.person = new Person(world, parts.config().settings(), Habit.careful(),
                new Person.Senses(through, through));
    }

    private record Parts(Path folder, LoopbackBroker broker, World world, Config config) {}

    /**
     * Starts everything; simulated time stands still.
     *
     * @param seed decides what the room, the lots and the person are like
     * @throws Unavailable in words, if a part does not start
     */
    public static Demo open(long seed) throws Unavailable {
        try {
            Path folder = Files.createTempDirectory("conetender-demo");
            LoopbackBroker broker = LoopbackBroker.start();
            Config config = ExampleConfig.of(CONFIG, broker.uri(), folder);
            World world = new World(config.settings(), seed, Bench.larkmoor().withStart(BEGIN));
            return join(new Parts(folder, broker, world, config));
        } catch (IOException e) {
            throw new Unavailable("The demonstration does not start: " + e.getMessage(), e);
        }
    }

    private static Demo join(Parts parts) throws Unavailable, IOException {
        Wiring wiring = Wiring.open(parts.config(), () -> new SimGround(parts.world()));
        try {
            return new Demo(parts, wiring, new Meeting(wiring, parts.broker().uri(),
                    Names.of("homie", parts.config().settings())).wholeTree());
        } catch (Unavailable | IOException e) {
            wiring.close();
            throw e;
        }
    }

    /** One simulated second: the world, the daemon, now and then the person. */
    public void second() {
        world.step(SECOND_MS);
        wiring.agents().control().doWork();
        wiring.agents().record().doWork();
        long now = world.clock().elapsedMs();
        if (now % LOOK_MS == 0) {
            wiring.agents().publish().doWork();
            person.step();
        }
        if (now % NOTE_MS == 0) {
            announced.look(view(), now);
        }
    }

    /** What any client sees now. */
    public SiteView view() {
        return SiteView.of(site.topics(), site.names(), site.cones(), site.name());
    }

    /** Whether some cone's air is off, so that minutes count and messages must not be outrun. */
    public boolean separating() {
        return world.cones().stream().anyMatch(c -> c.air().pausedMs() > 0);
    }

    /** Simulated milliseconds since the beginning. */
    public long elapsedMs() {
        return world.clock().elapsedMs();
    }

    /** The simulated wall clock. */
    public OffsetDateTime now() {
        return Instant.ofEpochMilli(world.clock().trueWallMs()).atZone(zone).toOffsetDateTime();
    }

    /** How many batches have ended with animals in the sieve. */
    public int harvests() {
        return Score.harvests(world).size();
    }

    /** Forecast against truth, batch by batch. */
    public List<String> score() {
        return new Score(world, announced, zone).lines();
    }

    /** Why the person could not say something, and how much was said at all. */
    public String person() {
        return through.trouble().orElse("the person said " + through.said() + " words");
    }

    /** The person loses the way to the broker, for good: a trial of whether anything happens by another. */
    public void silence() throws IOException {
        site.close();
    }

    /** Where any other client can look on. */
    public URI broker() {
        return broker.uri();
    }

    @Override
    public void close() throws IOException {
        try (broker) {
            wiring.close();
            site.close();
        } finally {
            Folder.remove(folder);
        }
    }
}
