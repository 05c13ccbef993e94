package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;
import org.conetender.core.face.Names;
import org.conetender.core.face.Tree;
import org.conetender.core.image.Reading;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** The ready hour that people are told. */
class ToldHourTest {

    private static final String READY = "homie/5/larkmoor-a/hatch/ready-at";

    private static Map<String, String> tree(Story s) {
        return Tree.of(s.settings(), Names.of("homie", s.settings()), s.last(), s.now());
    }

    /** It may go, or stay; dated anew each minute it would slide on by a minute a minute. */
    @Test
    void anHourOnceToldDoesNotSlideWhileTheWaterIsNotKnown() {
        Story s = Story.at();
        s.does(Step.STARTED);
        s.pass(Duration.ofHours(4));
        OffsetDateTime was = OffsetDateTime.parse(tree(s).get(READY));
        s.senses.probe("a-water", new Reading.Absent());
        s.pass(Duration.ofHours(3));
        Optional.ofNullable(tree(s).get(READY)).map(OffsetDateTime::parse).ifPresent(now ->
                assertThat(Duration.between(was, now).abs()).isLessThan(Duration.ofMinutes(10)));
    }
}
