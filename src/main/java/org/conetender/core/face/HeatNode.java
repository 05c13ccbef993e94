package org.conetender.core.face;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.conetender.core.ConeLive;
import org.conetender.core.RelayLife;
import org.conetender.core.Result;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.guard.Finding;
import org.conetender.core.guard.Power;
import org.conetender.core.heat.Hold;
import org.conetender.core.heat.Known;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Moment;

/** What is shown of a cone's heater: its properties, and their values. */
final class HeatNode {

    static final List<Property> PROPERTIES = List.of(Property.of("on", "Heater on", "boolean"),
            Property.of("duty", "Heat demanded", "float").unit("%"),
            Property.of("vetoed", "Why heat is withheld", "string"),
            Property.of("limited", "Why less heat is given than is wanted", "string"),
            Property.of("known", "How well it is known how this water answers its heater", "enum")
                    .format(Arrays.stream(Known.values()).map(Known::word).collect(Collectors.joining(","))),
            Property.of("relay-closings", "How often its relay has closed since it was new", "integer"),
            Property.of("relay-used", "Share of the closings that its relay is rated for", "float")
                    .unit("%"),
            Property.of("relay-days-left", "Days until its relay is worn, at the pace of the last days",
                    "integer"));

    private HeatNode() {}

    /** Value by property; none where no heater is fitted. */
    static Map<String, String> of(Cone c, Result result, Moment now) {
        Map<String, String> out = new TreeMap<>();
        if (!c.fittings().heat().fitted()) {
            return out;
        }
        ConeLive live = result.next().live().cones().get(c.id());
        out.put("on", String.valueOf(live.out().heat()));
        out.put("duty", Tree.decimals(100 * live.hold().duty(), 0));
        boolean wanted = live.hold().duty() > 0;
        result.findings().getOrDefault(c.id(), List.of()).stream()
                .filter(f -> f.denies().contains(Power.HEAT) && wanted)
                // What only a person can release is the better reason.
                .min(Comparator.comparing(f -> f.clears() != Finding.Clears.ACKNOWLEDGED))
                .map(Finding::what).ifPresent(w -> out.put("vetoed", w));
        result.next().live().alarms().raised().stream().filter(a -> a.kind() == AlarmKind.OUT_OF_REACH
                && a.active() && a.cone().equals(c.id())).forEach(a -> out.put("limited", a.what()));
        if (Hold.most(c, live.judged().heat()) < 1 && wanted) {
            out.put("limited", Sentences.GENTLY);
        }
        live.judged().thermal().ifPresent(t -> out.put("known", Known.of(t).word()));
        RelayLife.of(c, result.next(), now).ifPresent(r -> {
            out.put("relay-closings", String.valueOf(r.closings()));
            out.put("relay-used", Tree.decimals(100 * r.used(), 1));
            out.put("relay-days-left", String.valueOf(rounded(r.daysLeft())));
        });
        return out;
    }

    /** To two figures: no pace tells more, and there are fewer messages. */
    private static long rounded(double days) {
        long step = days < 100 ? 1 : (long) Math.pow(10, Math.floor(Math.log10(days)) - 1);
        return Math.round(days / step) * step;
    }
}
