package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;

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
}
