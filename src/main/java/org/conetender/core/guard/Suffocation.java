package org.conetender.core.guard;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.conetender.core.alarm.AlarmKind;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fits;
import org.conetender.core.batch.Lives;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Request;
import org.conetender.core.image.Step;
import org.conetender.core.judge.AirTrack;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Text;
import org.conetender.core.unit.Units;

/**
 * Danger: suffocation. Air is never off with animals beyond the cap: the least of the configured one,
 * 12 min, and what density and oxygen allow (science.md §7.3). After a restart it is on at once.
 */
public final class Suffocation implements Guard {

    /** The house's longest time without air, counted from the moment it went off (design.md, dangers). */
    public static final double LONGEST_MINUTES = 12;

    @Override
    public String id() {
        return "suffocation";
    }

    @Override
    public List<Finding> look(View v) {
        List<Finding> found = new ArrayList<>();
        Moment off = v.stage().airOff();
        if (off == null) {
            if (v.stage().develops()) {
                found.add(Finding.veto(id(), "animals or cysts need air", Power.AIR_OFF));
            } else if (v.scene().wants().airOff()) {
                perhapsFull(v).ifPresent(why -> found.add(Finding.veto(id(), why, Power.AIR_OFF)));
            }
            return found;
        }
        if (v.restartedSince(off)) {
            found.add(Finding.veto(id(), "the daemon restarted while its air was off; the air is back on",
                    Power.AIR_OFF).alarm(AlarmKind.AIR_BACK));
        } else if (v.airBack(0)) {
            found.add(Finding.veto(id(),
                    Text.of("its air was off for %.0f min, as long as the nauplii stand it; it is back on",
                            Units.minutes(v.airOffCapMs())), Power.AIR_OFF).alarm(AlarmKind.AIR_BACK));
        }
        return found;
    }

    /**
     * Why an emptied cone may hold its batch yet: reports may be lost with a damaged record, though a person
     * has seen that alarm; and one that was meant for another cone must not end in
     * air that is off without any cap. A contact that is wet knows; one that is dry may hang above what was
     * left when a part was drawn.
     */
    private static Optional<String> perhapsFull(View v) {
        if (v.cone().fittings().probes().level() && !v.judged().level().empty()) {
            return Optional.of("no water was reported in it, but its level contact does not say so");
        }
        long damaged = v.book().lives().damagedSeq();
        if (damaged > 0 && v.coneBook().facts().stream().noneMatch(f -> f.seq() > damaged
                && f.change() instanceof Change.Told(Ask a) && Lives.reports(a))) {
            return Optional.of("nothing was reported of it since the record was damaged, so it may hold a "
                    + "batch: report how it stands, 'cleaned' if it is empty");
        }
        boolean fresh = v.batch().stock().isPresent()
                && v.since(v.stage().since()).leastMs() < Fits.WITHDRAW_WITHIN_MS;
        return !fresh ? Optional.empty() : Optional.of("the report that it is empty can still be withdrawn");
    }

    @Override
    public Optional<String> refuses(Request r, View v) {
        return r.ask() instanceof Ask.Did(Step step) && step == Step.SETTLE ? notYet(v) : Optional.empty();
    }

    /** Why the air may not be stopped yet although the batch could settle, and when it may; else empty. */
    public static Optional<String> notYet(View v) {
        if (!v.stage().hasAnimals() || v.stage().airOff() != null) {
            return Optional.empty();
        }
        if (StuckOutput.airStuck(v)) {
            return Optional.of("the output that stops its air cannot be set, so nothing would settle; look "
                    + "at the board, its wires and the daemon's log, then report 'settle' again.");
        }
        if (v.handsIn()) {
            long left = v.batch().marks().handsIn().map(m -> Handled.HANDS_MS - v.since(m).leastMs())
                    .orElse(0L);
            return Optional.of("hands are in the water as reported, so the air stays on; report 'settle' "
                    + in(left));
        }
        AirTrack air = v.judged().air();
        boolean shut = v.batch().marks().valveShut();
        long rest = air.breath().restMs();
        if (!shut && air.proof() == AirTrack.Proof.FAILED) {
            return Optional.of("no air arrives although the pump is switched on; see to the air first, "
                    + "let it bubble, and report 'settle' " + in(Math.max(rest, Units.MINUTE_MS)));
        }
        return rest == 0 ? Optional.empty() : Optional.of(shut
                ? "its air valve has been shut for too long; open it, report 'valve-open', let the air "
                        + "bubble, and report 'settle' " + in(rest)
                : "its water has not had air for long enough since it was last without; report 'settle' "
                        + in(rest));
    }

    private static String in(long ms) {
        return Text.of("in %.0f min.", Math.ceil(Units.minutes(ms)));
    }
}
