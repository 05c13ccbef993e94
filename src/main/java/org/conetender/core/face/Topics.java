package org.conetender.core.face;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.alarm.Message;
import org.conetender.core.settings.Settings;

/** Every topic that may ever be retained under given settings, so that stale ones can be taken back. */
public final class Topics {

    private Topics() {}

    /** Values, alerts and answers of the site and its cones, without states and descriptions. */
    public static Set<String> everything(Settings settings, Names names) {
        Set<String> all = new TreeSet<>();
        of(names.root(), Description.SITE, all);
        all.add(many(names));
        settings.cones().forEach(c -> all.addAll(ofCone(names, c.id())));
        return all;
    }

    /** The same of one cone, configured or not. */
    public static Set<String> ofCone(Names names, String cone) {
        Set<String> all = new TreeSet<>();
        of(names.cone(cone), Description.CONE, all);
        return all;
    }

    /** The topics that are published again, though they may say the same, because they call a person. */
    public static List<String> rung(Names names, Message m) {
        List<String> out = new ArrayList<>();
        if (m.many()) {
            out.add(many(names));
        } else {
            m.alarms().forEach(a -> out.add(alert(names, a)));
        }
        if (m.second()) {
            out.add(names.root() + "/site/escalated");
        }
        return out;
    }

    static String alert(Names names, Alarm a) {
        return names.cone(a.cone()) + "/$alert/" + a.kind().id();
    }

    /** The one alert for many incidents at once. */
    static String many(Names names) {
        return names.root() + "/$alert/many";
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
