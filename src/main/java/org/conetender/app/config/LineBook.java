package org.conetender.app.config;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.conetender.app.config.Hardware.Bias;
import org.tomlj.Toml;
import org.tomlj.TomlTable;

/** Gathers every GPIO line of the file; no line is ever given out twice. */
final class LineBook {

    /** BCM lines that a Raspberry Pi pulls up until they are claimed; those to 27 down (control.md §1.5). */
    private static final int LAST_PULLED_UP = 8;
    private static final int LAST_ON_HEADER = 27;

    /** BCM line of the kernel's 1-wire master unless it is told another. */
    private static final int ONE_WIRE = 4;

    private record Parts(int line, boolean activeLow, Bias bias) {}

    private record Defaults(boolean activeLow, Bias bias) {}

    private final Defaults ofOutputs;
    private final Defaults ofContacts;
    private final List<Hardware.OutputLine> outputs = new ArrayList<>();
    private final List<Hardware.InputLine> inputs = new ArrayList<>();
    private final Map<Integer, String> taken = new HashMap<>();

    /** @param gpio the section with the defaults of all lines */
    LineBook(Fields gpio) {
        ofOutputs = new Defaults(gpio.flag("outputs-active-low"), bias(gpio.word("outputs-bias")));
        ofContacts = new Defaults(gpio.flag("contacts-active-low"), bias(gpio.word("contacts-bias")));
    }

    /** The parts of a line written as a table; the parts of an empty one, if it is written as a number. */
    static Section parts(Section section, String name) {
        Section.Place place = section.place().within(name, section.place().broken());
        return new Section(new Section.Place("<line>", place.shown(), place.cone(), place.broken()),
                section.raw(name) instanceof TomlTable t ? t : Toml.parse(""),
                section.position(name), section.findings());
    }

    /** Takes an output of that id. @return whether it is fitted, even if its line is refused */
    boolean output(Fields at, String name, String id) {
        read(at, name, ofOutputs).filter(p -> claim(at, name, id, p.line())).ifPresent(p -> {
            outputs.add(new Hardware.OutputLine(id, p.line(), p.activeLow(), p.bias()));
            warnOfTheStart(at, name, id, p);
        });
        return at.given(name);
    }

    /** Takes a contact of that id. @return whether it is fitted, even if its line is refused */
    boolean contact(Fields at, String name, String id) {
        read(at, name, ofContacts).filter(p -> claim(at, name, id, p.line())).ifPresent(p ->
                inputs.add(new Hardware.InputLine(id, p.line(), p.activeLow(), p.bias())));
        return at.given(name);
    }

    Hardware.Gpio gpio(Path chip) {
        return new Hardware.Gpio(chip, outputs, inputs);
    }

    /** Empty when nothing is given or it could not be read, which has been told. */
    private static Optional<Parts> read(Fields at, String name, Defaults defaults) {
        SettingDoc doc = at.at().doc(name);
        if (!at.given(name)) {
            if (doc.fallback() instanceof SettingDoc.Fallback.Needed) {
                return at.at().missing(doc, Optional.empty());
            }
            at.at().counts(doc, "none", true);
            return Optional.empty();
        }
        Fields parts = new Fields(parts(at.at(), name));
        double line = at.at().raw(name) instanceof TomlTable
                ? parts.number("line") : bareNumber(at, name);
        boolean activeLow = parts.given("active-low") ? parts.flag("active-low") : defaults.activeLow();
        Bias bias = parts.given("bias") ? bias(parts.word("bias")) : defaults.bias();
        if (Double.isNaN(line)) {
            return Optional.empty();
        }
        Parts p = new Parts((int) line, activeLow, bias);
        at.at().counts(doc, "{ line = " + p.line() + ", active-low = " + p.activeLow() + ", bias = \""
                + SiteDocs.BIAS.get(p.bias().ordinal()) + "\" }", false);
        return Optional.of(p);
    }

    private static double bareNumber(Fields at, String name) {
        SettingDoc part = SettingDocs.find("<line>.line").orElseThrow();
        SettingDoc.Kind.Bounded kind = (SettingDoc.Kind.Bounded) part.kind();
        if (at.at().raw(name) instanceof Long n) {
            if (n >= kind.least() && n <= kind.most()) {
                return n;
            }
            at.at().wrong(name, "out of bounds; a GPIO line is " + part.range());
        } else {
            at.at().wrong(name, "this must be a line number, " + part.range()
                    + ", or { line = …, active-low = …, bias = … }");
        }
        return Double.NaN;
    }

    private boolean claim(Fields at, String name, String id, int line) {
        String holder = taken.putIfAbsent(line, id);
        if (holder != null) {
            at.at().wrong(name, "GPIO line " + line + " is already " + holder + "; every output and contact "
                    + "needs a line of its own. For a bath or a pump that cones share see "
                    + "check --explain cone.heat.kind and cone.air.line");
            return false;
        }
        if (line == ONE_WIRE) {
            at.at().warn(name, "line 4 is where the kernel keeps its 1-wire bus unless told otherwise; "
                    + "take another line, or move the bus");
        }
        if (line <= 1) {
            at.at().warn(name, "lines 0 and 1 are read at the start of the machine to look for an "
                    + "add-on board; take another line");
        }
        return true;
    }

    /** An output that is energised while the machine starts and nobody holds it yet. */
    private static void warnOfTheStart(Fields at, String name, String id, Parts p) {
        boolean matters = id.endsWith(".heat") || id.endsWith(".cut-out") || id.endsWith(".air-pause");
        boolean pulledUp = p.line() <= LAST_PULLED_UP;
        if (matters && p.line() <= LAST_ON_HEADER && pulledUp != p.activeLow()) {
            at.at().warn(name, "until the daemon runs, a Raspberry Pi pulls line " + p.line() + " "
                    + (pulledUp ? "up" : "down") + ", which energises this output; take a line "
                    + (pulledUp ? "from 9 to 27" : "from 0 to 8")
                    + ", or fit a resistor of your own that holds the relay off");
        }
    }

    private static Bias bias(int index) {
        return index < 0 ? Bias.AS_IS : Bias.values()[index];
    }
}
