package org.conetender.core.judge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.conetender.core.Larkmoor;
import org.conetender.core.Story;
import org.conetender.core.image.Image;
import org.conetender.core.image.ProbeSample;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.conetender.core.judge.Watch.Suspect;
import org.conetender.core.settings.Cone;
import org.junit.jupiter.api.Test;

/** A probe that the watch finds out of the water, though its reading did not jump: the ladder takes over. */
class DepartureTest {

    private final Story s = Story.at(Larkmoor.Fitting.ROOM_PROBE).does(Step.STARTED).minutes(20);
    private ConeJudgement j = s.state().live().cones().get("a").judged();
    private long nowMs = s.now().monoMs();

    private static ConeJudgement suspecting(ConeJudgement j, Suspect what) {
        Thermal t = j.thermal().orElseThrow();
        Watch w = t.watch();
        Watch of = new Watch(w.expectedC(), w.underway(), w.driftKPerS(), w.hot(), w.cold(), w.away(),
                w.still(), what);
        Thermal suspect = new Thermal(t.estimate(), of, t.proof(), t.proofAgeS(), true, t.holding(),
                t.first(), t.unlikeS());
        return new ConeJudgement(j.water(), j.roomC(), j.level(), j.heat(), Optional.of(suspect), j.air(),
                j.motion(), j.tried());
    }

    private void look(int seconds) {
        Cone cone = s.settings().cone("a").orElseThrow();
        for (int i = 0; i < seconds; i++) {
            nowMs += 1_000;
            Image image = new Image(s.now().plusMs(nowMs - s.now().monoMs()),
                    List.of(new ProbeSample("a-water", new Reading.Value(27 + i % 2 * 0.0625), 0)), List.of(),
                    Image.Inbox.EMPTY, Image.Pipes.HEALTHY);
            j = Judge.look(j, new Judge.About(cone, s.state().book().cone("a"), false, Optional.of(20.0),
                    250_000, false),
                    image, new Judge.Did(new Judge.Switches(false, true, true, true), true, 27, 1_000));
        }
    }

    @Test
    void itsReadingIsUntrustedAtOnceAndBelievedAgainAfterThreeGoodMinutes() {
        j = suspecting(j, Suspect.IN_AIR);
        look(1);
        assertThat(j.belief()).isInstanceOfSatisfying(Belief.Untrusted.class,
                u -> assertThat(u.why()).contains("moves as no water does"));
        assertThat(j.water().departures()).hasSize(1);
        assertThat(j.thermal().orElseThrow().watch().suspect()).as("the ladder has it now")
                .isEqualTo(Suspect.NONE);
        look(170);
        assertThat(j.belief().known()).isFalse();
        look(20);
        assertThat(j.belief().known()).isTrue();
        assertThat(j.water().departures()).as("one departure is one").hasSize(1);
    }

    @Test
    void itCountsWithTheOthersOfTheHour() {
        for (int i = 1; i <= Water.DEPARTURES_TO_LATCH; i++) {
            j = suspecting(j, Suspect.IN_AIR);
            look(200);
            assertThat(j.water().departures()).hasSize(i);
        }
    }

    @Test
    void whatElseIsSuspectedLeavesTheReadingAlone() {
        for (Suspect other : List.of(Suspect.NONE, Suspect.WELDED, Suspect.DEAD, Suspect.FROZEN)) {
            j = suspecting(j, other);
            look(5);
            assertThat(j.belief().known()).isTrue();
            assertThat(j.thermal().orElseThrow().watch().suspect()).isEqualTo(other);
        }
    }
}
