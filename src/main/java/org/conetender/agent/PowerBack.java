package org.conetender.agent;

import java.time.ZoneId;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Predicate;
import org.conetender.core.face.Outage;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Span;

/**
 * What people are told of the time before this life in which nobody minded the cones: once as soon as it
 * can be said, and once more when a clock that turns up tells how long it was. Not retained, no alarm: where
 * it endangers a batch an alarm says so.
 */
final class PowerBack {

    private final Optional<Moment> last;
    private final Moment began;
    private final ZoneId zone;
    private boolean told;
    private boolean over;

    /** @param last moment on record before this life  @param began this life  @param zone of people */
    PowerBack(Optional<Moment> last, Moment began, ZoneId zone) {
        this.last = last;
        this.began = began;
        this.zone = zone;
        this.over = last.isEmpty();
    }

    /** @param boots as far as they are known now  @param taken says it; whether it went out */
    void tell(Boots boots, Predicate<String> taken) {
        if (over) {
            return;
        }
        Span away = boots.between(last.get(), began);
        OptionalLong from = boots.wallMs(last.get());
        OptionalLong to = boots.wallMs(began);
        boolean off = !last.get().sameBoot(began);
        if (away.known() && from.isPresent() && to.isPresent()) {
            Outage.Hours hours = new Outage.Hours(from.getAsLong(), to.getAsLong(), zone);
            over = !told && Outage.isRestart(away) || taken.test(Outage.sentence(off, hours, away));
        } else if (!told) {
            over = Outage.isRestart(away);
            told = !over && taken.test(Outage.sentence(off, away));
        }
    }
}
