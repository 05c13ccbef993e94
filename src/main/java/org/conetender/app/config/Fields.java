package org.conetender.app.config;

import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.app.config.SettingDoc.Fallback;
import org.conetender.app.config.SettingDoc.Kind;
import org.tomlj.TomlArray;

/**
 * Reads the settings of one section against their {@link SettingDoc}.
 *
 * <p>What is wrong is noted and reading goes on, so that all errors are found at once. A value that
 * could not be read answers {@code NaN} or empty, for which every later comparison is false: one
 * mistake is told once.
 */
record Fields(Section at) {

    Fields sub(String name) {
        return new Fields(at.sub(name));
    }

    boolean given(String name) {
        return at.given(name);
    }

    /** A number in the unit of its name; NaN if it could not be read (which has been told). */
    double number(String name) {
        return number(name, Double.NaN);
    }

    /** As {@link #number(String)}, with a default worked out from others; NaN when there is none. */
    double number(String name, double derived) {
        SettingDoc doc = at.doc(name);
        if (at.given(name)) {
            return bounded(doc);
        }
        return switch (doc.fallback()) {
            case Fallback.Value v -> fell(doc, v.toml(), Double.parseDouble(v.toml()));
            case Fallback.Derived d -> fell(doc,
                    Double.isNaN(derived) ? "none" : SettingDoc.figure(derived), derived);
            case Fallback.Absent a -> fell(doc, "none", Double.NaN);
            case Fallback.Needed n -> at.missing(doc, Double.NaN);
        };
    }

    boolean flag(String name) {
        SettingDoc doc = at.doc(name);
        if (!at.given(name)) {
            return fell(doc, fallback(doc), Boolean.parseBoolean(fallback(doc)));
        }
        if (at.raw(name) instanceof Boolean b) {
            return took(doc, b);
        }
        at.wrong(name, "this must be true or false, without quotes");
        return false;
    }

    /** The index of one of the words of its document; -1 if it could not be read. */
    int word(String name) {
        SettingDoc doc = at.doc(name);
        List<String> words = ((Kind.Word) doc.kind()).words();
        if (!at.given(name)) {
            return fell(doc, fallback(doc), words.indexOf(unquoted(fallback(doc))));
        }
        if (at.raw(name) instanceof String s && words.contains(s)) {
            return words.indexOf(took(doc, s));
        }
        String near = at.raw(name) instanceof String s ? Nearest.hint(s, words) : "";
        at.wrong(name, "this must be one of " + doc.range() + near);
        return -1;
    }

    /** A text; empty when nothing was given and there is no default, or it could not be read. */
    Optional<String> text(String name) {
        return text(name, Optional.empty());
    }

    /** As {@link #text(String)}, with a default worked out from other settings. */
    Optional<String> text(String name, Optional<String> derived) {
        SettingDoc doc = at.doc(name);
        if (!at.given(name)) {
            return switch (doc.fallback()) {
                case Fallback.Value v -> Optional.of(fell(doc, v.toml(), unquoted(v.toml())));
                case Fallback.Derived d -> derived.map(t -> fell(doc, Shown.quoted(t), t));
                case Fallback.Absent a -> fell(doc, "none", Optional.empty());
                case Fallback.Needed n -> at.missing(doc, Optional.empty());
            };
        }
        if (at.raw(name) instanceof String s) {
            return Optional.of(took(doc, s));
        }
        at.wrong(name, "this must be text in quotes: " + doc.range());
        return Optional.empty();
    }

    /** Those of a list that are texts, every other one told; an hour without quotes counts as its text. */
    List<String> texts(String name) {
        SettingDoc doc = at.doc(name);
        if (!at.given(name)) {
            return doc.fallback() instanceof Fallback.Needed
                    ? at.missing(doc, List.of()) : fell(doc, "[]", List.of());
        }
        if (!(at.raw(name) instanceof TomlArray array)) {
            at.wrong(name, "this must be a list in square brackets: " + doc.range());
            return List.of();
        }
        List<String> out = new ArrayList<>();
        for (Object o : array.toList()) {
            if (o instanceof String || o instanceof LocalTime) {
                out.add(o.toString());
            } else {
                at.wrong(name, Shown.value(o) + " in it is not text in quotes; " + doc.range());
            }
        }
        took(doc, array);
        return out;
    }

    private double bounded(SettingDoc doc) {
        Kind.Bounded kind = (Kind.Bounded) doc.kind();
        boolean whole = kind instanceof Kind.Whole;
        if (!(at.raw(doc.name()) instanceof Number n) || whole && !(n instanceof Long)) {
            at.wrong(doc.name(), "this must be a plain " + (whole ? "whole number" : "number")
                    + (doc.unit().isEmpty() ? "" : " of " + doc.unit()) + ", without unit or quotes, "
                    + doc.range());
            return Double.NaN;
        }
        if (!(n.doubleValue() >= kind.least() && n.doubleValue() <= kind.most())) {
            at.wrong(doc.name(), "out of bounds; it must be " + doc.range());
            return Double.NaN;
        }
        took(doc, n);
        return n.doubleValue();
    }

    private <T> T fell(SettingDoc doc, String shown, T value) {
        at.counts(doc, shown, true);
        return value;
    }

    private <T> T took(SettingDoc doc, T value) {
        at.counts(doc, Shown.value(value), false);
        return value;
    }

    private static String fallback(SettingDoc doc) {
        return ((Fallback.Value) doc.fallback()).toml();
    }

    private static String unquoted(String toml) {
        return toml.substring(1, toml.length() - 1);
    }
}
