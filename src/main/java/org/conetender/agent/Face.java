package org.conetender.agent;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.conetender.core.face.Description;
import org.conetender.core.face.Names;
import org.conetender.core.face.Topics;
import org.conetender.core.face.Versions;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.port.Transport.Outgoing;

/**
 * The devices of this site and the order in which they come and go (mqtt.md): a child is whole before its
 * parent names it, and is named no longer before it is taken back.
 *
 * @param versions of the descriptions, those of this life included
 */
record Face(Settings settings, Names names, Versions versions) {

    /** What comes before the values of a fresh connection. */
    List<Outgoing> heads() {
        List<Outgoing> out = new ArrayList<>();
        out.add(state("", "init"));
        for (Cone c : settings.cones()) {
            out.add(state(c.id(), "init"));
            out.add(retained(c.id(), "/$description",
                    Description.cone(settings, c, versions.version(settings, c.id()))));
        }
        return out;
    }

    /** What comes after the children's values: they are whole, and the root names them. */
    List<Outgoing> whole() {
        List<Outgoing> out = new ArrayList<>();
        settings.cones().forEach(c -> out.add(state(c.id(), "ready")));
        out.add(retained("", "/$description", Description.root(settings, versions.version(settings, ""))));
        return out;
    }

    /** What comes last, after the root's own values. */
    Outgoing ready() {
        return state("", "ready");
    }

    /** Everything that cones left at the broker which are configured no longer, their states first. */
    List<Outgoing> takenBack() {
        List<Outgoing> out = new ArrayList<>();
        for (String cone : versions.gone(settings)) {
            out.add(state(cone, ""));
            out.add(retained(cone, "/$description", ""));
            Topics.ofCone(names, cone).forEach(t -> out.add(new Outgoing(t, "", true, "")));
        }
        return out;
    }

    /** Values, alerts and answers that may lie at the broker from before. */
    Set<String> everything() {
        return new TreeSet<>(Topics.everything(settings, names));
    }

    private Outgoing state(String cone, String state) {
        return retained(cone, "/$state", state);
    }

    private Outgoing retained(String cone, String below, String payload) {
        return new Outgoing(names.cone(cone) + below, payload, true, "");
    }
}
