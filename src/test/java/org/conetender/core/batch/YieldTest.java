package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.conetender.core.image.Ask;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;

/** What a batch gave, by the scales. */
class YieldTest {

    private static Fact weighed(double wetG) {
        return new Fact(1, new Moment("b", 0, 0, false), "a", "", new Change.Told(new Ask.DidWeigh(wetG)));
    }

    private static Fact other() {
        return new Fact(1, new Moment("b", 0, 0, false), "a", "", new Change.Told(new Ask.SetSetpoint(26)));
    }

    @Test
    void whatWasWeighedInSeveralSievesCountsTogether() {
        Batch b = FitsTest.in("drained").batch();
        assertThat(Yield.of(b, List.of(weighed(3), other(), weighed(5)))).contains(new Yield(8, 2));
        assertThat(new Yield(8, 2).perGram()).isEqualTo(4);
        assertThat(Yield.of(b, List.of(other()))).isEmpty();
        assertThat(Yield.of(FitsTest.in("clean").batch(), List.of(weighed(3)))).isEmpty();
    }

    @Test
    void noGramOfCystsGivesMoreThanFifteen() {
        assertThat(new Yield(30, 2).possible()).isTrue();
        assertThat(new Yield(30.1, 2).possible()).isFalse();
    }
}
