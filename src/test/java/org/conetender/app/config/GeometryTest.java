package org.conetender.app.config;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Water runs back into a pump that is not above it; only a person may accept that, by name. */
class GeometryTest {

    private static Draft lowPump() {
        return Draft.good().with("pump-outlet-cm", "pump-outlet-cm = 45");
    }

    @Test
    void aPumpLevelWithTheWaterlineIsRefusedWithThreeWaysOut() {
        assertThat(lowPump().errors()).singleElement().asString()
                .startsWith("f:" + lowPump().line("pump-outlet-cm")
                        + ": cone[a].geometry.pump-outlet-cm = 45: ")
                .contains("not above the waterline (45 cm)", "air nozzle", "Raise the pump",
                        "fit a check valve", "siphon-risk-accepted = \"name, date\"");
    }

    @Test
    void aDipTubeSiphonsJustAsWell() {
        assertThat(lowPump().after("proof-line", "entry = \"dip-tube\"").errors()).singleElement().asString()
                .contains("siphon back through the dip tube");
    }

    @Test
    void aCheckValveIsEnoughButIsNotTrustedSilently() {
        Draft draft = lowPump().after("waterline-cm", "check-valve = true");
        assertThat(draft.errors()).isEmpty();
        assertThat(draft.warnings()).singleElement().asString().contains("the check valve alone");
    }

    @Test
    void aSignatureIsAcceptedAndShownEveryTime() {
        Draft draft = lowPump().after("waterline-cm", "siphon-risk-accepted = \"the keeper, 2026-03-14\"");
        assertThat(draft.accepted().config().settings().cones().getFirst().fittings().air().geometry()
                .signed())
                .contains("the keeper, 2026-03-14");
        assertThat(draft.warnings()).singleElement().asString().contains("signed", "shut by hand");
    }

    @Test
    void aSignedDipTubeIsToBeLiftedOut() {
        assertThat(lowPump().after("waterline-cm", "siphon-risk-accepted = \"the keeper, 2026-03-14\"")
                .after("proof-line", "entry = \"dip-tube\"").warnings()).singleElement().asString()
                .contains("lift the dip tube out");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "yes", "the keeper", ", 2026-03-14", "the keeper, 14.3.2026",
        "the keeper, 2026-02-30"})
    void whatIsNotANameAndADateSignsNothing(String text) {
        assertThat(lowPump().after("waterline-cm", "siphon-risk-accepted = \"" + text + "\"").errors())
                .singleElement().asString().contains("it must be \"name, date\"");
    }

    @Test
    void aSignatureWithoutARiskIsPointedOut() {
        assertThat(Draft.good().after("waterline-cm", "siphon-risk-accepted = \"the keeper, 2026-03-14\"")
                .warnings()).singleElement().asString().contains("nothing to sign");
    }

    @Test
    void aHeightThatWasNotUnderstoodIsNotAlsoCalledASiphon() {
        assertThat(Draft.good().with("pump-outlet-cm", "pump-outlet-cm = \"low\"").errors()).hasSize(1);
        assertThat(lowPump().after("waterline-cm", "check-valve = \"yes\"").errors()).singleElement()
                .asString().contains("true or false");
    }

    @Test
    void aPumpJustAboveTheWaterIsWarnedOf() {
        assertThat(Draft.good().with("pump-outlet-cm", "pump-outlet-cm = 47").warnings()).singleElement()
                .asString().contains("less than 5 cm above");
    }

    @Test
    void settlingByItselfNeedsProvenAirAndNoSiphon() {
        Draft risky = lowPump().after("waterline-cm", "siphon-risk-accepted = \"the keeper, 2026-03-14\"")
                .with("proof-line", "").after("settle-min", "automatic-settling = true");
        assertThat(risky.errors()).hasSize(2).allMatch(e -> e.contains("automatic-settling = true"))
                .anyMatch(e -> e.contains("only a person can shut the air valve"))
                .anyMatch(e -> e.contains("air.proof-line"));
        assertThat(Draft.good().after("settle-min", "automatic-settling = true").errors()).isEmpty();
    }
}
