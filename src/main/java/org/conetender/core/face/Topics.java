package org.conetender.core.face;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.settings.Settings;

/** Every topic that may ever be retained under given settings, so that stale ones can be taken back. */
public final class Topics {

    private Topics() {}

    /** Values, alerts and answers of the site and its cones, without states and descriptions. */
    public static Set<String> everything(Settings settings, Names names) {
        Set<String> all = new TreeSet<>();
        of(names.root(), Description.SITE, all);
        settings.cones().forEach(c -> all.addAll(ofCone(names, c.id())));
        return all;
    }

    /** The same of one cone, configured or not. */
    public static Set<String> ofCone(Names names, String cone) {
        Set<String> all = new TreeSet<>();
        of(names.cone(cone), Description.CONE, all);
        return all;
    }

    private static void of(String device, Map<String, List<Property>> nodes, Set<String> all) {
        nodes.forEach((node, properties) -> {
            for (Property p : properties) {
                all.add(device + "/" + node + "/" + p.id());
                if (node.equals("hand") && p.settable()) {
                    all.add(device + "/" + node + "/" + p.id() + "/$target");
                }
            }
        });
        for (AlarmKind k : AlarmKind.values()) {
            all.add(device + "/$alert/" + k.id());
        }
    }
}
