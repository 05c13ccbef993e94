package org.conetender.core.guard;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Reports;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Image;
import org.conetender.core.image.Request;

/**
 * Danger: a lost record. While the record fails, or does not answer, nothing that only grants permission
 * is accepted. An acknowledgement is: it silences without a record and releases nothing ({@code Desk}).
 * Temperatures that are not kept withhold nothing.
 */
public final class LostRecord implements Guard {

    @Override
    public String id() {
        return "record";
    }

    @Override
    public List<Finding> look(View v) {
        Image.Pipes pipes = v.scene().image().pipes();
        List<Finding> found = new ArrayList<>();
        pipes.store().ifPresent(why -> found.add(
                Finding.veto(id(), "the record cannot be written: " + why).alarm(AlarmKind.RECORD)));
        pipes.history().ifPresent(why -> found.add(Finding.veto(id(),
                "temperatures are not kept for reports: " + why).alarm(AlarmKind.HISTORY)));
        return found;
    }

    @Override
    public Optional<String> refuses(Request r, View v) {
        return v.scene().image().pipes().store().isEmpty() || Reports.takesAway(new Change.Told(r.ask()))
                || r.ask() instanceof Ask.Acknowledge
                ? Optional.empty()
                : Optional.of("not recorded, so not done: " + v.scene().image().pipes().store().get()
                        + ". Then say it again.");
    }
}
