package org.conetender.agent;

import java.util.Optional;
import org.conetender.core.face.Sentences;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/**
 * How long the daemon was without its broker. While it lasts only the broker's last will can tell; the
 * daemon tells on its return, if it was worth telling (design.md, alarms must not cry wolf).
 */
final class Absence {

    private static final long TOLD_AFTER_MS = 5 * Units.MINUTE_MS;

    private final Settings settings;
    private Optional<Moment> since = Optional.empty();

    Absence(Settings settings) {
        this.settings = settings;
    }

    /** There is no connection at that moment. */
    void away(Moment now) {
        since = since.or(() -> Optional.of(now));
    }

    /** The connection is there again; what is to be said of the time before, once. */
    Optional<String> back(Moment now) {
        Optional<Moment> was = since;
        since = Optional.empty();
        return was.filter(m -> now.monoMs() - m.monoMs() >= TOLD_AFTER_MS).map(m -> Text.of(
                "The daemon was without its broker for %d min, since %s. It went on meanwhile; what is shown "
                + "is true again.", (now.monoMs() - m.monoMs()) / Units.MINUTE_MS,
                Sentences.clock(now.wallMs() - (now.monoMs() - m.monoMs()), settings.site().feeding().zone(),
                        now.wallMs())));
    }
}
