package org.conetender.app.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.conetender.app.config.SettingDoc.Fallback;
import org.conetender.app.config.SettingDoc.Kind;
import org.conetender.core.settings.Cone;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.tomlj.Toml;
import org.tomlj.TomlArray;

/** Every setting is described, and what is described is a setting. */
class SettingDocsTest {

    static Stream<SettingDoc> all() {
        return SettingDocs.all().stream();
    }

    @Test
    void everySettingTheLoaderKnowsIsDescribedAndTheOtherWayRound() throws IOException {
        // The loader cannot ask for a key without a row (it throws); here no row is left unasked.
        Findings findings = new Findings();
        ConfigLoader.parse(Files.readString(Path.of("config/full.toml")), findings);
        Set<String> described = all().map(SettingDoc::key).collect(Collectors.toSet());
        assertThat(findings.asked()).containsExactlyInAnyOrderElementsOf(described);
    }

    @ParameterizedTest
    @MethodSource("all")
    void everyDescriptionIsWhole(SettingDoc doc) {
        assertThat(doc.purpose()).endsWith(".").doesNotContain("  ");
        assertThat(doc.range()).isNotBlank();
        assertThat(doc.fallbackText()).isNotBlank();
        assertThat(allowed(doc, doc.example())).as("example %s", doc.example()).isTrue();
        if (doc.fallback() instanceof Fallback.Value v) {
            assertThat(allowed(doc, v.toml())).as("default %s", v.toml()).isTrue();
        }
        if (doc.kind() instanceof Kind.Bounded b && !doc.key().startsWith("<")) {
            assertThat(b.unit()).isNotBlank();
            assertThat(b.least()).isLessThan(b.most());
        }
    }

    private static boolean allowed(SettingDoc doc, String toml) {
        Object value = Toml.parse("x = " + toml).get("x");
        return switch (doc.kind()) {
            case Kind.Bounded b -> value instanceof Number n && n.doubleValue() >= b.least()
                    && n.doubleValue() <= b.most();
            case Kind.Word w -> value instanceof String s && w.words().contains(s);
            case Kind.Flag f -> value instanceof Boolean;
            case Kind.Text t -> value instanceof String;
            case Kind.Texts t -> value instanceof TomlArray;
            case Kind.Line l -> value instanceof Long;
        };
    }

    @ParameterizedTest
    @MethodSource("all")
    void aFigureCarriesItsUnitInItsName(SettingDoc doc) {
        List<String> ends = List.of("-c", "-cm", "-l", "litres", "-g", "-w", "watts", "-s", "-min",
                "-minutes", "-h", "ppt", "cycles-per-day", "-cycles");
        assertThat(doc.unit().isEmpty() || ends.stream().anyMatch(doc.name()::endsWith)).isTrue();
    }

    @Test
    void wordsAreInTheOrderOfWhatTheyMean() {
        assertThat(ConeDocs.HEAT).isEqualTo(written(Cone.HeatKind.values()));
        assertThat(ConeDocs.SWITCH).isEqualTo(written(Cone.SwitchKind.values()));
        assertThat(ConeDocs.ENTRY).isEqualTo(written(Cone.AirEntry.values()));
        assertThat(SiteDocs.BIAS).isEqualTo(written(Hardware.Bias.values()));
    }

    private static List<String> written(Enum<?>[] values) {
        return Stream.of(values).map(v -> v.name().toLowerCase(Locale.ROOT).replace('_', '-')).toList();
    }

    @Test
    void aSettingIsFoundByItsNameItsKeyOrItsSection() {
        assertThat(SettingDocs.matching("setpoint-c")).extracting(SettingDoc::key)
                .containsExactly("cone.limits.setpoint-c");
        assertThat(SettingDocs.matching("cone.limits.setpoint-c")).hasSize(1);
        assertThat(SettingDocs.matching("cone.limits")).hasSize(5);
        assertThat(SettingDocs.matching("nonsense")).isEmpty();
        assertThat(SettingDocs.near("setpiont-c")).contains("setpoint-c");
    }
}
