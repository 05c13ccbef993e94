package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.conetender.core.hatch.Lesson;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;

class LotsTest {

    private long seq;

    private Fact taught(String lot, String cone, long batch, String source) {
        seq++;
        return new Fact(seq, new Moment("boot", seq * 1_000, 0, false), cone, source, new Change.Taught(lot,
                batch, new Lesson(new Lesson.At(seq, seq, 1), new Lesson.Sight.Counted(20, 3, 20))));
    }

    private Lots with(Lots lots, Lesson.Sight sight) {
        seq++;
        return lots.after(new Fact(seq, new Moment("boot", seq * 1_000, 0, false), "a", "r" + seq,
                new Change.Taught("Lake-1", 1, new Lesson(new Lesson.At(seq, seq, 1), sight))));
    }

    @Test
    void whatIsSaidTwiceOfOneBatchCountsOnce() {
        Lots lots = with(with(with(Lots.NONE, new Lesson.Sight.NoneYet()), new Lesson.Sight.First()),
                new Lesson.Sight.First());
        lots = with(lots, new Lesson.Sight.NoneYet());
        lots = with(with(lots, new Lesson.Sight.Judged(Lesson.Word.LATE)),
                new Lesson.Sight.Judged(Lesson.Word.RIGHT));
        assertThat(lots.own("Lake-1", "a", 1)).extracting(Lesson::sight).containsExactly(
                new Lesson.Sight.NoneYet(), new Lesson.Sight.First(),
                new Lesson.Sight.Judged(Lesson.Word.RIGHT));
        assertThat(lots.others("Lake-1", "b", 1)).first().asList().hasSize(3);
        assertThat(lots.own("Lake-1", "a", 1).get(1).at().mostDegreeHours()).as("the first who saw them")
                .isEqualTo(2);
    }

    private Lots many() {
        return Lots.NONE.after(taught("Lake-1", "a", 1, "r1")).after(taught("Lake-1", "a", 1, "r2"))
                .after(taught("Lake-1", "b", 1, "r3")).after(taught("Lake-2", "a", 2, "r4"))
                .after(taught("Sea-1", "a", 3, "r5")).after(taught("0417", "a", 4, "r6"));
    }

    @Test
    void batchesOfTwoConesAreTwoThoughTheirNumbersAreOne() {
        assertThat(many().own("Lake-1", "a", 1)).hasSize(2);
        assertThat(many().others("Lake-1", "a", 1)).hasSize(1);
        assertThat(many().others("Lake-1", "c", 1)).hasSize(2).first().asList().hasSize(2);
        assertThat(many().own("Lake-2", "a", 1)).isEmpty();
    }

    /** Who counts ids from one again uses them anew, months later. */
    @Test
    void whatAnIdTaughtBeforeIsNotTakenBackWithItsNewRequest() {
        Lots may = Lots.NONE.after(taught("Lake-1", "a", 1, "12"));
        seq += Book.REMEMBERED_IDS;
        Fact july = taught("Lake-2", "a", 9, "12");
        assertThat(may.after(july).without(july)).isEqualTo(may);
        assertThat(may.all().getFirst().by(july)).isFalse();
        assertThat(july.sameRequest(new Fact(1, july.at(), "a", "12", july.change()))).isFalse();
        assertThat(july.sameRequest(new Fact(seq - 3, july.at(), "a", "12", july.change()))).isTrue();
    }

    @Test
    void theLettersOfALabelNameItsSource() {
        assertThat(many().relatives("Lake-1")).hasSize(1);
        assertThat(many().relatives("Lake-9")).hasSize(2);
        assertThat(many().relatives("Sea-2")).hasSize(1);
        assertThat(many().relatives("0417")).isEmpty();
        assertThat(many().relatives("0500")).isEmpty();
    }

    @Test
    void aReportTakesItsLessonWithIt() {
        Lots all = many();
        Fact report = new Fact(99, new Moment("boot", 0, 0, false), "a", "r2", new Change.ClockSet());
        assertThat(all.without(report).own("Lake-1", "a", 1)).hasSize(1);
        Fact other = new Fact(99, new Moment("boot", 0, 0, false), "b", "r2", new Change.ClockSet());
        assertThat(all.without(other)).isSameAs(all);
    }

    @Test
    void relativesAreTheNewestThreeLotsEachBatchByBatch() {
        Lots lots = many();
        assertThat(lots.relatives("Lake-9")).extracting(List::size).as("Lake-2, then Lake-1")
                .containsExactly(1, 2);
        assertThat(lots.relatives("Lake-9").get(1)).extracting(List::size).containsExactly(2, 1);
        lots = lots.after(taught("Lake-3", "a", 5, "r7")).after(taught("Lake-4", "a", 6, "r8"))
                .after(taught("Lake-4", "b", 6, "r9"));
        assertThat(lots.relatives("Lake-9")).extracting(List::size)
                .as("Lake-4, Lake-3 and Lake-2").containsExactly(2, 1, 1);
        assertThat(lots.relatives("Lake-2")).hasSize(3);
    }

    @Test
    void aLabelWithoutADigitIsItsOwnSource() {
        assertThat(Lots.source("Lake")).isEqualTo("Lake");
        assertThat(Lots.source("Lake 17-b")).isEqualTo("Lake");
        assertThat(Lots.source("417")).isEmpty();
        assertThat(Lots.source("")).isEmpty();
    }

    @Test
    void aTinThatNobodyNamedHasNoLot() {
        assertThat(Lots.unnamed("")).isTrue();
        assertThat(Lots.unnamed("unknown")).isTrue();
        assertThat(Lots.unnamed("L-0417")).isFalse();
    }

    /** The daemon's own lessons have no request: they stand right behind their report. */
    @Test
    void aLessonWithoutARequestBelongsToTheFactBeforeIt() {
        Lots lots = Lots.NONE.after(taught("Lake-1", "a", 1, ""));
        Lots.Kept kept = lots.all().getFirst();
        assertThat(kept.by("a", kept.seq() - 1, "")).isTrue();
        assertThat(kept.by("a", kept.seq(), "")).isFalse();
        assertThat(kept.by("b", kept.seq() - 1, "")).isFalse();
        assertThat(kept.by("a", kept.seq() - 1, "r1")).isFalse();
    }

    @Test
    void nobodyHasSeenNoneAfterTheFirst() {
        Lots lots = with(with(with(Lots.NONE, new Lesson.Sight.First()), new Lesson.Sight.NoneYet()),
                new Lesson.Sight.Counted(3, 0, 9));
        assertThat(lots.own("Lake-1", "a", 1)).extracting(Lesson::sight).containsExactly(
                new Lesson.Sight.First(), new Lesson.Sight.Counted(3, 0, 9));
    }
}
