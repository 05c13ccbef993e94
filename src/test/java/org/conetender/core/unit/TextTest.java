package org.conetender.core.unit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.DoubleStream;
import org.conetender.core.face.TellLine;
import org.conetender.core.hatch.BaseDeviationCeiling;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TextTest {

    private final Locale before = Locale.getDefault();

    @AfterEach
    void theMachineSpeaksAsBefore() {
        Locale.setDefault(before);
    }

    @Test
    void decimalsAreThoseOfTheFormatter() {
        Random random = new Random(17);
        DoubleStream special = DoubleStream.of(0, -0.0, 0.05, 0.15, 0.25, 26.45, 26.95, -0.04, -0.5, 99.95,
                1e9, 1e12, Double.NaN, Double.NEGATIVE_INFINITY);
        DoubleStream any = DoubleStream.generate(() -> switch (random.nextInt(4)) {
            case 0 -> random.nextInt(-2_000, 2_000) / 20.0;
            // As probes step, quarters among them.
            case 2 -> random.nextInt(-800, 800) / 16.0;
            case 1 -> random.nextDouble(-50, 400);
            default -> random.nextGaussian() * Math.pow(10, random.nextInt(-3, 12));
        }).limit(20_000);
        DoubleStream.concat(special, any).forEach(d -> {
            for (int digits = 0; digits < 3; digits++) {
                String formatted = Text.of("%." + digits + "f", d);
                assertThat(Text.decimals(d, digits)).as("%s", d).isEqualTo(formatted.matches("-[0.]+")
                        ? formatted.substring(1) : formatted);
            }
        });
    }

    @ParameterizedTest
    @ValueSource(strings = {"de-DE", "fr-FR", "ar-EG", "hi-IN-u-nu-deva", "tr-TR"})
    void figuresReadAlikeWhateverTheMachineSpeaks(String language) {
        Locale.setDefault(Locale.forLanguageTag(language));
        assertThat(Text.of("the water is at %.1f °C, line %d", 27.0, 12))
                .isEqualTo("the water is at 27.0 °C, line 12");
        assertThatThrownBy(() -> new BaseDeviationCeiling(12, 33, 31))
                .hasMessageContaining("12.0, 33.0");
        assertThat(TellLine.read("a setpoint 26.5").toString()).contains("26.5");
        assertThat(List.of("a first-seen", "a topped-up", "a disinfected")).allSatisfy(line ->
                assertThat(TellLine.read(line).toString()).startsWith("Understood"));
    }
}
