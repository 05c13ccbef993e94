package org.conetender.app.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.conetender.app.config.Hardware.Bias;
import org.conetender.app.config.Hardware.InputLine;
import org.conetender.app.config.Hardware.OutputLine;
import org.conetender.core.settings.Cone;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every example that ships is taken as it stands, and says what it is meant to say. */
class ExamplesTest {

    static Stream<Path> examples() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("config"))) {
            return files.filter(f -> f.toString().endsWith(".toml")).sorted().toList().stream();
        }
    }

    private static Outcome.Accepted load(String name) {
        return switch (ConfigLoader.load(Path.of("config", name))) {
            case Outcome.Accepted a -> a;
            case Outcome.Refused r -> throw new AssertionError(Draft.texts(r.errors()));
        };
    }

    @ParameterizedTest
    @MethodSource("examples")
    void everyExampleIsTaken(Path file) {
        assertThat(load(file.getFileName().toString()).config().settings().cones()).isNotEmpty();
    }

    @ParameterizedTest
    @MethodSource("examples")
    void everyExampleCarriesTheCautions(Path file) throws IOException {
        assertThat(Files.readString(file).replaceAll("\\s*\n#\\s*", " ")).contains("residual-current device",
                "unplug", "hands go into the water", "Local codes and licensed practice decide",
                "The daemon is not a protective device", "No real heater belongs on this release");
    }

    @Test
    void theSmallestHasOneConeOneProbeAndNoHeater() {
        Config config = load("minimal.toml").config();
        Cone cone = config.settings().cones().getFirst();
        assertThat(config.settings().cones()).hasSize(1);
        assertThat(cone.fittings().probes()).isEqualTo(new Cone.Probes(List.of("28-00000a000001"), false));
        assertThat(cone.fittings().heat().kind()).isEqualTo(Cone.HeatKind.NONE);
        assertThat(cone.limits()).isEqualTo(new Cone.Limits(27, 31, 33, 38, 20));
        assertThat(cone.timing()).isEqualTo(new Cone.Timing(2, 6, 6, 10, false));
        assertThat(cone.usual()).isEqualTo(new Cone.Usual("unknown", 2, 2, 25));
        assertThat(config.hardware()).isEqualTo(new Hardware(
                new Hardware.Gpio(Path.of("/dev/gpiochip0"),
                        List.of(new OutputLine("a.air-pause", 22, false, Bias.AS_IS)), List.of()),
                new Hardware.OneWire(Path.of("/sys/bus/w1/devices"), 2_000), Optional.empty(),
                new Hardware.Paths(Path.of("/var/lib/conetender"), Path.of("/run/conetender/tell.sock"))));
    }

    @Test
    void larkmoorHasThreeConesWithTwoSwitchesEach() {
        Config config = load("larkmoor.toml").config();
        assertThat(config.settings().cones()).extracting(Cone::id).containsExactly("a", "b", "c");
        assertThat(config.settings().cones()).allSatisfy(c -> {
            assertThat(c.fittings().heat())
                    .isEqualTo(new Cone.Heat(Cone.HeatKind.IMMERSED, 25, Cone.SwitchKind.RELAY, true));
            assertThat(c.fittings().lights()).isEqualTo(new Cone.Lights(true, false));
            assertThat(c.fittings().air().geometry().canSiphon()).isFalse();
            assertThat(c.usual()).isEqualTo(new Cone.Usual(c.usual().lot(), 2, 2, 25));
        });
        assertThat(config.settings().cones()).extracting(c -> c.usual().lot())
                .containsExactly("L-0417", "L-0421", "L-0433");
        assertThat(config.settings().site().name()).isEqualTo("Larkmoor Fry Room");
        assertThat(config.settings().site().feeding().zone()).isEqualTo(ZoneId.of("Europe/London"));
        assertThat(config.settings().site().feeding().hours()).containsExactly(
                LocalTime.of(7, 30), LocalTime.of(12, 30), LocalTime.of(18, 0));
        assertThat(config.settings().site().supply().limitWatts()).isEqualTo(60);
        assertThat(config.settings().site().roomProbe()).isPresent();
        assertThat(config.hardware().mqtt().orElseThrow().uri())
                .isEqualTo(URI.create("mqtt://localhost:1883"));
    }

    @Test
    void larkmoorNamesEveryOutputOfEveryCone() {
        assertThat(load("larkmoor.toml").config().hardware().gpio().outputs()).extracting(OutputLine::id)
                .containsExactly("a.heat", "a.cut-out", "a.air-pause", "a.lamp", "b.heat", "b.cut-out",
                        "b.air-pause", "b.lamp", "c.heat", "c.cut-out", "c.air-pause", "c.lamp");
    }

    @Test
    void theFullExampleGivesEverySetting() throws IOException {
        Outcome.Accepted full = load("full.toml");
        assertThat(full.effective().stream().filter(Effective::isDefault).map(Effective::key))
                .containsExactly("cone[a].heat.bath-l");
        String text = Files.readString(Path.of("config/full.toml"));
        assertThat(SettingDocs.all()).allSatisfy(d -> assertThat(text).contains(d.name()));
        Hardware.Gpio gpio = full.config().hardware().gpio();
        assertThat(gpio.outputs()).extracting(OutputLine::id).containsExactlyInAnyOrder("a.heat", "a.cut-out",
                "a.air-pause", "a.lamp", "a.trigger", "a.button-lamp", "site.heartbeat");
        assertThat(gpio.inputs()).containsExactlyInAnyOrder(
                new InputLine("a.level", 5, true, Bias.PULL_UP),
                new InputLine("a.air-proof", 6, true, Bias.PULL_UP),
                new InputLine("a.button", 16, true, Bias.PULL_UP));
    }

    @Test
    void theFullExampleShowsTheDefaultsItSpeaksOf() {
        // What is given there as an ordinary figure is the default, so copying it changes nothing.
        Outcome.Accepted full = load("full.toml");
        Outcome.Accepted small = load("minimal.toml");
        List<String> ordinary = List.of("limits", "timing", "gpio", "one-wire", "record", "socket");
        assertThat(full.effective().stream().filter(e -> ordinary.stream().anyMatch(e.key()::contains))
                .map(e -> e.key() + " = " + e.value()).toList())
                .isEqualTo(small.effective().stream()
                        .filter(e -> ordinary.stream().anyMatch(e.key()::contains))
                        .map(e -> e.key() + " = " + e.value()).toList());
    }
}
