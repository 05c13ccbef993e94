package org.conetender.core.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.conetender.core.Story;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** Danger: a command that is obeyed long after it was meant. */
class StaleCommandTest {

    private static Request request(String id, Optional<String> stale) {
        return new Request(id, new Request.Origin("mqtt", "", stale), "a", new Ask.Did(Step.STARTED));
    }

    @Test
    void whatLayAtTheBrokerIsRefusedWithAReason() {
        Story s = new Story(org.conetender.core.Larkmoor.with());
        s.send(request("x", Optional.of("this command was lying at the broker and may be old")));
        s.tick();
        assertThat(s.replies()).singleElement().satisfies(r -> {
            assertThat(r.accepted()).isFalse();
            assertThat(r.sentence()).isEqualTo(
                    "Cone a: this command was lying at the broker and may be old; send it again, now.");
        });
        assertThat(s.stage()).isEqualTo("clean");
        assertThat(s.paper.facts()).as("only that the life began, and how it is described").hasSize(5)
                .allMatch(f -> f.source().isEmpty());
    }

    @Test
    void aRepeatOfARequestIdIsRefusedAlsoAfterARestart() {
        Story s = new Story(org.conetender.core.Larkmoor.with());
        s.send(request("x", Optional.empty()));
        s.seconds(3);
        s.does(Step.DRAINED, Step.CLEANED);
        s.send(request("x", Optional.empty()));
        s.seconds(3);
        assertThat(s.stage()).isEqualTo("clean");
        assertThat(s.replies().getLast().sentence()).contains("already carried out");
        s.restart("boot-1", 5_000);
        s.send(request("x", Optional.empty()));
        s.seconds(3);
        assertThat(s.stage()).isEqualTo("clean");
    }

    @Test
    void twoOfOneIdInOneTickCountOnce() {
        Story s = new Story(org.conetender.core.Larkmoor.with());
        s.send(request("x", Optional.empty()));
        s.send(request("x", Optional.empty()));
        s.seconds(5);
        assertThat(s.replies().stream().filter(r -> r.accepted()).count()).isEqualTo(1);
        assertThat(s.replies()).hasSize(2);
        assertThat(s.batch("a").number()).isEqualTo(1);
    }

    @Test
    void withoutThisGuardAnOldCommandWouldStartACone() {
        Story s = Story.without(StaleCommand.class);
        s.send(request("x", Optional.of("old")));
        s.seconds(3);
        assertThat(s.stage()).isEqualTo("hydrating");
    }
}
