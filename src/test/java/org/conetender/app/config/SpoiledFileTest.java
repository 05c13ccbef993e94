package org.conetender.app.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.conetender.core.settings.Cone;
import org.junit.jupiter.api.Test;

/** Whatever is done to a file, it is refused with its lines, or what comes out keeps every promise. */
class SpoiledFileTest {

    private static final List<String> VALUES = List.of("0", "-1", "7", "11", "12", "25", "31", "33", "1e9",
            "nan", "true", "\"\"", "\"a\"", "\"none\"", "\"bath\"", "[]", "[1]", "{}", "{ line = 9 }",
            "07:30", "40");

    private static final int SEEDS = 400;

    @Test
    void aSpoiledFileIsRefusedOrSafe() throws IOException {
        int accepted = 0;
        for (long seed = 0; seed < SEEDS; seed++) {
            accepted += judge(seed) ? 1 : 0;
        }
        // Both answers must really occur, or nothing was tried.
        assertThat(accepted).isBetween(SEEDS / 20, SEEDS * 19 / 20);
    }

    private static boolean judge(long seed) throws IOException {
        Random random = new Random(seed);
        String source = random.nextBoolean() ? "full.toml" : "larkmoor.toml";
        List<String> lines = new ArrayList<>(Files.readAllLines(Path.of("config", source)));
        for (int i = 0; i <= random.nextInt(4); i++) {
            spoil(lines, random);
        }
        String text = String.join("\n", lines);
        try {
            return switch (ConfigLoader.parse(text)) {
                case Outcome.Refused r -> {
                    assertThat(r.errors()).isNotEmpty().isSorted().allMatch(e -> e.line() >= 1
                            && e.line() <= lines.size() && !e.what().isBlank());
                    yield false;
                }
                case Outcome.Accepted a -> {
                    keepsItsPromises(a.config());
                    yield true;
                }
            };
        } catch (AssertionError | RuntimeException e) {
            throw new AssertionError("seed " + seed + " of:\n" + text, e);
        }
    }

    private static void spoil(List<String> lines, Random random) {
        List<Integer> settings = IntStream.range(0, lines.size())
                .filter(i -> lines.get(i).matches("\\s*[\\[a-z].*")).boxed().toList();
        int at = settings.get(random.nextInt(settings.size()));
        String line = lines.get(at);
        switch (random.nextInt(5)) {
            case 0 -> lines.remove(at);
            case 1 -> lines.add(at, line);
            case 2 -> lines.set(at, line.substring(0, random.nextInt(line.length())));
            default -> lines.set(at, line.contains("=") ? line.substring(0, line.indexOf('=') + 1) + " "
                    + VALUES.get(random.nextInt(VALUES.size())) : line.replace("[[", "["));
        }
    }

    private static void keepsItsPromises(Config config) {
        Set<Integer> lines = new HashSet<>();
        assertThat(config.hardware().gpio().outputs()).allMatch(o -> lines.add(o.line()));
        assertThat(config.hardware().gpio().inputs()).allMatch(i -> lines.add(i.line()));
        assertThat(config.settings().cones()).isNotEmpty().allSatisfy(c -> {
            Cone.Limits l = c.limits();
            assertThat(l.setpointC()).isBetween(15.0, 30.0).isLessThanOrEqualTo(l.guardC() - 1);
            assertThat(l.guardC()).isLessThan(l.arrestC());
            assertThat(l.arrestC()).isLessThan(l.lossC());
            assertThat(l.lossC()).isLessThanOrEqualTo(40);
            assertThat(l.floorC()).isLessThanOrEqualTo(l.setpointC());
            assertThat(c.timing().airOffCapMinutes()).isLessThanOrEqualTo(12);
            assertThat(c.timing().settleMinutes()).isLessThanOrEqualTo(c.timing().airOffCapMinutes() - 2);
            assertThat(c.fittings().probes().water()).hasSizeBetween(1, 2);
            assertThat(!c.fittings().air().geometry().canSiphon()
                    || c.fittings().air().geometry().signed().isPresent()).isTrue();
            assertThat(outputs(config)).contains(c.id() + ".air-pause");
            assertThat(outputs(config).contains(c.id() + ".heat"))
                    .isEqualTo(c.fittings().heat().kind() != Cone.HeatKind.NONE);
            assertThat(c.fittings().heat().watts()).isLessThanOrEqualTo(
                    config.settings().site().supply().limitWatts());
            heatFits(c);
        });
    }

    private static void heatFits(Cone c) {
        double litres = c.fittings().heat().kind() == Cone.HeatKind.BATH
                ? c.fittings().vessel().bathLitres() : c.usual().litres();
        assertThat(c.usual().litres()).isBetween(0.5, 20.0);
        if (c.fittings().heat().kind() != Cone.HeatKind.NONE) {
            assertThat(c.fittings().heat().watts() / litres).isBetween(3.0, 25.0);
        } else {
            assertThat(c.fittings().heat().watts()).isZero();
        }
    }

    private static List<String> outputs(Config config) {
        return config.hardware().gpio().outputs().stream().map(Hardware.OutputLine::id).toList();
    }
}
