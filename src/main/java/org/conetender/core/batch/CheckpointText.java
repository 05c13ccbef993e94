package org.conetender.core.batch;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.batch.Checkpoint.ConePoint;
import org.conetender.core.batch.Checkpoint.Temperature;
import org.conetender.core.unit.Moment;

/**
 * The written form of a {@link Checkpoint}: a head line with the moment and how many lines follow,
 * then a line for each temperature and each cone, then an end line. Fields are separated and escaped as in
 * {@link FactText}. Eight cones stay below 2 kB, because this is rewritten every minute on a card
 * that wears (dependencies.md §11). Read back strictly: a text cut short is refused, not guessed.
 */
public final class CheckpointText {

    private static final String HEAD = "checkpoint-1";
    private static final String END = "end";

    private CheckpointText() {}

    /**
     * The text of a checkpoint.
     *
     * @throws IllegalArgumentException if a figure is not a number, or the low end is above the high end
     */
    public static String write(Checkpoint c) {
        List<String> lines = new ArrayList<>();
        Moment at = c.at();
        lines.add(FactText.join(HEAD, List.of(at.boot(), "" + at.monoMs(), "" + at.wallMs(),
                "" + at.wallTrusted(), "" + c.temperatures().size(), "" + c.cones().size())));
        for (Temperature t : c.temperatures()) {
            lines.add(FactText.join("temperature", List.of(t.series(), "" + sane(t.degreesC()))));
        }
        for (ConePoint p : c.cones()) {
            check(p);
            lines.add(FactText.join("cone", List.of(p.cone(), "" + p.batch(), "" + p.leastDegreeHours(),
                    "" + p.mostDegreeHours(), "" + p.hoursArrested())));
        }
        lines.add(END);
        return String.join("\n", lines);
    }

    /** @throws IllegalArgumentException if the text is not one that {@link #write} makes */
    public static Checkpoint read(String text) {
        String[] lines = text.split("\n", -1);
        List<String> head = fields(lines[0], HEAD, 7);
        int temperatures = Integer.parseInt(head.get(5));
        int cones = Integer.parseInt(head.get(6));
        if (temperatures < 0 || cones < 0 || lines.length != 2L + temperatures + cones
                || !lines[lines.length - 1].equals(END)) {
            throw new IllegalArgumentException("a checkpoint announces " + temperatures + " temperatures and "
                    + cones + " cones, which is not what follows: " + text);
        }
        List<Temperature> t = new ArrayList<>();
        for (int i = 1; i <= temperatures; i++) {
            List<String> f = fields(lines[i], "temperature", 3);
            t.add(new Temperature(f.get(1), sane(Double.parseDouble(f.get(2)))));
        }
        List<ConePoint> c = new ArrayList<>();
        for (int i = 1 + temperatures; i < lines.length - 1; i++) {
            c.add(cone(fields(lines[i], "cone", 6)));
        }
        return new Checkpoint(moment(head), t, c);
    }

    private static Moment moment(List<String> head) {
        return new Moment(head.get(1), Long.parseLong(head.get(2)), Long.parseLong(head.get(3)),
                truth(head.get(4)));
    }

    private static ConePoint cone(List<String> f) {
        ConePoint p = new ConePoint(f.get(1), Long.parseLong(f.get(2)), Double.parseDouble(f.get(3)),
                Double.parseDouble(f.get(4)), Double.parseDouble(f.get(5)));
        check(p);
        return p;
    }

    /** The high end may be infinite: after a gap that nothing bounds. */
    private static void check(ConePoint p) {
        sane(p.leastDegreeHours());
        sane(p.hoursArrested());
        if (!(p.leastDegreeHours() <= p.mostDegreeHours())) {
            throw new IllegalArgumentException("degree-hours out of order in cone " + p.cone() + ": "
                    + p.leastDegreeHours() + " to " + p.mostDegreeHours());
        }
    }

    private static double sane(double figure) {
        if (!Double.isFinite(figure)) {
            throw new IllegalArgumentException("not a figure: " + figure);
        }
        return figure;
    }

    private static boolean truth(String word) {
        return switch (word) {
            case "true" -> true;
            case "false" -> false;
            default -> throw new IllegalArgumentException("neither true nor false: " + word);
        };
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
