package org.conetender.app.remote;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.conetender.core.face.Json;
import org.conetender.core.face.Sentences;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Hour;

/** What {@code tell} publishes for what a person typed: the way back from {@code core.face.SetTopic}. */
public final class TellMessages {

    private static final String EMPTY = "\0";

    /** @param property {@code node/property}, below the cone or the site  @param payload for its set */
    public record Message(String property, String payload) {}

    private TellMessages() {}

    /** Several only where several values were given; none for a question, which the topics answer. */
    public static List<Message> of(Ask ask) {
        return switch (ask) {
            case Ask.Did d -> one("hand/step", d.step().word());
            case Ask.DidFill f -> one("hand/filled", json("litres", f.litres(), "ppt", f.ppt()));
            case Ask.DidStock s -> one("hand/stocked", json("lot", s.lot(), "cysts-g", s.cystsG()));
            case Ask.DidStockAsUsual s -> one("hand/stocked", stocked(s));
            case Ask.DidCount c -> one("hand/count", json("nauplii", c.nauplii(), "umbrella", c.umbrella(),
                    "unhatched", c.unhatched(), "sample-ml", c.sampleMl()));
            case Ask.DidWeigh w -> one("hand/weighed", json("wet-g", w.wetG()));
            case Ask.TinHolds t -> one("site/tin", json("lot", t.lot(), "cysts-g", t.cystsG()));
            case Ask.SetUsual u -> usual(u);
            case Ask.SetSetpoint s -> one("water/setpoint", Sentences.plain(s.degreesC()));
            case Ask.ReadyBy r -> one("hatch/ready-by", r.hour().map(Hour::text).orElse(EMPTY));
            case Ask.Withdraw w -> one("hand/withdraw", w.what());
            case Ask.Acknowledge a -> one("hand/acknowledge", a.alarm());
            case Ask.Shelve h -> one("hand/shelve", json("alarm", h.alarm(), "hours", h.hours()));
            case Ask.Alarms _ -> List.of();
            case Ask.Away a -> one("site/away", a.helper().isEmpty() ? EMPTY : a.helper());
        };
    }

    private static List<Message> one(String property, String payload) {
        return List.of(new Message(property, payload));
    }

    private static String stocked(Ask.DidStockAsUsual s) {
        return s.lot().map(lot -> json("lot", lot)).or(() -> s.cystsG().map(g -> json("cysts-g", g)))
                .orElse("{}");
    }

    private static List<Message> usual(Ask.SetUsual u) {
        List<Message> out = new ArrayList<>();
        u.lot().ifPresent(v -> out.add(new Message("usual/lot", v)));
        u.litres().ifPresent(v -> out.add(new Message("usual/litres", Sentences.plain(v))));
        u.cystsG().ifPresent(v -> out.add(new Message("usual/cysts-g", Sentences.plain(v))));
        u.ppt().ifPresent(v -> out.add(new Message("usual/ppt", Sentences.plain(v))));
        return out;
    }

    private static String json(Object... pairs) {
        Map<String, Object> m = new LinkedHashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            m.put((String) pairs[i], pairs[i + 1]);
        }
        return Json.write(m);
    }
}
