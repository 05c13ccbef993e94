package org.conetender.core.guard;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.conetender.core.alarm.AlarmKind;

/**
 * What one guard found in one tick.
 *
 * @param guard its id
 * @param denies what is withheld while it lasts
 * @param clears what ends it
 * @param alarm what a person is told, if anything
 * @param what the finding in words: what is wrong and where, a clause without a full stop
 * @param doubt whether the batch is in doubt from now on, and why
 * @param mended whether its cause is gone and only the latch is left, which an acknowledgement releases
 * @param nearly whether its level has come back but not yet by its deadband: that keeps up an alarm which
 *     stands, and begins none
 */
public record Finding(String guard, Set<Power> denies, Clears clears, Optional<AlarmKind> alarm, String what,
                      Optional<String> doubt, boolean mended, boolean nearly) {

    /** What ends a finding. Nothing stands for ever: a lock that nobody could open would be gone around. */
    public enum Clears {
        /** It ends when its cause ends. */
        CONDITION("its cause is gone"),
        /** It is latched in the book until a person acknowledges its alarm and the cause is gone. */
        ACKNOWLEDGED("its cause is gone and somebody has acknowledged the alarm"),
        /** It is marked in the batch and stays true of it. */
        BATCH_ENDS("the batch ends");

        private final String words;

        Clears(String words) {
            this.words = words;
        }

        /** Until when it stands, as the safety document has it. */
        public String words() {
            return words;
        }
    }

    /** A finding that withholds these while its cause lasts. */
    public static Finding veto(String guard, String what, Power... denies) {
        return new Finding(guard, set(denies), Clears.CONDITION, Optional.empty(), what, Optional.empty(),
                false, false);
    }

    /** A finding that is latched until a person acknowledges it. */
    public static Finding trip(String guard, String what, Power... denies) {
        return new Finding(guard, set(denies), Clears.ACKNOWLEDGED, Optional.empty(), what, Optional.empty(),
                false, false);
    }

    /** The same finding, told to a person. */
    public Finding alarm(AlarmKind kind) {
        return new Finding(guard, denies, clears, Optional.of(kind), what, doubt, mended, nearly);
    }

    /** The same finding, and the batch is in doubt. */
    public Finding doubting(String why) {
        return new Finding(guard, denies, clears == Clears.CONDITION ? Clears.BATCH_ENDS : clears, alarm,
                what, Optional.of(why), mended, nearly);
    }

    /** The same finding as its guard's latch keeps it up, now that its cause is gone. */
    public Finding latchOnly() {
        return new Finding(guard, denies, clears, alarm, what, doubt, true, nearly);
    }

    /** The same finding of a level that has come back, but only just. */
    public Finding justBack() {
        return new Finding(guard, Set.of(), clears, alarm, what, Optional.empty(), mended, true);
    }

    private static Set<Power> set(Power... p) {
        EnumSet<Power> s = EnumSet.noneOf(Power.class);
        s.addAll(java.util.Arrays.asList(p));
        return s;
    }
}
