package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.conetender.core.image.Ask;
import org.conetender.core.settings.Cone.Usual;
import org.junit.jupiter.api.Test;

/** Which figures are believed: each bound itself still is, and what lies beyond it is refused by name. */
class FiguresTest {

    private static void good(Ask... asks) {
        for (Ask a : asks) {
            assertThat(Fits.badFigures(a)).as(a.toString()).isEmpty();
        }
    }

    private static void bad(String word, Ask... asks) {
        for (Ask a : asks) {
            assertThat(Fits.badFigures(a)).as(a.toString()).hasValueSatisfying(s ->
                    assertThat(s).contains(word).endsWith("."));
        }
    }

    @Test
    void ofAFilling() {
        good(new Ask.DidFill(Usual.LEAST_LITRES, 0), new Ask.DidFill(Usual.MOST_LITRES, Usual.MOST_PPT));
        bad("litres", new Ask.DidFill(Usual.LEAST_LITRES - 0.1, 25),
                new Ask.DidFill(Usual.MOST_LITRES + 0.1, 25), new Ask.DidFill(Double.NaN, 25));
        bad("ppt", new Ask.DidFill(2, -0.1), new Ask.DidFill(2, Usual.MOST_PPT + 0.1));
    }

    @Test
    void ofCysts() {
        good(new Ask.DidStock("L", 0.01), new Ask.DidStock("x".repeat(40), 200), new Ask.DidStock("L 1", 2));
        bad("cysts-g", new Ask.DidStock("L", 0.009), new Ask.DidStock("L", 200.1));
        bad("label", new Ask.DidStock("x".repeat(41), 2), new Ask.DidStock("", 2),
                new Ask.DidStock("L\t1", 2), new Ask.DidStock("L\u001f1", 2));
    }

    @Test
    void ofACount() {
        good(new Ask.DidCount(0, 0, 1, 0.01), new Ask.DidCount(0, 1, 0, 1), new Ask.DidCount(1, 0, 0, 1_000),
                new Ask.DidCount(1_000_000, 1_000_000, 1_000_000, 1), new Ask.DidCount(1, 2, 3, 1),
                new Ask.DidCount(3, 5, 2, 1));
        bad("between 0 and 1000000", new Ask.DidCount(-1, 1, 1, 1), new Ask.DidCount(1, -1, 1, 1),
                new Ask.DidCount(1, 1, -1, 1), new Ask.DidCount(1_000_001, 0, 0, 1),
                new Ask.DidCount(0, 1_000_001, 0, 1), new Ask.DidCount(0, 0, 1_000_001, 1));
        bad("nothing was counted", new Ask.DidCount(0, 0, 0, 1));
        bad("sample-ml", new Ask.DidCount(1, 0, 0, 0.009), new Ask.DidCount(1, 0, 0, 1_000.1));
    }

    @Test
    void ofAHarvestAndOfATin() {
        good(new Ask.DidWeigh(0.01), new Ask.DidWeigh(5_000), new Ask.TinHolds("L-0417", 0),
                new Ask.TinHolds("L-0417", 50_000));
        bad("wet-g", new Ask.DidWeigh(0), new Ask.DidWeigh(5_000.1));
        bad("cysts-g", new Ask.TinHolds("L-0417", -1), new Ask.TinHolds("L-0417", 50_001));
        bad("label of 1 to 40", new Ask.TinHolds(" ", 1));
        bad("a tin without a label", new Ask.TinHolds("unknown", 1));
    }

    private static Ask usual(Double litres, Double cystsG, Double ppt, String lot) {
        return new Ask.SetUsual(Optional.ofNullable(lot), Optional.ofNullable(litres),
                Optional.ofNullable(cystsG), Optional.ofNullable(ppt));
    }

    @Test
    void ofWhatIsUsual() {
        good(usual(null, null, null, null), usual(Usual.LEAST_LITRES, null, null, null),
                usual(null, 200.0, null, null), usual(null, null, Usual.LEAST_PPT, null),
                usual(null, null, Usual.MOST_PPT, null), usual(null, null, null, "L-0417"));
        bad("litres", usual(Usual.MOST_LITRES + 1, 2.0, 25.0, "L"));
        bad("ppt", usual(2.0, 2.0, Usual.LEAST_PPT - 0.1, "L"), usual(null, null, Usual.MOST_PPT + 1, null));
        bad("cysts-g", usual(2.0, 0.0, 25.0, "L"));
        bad("label", usual(2.0, 2.0, 25.0, " "));
    }

    @Test
    void ofHoursOnTheShelf() {
        good(new Ask.Shelve("dry", 0), new Ask.Shelve("dry", Ask.Shelve.MOST_HOURS));
        bad("hours", new Ask.Shelve("dry", -0.1), new Ask.Shelve("dry", Ask.Shelve.MOST_HOURS + 0.1));
    }

    @Test
    void ofMuchMoreThanUsual() {
        Usual usual = new Usual("L-0417", 2, 2, 25);
        assertThat(Fits.tooMuch(3, usual)).isEmpty();
        assertThat(Fits.tooMuch(3.01, usual)).hasValueSatisfying(s -> assertThat(s)
                .contains("litres = 3.01 ").contains("usually filled with 2 L")
                .contains("'usual litres=3.01'"));
    }

    @Test
    void aRefusalNamesTheFigureAsItWasGivenAndItsBounds() {
        assertThat(Fits.badFigures(new Ask.DidWeigh(6_000))).contains(
                "wet-g = 6000.0 cannot be right; give a number from 0.01 to 5000.");
    }
}
