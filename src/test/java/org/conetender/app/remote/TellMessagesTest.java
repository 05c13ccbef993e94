package org.conetender.app.remote;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.conetender.core.Larkmoor;
import org.conetender.core.face.Heard;
import org.conetender.core.face.Names;
import org.conetender.core.face.SetTopic;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Hour;
import org.conetender.core.image.Step;
import org.junit.jupiter.api.Test;

class TellMessagesTest {

    private static final Names NAMES = Names.of("homie", Larkmoor.with());
    private static final SetTopic SETS = new SetTopic(Larkmoor.with(), NAMES);

    /** The list of alarms is read from its topic. */
    @Test
    void aQuestionIsNotSent() {
        assertThat(TellMessages.of(new Ask.Alarms())).isEmpty();
    }

    /** What goes out by one face is understood by the other. */
    @Test
    void whatIsToldIsWhatIsHeard() {
        for (Ask ask : List.of(new Ask.Did(Step.SETTLE), new Ask.DidFill(2, 25), new Ask.SetSetpoint(26.5),
                new Ask.DidStock("L-0417", 2), new Ask.DidStockAsUsual(Optional.empty(), Optional.of(2.5)),
                new Ask.DidStockAsUsual(Optional.of("L-0417"), Optional.empty()),
                new Ask.DidCount(41, 3, 9, 1), new Ask.DidWeigh(9.5), new Ask.Withdraw("last"),
                new Ask.Withdraw("filled"),
                new Ask.Shelve("dry", 8), new Ask.Acknowledge("hour-missed"),
                new Ask.ReadyBy(Optional.empty()),
                new Ask.ReadyBy(Optional.of(Hour.parse("07:30"))),
                new Ask.ReadyBy(Optional.of(Hour.parse("fri 07:30"))),
                new Ask.ReadyBy(Optional.of(Hour.parse("2026-11-27 07:30"))))) {
            List<TellMessages.Message> messages = TellMessages.of(ask);
            assertThat(messages).hasSize(1);
            TellMessages.Message m = messages.getFirst();
            assertThat(SETS.read(NAMES.cone("a") + "/" + m.property() + "/set", m.payload()))
                    .isEqualTo(new Heard.Understood("a", ask));
        }
    }

    /** A tin belongs to no cone. */
    @Test
    void whatIsToldOfTheSiteIsHeardOfTheSite() {
        Ask ask = new Ask.TinHolds("L-0417", 425);
        TellMessages.Message m = TellMessages.of(ask).getFirst();
        assertThat(SETS.read(NAMES.root() + "/" + m.property() + "/set", m.payload()))
                .isEqualTo(new Heard.Understood("", ask));
    }
}
