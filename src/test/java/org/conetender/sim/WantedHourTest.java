package org.conetender.sim;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.Optional;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Stage;
import org.conetender.core.guard.Guards;
import org.conetender.core.image.Hour;
import org.junit.jupiter.api.Test;

/** The whole daemon on simulated water, and a person who says when the nauplii are wanted. */
class WantedHourTest {

    private static Batch batch(Rig r) {
        return r.state().book().cone("a").batch();
    }

    @Test
    void aPersonWhoWantsThemForAFeedHasThemCalledReadyThen() {
        Rig r = new Rig(Larkmoor.settings(), 5, Bench.larkmoor(), Guards.ALL).withPerson(new Habit(true, 0, 2,
                LocalTime.of(6, 30), LocalTime.of(22, 30)));
        Optional<Hour> wanted = Optional.empty();
        double lowestC = 99;
        double highestC = 0;
        long readyAtMs = -1;
        for (int s = 0; s < 60 * 3_600 && readyAtMs < 0; s++) {
            r.second();
            assertThat(r.invariants().broken()).isEmpty();
            wanted = r.alive() && wanted.isEmpty() ? batch(r).marks().readyBy() : wanted;
            if (wanted.isPresent()) {
                double aim = r.state().live().cones().get("a").hold().aimC();
                boolean growing = batch(r).stage() instanceof Stage.Incubating;
                lowestC = growing ? Math.min(lowestC, aim) : lowestC;
                highestC = growing ? Math.max(highestC, aim) : highestC;
                readyAtMs = batch(r).stage() instanceof Stage.Ready ? r.world().clock().trueWallMs() : -1;
            }
        }
        assertThat(wanted).as("the hour was accepted").isPresent();
        Instant hour = Instant.ofEpochMilli(wanted.get().wallMs(r.settings().site().feeding().zone()));
        assertThat(r.settings().site().feeding().hours()).contains(wanted.get().time());
        assertThat(lowestC).as("held for it").isGreaterThanOrEqualTo(22);
        assertThat(highestC).isLessThanOrEqualTo(30);
        assertThat(Duration.between(Instant.ofEpochMilli(readyAtMs), hour).abs())
                .as("a lot not known is called ready near its announced hour, though the first look moved it")
                .isLessThan(Duration.ofMinutes(90));
    }

    @Test
    void theThemeBringsEveryRefusalAndTheAlarm() {
        Rig r = Theme.ASKED_HOUR.run(new Rig(Larkmoor.settings(), 1, Bench.larkmoor(), Guards.ALL));
        assertThat(r.invariants().broken()).isEmpty();
        assertThat(String.join("\n", r.coverage().refusals())).contains("hours count from their wetting",
                "an hour reads", "that hour is past", "it cannot be ready by", "it cannot wait until",
                "so no hour can be kept", "its water is not known", "come to its harvest point already");
        assertThat(r.coverage().alarms()).contains("hour-missed");
    }
}
