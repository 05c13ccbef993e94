package org.conetender.core.hatch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Lots;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;

/** One lot is learnt in a tick, since a tick must not wait; a beginning takes all in at once. */
class KnownTest {

    private static final Moment NOW = new Moment("boot-1", 0, 0, true);

    private static Lots.Kept counted(String cone, String lot, long batch, double degreeHours) {
        return new Lots.Kept(cone, batch, "", new Change.Taught(lot, batch, new Lesson(
                new Lesson.At(degreeHours, degreeHours, degreeHours / 15),
                new Lesson.Sight.Counted(200, 20, 200))));
    }

    /** Three kin of a slow source, then the lot itself. */
    private static Lots lots() {
        List<Lots.Kept> all = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            all.add(counted("a", "Lake-0" + i, i + 1, 330 + i));
        }
        all.add(counted("b", "Lake-9", 1, 340));
        return new Lots(all);
    }

    private static Batch with(String lot, long number) {
        Settings settings = org.conetender.core.Larkmoor.with();
        Batch b = Book.empty(settings, NOW).cone("a").batch();
        return new Batch(number, b.stage(), b.fill(), Optional.of(new Batch.Stock(lot, 2, NOW)), b.marks());
    }

    @Test
    void threeKinAndTheLotItselfTakeFourTicks() {
        Lots lots = lots();
        Batch b = with("Lake-9", 7);
        Known k = Known.NONE;
        for (int tick = 1; tick <= 3; tick++) {
            k = k.after(lots, "a", b);
            assertThat(k.whole()).isFalse();
            assertThat(k.kin()).hasSize(tick);
            assertThat(k.speed()).as("nothing half known is used").isEqualTo(Speed.UNKNOWN_LOT);
        }
        k = k.after(lots, "a", b);
        assertThat(k.whole()).isTrue();
        assertThat(k.speed().k50DegreeHours()).isGreaterThan(300);
        assertThat(k.after(lots, "a", b)).as("and then nothing is reckoned").isSameAs(k);
        assertThat(Known.NONE.begun(lots, "a", b)).as("a beginning").isEqualTo(k);
    }

    @Test
    void whatOneConeLearntOfKinServesTheNext() {
        Lots lots = lots();
        Known first = Known.NONE.begun(lots, "a", with("Lake-9", 7));
        Known next = first.after(lots, "c", with("Lake-9", 3));
        assertThat(next.whole()).isTrue();
        assertThat(next).isEqualTo(Known.NONE.begun(lots, "c", with("Lake-9", 3)));
    }

    @Test
    void aTinWithoutALabelIsKnownByThisBatchAlone() {
        for (String none : List.of("", "unknown")) {
            Lots lots = new Lots(List.of(counted("a", none, 7, 340), counted("a", none, 6, 100)));
            Known k = Known.NONE.begun(lots, "a", with(none, 7));
            assertThat(k.speed().k50DegreeHours()).isGreaterThan(290);
            assertThat(Known.NONE.begun(lots, "a", with(none, 8)).speed().timesSeen()).isZero();
        }
    }
}
