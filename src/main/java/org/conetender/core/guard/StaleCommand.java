package org.conetender.core.guard;

import java.util.Optional;
import org.conetender.core.image.Request;

/** Danger: a stale command. Nothing queued, retained, expired or repeated is ever obeyed (mqtt.md). */
public final class StaleCommand implements Guard {

    @Override
    public String id() {
        return "stale";
    }

    @Override
    public Optional<String> refuses(Request r, View v) {
        if (r.from().stale().isPresent()) {
            return Optional.of(r.from().stale().get() + "; send it again, now.");
        }
        return v.book().recentIds().contains(r.id())
                ? Optional.of("this request was already carried out; give a new one a new id.")
                : Optional.empty();
    }
}
