package org.conetender.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

/** How long a charge stands without air goes by what was counted of its lot, on the cautious side. */
class DensityStoryTest {

    private static final String LOT = "L-0417";
    private static final String STOCK = "At its harvest, at 27 °C, the air may be off for ";

    private static Story story() {
        Story s = Story.at();
        s.senses.water("a", 27);
        return s;
    }

    /** One batch of 5 g in 2 L, counted when it is ripe: so many of 2 mL, a quarter in their shells. */
    private static void counted(Story s, int animals, long hours) {
        s.ask("a", new Ask.DidFill(2, 25));
        s.ask("a", new Ask.DidStock(LOT, 5));
        s.minutes(60 * hours);
        s.ask("a", new Ask.DidCount(3 * animals / 4, animals - 3 * animals / 4, animals / 10, 2));
        s.does(Step.DRAINED, Step.CLEANED);
    }

    private static String stocked(Story s) {
        s.ask("a", new Ask.DidFill(2, 25));
        String said = s.ask("a", new Ask.DidStock(LOT, 5)).sentence();
        s.seconds(5);
        return said;
    }

    private static double perGram(Story s) {
        return s.state().live().cones().get("a").known().naupliiPerGram();
    }

    @Test
    void aDenserLotIsBelievedAtOnce() {
        Story s = story();
        String usual = stocked(s);
        assertThat(usual).contains(STOCK).doesNotContain("nauplii a gram");
        double usualMin = minutes(usual);
        s.does(Step.DRAINED, Step.CLEANED);
        // 1,600 of 2 mL are 800 a mL; 5 g in 2 L have 400 mL a gram: 320,000.
        counted(s, 1_600, 28);
        String dense = stocked(s);
        assertThat(dense).contains("reckoned with 336,000 nauplii a gram, by what was counted of this lot.");
        assertThat(perGram(s)).as("and two standard errors").isCloseTo(320_000 + 2 * 40 * 200, within(200.0));
        assertThat(usualMin).isGreaterThanOrEqualTo(6);
        assertThat(dense).contains("so dense a charge stands only 5 min without air");
    }

    @Test
    void aThinnerLotIsBelievedOnceTwoBatchesSaySoAndByTheDenserOfThem() {
        Story s = story();
        counted(s, 400, 28);
        stocked(s);
        assertThat(perGram(s)).as("one bad sample smothers nobody").isEqualTo(250_000);
        s.does(Step.DRAINED, Step.CLEANED);
        counted(s, 500, 28);
        String thin = stocked(s);
        assertThat(perGram(s)).isCloseTo(200 * (500 + 2 * Math.sqrt(501)), within(200.0));
        assertThat(thin).contains("reckoned with 109,000 nauplii a gram");
        assertThat(s.ask("a", new Ask.Withdraw("stocked")).accepted()).isTrue();
    }

    /** Animals can only become more, so a dense count needs no ripe batch. */
    @Test
    void aDenseCountIsBelievedBeforeItIsRipe() {
        Story s = story();
        counted(s, 1_600, 15);
        stocked(s);
        assertThat(perGram(s)).isCloseTo(320_000 + 2 * 40 * 200, within(200.0));
    }

    @Test
    void aThinCountBeforeItWasRipeAndOneThatWasTakenBackTellNothing() {
        Story s = story();
        counted(s, 500, 15);
        counted(s, 500, 15);
        stocked(s);
        assertThat(perGram(s)).as("half of them had hatched, or none").isEqualTo(250_000);
        s.minutes(60 * 28);
        s.ask("a", new Ask.DidCount(1_600, 0, 0, 2));
        s.seconds(5);
        assertThat(perGram(s)).as("of this batch itself").isGreaterThan(320_000);
        s.ask("a", new Ask.Withdraw("count"));
        s.seconds(5);
        assertThat(perGram(s)).isEqualTo(250_000);
    }

    /** Of a tin without a label only this batch is known, and of that it is. */
    @Test
    void aTinThatNobodyNamedIsReckonedByTheBatchItself() {
        Story s = story();
        s.ask("a", new Ask.DidFill(2, 25));
        s.ask("a", new Ask.DidStock("unknown", 5));
        s.minutes(60 * 28);
        s.ask("a", new Ask.DidCount(1_200, 400, 160, 2));
        s.seconds(5);
        assertThat(perGram(s)).isCloseTo(320_000 + 2 * 40 * 200, within(200.0));
        s.does(Step.DRAINED, Step.CLEANED);
        s.ask("a", new Ask.DidFill(2, 25));
        s.ask("a", new Ask.DidStock("unknown", 5));
        s.seconds(5);
        assertThat(perGram(s)).as("another tin").isEqualTo(250_000);
    }

    private static double minutes(String said) {
        return Double.parseDouble(said.replaceAll(".*may be off for (\\d+) min.*", "$1"));
    }
}
