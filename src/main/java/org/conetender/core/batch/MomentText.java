package org.conetender.core.batch;

import java.util.ArrayList;
import java.util.List;
import org.conetender.core.judge.Cooling;
import org.conetender.core.unit.Moment;

/** Moments and bridges as fields of a {@link FactText} line. Read back strictly. */
final class MomentText {

    private static final int FIELDS = 4;

    private MomentText() {}

    static List<String> fields(Moment m) {
        return List.of(m.boot(), "" + m.monoMs(), "" + m.wallMs(), "" + m.wallTrusted());
    }

    /** The moment whose first field is number {@code i}. */
    static Moment moment(List<String> f, int i) {
        return new Moment(FactText.at(f, i), Long.parseLong(FactText.at(f, i + 1)),
                Long.parseLong(FactText.at(f, i + 2)), truth(FactText.at(f, i + 3)));
    }

    static List<String> bridge(Bridge b) {
        List<String> out = new ArrayList<>(fields(b.from()));
        out.addAll(fields(b.to()));
        out.addAll(List.of("" + b.ends().beforeC(), "" + b.ends().afterC(), "" + b.ends().roomC(),
                "" + b.ends().cooling().quickestH(), "" + b.ends().cooling().slowestH()));
        return out;
    }

    /** The bridge whose first field is number {@code i}. */
    static Bridge bridge(List<String> f, int i) {
        int ends = i + 2 * FIELDS;
        // An older release wrote the nominal time constant alone.
        Cooling cooling = f.size() > ends + 4 ? new Cooling(figure(f, ends + 3), figure(f, ends + 4))
                : Cooling.nominal(figure(f, ends + 3));
        return new Bridge(moment(f, i), moment(f, i + FIELDS), new Bridge.Ends(figure(f, ends),
                figure(f, ends + 1), figure(f, ends + 2), cooling));
    }

    private static double figure(List<String> f, int i) {
        return Double.parseDouble(FactText.at(f, i));
    }

    static boolean truth(String word) {
        return switch (word) {
            case "true" -> true;
            case "false" -> false;
            default -> throw new IllegalArgumentException("neither true nor false: " + word);
        };
    }
}
