package org.conetender.core.settings;

import java.util.List;
import java.util.Optional;

/**
 * Everything a person decided before the start, checked once and immutable for the life of the
 * process. Line numbers, paths and broker addresses are not here: they belong to the wiring.
 *
 * @param site what all cones share
 * @param cones in the order of the configuration; ids are unique
 */
public record Settings(Site site, List<Cone> cones) {

    public Settings {
        cones = List.copyOf(cones);
    }

    /** The cone of that id, if there is one. */
    public Optional<Cone> cone(String id) {
        for (Cone c : cones) {
            if (c.id().equals(id)) {
                return Optional.of(c);
            }
        }
        return Optional.empty();
    }
}
