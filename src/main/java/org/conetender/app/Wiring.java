package org.conetender.app;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.conetender.adapter.clock.LinuxClock;
import org.conetender.adapter.gpio.GpioBoard;
import org.conetender.adapter.gpio.GpioException;
import org.conetender.adapter.gpio.GpioLayer;
import org.conetender.adapter.gpio.Lines;
import org.conetender.adapter.mqtt.MqttOptions;
import org.conetender.adapter.mqtt.MqttTransport;
import org.conetender.adapter.onewire.OneWire;
import org.conetender.adapter.socket.TellSocket;
import org.conetender.adapter.systemd.SdNotify;
import org.conetender.agent.Agents;
import org.conetender.agent.Ports;
import org.conetender.app.config.Config;
import org.conetender.app.config.Hardware;
import org.conetender.core.face.Names;
import org.conetender.core.guard.Guards;
import org.conetender.core.settings.Cone;
import org.conetender.port.Clock;
import org.conetender.port.Store;
import org.conetender.port.Transport;

/**
 * Joins the agents to the world: the only place where adapters are made. The daemon and the
 * demonstration are wired here alike; they differ in the {@link Ground} they stand on.
 *
 * <p>One thread opens; afterwards {@link #outputsSafe} may come from any, {@link #close} from one.
 */
public final class Wiring implements AutoCloseable {

    /** The record's file in its folder. */
    public static final String RECORD = "conetender.db";

    private final Agents agents;
    private final Ground ground;
    private final Transport transport;
    private final Store store;

    private Wiring(Agents agents, Ground ground, Transport transport, Store store) {
        this.agents = agents;
        this.ground = ground;
        this.transport = transport;
        this.store = store;
    }

    /**
     * Takes the record's lock first, which keeps a second daemon from the outputs, and lets it be read while
     * the ground is opened; then the broker.
     *
     * @throws Unavailable if a part cannot be had; whatever was opened is closed and safe again
     */
    public static Wiring open(Config config, Ground.Opening opening) throws Unavailable {
        Reading reading = Reading.begin(config.hardware().paths().store().resolve(RECORD));
        try {
            return over(config, opening.open(), reading);
        } catch (Unavailable | RuntimeException e) {
            reading.close();
            throw e;
        }
    }

    private static Wiring over(Config config, Ground ground, Reading reading) throws Unavailable {
        try {
            Store store = reading.done();
            Names names = Names.of(domain(config), config.settings());
            Transport transport = transport(config, names);
            try {
                Ports ports = new Ports(ground.clock(), ground.devices(), store,
                        new Ports.Outside(transport, ground.requests(), ground.supervisor()));
                return new Wiring(Agents.begin(config.settings(), Guards.ALL, ports, names), ground,
                        transport,
                        store);
            } catch (Store.StoreException | RuntimeException e) {
                transport.close();
                throw e;
            }
        } catch (Store.StoreException e) {
            ground.close();
            throw new Unavailable("The record: " + e.getMessage(), e);
        } catch (Unavailable | RuntimeException e) {
            ground.close();
            throw e;
        }
    }

    /** Real Linux. @param layer what lies below the relays, given the lines: the kernel's, or a test's */
    public static Ground.Opening linux(Config config, Function<Lines, GpioLayer> layer) {
        return () -> {
            Clock clock = new LinuxClock();
            GpioBoard board = board(lines(config.hardware().gpio()), layer, clock);
            try {
                TellSocket socket = LinuxGround.socket(config);
                OneWire oneWire = new OneWire(config.hardware().oneWire().root(), LinuxGround.places(config),
                        clock);
                oneWire.start(config.hardware().oneWire().periodMs());
                return new LinuxGround(clock, board, oneWire, socket, SdNotify.ofEnvironment());
            } catch (Unavailable | RuntimeException e) {
                board.close();
                throw e;
            }
        };
    }

    private static GpioBoard board(Lines lines, Function<Lines, GpioLayer> layer, Clock clock)
            throws Unavailable {
        try {
            return GpioBoard.open(lines, layer.apply(lines), clock);
        } catch (GpioException e) {
            throw new Unavailable("The relays: " + e.getMessage(), e);
        }
    }

    /** The lines as the GPIO adapter wants them; also what {@code safe} drives off. */
    public static Lines lines(Hardware.Gpio gpio) {
        return new Lines(gpio.chip().toString(),
                gpio.outputs().stream()
                        .map(o -> new Lines.Line(o.id(), o.line(), o.activeLow(), bias(o.bias()))).toList(),
                gpio.inputs().stream()
                        .map(i -> new Lines.Line(i.id(), i.line(), i.activeLow(), bias(i.bias()))).toList());
    }

    private static Lines.Bias bias(Hardware.Bias bias) {
        return switch (bias) {
            case AS_IS -> Lines.Bias.AS_IS;
            case NONE -> Lines.Bias.DISABLED;
            case PULL_UP -> Lines.Bias.PULL_UP;
            case PULL_DOWN -> Lines.Bias.PULL_DOWN;
        };
    }

    private static String domain(Config config) {
        return config.hardware().mqtt().map(Hardware.Mqtt::domain).orElse("homie");
    }

    /** The broker's time is real even where the cones' is simulated, so it has a clock of its own. */
    private static Transport transport(Config config, Names names) throws Unavailable {
        Optional<Hardware.Mqtt> mqtt = config.hardware().mqtt();
        if (mqtt.isEmpty()) {
            return new NoBroker();
        }
        Clock clock = new LinuxClock();
        String name = "conetender-" + names.site();
        return MqttTransport.open(options(mqtt.get(), name, names, filters(config, names)), clock,
                ProcessHandle.current().pid());
    }

    private static MqttOptions options(Hardware.Mqtt mqtt, String clientId, Names names, List<String> filters)
            throws Unavailable {
        MqttOptions plain = MqttOptions.plain(mqtt.uri(), clientId,
                new MqttOptions.Farewell(names.root() + "/$state", "lost", "disconnected"), filters);
        Optional<MqttOptions.Login> login = login(mqtt);
        return login.isEmpty() ? plain : plain.withLogin(login.get().user(), login.get().password());
    }

    /** Every {@code …/set} of our own devices. */
    private static List<String> filters(Config config, Names names) {
        return Stream.concat(Stream.of(""), config.settings().cones().stream().map(Cone::id))
                .map(cone -> names.cone(cone) + "/+/+/set").toList();
    }

    /** User name and password, where the broker wants them. @throws Unavailable if the file cannot be read */
    public static Optional<MqttOptions.Login> login(Hardware.Mqtt mqtt) throws Unavailable {
        if (mqtt.user().isEmpty() || mqtt.passwordFile().isEmpty()) {
            return Optional.empty();
        }
        Path file = mqtt.passwordFile().get();
        try (Stream<String> text = Files.lines(file)) {
            String password = text.findFirst().orElse("");
            return Optional.of(new MqttOptions.Login(mqtt.user().get(), password));
        } catch (IOException | UncheckedIOException e) {
            throw new Unavailable("The broker's password: " + file + " cannot be read (" + e.getMessage()
                    + "); its first line is the password, and only conetender may read it.", e);
        }
    }

    public Agents agents() {
        return agents;
    }

    public Ground ground() {
        return ground;
    }

    /** How the connection to the broker stands. */
    public Transport.Link link() {
        return transport.link();
    }

    /** De-energises every output, for good. Any thread, more than once. */
    public void outputsSafe() {
        ground.outputsSafe();
    }

    /** Outputs safe, last answers given, goodbye said, the record closed: in this order. */
    @Override
    public void close() {
        List<RuntimeException> failures = new ArrayList<>();
        for (Runnable each
                : List.<Runnable>of(this::outputsSafe, transport::close, ground::close, store::close)) {
            try {
                each.run();
            } catch (RuntimeException e) {
                failures.add(e);
            }
        }
        if (!failures.isEmpty()) {
            RuntimeException first = failures.removeFirst();
            failures.forEach(first::addSuppressed);
            throw first;
        }
    }
}
