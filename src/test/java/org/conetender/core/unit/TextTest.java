package org.conetender.core.unit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Locale;
import org.conetender.core.face.TellLine;
import org.conetender.core.hatch.BaseDeviationCeiling;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TextTest {

    private final Locale before = Locale.getDefault();

    @AfterEach
    void theMachineSpeaksAsBefore() {
        Locale.setDefault(before);
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
