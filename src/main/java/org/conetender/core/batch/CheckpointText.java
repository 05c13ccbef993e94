package org.conetender.core.batch;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.conetender.core.batch.Checkpoint.Air;
import org.conetender.core.batch.Checkpoint.At;
import org.conetender.core.batch.Checkpoint.ConePoint;
import org.conetender.core.batch.Checkpoint.Temperature;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.RoomDay;
import org.conetender.core.unit.Moment;

/**
 * The written form of a {@link Checkpoint}: a head line with the moment and how many lines follow,
 * then a line for each temperature and each cone, one for the room's day where it is known, and an end line.
 * Fields are separated and escaped as in {@link FactText}. Eight cones stay below 2 kB, because this is
 * rewritten every minute on a card that wears (dependencies.md §11). Read back strictly: a text cut short is
 * refused, not guessed.
 */
public final class CheckpointText {

    private static final String HEAD = "checkpoint-2";
    /** Without the moment of each cone, and with one sum of idle hours; still read. */
    private static final String OLD_HEAD = "checkpoint-1";
    /** Figures are kept to a ten-thousandth: finer than any probe, and short. */
    private static final double PLACES = 1e4;
    /** Beyond it rounding would overflow; nothing in a cone comes near. */
    private static final double MOST = 1e9;
    private static final String END = "end";
    private static final String DAY = "room-day";
    private static final double HUNDREDTH = 1e2;
    /** Fields of a cone's line; a set-point that was chosen for an hour follows, or nothing in its place. */
    private static final int POINT = 10;
    /** Then what there was of air. A line that an older release wrote ends before either. */
    private static final int HELD = POINT + 1;
    private static final int WHOLE = HELD + 2;

    private CheckpointText() {}

    /**
     * The text of a checkpoint.
     *
     * @throws IllegalArgumentException if a figure is not a number
     */
    public static String write(Checkpoint c) {
        List<String> lines = new ArrayList<>();
        Moment at = c.at();
        lines.add(FactText.join(HEAD, List.of(at.boot(), "" + at.monoMs(), "" + at.wallMs(),
                "" + at.wallTrusted(), "" + c.temperatures().size(), "" + c.cones().size())));
        for (Temperature t : c.temperatures()) {
            lines.add(FactText.join("temperature", List.of(t.series(), figure(t.degreesC()))));
        }
        for (ConePoint p : c.cones()) {
            lines.add(FactText.join("cone", fields(p, at.boot())));
        }
        if (!c.day().isEmpty()) {
            lines.add(FactText.join(DAY, c.day().stream().map(CheckpointText::hour).toList()));
        }
        lines.add(END);
        return String.join("\n", lines);
    }

    private static List<String> fields(ConePoint p, String boot) {
        Development d = p.done();
        List<String> f = new ArrayList<>(List.of(p.cone(), "" + p.batch(), figure(d.leastDegreeHours()),
                figure(d.mostDegreeHours()), figure(d.hoursWarm()), figure(d.hoursCold()),
                figure(d.hoursAboveLoss()), p.at().boot().equals(boot) ? "" : p.at().boot(),
                "" + p.at().monoMs()));
        if (p.heldC().isPresent() || p.air().isPresent()) {
            f.add(p.heldC().isPresent() ? figure(p.heldC().getAsDouble()) : "");
        }
        p.air().ifPresent(a -> f.addAll(List.of(figure(a.spent()), "" + a.withoutMs())));
        return f;
    }

    /** @throws IllegalArgumentException if the text is not one that a release has written */
    public static Checkpoint read(String text) {
        String[] lines = text.split("\n", -1);
        boolean old = lines[0].startsWith(OLD_HEAD);
        List<String> head = fields(lines[0], old ? OLD_HEAD : HEAD, 7);
        int temperatures = Integer.parseInt(head.get(5));
        int cones = Integer.parseInt(head.get(6));
        int last = lines.length - 1;
        boolean day = !old && last > 0 && lines[last - 1].startsWith(DAY);
        if (temperatures < 0 || cones < 0 || lines.length != (day ? 3L : 2L) + temperatures + cones
                || !lines[last].equals(END)) {
            throw new IllegalArgumentException("a checkpoint announces " + temperatures + " temperatures and "
                    + cones + " cones, which is not what follows: " + text);
        }
        List<Temperature> t = new ArrayList<>();
        for (int i = 1; i <= temperatures; i++) {
            List<String> f = fields(lines[i], "temperature", 3);
            t.add(new Temperature(f.get(1), sane(Double.parseDouble(f.get(2)))));
        }
        Moment at = MomentText.moment(head, 1);
        List<ConePoint> c = new ArrayList<>();
        for (int i = 1 + temperatures; i < (day ? last - 1 : last); i++) {
            c.add(old ? old(fields(lines[i], "cone", 6), t, at) : cone(point(lines[i]), at));
        }
        return new Checkpoint(at, t, c,
                day ? day(fields(lines[last - 1], DAY, 1 + RoomDay.HOURS)) : List.of());
    }

    /** To a hundredth and with its days, such as 19.87/4; nothing while it is unknown. */
    private static String hour(RoomDay.Hour h) {
        return h.days() == 0 ? "" : sane(Math.round(h.meanC() * HUNDREDTH) / HUNDREDTH) + "/" + h.days();
    }

    private static List<RoomDay.Hour> day(List<String> f) {
        List<RoomDay.Hour> hours = new ArrayList<>();
        for (String h : f.subList(1, f.size())) {
            String[] both = h.split("/", -1);
            hours.add(h.isEmpty() ? RoomDay.Hour.UNKNOWN
                    : new RoomDay.Hour(sane(Double.parseDouble(both[0])), days(both)));
        }
        return hours;
    }

    private static int days(String[] both) {
        int days = both.length == 2 ? Integer.parseInt(both[1]) : 0;
        if (days < 1 || days > RoomDay.MOST_DAYS) {
            throw new IllegalArgumentException("no hour of the room is made of " + days + " days");
        }
        return days;
    }

    private static ConePoint cone(List<String> f, Moment at) {
        Development d = new Development(number(f, 3), number(f, 4), number(f, 5), number(f, 6), number(f, 7));
        String boot = f.get(8).isEmpty() ? at.boot() : f.get(8);
        return new ConePoint(f.get(1), Long.parseLong(f.get(2)), d, new At(boot, Long.parseLong(f.get(9))),
                f.size() == POINT || f.size() == WHOLE && f.get(POINT).isEmpty() ? OptionalDouble.empty()
                        : OptionalDouble.of(number(f, POINT)),
                f.size() < WHOLE ? Optional.empty()
                        : Optional.of(new Air(number(f, HELD), Long.parseLong(f.get(HELD + 1)))));
    }

    /**
     * What an older release wrote. The cone stood there at the checkpoint if its water was believed then,
     * else at an unknown moment. Idle hours count as warm, and as hot: the worse ones.
     */
    private static ConePoint old(List<String> f, List<Temperature> temperatures, Moment at) {
        boolean believed = temperatures.stream().anyMatch(t -> t.series().equals(f.get(1)));
        double idle = number(f, 5);
        return new ConePoint(f.get(1), Long.parseLong(f.get(2)),
                new Development(number(f, 3), number(f, 4), idle, 0, idle),
                believed ? new At(at.boot(), at.monoMs()) : new At(At.UNKNOWN, 0));
    }

    /** The fields of a cone's line, as any release has written it. */
    private static List<String> point(String line) {
        int size = FactText.split(line).size();
        return fields(line, "cone", size <= POINT ? POINT : size == HELD ? HELD : WHOLE);
    }

    private static double number(List<String> f, int i) {
        return sane(Double.parseDouble(f.get(i)));
    }

    private static String figure(double d) {
        return "" + (Math.abs(sane(d)) < MOST ? Math.round(d * PLACES) / PLACES : d);
    }

    private static double sane(double figure) {
        if (!Double.isFinite(figure)) {
            throw new IllegalArgumentException("not a figure: " + figure);
        }
        return figure;
    }

    private static List<String> fields(String line, String kind, int count) {
        List<String> f = FactText.split(line);
        if (!f.get(0).equals(kind) || f.size() != count) {
            throw new IllegalArgumentException("expected a " + kind + " line of " + count
                    + " fields, found: " + f);
        }
        return f;
    }
}
