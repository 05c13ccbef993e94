package org.conetender.core.batch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Moment;
import org.junit.jupiter.api.Test;

/** How lives of the process follow each other, and what waits for a person after a loop of them. */
class LivesTest {

    private Lives lives = Lives.NONE;
    private long seq;

    private static Moment at(long s) {
        return new Moment("boot-1", s * 1_000, s * 1_000, true);
    }

    private LivesTest note(long s, String cone, Change c) {
        lives = lives.after(new Fact(++seq, at(s), cone, "", c));
        return this;
    }

    private LivesTest began(long s, long seenS) {
        return note(s, "", new Change.Began(Optional.of(at(seenS))));
    }

    private LivesTest told(String cone, Ask a) {
        return note(9_999, cone, new Change.Told(a));
    }

    @Test
    void aLifeThatWasNotLeftEndedUnexpectedly() {
        began(10, 0);
        assertThat(lives.running()).isTrue();
        assertThat(lives.exits()).as("the first one").isEmpty();
        began(20, 15);
        assertThat(lives.exits()).containsExactly(at(15));
        note(30, "", new Change.Left());
        assertThat(lives.running()).isFalse();
        began(40, 30);
        assertThat(lives.exits()).as("that was left in good order").containsExactly(at(15));
        note(50, "", new Change.Began(Optional.empty()));
        assertThat(lives.exits()).as("nothing was seen of it").containsExactly(at(15), at(50));
    }

    @Test
    void threeExitsWithinTenMinutesAreALoop() {
        began(0, 0).began(10, 5).began(20, 15);
        assertThat(lives.died()).isFalse();
        assertThat(lives.looping(Boots.NONE)).isFalse();
        began(700, 605);
        assertThat(lives.died()).isTrue();
        assertThat(lives.looping(Boots.NONE)).as("5 s to 605 s").isTrue();
        began(800, 616);
        assertThat(lives.exits()).hasSize(3).startsWith(at(15));
        assertThat(lives.looping(Boots.NONE)).as("15 s to 616 s").isFalse();
    }

    @Test
    void aLoopIsLockedUntilItIsReleased() {
        note(5, "", new Change.Tripped(Lives.LOOP, "it kept dying"));
        assertThat(lives.lock()).contains(new ConeBook.Latch(Lives.LOOP, "it kept dying", at(5)));
        assertThat(lives.locks()).hasSize(1);
        note(6, "", new Change.Tripped(Lives.DAMAGED, "cut short"));
        assertThat(lives.locks()).extracting(ConeBook.Latch::guard).containsExactly(Lives.LOOP,
                Lives.DAMAGED);
        assertThat(lives.damagedSeq()).isEqualTo(2);
        note(7, "", new Change.Released(Lives.LOOP, "seen"));
        assertThat(lives.lock()).isEmpty();
        assertThat(lives.locks()).extracting(ConeBook.Latch::guard).containsExactly(Lives.DAMAGED);
        note(8, "", new Change.Released(Lives.DAMAGED, "seen"));
        assertThat(lives.locks()).isEmpty();
        assertThat(lives.damagedSeq()).as("what stood there before may be wrong yet").isEqualTo(2);
        note(9, "a", new Change.Tripped("dry", "")).note(10, "a", new Change.Released("dry", ""));
        assertThat(lives.locks()).isEmpty();
    }

    @Test
    void whatWasSetAsideIsAskedForUntilSomebodySaysHowTheConeStands() {
        note(5, "", new Change.Tripped(Lives.LOOP, "it kept dying"))
                .note(6, "a", new Change.SetAside("r-1", "a", "'drained' of cone a"))
                .note(7, "b", new Change.SetAside("r-2", "b", "'hands-in' of cone b"));
        assertThat(lives.aside()).hasSize(2);
        told("a", new Ask.Did(Step.HANDS_IN));
        assertThat(lives.aside()).as("says nothing of what is in it").hasSize(2);
        told("b", new Ask.Did(Step.HANDS_IN));
        assertThat(lives.aside()).as("the same again").extracting(Change.SetAside::cone)
                .containsExactly("a");
        told("b", new Ask.Did(Step.FIRST_SEEN));
        assertThat(lives.aside()).as("another cone").hasSize(1);
        told("a", new Ask.Did(Step.CLEANED));
        assertThat(lives.aside()).isEmpty();
    }

    @Test
    void ofAValveThatWasSetAsideOnlyTheValveIsAWord() {
        note(5, "", new Change.Tripped(Lives.LOOP, "it kept dying"))
                .note(6, "a", new Change.SetAside("r-1", "a", "'valve-shut' of cone a"))
                .note(7, "a", new Change.SetAside("r-2", "a", "'drained' of cone a"));
        assertThat(lives.wanted("a")).contains("how cone a stands, and 'valve-shut' or 'valve-open' of cone "
                + "a, as it is");
        told("a", new Ask.Did(Step.DRAINED)).told("b", new Ask.Did(Step.VALVE_OPEN));
        assertThat(lives.wanted("a")).contains("'valve-shut' or 'valve-open' of cone a, as it is");
        assertThat(lives.valveUnheard("a")).isTrue();
        assertThat(lives.valveUnheard("b")).isFalse();
        told("a", new Ask.Did(Step.VALVE_OPEN));
        assertThat(lives.wanted("a")).isEmpty();
        assertThat(lives.aside()).isEmpty();
    }

    /** As records of before have it, in which only the words name its cone. */
    @Test
    void ofAValveWhoseConeIsNotNamedBesideTheValveIsAWordToo() {
        note(5, "", new Change.Tripped(Lives.LOOP, "it kept dying"))
                .note(6, "", new Change.SetAside("r-1", "", "'valve-shut' of cone a"));
        assertThat(lives.valveUnheard("a")).isTrue();
        told("b", new Ask.Did(Step.VALVE_OPEN));
        assertThat(lives.valveUnheard("a")).isTrue();
        told("a", new Ask.Did(Step.VALVE_OPEN));
        assertThat(lives.valveUnheard("a")).isFalse();
    }

    @Test
    void whatWasSetAsideIsForgottenWithTheNextLifeUnlessTheLockHolds() {
        note(6, "a", new Change.SetAside("r-1", "a", "'drained' of cone a")).began(10, 8);
        assertThat(lives.aside()).isEmpty();
        note(11, "", new Change.Tripped(Lives.LOOP, "it kept dying"))
                .note(12, "a", new Change.SetAside("r-1", "a", "'drained' of cone a")).began(20, 15);
        assertThat(lives.aside()).hasSize(1);
    }
}
