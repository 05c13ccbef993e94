package org.conetender.app.view;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.conetender.core.unit.Text;

/** A site as a page of text; the same for {@code watch} and {@code demo}, with colours or without. */
public final class Screen {

    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE HH:mm", Locale.ENGLISH);

    private final int width;
    private final Paint paint;
    private final OffsetDateTime now;
    private final List<String> lines = new ArrayList<>();

    private Screen(int width, boolean colours, OffsetDateTime now) {
        this.width = Math.max(40, width);
        this.paint = new Paint(colours);
        this.now = now;
    }

    /**
     * What stands around the site.
     *
     * @param width columns
     * @param colours ANSI ones
     * @param head first line's end
     */
    public record Frame(int width, boolean colours, OffsetDateTime now, String head) {}

    /** The page's lines, none longer than the width. */
    public static List<String> of(SiteView site, Frame frame) {
        Screen s = new Screen(frame.width(), frame.colours(), frame.now());
        s.site(site, frame.head());
        site.cones().forEach(s::cone);
        return s.lines;
    }

    private void site(SiteView site, String head) {
        String right = head + (site.alive() ? "" : head.isEmpty() ? site.state() : ", " + site.state());
        int gap = Math.max(2, width - site.name().length() - right.length());
        lines.add(paint.bold(cut(site.name())) + " ".repeat(gap) + paint.dim(cut(right)));
        if (!site.alive()) {
            text("", "No daemon keeps this true at present: the state is '" + site.state()
                    + "'. What is shown may be old.", paint::alarm);
        }
        site.notes().digest().ifPresent(d -> text("", d, paint::plain));
        site.alerts().values().forEach(a -> text("! ", a, paint::alarm));
        if (site.cones().isEmpty()) {
            text("", "No cones are described.", paint::plain);
        }
        site.notes().room().ifPresent(r -> text("", "Room " + r + " °C"
                + site.notes().clock().filter("untrusted"::equals).map(c -> "; the clock is not set")
                .orElse(""),
                paint::dim));
    }

    private void cone(ConeView c) {
        lines.add("");
        String head = "Cone " + c.id() + "  " + c.hatch().stage();
        lines.add(paint.bold(head) + progress(c, width - head.length()));
        ready(c.hatch());
        c.hatch().wanted().ifPresent(w -> item("wanted", w));
        item("water", water(c.water()) + " · " + outputs(c.out()));
        c.hatch().warnings().doubt().ifPresent(d -> text("  ! ", d, paint::alarm));
        c.hatch().warnings().missed().ifPresent(m -> text("  ! ", m, paint::alarm));
        c.alerts().values().forEach(a -> text("  ! ", a, paint::alarm));
        item("next", c.hand().next());
    }

    private String progress(ConeView c, int room) {
        OptionalDouble share = c.hatch().share();
        if (share.isEmpty()) {
            return "";
        }
        String figures = Text.of("  %s of %.0f °C·h", c.hatch().done().text(),
                c.hatch().needed().getAsDouble()) + c.hatch().hatched().stream()
                .mapToObj(h -> Text.of(", about %.0f %% hatched", h)).findFirst().orElse("");
        int cells = Math.clamp(room - figures.length() - 2, 0, 48);
        int full = (int) Math.round(share.getAsDouble() * cells);
        return "  " + paint.good("█".repeat(full)) + paint.dim("░".repeat(cells - full))
                + (figures.length() + 2 <= room ? figures : "");
    }

    private void ready(ConeView.Hatch h) {
        h.ready().at().ifPresent(at -> item("ready", clock(at)
                + (h.ready().from().isPresent() && h.ready().until().isPresent()
                ? ", in 8 of 10 cases between "
                + clock(h.ready().from().get()) + " and " + clock(h.ready().until().get()) : "")));
    }

    private static String water(ConeView.Water w) {
        String measured = w.degreesC().isPresent() ? Text.of("%.1f °C", w.degreesC().getAsDouble())
                : "not known";
        String doubt = w.trust().equals("trusted") ? "" : " (" + w.trust()
                + w.why().map(y -> ": " + y).orElse("") + ")";
        return measured + doubt + (w.setpoint().isPresent()
                ? Text.of(", set-point %.1f °C", w.setpoint().getAsDouble()) : "");
    }

    private static String outputs(ConeView.Out o) {
        return "heat " + onOff(o.heat()) + (o.duty().isPresent() && o.duty().getAsDouble() > 0
                ? Text.of(" (wanted %.0f %%%s)", o.duty().getAsDouble(),
                o.vetoed().map(v -> "; withheld: " + v)
                .orElse("")) : "")
                + " · air " + onOff(o.air()) + switch (o.proven()) {
                    case "proven" -> "";
                    case "unverified" -> " (not verified)";
                    default -> " (" + o.proven() + ")";
                } + " · lamp " + onOff(o.lamp());
    }

    private static String onOff(boolean on) {
        return on ? "on" : "off";
    }

    private String clock(OffsetDateTime t) {
        OffsetDateTime here = now.withOffsetSameInstant(t.getOffset());
        return t.format(t.toLocalDate().equals(here.toLocalDate()) ? CLOCK : DAY);
    }

    private void item(String name, String sentence) {
        text(Text.of("  %-8s", name), sentence, paint::plain);
    }

    private interface Colour {
        String of(String line);
    }

    /** A sentence, wrapped below its own beginning; more than three lines are cut. */
    private void text(String lead, String sentence, Colour colour) {
        List<String> wrapped = wrap(sentence, Math.max(20, width - lead.length()));
        for (int i = 0; i < Math.min(3, wrapped.size()); i++) {
            boolean more = i == 2 && wrapped.size() > 3;
            int room = Math.max(20, width - lead.length()) - 1;
            String line = more ? wrapped.get(i).substring(0, Math.min(room, wrapped.get(i).length())) + "…"
                    : wrapped.get(i);
            lines.add((i == 0 ? colour.of(lead) : " ".repeat(lead.length())) + colour.of(line));
        }
    }

    /** Split at blanks. */
    static List<String> wrap(String sentence, int width) {
        List<String> out = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : sentence.split("\\s+")) {
            String w = word.length() > width ? word.substring(0, width - 1) + "…" : word;
            if (!line.isEmpty() && line.length() + 1 + w.length() > width) {
                out.add(line.toString());
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(w);
        }
        out.add(line.toString());
        return out;
    }

    private String cut(String s) {
        return s.length() <= width ? s : s.substring(0, width - 1) + "…";
    }

    /** The few ways in which words stand out. */
    private record Paint(boolean on) {
        String plain(String s) {
            return s;
        }

        String bold(String s) {
            return wrap("1", s);
        }

        String dim(String s) {
            return wrap("2", s);
        }

        String good(String s) {
            return wrap("36", s);
        }

        String alarm(String s) {
            return wrap("1;33", s);
        }

        private String wrap(String code, String s) {
            return on && !s.isBlank() ? "\u001b[" + code + "m" + s + "\u001b[0m" : s;
        }
    }
}
