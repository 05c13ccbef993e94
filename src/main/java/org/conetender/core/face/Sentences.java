package org.conetender.core.face;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.conetender.core.batch.Batch;
import org.conetender.core.guard.View;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/** Whole sentences for people: what, where, since when, what to do. */
public final class Sentences {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE HH:mm", Locale.ENGLISH);

    /** Follows why a probe is not believed, once it has answered again or never ceased to. */
    static final String AGAIN = "; it is believed again after three minutes of readings that agree";
    /** Why a heater is not given all that is wanted at first. */
    static final String GENTLY = "gently at first, until the water is seen to warm";

    /** Why nobody can tell whether a probe still measures. */
    static final String UNTESTED = "its probe cannot be tested now: the room keeps the water where it is";

    /** Why no hour is told while a probe is not believed. */
    static final String UNMEASURED =
            "its water is not measured, so nobody knows when it will be ready; look at its probe";
    /** The same of a batch that is ready. */
    static final String UNMEASURED_RIPE =
            "its water is not measured, so nobody knows how long its food keeps; look at its probe";

    private static final String DO_NOT_FEED = ": do not feed";
    /** The doubt about a ripe batch for which nobody came while people were away. */
    public static final String OVERDUE = "nobody came within 12 h of the harvest point" + DO_NOT_FEED;

    private Sentences() {}

    /** A time of day for people; with its weekday when it is not today. */
    public static String clock(long wallMs, ZoneId zone, long nowWallMs) {
        ZonedDateTime t = Instant.ofEpochMilli(wallMs).atZone(zone);
        boolean today = t.toLocalDate().equals(Instant.ofEpochMilli(nowWallMs).atZone(zone).toLocalDate());
        return today ? t.toLocalTime().truncatedTo(ChronoUnit.MINUTES).toString() : t.format(DAY);
    }

    /** The same always with its weekday, for words that stand when it is not today any more. */
    static String day(long wallMs, ZoneId zone) {
        return Instant.ofEpochMilli(wallMs).atZone(zone).format(DAY);
    }

    /** The answer to a request that the record refused. @param counts whether it is in force all the same */
    public static String unrecorded(boolean counts, String why) {
        return counts ? "done, but not recorded: " + why + ". It is tried again every minute; whatever it "
                + "allows waits for that." : "not recorded, so not done: " + why + ". Then say it again.";
    }

    /** As {@link #unrecorded}, of one that is not in force and that a restart may find all the same. */
    public static String perhaps(String why) {
        return "not done, but perhaps recorded: " + why + ". If the daemon is started again before its disk "
                + "works, it may be carried out after all: look at the cone ('watch' or 'report') before you "
                + "say it again.";
    }

    /** Said of a step whose answer is late. @param word the step's  @param counts whether it is in force */
    public static String late(String word, boolean counts) {
        return "'" + word + (counts ? "' is in force and is being written down."
                : "' was heard and is being written down; it is not done yet.");
    }

    /** Said of a step that the record does not answer. @param counts whether it is in force already */
    public static String hanging(String word, boolean counts) {
        return "'" + word + (counts ? "' is in force, but" : "' is not done:")
                + " it could not be written down yet. Check the disk"
                + (counts ? "." : "; once it answers, this may still be carried out, so look at the cone.");
    }

    /** Said of a step that waits until an earlier one is written down. */
    public static String behind(String word) {
        return "'" + word + "' was heard; it waits until the report before it is written down.";
    }

    /** The answer to an acknowledgement while the record fails. @param why it does */
    public static String quieted(String alarm, String why) {
        return "alarm '" + alarm + "' is quiet, at most until the next restart; this is not "
                + "recorded: " + why + ". What is locked off stays so; acknowledge again when that is "
                + "mended.";
    }

    /** How an answer begins: of what it is. @param cone empty for the site */
    public static String place(Settings s, String cone) {
        return where(s, cone) + ": ";
    }

    static String where(Settings s, String cone) {
        return cone.isEmpty() ? s.site().name() : "Cone " + cone;
    }

    /** What a dense charge means for its harvest. @param waterC how warm it will be then, °C */
    public static String hurried(View.Caps caps, double waterC) {
        return Text.of(" At %.0f °C so dense a charge stands only %.0f min without air, which is too short "
                + "to settle well: it is not started by itself. At the harvest draw soon after the air "
                + "stops, in parts.", waterC,
                Math.floor(Units.minutes(caps.settledMs())));
    }

    /** How long the air of a charge may be off at its harvest. @param waterC how warm it will be then, °C */
    public static String withoutAir(View.Caps caps, double waterC) {
        return Text.of(" At its harvest, at %.0f °C, the air may be off for %.0f min at most, %.0f min while "
                + "you draw.", waterC, Math.floor(Units.minutes(caps.settledMs())),
                Math.floor(Units.minutes(caps.drawingMs())));
    }

    /** A number without needless digits. */
    public static String plain(double d) {
        return d == Math.rint(d) && Math.abs(d) < 1e15 ? String.valueOf((long) d) : String.valueOf(d);
    }

    /** Why to look before feeding, or not to feed at all; empty where nothing speaks against it. */
    static Optional<String> doubts(Batch b) {
        List<String> why = b.marks().words().doubts();
        return why.isEmpty() ? Optional.empty() : Optional.of(spoiled(b)
                ? "Do not feed it: " + String.join("; ", why).replace(DO_NOT_FEED, "") + "."
                : "Look before feeding: " + String.join("; ", why) + ".");
    }

    /** Whether it is food no more. */
    static boolean spoiled(Batch b) {
        return b.marks().words().doubts().contains(OVERDUE);
    }
}
