package org.conetender.app.config;

import java.util.List;
import java.util.Set;
import org.tomlj.Toml;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/** One table of the file, and where it stands: whoever finds something wrong in it says so here. */
final class Section {

    /**
     * Where a section stands.
     *
     * @param key of the documents, such as {@code cone.limits}
     * @param shown to people, such as {@code cone[a].limits}
     * @param cone counting from 1; 0 for the site
     * @param broken whether the section itself is not a table, which has been told
     */
    record Place(String key, String shown, int cone, boolean broken) {

        Place within(String name, boolean nowBroken) {
            return new Place(key.isEmpty() ? name : key + "." + name,
                    shown.isEmpty() ? name : shown + "." + name, cone, nowBroken);
        }
    }

    private final Place place;
    private final TomlTable table;
    private final TomlPosition at;
    private final Findings findings;

    Section(Place place, TomlTable table, TomlPosition at, Findings findings) {
        this.place = place;
        this.table = table;
        this.at = at;
        this.findings = findings;
    }

    /** A table within this one; an empty one, standing where this one stands, if it is not given. */
    Section sub(String name) {
        Object raw = raw(name);
        boolean table = raw == null || raw instanceof TomlTable;
        if (!table) {
            wrong(name, "this is a section, not a value; write its settings below ["
                    + place.within(name, false).key() + "]");
        }
        return new Section(place.within(name, place.broken() || !table),
                raw instanceof TomlTable t ? t : Toml.parse(""), position(name), findings);
    }

    /** Whether the file gives this setting; what lies in a broken section is never called missing. */
    boolean given(String name) {
        return raw(name) != null || place.broken();
    }

    /** The value as it stands in the file; null when nothing is given. */
    Object raw(String name) {
        return table.get(List.of(name));
    }

    Set<String> names() {
        return table.keySet();
    }

    Place place() {
        return place;
    }

    Findings findings() {
        return findings;
    }

    /** Notes an error at a setting of this section, showing its value. */
    void wrong(String name, String what) {
        if (!place.broken()) {
            findings.error(problem(name, what));
        }
    }

    /** Notes a warning at a setting of this section, showing its value. */
    void warn(String name, String what) {
        if (!place.broken()) {
            findings.warning(problem(name, what));
        }
    }

    /** Where a setting stands; where the section stands, when it is not given. */
    TomlPosition position(String name) {
        return raw(name) == null ? at : table.inputPositionOf(List.of(name));
    }

    /** The document of a setting of this section, which is thereby known to be asked for. */
    SettingDoc doc(String name) {
        String key = place.within(name, false).key();
        SettingDoc doc = SettingDocs.find(key).orElseThrow(
                () -> new IllegalStateException("no document describes " + key));
        findings.asked(doc);
        return doc;
    }

    /** Notes how a setting counts. @param shown as it would stand in the file */
    void counts(SettingDoc doc, String shown, boolean isDefault) {
        if (!place.broken()) {
            findings.effective(place.cone(), doc, new Effective(
                    place.within(doc.name(), false).shown(), shown, doc.unit(), isDefault));
        }
    }

    /** Notes that a setting without a default is not given. @return {@code instead}, to read on with */
    <T> T missing(SettingDoc doc, T instead) {
        wrong(doc.name(), "this must be given. " + doc.purpose() + " For example: " + doc.name() + " = "
                + doc.example());
        return instead;
    }

    private Problem problem(String name, String what) {
        TomlPosition p = position(name);
        return new Problem(p.line(), p.column(), place.within(name, false).shown(),
                Shown.value(raw(name)), what);
    }
}
