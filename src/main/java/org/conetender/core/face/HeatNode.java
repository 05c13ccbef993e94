package org.conetender.core.face;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.conetender.core.ConeLive;
import org.conetender.core.RelayLife;
import org.conetender.core.Result;
import org.conetender.core.alarm.Alarm;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.Lives;
import org.conetender.core.guard.Finding;
import org.conetender.core.guard.Power;
import org.conetender.core.heat.Hold;
import org.conetender.core.heat.Known;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Text;

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

    /** One for all cones, so each points to where it is told. */
    private static final String DAMAGED = "the record was damaged, or restored; see " + Lives.DAMAGED;

    private HeatNode() {}

    /** Value by property, after its node; none where no heater is fitted. */
    static Map<String, String> of(Cone c, Result result, Moment now) {
        Map<String, String> out = new TreeMap<>();
        if (!c.fittings().heat().fitted()) {
            return out;
        }
        ConeLive live = result.next().live().cones().get(c.id());
        out.put("heat/on", String.valueOf(live.out().heat()));
        out.put("heat/duty", Text.decimals(100 * live.hold().duty(), 0));
        boolean wanted = live.hold().duty() > 0;
        if (wanted) {
            vetoed(result.findings().getOrDefault(c.id(), List.of()))
                    .ifPresent(w -> out.put("heat/vetoed", w));
        }
        for (Alarm a : result.next().live().alarms().raised()) {
            if (a.kind() == AlarmKind.OUT_OF_REACH && a.active() && a.cone().equals(c.id())) {
                out.put("heat/limited", a.what());
            }
        }
        if (Hold.most(c, live.judged().heat()) < 1 && wanted) {
            out.put("heat/limited", Sentences.GENTLY);
        }
        live.judged().thermal().ifPresent(t -> out.put("heat/known", Known.of(t).word()));
        RelayLife.of(c, result.next(), now).ifPresent(r -> {
            out.put("heat/relay-closings", String.valueOf(r.closings()));
            out.put("heat/relay-used", Text.decimals(100 * r.used(), 1));
            out.put("heat/relay-days-left", String.valueOf(rounded(r.daysLeft())));
        });
        return out;
    }

    /** Of several reasons the first; what only a person can release is the better one. */
    private static Optional<String> vetoed(List<Finding> found) {
        Optional<String> why = Optional.empty();
        for (Finding f : found) {
            boolean held = f.clears() == Finding.Clears.ACKNOWLEDGED;
            if (f.denies().contains(Power.HEAT) && (held || why.isEmpty())) {
                why = Optional.of(f.guard().equals(Lives.DAMAGED) ? DAMAGED : f.what());
                if (held) {
                    return why;
                }
            }
        }
        return why;
    }

    /** To two figures: no pace tells more, and there are fewer messages. */
    private static long rounded(double days) {
        long step = days < 100 ? 1 : (long) Math.pow(10, Math.floor(Math.log10(days)) - 1);
        return Math.round(days / step) * step;
    }
}
