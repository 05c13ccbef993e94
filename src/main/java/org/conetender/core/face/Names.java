package org.conetender.core.face;

import org.conetender.core.settings.Settings;

/**
 * The names of our topics after Homie 5 (mqtt.md): {@code <domain>/5/<device>/<node>/<property>}. The
 * site is the root device, each cone a child {@code <site>-<cone>}.
 *
 * @param domain first level, usually {@code homie}
 * @param site id of the root device
 */
public record Names(String domain, String site) {

    public static Names of(String domain, Settings settings) {
        return new Names(domain, settings.site().id());
    }

    /** The root device's topic prefix. */
    public String root() {
        return domain + "/5/" + site;
    }

    /** A cone's topic prefix; the root's for the empty id. */
    public String cone(String cone) {
        return cone.isEmpty() ? root() : root() + "-" + cone;
    }

    public String device(String cone) {
        return cone.isEmpty() ? site : site + "-" + cone;
    }
}
