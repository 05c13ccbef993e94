package org.conetender.app.view;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.stream.Collectors;
import org.conetender.app.view.Page.Rank;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.face.AlarmList;
import org.conetender.core.face.ShelfWords;
import org.conetender.core.unit.Text;

/** A site as a page of text; the same for {@code watch} and {@code demo}, with colours or without. */
public final class Screen {

    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE HH:mm", Locale.ENGLISH);

    private final int width;
    private final Paint paint;
    private final OffsetDateTime now;
    /** The list of all alarms: what follows from one may be in another cone. */
    private final Optional<String> list;
    private final Page page = new Page();

    private Screen(SiteView site, Frame frame) {
        this.list = site.notes().alarms();
        this.width = Math.max(40, frame.size().columns());
        this.paint = new Paint(frame.colours());
        this.now = frame.now();
    }

    /**
     * What stands around the site.
     *
     * @param size of the window; lines that do not fit its height are left out, and counted
     * @param colours ANSI ones
     * @param around the words
     */
    public record Frame(Terminal.Size size, boolean colours, OffsetDateTime now, Around around) {}

    /**
     * @param head the first line's end
     * @param old why this is a picture of before, and of when; empty while it is kept true
     * @param foot the last line; may be empty
     */
    public record Around(String head, String old, String foot) {}

    /** The page's lines, none longer than the width and no more than the height. */
    public static List<String> of(SiteView site, Frame frame) {
        Screen s = new Screen(site, frame);
        s.site(site, frame.around());
        List<List<ConeView>> shared = idle(site);
        site.cones().stream().filter(c -> shared.stream().noneMatch(g -> g.contains(c))).forEach(s::cone);
        for (List<ConeView> idle : shared) {
            s.page.add(Rank.BLANK, List.of(""));
            s.page.add(Rank.CONE, List.of(s.paint.bold(cut("Cones " + String.join(", ", idle.stream()
                    .limit(idle.size() - 1).map(ConeView::id).toList()) + " and " + idle.getLast().id()
                    + "  clean", s.width))));
            s.item(Rank.NEXT, "next", idle.getFirst().hand().next());
        }
        if (!frame.around().foot().isEmpty()) {
            s.page.add(Rank.BLANK, List.of(""));
            s.text(Rank.FOOT, "", frame.around().foot(), s.paint::plain);
        }
        return s.page.fitted(Math.max(1, frame.size().rows()));
    }

    /** Those that share their lines: clean, nothing to be said of them, and asking for the same. */
    private static List<List<ConeView>> idle(SiteView site) {
        return site.cones().stream().filter(c -> c.hatch().stage().equals("clean")
                && c.water().trust().equals("trusted") && c.alerts().isEmpty() && c.hand().alarms().isEmpty()
                && c.hatch().warnings().doubt().isEmpty())
                .collect(Collectors.groupingBy(c -> c.hand().next(), LinkedHashMap::new, Collectors.toList()))
                .values().stream().filter(g -> g.size() > 1).toList();
    }

    private void site(SiteView site, Around around) {
        boolean old = !around.old().isEmpty();
        title(site.name(), (old ? "old, " : site.alive() ? "" : site.state() + ", ") + around.head());
        if (old) {
            text(Rank.NOTICE, "", around.old(), paint::alarm);
        } else if (!site.alive()) {
            text(Rank.NOTICE, "", site.state().equals("init")
                    ? "The daemon is starting. What is shown may be old."
                    : "No daemon keeps this true at present: the state is '" + site.state()
                    + "'. What is shown may be old. To start it, on its board: sudo systemctl start "
                    + "conetender", paint::alarm);
        }
        site.notes().digest().ifPresent(d -> text(Rank.READY, "", d, paint::plain));
        alarms("! ", site.alerts(), site.name(), "");
        site.notes().alarms().flatMap(ShelfWords::ofSite)
                .ifPresent(a -> text(Rank.REMARK, "", a, paint::plain));
        if (site.cones().isEmpty()) {
            text(Rank.CONE, "", "No cones are described.", paint::plain);
        }
        site.notes().room().ifPresent(r -> text(Rank.ROOM, "", "Room " + r + " °C"
                + site.notes().clock().filter("untrusted"::equals).map(c -> "; the clock is not set")
                .orElse(""),
                paint::dim));
    }

    /** The site's name gives way to the hour and the state. */
    private void title(String name, String right) {
        String end = cut(right, width);
        String begin = cut(name, Math.max(0, width - end.length() - 2));
        int gap = width - begin.length() - end.length();
        page.add(Rank.TITLE, List.of(paint.bold(begin) + " ".repeat(gap) + paint.dim(end)));
    }

    private void cone(ConeView c) {
        page.add(Rank.BLANK, List.of(""));
        String head = "Cone " + c.id() + "  " + c.hatch().stands();
        page.add(Rank.CONE, List.of(paint.bold(head) + progress(c, width - head.length())));
        ready(c.hatch());
        c.hatch().wanted().stands().ifPresent(w -> item(Rank.WATER, "wanted", w));
        item(Rank.WATER, "water", Conditions.of(c));
        c.out().heat().relay().words().ifPresent(r -> item(Rank.SPARE, "relay", r));
        c.hatch().warnings().untold(c.alerts())
                .ifPresent(d -> text(Rank.WARNING, "  ! ", d, paint::alarm));
        c.hatch().warnings().missed().ifPresent(m -> text(Rank.WARNING, "  ! ", m, paint::alarm));
        alarms("  ! ", c.alerts(), "Cone " + c.id(), c.id());
        // What a person is not told of by itself, since it is shelved, follows or was told among many.
        c.hand().alarms().flatMap(a -> c.alerts().isEmpty() ? Optional.of(a) : ShelfWords.in(a))
                .ifPresent(a -> item(Rank.REMARK, "alarms", a));
        item(Rank.NEXT, "next", c.hand().next());
    }

    /** Whole, whatever their length: their end says what to do. The list knows how each stands by now. */
    private void alarms(String lead, SortedMap<String, String> alerts, String where, String cone) {
        alerts.forEach((id, sentence) -> text(urgency(id), lead, list
                .flatMap(l -> AlarmList.entry(l, where, id).map(e -> e + AlarmList.followers(l, cone, id)))
                .orElse(sentence), paint::alarm));
    }

    private static Rank urgency(String id) {
        return Arrays.stream(AlarmKind.values()).filter(k -> k.id().equals(id)).findFirst()
                .map(k -> switch (k.priority()) {
                    case NOW -> Rank.URGENT;
                    case SOON -> Rank.WARNING;
                    case LATER -> Rank.REMARK;
                }).orElse(Rank.WARNING);
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

    /** Until it is ready the hour of that, then how long it is worth waiting. */
    private void ready(ConeView.Hatch h) {
        if (h.ready().at().isEmpty() && h.ready().food().most().isPresent()) {
            item(Rank.READY, "food", "most about " + clock(h.ready().food().most().get())
                    + h.ready().food().there().until().map(u -> ", 95 % of it until " + clock(u)).orElse(""));
        }
        h.ready().at().ifPresent(at -> item(Rank.READY, "ready", clock(at)
                + (h.ready().most().told() ? ", in 8 of 10 cases " + between(h.ready().most()) : "")));
        if (h.ready().at().isPresent() && h.ready().half().told()) {
            item(Rank.SPARE, "", "in 5 of 10 cases " + between(h.ready().half()));
        }
        ConeView.Twice twice = h.ready().food().twice();
        if (twice.at().told()) {
            item(Rank.WATER, "twice", "it hatches over long: harvest about " + clock(twice.at().from().get())
                    + twice.share().stream().mapToObj(s -> Text.of(" (%.0f %%)", s)).findFirst().orElse("")
                    + " and the rest about " + clock(twice.at().until().get()));
        }
    }

    private String between(ConeView.Between b) {
        return "between " + clock(b.from().orElseThrow()) + " and " + clock(b.until().orElseThrow());
    }

    private String clock(OffsetDateTime t) {
        OffsetDateTime here = now.withOffsetSameInstant(t.getOffset());
        return t.format(t.toLocalDate().equals(here.toLocalDate()) ? CLOCK : DAY);
    }

    private void item(Rank rank, String name, String sentence) {
        text(rank, Text.of("  %-8s", name), sentence, paint::plain);
    }

    private interface Colour {
        String of(String line);
    }

    /** A sentence, wrapped below its own beginning. */
    private void text(Rank rank, String lead, String sentence, Colour colour) {
        List<String> lines = new ArrayList<>();
        for (String line : sentence.lines().flatMap(l -> wrap(l.strip(), width - lead.length()).stream())
                .toList()) {
            lines.add((lines.isEmpty() ? colour.of(lead) : " ".repeat(lead.length())) + colour.of(line));
        }
        page.add(rank, lines);
    }

    /** Split at blanks; what is longer than a line is split where the line ends. */
    static List<String> wrap(String sentence, int width) {
        List<String> out = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : sentence.split("\\s+")) {
            if (!line.isEmpty() && line.length() + 1 + word.length() > width) {
                out.add(line.toString());
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
            for (; line.length() > width; line.delete(0, width)) {
                out.add(line.substring(0, width));
            }
        }
        out.add(line.toString());
        return out;
    }

    private static String cut(String s, int width) {
        return width < 1 ? "" : s.length() <= width ? s : s.substring(0, width - 1) + "…";
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
