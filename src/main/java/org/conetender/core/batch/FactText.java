package org.conetender.core.batch;

import java.util.AbstractList;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Hour;
import org.conetender.core.image.Step;

/**
 * The written form of a {@link Change}: a kind word, then its fields, separated by tabs. Tabs, line
 * ends and backslashes inside a field are escaped, so any text survives. Read back strictly: an
 * unknown kind or a missing field is an error, never a guess.
 */
public final class FactText {

    private FactText() {}

    /** The one-line text of a change; never contains a line end. */
    public static String write(Change change) {
        return switch (change) {
            case Change.Told t -> join("told", ask(t.ask()));
            case Change.Moved m -> join("moved", List.of(m.stage(), m.why()));
            case Change.Tripped t -> join("tripped", List.of(t.guard(), t.why()));
            case Change.Released r -> join("released", List.of(r.guard(), r.why()));
            case Change.Doubted d -> join("doubted", List.of(d.why()));
            case Change.AlarmRaised a -> join("alarm-raised", List.of(a.alarm(), a.what()));
            case Change.AlarmOver a -> join("alarm-over", List.of(a.alarm()));
            case Change.Undoubted u -> join("undoubted", List.of(u.why()));
            case Change.Bridged b -> join("bridged", MomentText.bridge(b.bridge()));
            case Change.Tried t -> join("tried", List.of(t.how()));
            case Change.Learned l -> join("learned", List.of("" + l.what().watts(), "" + l.what().litres(),
                    "" + l.what().rise(), "" + l.what().loss(), "" + l.what().lagS(),
                    "" + l.what().cools()));
            case Change.Taught t -> join("taught", LessonText.fields(t));
            case Change.Drawn d -> join("drawn", LessonText.fields(d));
            case Change.Worn w -> join("worn", List.of("" + w.closings()));
            case Change.ClockSet _ -> join("clock-set", List.of());
            case Change.Began b -> join("began", b.lastSeen().map(MomentText::fields).orElse(List.of()));
            case Change.Left _ -> join("left", List.of());
            case Change.Described d -> join("described",
                    List.of(d.device(), "" + d.version(), d.digest()));
            case Change.SetAside a -> join("set-aside", List.of(a.request(), a.cone(), a.what()));
        };
    }

    /** @throws IllegalArgumentException if the text is not one that {@link #write} makes */
    public static Change read(String text) {
        Fields f = new Fields(split(text));
        Change change = change(f);
        if (f.furthest < f.size() - 1) {
            throw new IllegalArgumentException("a fact has more fields than its kind knows: " + f);
        }
        return change;
    }

    /** Fields that know how far they were read. */
    private static final class Fields extends AbstractList<String> {
        private final List<String> all;
        private int furthest = -1;

        Fields(List<String> all) {
            this.all = all;
        }

        @Override
        public String get(int i) {
            furthest = Math.max(furthest, i);
            return all.get(i);
        }

        @Override
        public int size() {
            return all.size();
        }
    }

    private static Change change(List<String> f) {
        return switch (f.get(0)) {
            case "told" -> new Change.Told(readAsk(f.subList(1, f.size())));
            case "moved" -> new Change.Moved(at(f, 1), at(f, 2));
            case "tripped" -> new Change.Tripped(at(f, 1), at(f, 2));
            case "released" -> new Change.Released(at(f, 1), at(f, 2));
            case "doubted" -> new Change.Doubted(at(f, 1));
            case "alarm-raised" -> new Change.AlarmRaised(at(f, 1), at(f, 2));
            case "alarm-over" -> new Change.AlarmOver(at(f, 1));
            case "undoubted" -> new Change.Undoubted(at(f, 1));
            case "bridged" -> new Change.Bridged(MomentText.bridge(f, 1));
            case "tried" -> new Change.Tried(at(f, 1));
            case "learned" -> new Change.Learned(new HeaterBook.Learned(figure(f, 1), figure(f, 2),
                    figure(f, 3), figure(f, 4), figure(f, 5), f.size() > 6 ? figure(f, 6) : 0));
            case "taught" -> LessonText.taught(f, 1);
            case "drawn" -> LessonText.drawn(f, 1);
            case "worn" -> new Change.Worn(Long.parseLong(at(f, 1)));
            case "clock-set" -> new Change.ClockSet();
            case "began" -> new Change.Began(f.size() > 1 ? Optional.of(MomentText.moment(f, 1))
                    : Optional.empty());
            case "left" -> new Change.Left();
            case "described" -> new Change.Described(at(f, 1), Long.parseLong(at(f, 2)), at(f, 3));
            case "set-aside" -> new Change.SetAside(at(f, 1), at(f, 2), at(f, 3));
            default -> throw new IllegalArgumentException("unknown kind of fact: " + f.get(0));
        };
    }

    private static List<String> ask(Ask ask) {
        return switch (ask) {
            case Ask.Did d -> List.of("did", d.step().word());
            case Ask.DidFill d -> List.of("fill", "" + d.litres(), "" + d.ppt());
            case Ask.DidStock d -> List.of("stock", d.lot(), "" + d.cystsG());
            case Ask.DidStockAsUsual d -> List.of("stock-as-usual", d.lot().orElse(""), number(d.cystsG()));
            case Ask.DidCount d -> List.of("count", "" + d.nauplii(), "" + d.umbrella(), "" + d.unhatched(),
                    "" + d.sampleMl());
            case Ask.DidWeigh w -> List.of("weighed", "" + w.wetG());
            case Ask.TinHolds t -> List.of("tin", t.lot(), "" + t.cystsG());
            case Ask.SetUsual u -> List.of("usual", u.lot().orElse(""), number(u.litres()),
                    number(u.cystsG()), number(u.ppt()));
            case Ask.SetSetpoint s -> List.of("setpoint", "" + s.degreesC());
            case Ask.ReadyBy r -> List.of("ready-by", r.hour().map(Hour::text).orElse(""));
            case Ask.Withdraw w -> List.of("withdraw", w.what());
            case Ask.Acknowledge a -> List.of("acknowledge", a.alarm());
            case Ask.Shelve a -> List.of("shelve", a.alarm(), "" + a.hours());
            case Ask.Alarms _ -> List.of("alarms");
            case Ask.Away a -> List.of("away", a.helper());
        };
    }

    private static Ask readAsk(List<String> f) {
        return switch (at(f, 0)) {
            case "did" -> new Ask.Did(Step.of(at(f, 1)).orElseThrow(
                    () -> new IllegalArgumentException("unknown step: " + f.get(1))));
            case "fill" -> new Ask.DidFill(figure(f, 1), figure(f, 2));
            case "stock" -> new Ask.DidStock(at(f, 1), figure(f, 2));
            case "stock-as-usual" -> new Ask.DidStockAsUsual(Optional.of(at(f, 1))
                    .filter(s -> !s.isEmpty()), maybe(f, 2));
            case "count" -> new Ask.DidCount(Integer.parseInt(at(f, 1)), Integer.parseInt(at(f, 2)),
                    Integer.parseInt(at(f, 3)), figure(f, 4));
            case "weighed" -> new Ask.DidWeigh(figure(f, 1));
            case "tin" -> new Ask.TinHolds(at(f, 1), figure(f, 2));
            case "usual" -> new Ask.SetUsual(Optional.of(at(f, 1)).filter(s -> !s.isEmpty()),
                    maybe(f, 2), maybe(f, 3), maybe(f, 4));
            case "setpoint" -> new Ask.SetSetpoint(figure(f, 1));
            case "ready-by" -> new Ask.ReadyBy(Optional.of(at(f, 1)).filter(h -> !h.isEmpty())
                    .map(FactText::hour));
            case "withdraw" -> new Ask.Withdraw(at(f, 1));
            case "acknowledge" -> new Ask.Acknowledge(at(f, 1));
            case "shelve" -> new Ask.Shelve(at(f, 1), figure(f, 2));
            case "alarms" -> new Ask.Alarms();
            case "away" -> new Ask.Away(at(f, 1));
            default -> throw new IllegalArgumentException("unknown kind of request: " + f.get(0));
        };
    }

    private static Hour hour(String text) {
        Hour h = Hour.parse(text);
        if (!h.text().equals(text)) {
            throw new IllegalArgumentException("not an hour as it is written here: " + text);
        }
        return h;
    }

    private static String number(Optional<Double> d) {
        return d.map(Object::toString).orElse("");
    }

    private static Optional<Double> maybe(List<String> f, int i) {
        return at(f, i).isEmpty() ? Optional.empty() : Optional.of(figure(f, i));
    }

    /** That field as a figure; shared with {@link LessonText}. */
    static double figure(List<String> f, int i) {
        return Double.parseDouble(at(f, i));
    }

    /** That field; shared with {@link MomentText}. */
    static String at(List<String> f, int i) {
        if (i >= f.size()) {
            throw new IllegalArgumentException("a fact lacks field " + i + ": " + f);
        }
        return f.get(i);
    }

    /** One line of fields; shared with {@link CheckpointText}. */
    static String join(String kind, List<String> fields) {
        StringBuilder s = new StringBuilder(kind);
        for (String f : fields) {
            s.append('\t').append(f.replace("\\", "\\\\").replace("\t", "\\t").replace("\n", "\\n")
                    .replace("\r", "\\r"));
        }
        return s.toString();
    }

    /** The fields of one line, unescaped; shared with {@link CheckpointText}. */
    static List<String> split(String text) {
        List<String> out = new ArrayList<>();
        for (String f : text.split("\t", -1)) {
            out.add(unescape(f));
        }
        return out;
    }

    private static String unescape(String f) {
        if (f.indexOf('\\') < 0) {
            return f;
        }
        StringBuilder s = new StringBuilder(f.length());
        for (int i = 0; i < f.length(); i++) {
            char c = f.charAt(i);
            s.append(c == '\\' ? escaped(f, ++i) : c);
        }
        return s.toString();
    }

    private static char escaped(String f, int i) {
        return switch (i < f.length() ? f.charAt(i) : ' ') {
            case '\\' -> '\\';
            case 't' -> '\t';
            case 'n' -> '\n';
            case 'r' -> '\r';
            default -> throw new IllegalArgumentException("a backslash that escapes nothing: " + f);
        };
    }
}
