package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** After a harvest one answer is asked for, once, and only of what has hatched. */
class VerdictTest {

    private static Set<String> where(Predicate<ConeBook> which) {
        Set<String> out = new TreeSet<>(FitsTest.WAYS.keySet());
        out.removeIf(s -> !which.test(FitsTest.in(s)));
        return out;
    }

    private static ConeBook then(ConeBook b, Change... changes) {
        long seq = 100;
        for (Change c : changes) {
            b = b.after(new Fact(seq, b.batch().stage().since().plusMs(seq), "a", "s" + seq, c));
            seq++;
        }
        return b;
    }

    private static Change did(Step s) {
        return new Change.Told(new Ask.Did(s));
    }

    @Test
    void somethingWasHarvestedWhereItIsDrawnOrGone() {
        assertThat(where(Verdict::harvested)).containsExactlyInAnyOrder("drawing", "drained");
        assertThat(Verdict.harvested(then(FitsTest.in("ready"), did(Step.CLEANED))))
                .as("the cleaning tells of it").isTrue();
        assertThat(Verdict.harvested(then(FitsTest.in("drawing"), did(Step.PART_DRAWN)))).isTrue();
        assertThat(Verdict.harvested(then(FitsTest.in("filled"), did(Step.DRAINED))))
                .as("no cysts were in it").isFalse();
        assertThat(Verdict.harvested(then(FitsTest.in("hydrating"), did(Step.DRAINED))))
                .as("nothing had hatched").isFalse();
    }

    @Test
    void whatWasGivenUpIsNoHarvestUnlessItWasDrawnBefore() {
        assertThat(Verdict.harvested(then(FitsTest.in("ready"), did(Step.ABANDONED), did(Step.DRAINED))))
                .isFalse();
        assertThat(Verdict.harvested(then(FitsTest.in("drawing"), did(Step.ABANDONED), did(Step.DRAINED))))
                .isTrue();
    }

    /** What seemed to have hatched by hours that were only assumed. */
    @Test
    void whatWentBackToIncubatingHasNotHatched() {
        ConeBook back = then(FitsTest.in("hatching"), new Change.Moved(Reconsidered.INCUBATING, ""));
        assertThat(Verdict.harvested(then(back, did(Step.DRAINED)))).isFalse();
        assertThat(Verdict.harvested(then(back, new Change.Moved("hatching", ""), did(Step.DRAINED))))
                .isTrue();
    }

    @Test
    void onlyWhatCameOutHasAnHourToJudge() {
        assertThat(Verdict.judgeRefusal(FitsTest.in("drained"))).isEmpty();
        ConeBook early = then(FitsTest.in("hydrating"), did(Step.DRAINED));
        assertThat(Verdict.judgeRefusal(early)).hasValueSatisfying(w -> assertThat(w)
                .startsWith("there is no harvest to judge: ").contains("say what they weigh"));
        assertThat(Verdict.judgeRefusal(then(early, new Change.Told(new Ask.DidWeigh(4))))).isEmpty();
        assertThat(Verdict.judgeRefusal(then(FitsTest.in("hydrating"), new Change.Told(new Ask.DidCount(9, 0,
                1, 1)), did(Step.DRAINED)))).isEmpty();
        assertThat(Verdict.judgeRefusal(then(FitsTest.in("hydrating"), new Change.Told(new Ask.DidCount(0, 0,
                9, 1)), did(Step.DRAINED)))).isPresent();
        for (ConeBook b : List.of(FitsTest.in("ready"), given("ready"), given("hydrating"),
                FitsTest.in("clean"))) {
            assertThat(Verdict.judgeRefusal(b)).hasValueSatisfying(w -> assertThat(w)
                    .startsWith("there is no harvest to judge; say it after the next one"));
        }
    }

    private static ConeBook given(String stage) {
        return then(FitsTest.in(stage), did(Step.ABANDONED), did(Step.DRAINED));
    }

    @Test
    void aWeightIsTakenOfWhateverCameOut() {
        assertThat(Verdict.weighRefusal(FitsTest.in("drained"))).isEmpty();
        assertThat(Verdict.weighRefusal(then(FitsTest.in("hydrating"), did(Step.DRAINED)))).isEmpty();
        assertThat(Verdict.weighRefusal(then(FitsTest.in("drawing"), did(Step.ABANDONED)))).isEmpty();
        for (ConeBook b : List.of(FitsTest.in("ready"), given("ready"), FitsTest.in("clean"),
                then(FitsTest.in("filled"), did(Step.DRAINED)))) {
            assertThat(Verdict.weighRefusal(b)).hasValueSatisfying(w -> assertThat(w)
                    .startsWith("there is no harvest to weigh; say it after the next one"));
        }
    }

    @Test
    void theAnswerIsWantedOnceTheConeIsEmptyAndUntilItIsGiven() {
        assertThat(where(Verdict::wanted)).containsExactly("drained");
        ConeBook drained = FitsTest.in("drained");
        for (Step s : List.of(Step.TOO_EARLY, Step.RIGHT, Step.LATE, Step.ABANDONED)) {
            assertThat(Verdict.wanted(then(drained, did(s)))).as(s.word()).isFalse();
        }
        assertThat(Verdict.wanted(then(drained, did(Step.RINSED)))).isTrue();
        assertThat(Verdict.wanted(then(drained, did(Step.CLEANED)))).isTrue();
        assertThat(Verdict.wanted(then(FitsTest.in("filled"), did(Step.DRAINED)))).isFalse();
    }

    @Test
    void nothingIsAskedOfABatchThatNeverHatched() {
        ConeBook hydrating = FitsTest.in("hydrating");
        assertThat(Verdict.wanted(then(hydrating, did(Step.DRAINED)))).isFalse();
        assertThat(Verdict.wanted(then(hydrating, new Change.Moved("incubating", ""), did(Step.DRAINED))))
                .isFalse();
        assertThat(Verdict.wanted(then(hydrating, did(Step.NONE_SEEN), did(Step.DRAINED)))).isFalse();
        assertThat(Verdict.wanted(then(hydrating, did(Step.FIRST_SEEN), did(Step.DRAINED)))).isTrue();
        assertThat(Verdict.wanted(then(hydrating, did(Step.SETTLE), did(Step.DRAINED)))).isTrue();
        assertThat(Verdict.wanted(then(hydrating, new Change.Moved("ready", ""), did(Step.DRAINED))))
                .isTrue();
        assertThat(Verdict.wanted(then(FitsTest.in("incubating"), new Change.Moved("hatching", ""),
                did(Step.DRAINED)))).isTrue();
    }

    @Test
    void whereNobodyReportedTheDrainingItIsAskedWithTheCleaning() {
        assertThat(Verdict.wantedOnlyNow(then(FitsTest.in("ready"), did(Step.CLEANED)))).isTrue();
        assertThat(Verdict.wantedOnlyNow(then(FitsTest.in("drained"), did(Step.CLEANED)))).isFalse();
        assertThat(Verdict.wantedOnlyNow(then(FitsTest.in("ready"), did(Step.DRAINED)))).isFalse();
        assertThat(Verdict.wantedOnlyNow(then(FitsTest.in("ready"), did(Step.CLEANED), did(Step.LATE))))
                .isFalse();
    }
}
