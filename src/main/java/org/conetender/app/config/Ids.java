package org.conetender.app.config;

import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Checks of texts that name something: ids, probes, paths. Each notes what is wrong. */
final class Ids {

    /** Topic ids of Homie 5 (mqtt.md), begun with a letter so that no id looks like a number. */
    private static final Pattern ID = Pattern.compile("[a-z][a-z0-9-]{0,31}");

    /** Families of 1-wire thermometers that the kernel's driver reads, then 48 bits. */
    private static final Pattern PROBE = Pattern.compile("(10|22|28|3b|42)-[0-9a-f]{12}");

    /** Words with a meaning of their own among outputs, series and topics. */
    private static final Set<String> RESERVED = Set.of("site", "room", "all", "line");

    private final Map<String, String> probes = new HashMap<>();

    static boolean isId(String text) {
        return ID.matcher(text).matches();
    }

    /** An id; empty if it is not given or cannot serve. */
    static Optional<String> id(Fields at, String name) {
        return at.text(name).filter(s -> {
            boolean good = isId(s);
            if (!good) {
                at.at().wrong(name, "not an id; it must be " + SiteDocs.ID_FORM);
            }
            return good;
        });
    }

    /** Notes a cone's id that would be taken for something else. */
    static void reserved(Fields cone, String id, String siteId) {
        if (RESERVED.contains(id)) {
            cone.at().wrong("id", "reserved: the words site, room, all and line mean something else; "
                    + "give the cone another id");
        } else if (id.equals(siteId)) {
            cone.at().wrong("id", "the site has this id; a cone needs another one");
        }
    }

    /** Takes a probe. @param who what it measures, for the message when a second one claims it */
    boolean probe(Fields at, String name, String probe, String who) {
        if (!PROBE.matcher(probe).matches()) {
            at.at().wrong(name, Shown.quoted(probe) + " is not a 1-wire thermometer; it must be "
                    + SiteDocs.PROBE_FORM + " (ls the folder to see what is there)");
            return false;
        }
        String holder = probes.putIfAbsent(probe, who);
        if (holder != null) {
            at.at().wrong(name, Shown.quoted(probe) + " already measures " + holder
                    + "; every place needs a probe of its own");
        }
        return holder == null;
    }

    /** A path, which must be absolute; empty if it is not given or cannot serve. */
    static Optional<Path> path(Fields at, String name) {
        return at.text(name).flatMap(s -> {
            try {
                Path path = Path.of(s);
                if (path.isAbsolute()) {
                    return Optional.of(path.normalize());
                }
                at.at().wrong(name, "this must be an absolute path, because a service starts in no "
                        + "folder in particular; begin it with /");
            } catch (InvalidPathException e) {
                at.at().wrong(name, "not a path: " + e.getReason());
            }
            return Optional.empty();
        });
    }

    /** Notes a socket path that the kernel would not take. */
    static void socketLength(Fields at, String name, Path path) {
        // sun_path holds 108 bytes with its closing zero; a few are kept for a temporary name.
        if (path.toString().getBytes(StandardCharsets.UTF_8).length > 100) {
            at.at().wrong(name, "too long for a socket; it must be an absolute path of at most 100 bytes");
        }
    }
}
