package org.conetender.app.config;

import java.util.List;
import org.conetender.app.config.SettingDoc.Fallback;
import org.conetender.app.config.SettingDoc.Kind;

/** The settings of the site and of the machine, and the three parts of every GPIO line. */
final class SiteDocs {

    static final String ID_FORM = "1 to 32 lower-case letters, digits and -, beginning with a letter";
    static final String PROBE_FORM = "a folder name under one-wire.root, such as 28-0123456789ab";
    static final String PATH_FORM = "an absolute path";

    /** How a pull resistor is written; the order is that of {@link Hardware.Bias}. */
    static final List<String> BIAS = List.of("as-is", "none", "pull-up", "pull-down");

    /** Most lines a chip of these boards has (58 on the newest; board.md), rounded up. */
    private static final int MOST_LINE = 63;

    static final List<SettingDoc> ROWS = List.of(
            row("site.id", text(ID_FORM), value("\"conetender\""),
                    "Names this site on MQTT: its root device. Two sites on one broker need two ids.",
                    "\"larkmoor\""),
            row("site.name", text("any text of 1 to 60 characters"), new Fallback.Derived("site.id"),
                    "What people read at the top of every message.", "\"Larkmoor Fry Room\""),
            row("site.second-person", text("any text of 1 to 60 characters"), absent(),
                    "How the person is addressed who is called when nobody answers an alarm that endangers "
                            + "people or animals for a quarter of an hour. Who that is and how they are "
                            + "reached is set where alerts are passed on.", "\"the neighbour\""),
            row("site.zone", text("a zone name of the IANA list, such as Europe/London"), needed(),
                    "The zone of the feed hours and of every time that is told. A wrong zone would "
                            + "offer the harvest at the wrong hour, so there is no default.",
                    "\"Europe/London\""),
            row("site.feeds", new Kind.Texts("an hour as \"07:30\""), value("[]"),
                    "When the fry are fed. A ready harvest is offered in time for the next of these; "
                            + "without any it is offered whenever it is ready.",
                    "[\"07:30\", \"12:30\", \"18:00\"]"),
            row("site.lead-minutes", new Kind.Whole("min", 0, 240), value("30"),
                    "How long before a feed the harvest is offered: settling, drawing and rinsing take "
                            + "about this long.", "30"),
            row("site.power-limit-w", number("W", 1, 5000),
                    new Fallback.Derived("the largest heater's watts, so that one heats at a time"),
                    "Heaters that are on together never take more than this. Choose it for the supply, "
                            + "its socket strip and its residual-current device.", "60"),
            row("site.room-probe", text(PROBE_FORM), absent(),
                    "A probe in the room's air. With it the forecast knows what the water cools towards, "
                            + "after a day also what the room does in a day, and faults are told sooner "
                            + "from a cold night.", "\"28-00000b0c0d0e\""),
            row("site.salt-slows", flag(), value("false"),
                    "Whether the salt of a batch's water counts in its forecast: thermal constants are 0.9 % "
                            + "larger for each ppt above 30, from 10 to 45 ppt. The figures behind it are "
                            + "few. Leave it off where the water is always mixed alike: what a lot teaches "
                            + "holds it already. What was taught before a change no longer fits quite.",
                    "true"),
            row("site.heartbeat-line", line(), absent(),
                    "An output that beats while the daemon is well: it changes its level once a second. An "
                            + "external dead-man relay that watches the changes cuts the heaters when they "
                            + "stop, after about 5 s.", "26"),

            row("gpio.chip", text(PATH_FORM), value("\"/dev/gpiochip0\""),
                    "The GPIO character device that all lines belong to.", "\"/dev/gpiochip0\""),
            row("gpio.outputs-active-low", flag(), value("false"),
                    "Whether outputs energise their relay when low, unless a line says otherwise. Many "
                            + "relay boards do; they may switch on while the machine starts.", "false"),
            row("gpio.outputs-bias", new Kind.Word(BIAS), value("\"as-is\""),
                    "The pull resistor of outputs, unless a line says otherwise. It holds a line only "
                            + "weakly: fit a resistor of your own that pulls every relay off.", "\"as-is\""),
            row("gpio.contacts-active-low", flag(), value("true"),
                    "Whether a closed contact pulls its line low, unless a line says otherwise. A contact "
                            + "to ground does; a broken wire then reads as open, the safe answer.", "true"),
            row("gpio.contacts-bias", new Kind.Word(BIAS), value("\"pull-up\""),
                    "The pull resistor of contacts, unless a line says otherwise.", "\"pull-up\""),

            row("<line>.line", new Kind.Whole("", 0, MOST_LINE), needed(),
                    "The line's number on the chip; on a Raspberry Pi the BCM number, not the pin's place "
                            + "on the header.", "17"),
            row("<line>.active-low", flag(),
                    new Fallback.Derived("gpio.outputs-active-low or gpio.contacts-active-low"),
                    "For this line alone: whether low means energised, or a closed contact.", "true"),
            row("<line>.bias", new Kind.Word(BIAS),
                    new Fallback.Derived("gpio.outputs-bias or gpio.contacts-bias"),
                    "For this line alone: the pull resistor.", "\"pull-down\""),

            row("one-wire.root", text(PATH_FORM), value("\"/sys/bus/w1/devices\""),
                    "The folder in which the kernel shows its 1-wire probes.", "\"/sys/bus/w1/devices\""),
            row("one-wire.period-s", number("s", 1, 10), value("2"),
                    "How often every probe is read. One reading takes a probe 0.75 s; "
                            + "the wires warm a little with every one.", "2"),

            row("mqtt.uri", text("mqtt://host or mqtts://host, with :port if it is not 1883 or 8883"),
                    needed(), "The broker. Leave the whole section out where there is none: the local "
                            + "socket still takes every step.", "\"mqtt://localhost:1883\""),
            row("mqtt.domain", text(ID_FORM), value("\"homie\""),
                    "The first level of every topic. Readers look for homie unless told otherwise.",
                    "\"homie\""),
            row("mqtt.user", text("any text"), absent(),
                    "The name under which the broker knows this daemon. Needs mqtt.password-file.",
                    "\"larkmoor\""),
            row("mqtt.password-file", text(PATH_FORM), absent(),
                    "A file whose first line is the password. It must be readable by the daemon alone; "
                            + "the password itself never stands in this configuration.",
                    "\"/etc/conetender/broker-password\""),

            row("record.folder", text(PATH_FORM), value("\"/var/lib/conetender\""),
                    "Where batches, lots and temperatures are kept through any power cut.",
                    "\"/var/lib/conetender\""),
            row("socket.path", text("an absolute path of at most 100 bytes"),
                    value("\"/run/conetender/tell.sock\""),
                    "The local socket through which steps are told without a broker.",
                    "\"/run/conetender/tell.sock\""));

    private SiteDocs() {}

    static SettingDoc row(String key, Kind kind, Fallback fallback, String purpose, String example) {
        return new SettingDoc(key, kind, fallback, purpose, example);
    }

    static Kind number(String unit, double least, double most) {
        return new Kind.Number(unit, least, most);
    }

    static Kind text(String form) {
        return new Kind.Text(form);
    }

    static Kind flag() {
        return new Kind.Flag();
    }

    static Kind line() {
        return new Kind.Line();
    }

    static Fallback value(String toml) {
        return new Fallback.Value(toml);
    }

    static Fallback absent() {
        return new Fallback.Absent();
    }

    static Fallback needed() {
        return new Fallback.Needed();
    }
}
