package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.image.Ask;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;

class OpeningTest {

    private static Fact fact(int seq, String source, Change change) {
        return new Fact(seq, new Moment("boot-1", 1_000_000 + seq / 2 * 60_000L, 0, false), "a", source,
                change);
    }

    private static Fact filled(int seq, String source, double litres) {
        return fact(seq, source, new Change.Told(new Ask.DidFill(litres, 25)));
    }

    /** Whoever counts requests from one again, long after, has the id of one that was set aside once. */
    private static final List<Fact> KEPT = List.of(
            filled(2, "1", 1.0),
            filled(4, "2", 1.1),
            filled(6, "1", 1.2),
            filled(7, "1", 1.3),
            fact(8, "", new Change.SetAside("1", "a", "'filled' of cone a")),
            filled(10, "1", 1.4));

    @Test
    void onlyTheLastRequestBeforeItIsSetAsideAndNoOtherOfThatId() {
        assertThat(Opening.aside(KEPT)).containsExactlyInAnyOrder(6L, 7L);
        assertThat(Opening.aside(KEPT.subList(0, 4), KEPT.subList(4, 5))).as("the opening of this life")
                .containsExactlyInAnyOrder(6L, 7L);
    }

    @Test
    void aRequestWithTheIdOfOneThatWasSetAsideOutlivesTheProcess() {
        Moment now = new Moment("boot-1", 9_000_000, 0, false);
        State s = State.begin(Larkmoor.with(), KEPT, Optional.empty(), now);
        assertThat(s.book().cone("a").batch().fill().map(Batch.Fill::litres)).contains(1.4);
        State was = State.begin(Larkmoor.with(), KEPT.subList(0, 5), Optional.empty(), now);
        assertThat(was.book().cone("a").batch().fill().map(Batch.Fill::litres)).contains(1.1);
    }
}
