package org.conetender.app.config;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** Gathers, while one file is read, every error, every warning and every value as it counts. */
final class Findings {

    private final List<Problem> errors = new ArrayList<>();
    private final List<Problem> warnings = new ArrayList<>();
    private final List<Ranked> effective = new ArrayList<>();
    private final Set<String> asked = new TreeSet<>();

    private record Ranked(int rank, Effective row) {}

    void error(Problem p) {
        errors.add(p);
    }

    void warning(Problem p) {
        warnings.add(p);
    }

    /** A value as it counts. @param cone 0 for the site, else counting from 1, so that cones stay together */
    void effective(int cone, SettingDoc doc, Effective row) {
        int order = SettingDocs.all().indexOf(doc);
        effective.add(new Ranked(cone * 1_000 + order, row));
    }

    /** Notes that the loader asked for this setting; a test compares these with the table. */
    void asked(SettingDoc doc) {
        asked.add(doc.key());
    }

    Set<String> asked() {
        return asked;
    }

    List<Problem> errors() {
        return errors.stream().sorted().distinct().toList();
    }

    List<Problem> warnings() {
        return warnings.stream().sorted().distinct().toList();
    }

    List<Effective> effective() {
        return effective.stream().sorted(Comparator.comparingInt(Ranked::rank)).map(Ranked::row).toList();
    }
}
