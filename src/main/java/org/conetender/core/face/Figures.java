package org.conetender.core.face;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;

/** Turns named figures, from a document or a command line, into an {@link Ask}. */
final class Figures {

    private final Map<String, Object> given;

    private Figures(Map<String, Object> given) {
        this.given = given;
    }

    /** @throws IllegalArgumentException with a sentence when a figure is missing, unknown or no number */
    static Ask filled(Map<String, Object> given) {
        Figures f = new Figures(given).all("litres", "ppt");
        return new Ask.DidFill(f.number("litres"), f.number("ppt"));
    }

    /** What is left out is as usual; unlike a filling, in which it could be that the salt comes later. */
    static Ask stocked(Map<String, Object> given) {
        Figures f = new Figures(given).only("lot", "cysts-g");
        Optional<String> lot = f.maybeText("lot");
        Optional<Double> cystsG = f.maybe("cysts-g");
        return lot.isPresent() && cystsG.isPresent() ? new Ask.DidStock(lot.get(), cystsG.get())
                : lot.isPresent() || cystsG.isPresent() ? new Ask.DidStockAsUsual(lot, cystsG)
                : new Ask.Did(Step.STOCKED);
    }

    /** What is left of a lot. */
    static Ask tin(Map<String, Object> given) {
        Figures f = new Figures(given).all("lot", "cysts-g");
        return new Ask.TinHolds(f.text("lot"), f.number("cysts-g"));
    }

    static Ask weighed(Map<String, Object> given) {
        return new Ask.DidWeigh(new Figures(given).all("wet-g").number("wet-g"));
    }

    static Ask count(Map<String, Object> given) {
        Figures f = new Figures(given).all("nauplii", "umbrella", "unhatched", "sample-ml");
        return new Ask.DidCount(f.whole("nauplii"), f.whole("umbrella"), f.whole("unhatched"),
                f.number("sample-ml"));
    }

    /** At least one of the usual values. */
    static Ask usual(Map<String, Object> given) {
        Figures f = new Figures(given).only("lot", "litres", "cysts-g", "ppt");
        if (given.isEmpty()) {
            throw new IllegalArgumentException("give at least one of lot, litres, cysts-g, ppt");
        }
        return new Ask.SetUsual(f.maybeText("lot"), f.maybe("litres"), f.maybe("cysts-g"), f.maybe("ppt"));
    }

    static Ask shelve(Map<String, Object> given) {
        Figures f = new Figures(given).all("alarm", "hours");
        return new Ask.Shelve(f.text("alarm"), f.number("hours"));
    }

    private Figures only(String... known) {
        Set<String> extra = new TreeSet<>(given.keySet());
        extra.removeAll(Set.of(known));
        if (!extra.isEmpty()) {
            throw new IllegalArgumentException("unknown figure '" + extra.iterator().next() + "'; known are "
                    + String.join(", ", known));
        }
        return this;
    }

    /** All of these and no others; whatever is missing is told at once. */
    private Figures all(String... needed) {
        only(needed);
        List<String> missing = Stream.of(needed).filter(n -> given.get(n) == null).map(n -> "'" + n + "'")
                .toList();
        if (!missing.isEmpty()) {
            throw new IllegalArgumentException((missing.size() == 1 ? "the figure " + missing.getFirst()
                    + " is" : "the figures " + String.join(", ", missing.subList(0, missing.size() - 1))
                    + " and " + missing.getLast() + " are") + " missing");
        }
        return this;
    }

    private double number(String name) {
        return maybe(name).orElseThrow();
    }

    private Optional<Double> maybe(String name) {
        Object v = given.get(name);
        if (v == null) {
            return Optional.empty();
        }
        if (v instanceof Double d && Double.isFinite(d)) {
            return Optional.of(d);
        }
        throw new IllegalArgumentException("'" + name + "' must be a number, not '" + v + "'");
    }

    private int whole(String name) {
        double d = number(name);
        if (d != Math.rint(d) || Math.abs(d) > 1e9) {
            throw new IllegalArgumentException("'" + name + "' must be a whole number");
        }
        return (int) d;
    }

    private String text(String name) {
        return maybeText(name).orElseThrow();
    }

    private Optional<String> maybeText(String name) {
        return Optional.ofNullable(given.get(name))
                .map(v -> v instanceof Double d ? Sentences.plain(d) : v.toString());
    }
}
