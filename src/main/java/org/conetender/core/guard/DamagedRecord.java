package org.conetender.core.guard;

import java.util.List;
import java.util.Optional;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.Lives;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;

/**
 * Danger: a record that was damaged, or is that of a backup. What can be read of it ends somewhere, and what
 * was said after that, that a cone was emptied or that hands are in it, nobody knows any more. Heat is
 * locked, the lamps are off and the air runs until a person has looked at every cone. The lock is one for the
 * site and stands in the book.
 */
public final class DamagedRecord implements Guard {

    @Override
    public String id() {
        return Lives.DAMAGED;
    }

    @Override
    public List<Finding> look(View v) {
        return v.book().lives().damage().map(l -> List.of(
                Finding.trip(id(), l.why(), Power.HEAT, Power.CUT_OUT, Power.LAMPS, Power.AIR_OFF)
                        .alarm(AlarmKind.RECORD_DAMAGED))).orElse(List.of());
    }

    @Override
    public Optional<String> refuses(Request r, View v) {
        return v.book().lives().damage().isPresent() && r.ask() instanceof Ask.Did(Step s)
                && s == Step.SETTLE
                ? Optional.of("the record may lack reports and the air must run; acknowledge 'record-damaged'"
                        + " first.")
                : Optional.empty();
    }
}
