package org.conetender.core.batch;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.conetender.core.image.Ask;
import org.conetender.core.image.Step;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/**
 * How the lives of the process began and ended, as the record has it. A life that began without the one
 * before having been left in good order means an unexpected exit: a crash, a kill, a power cut.
 *
 * @param running whether a life has begun that was not left
 * @param exits the last moments known before the last unexpected exits, oldest first
 * @param lock why the heaters are locked, once the process kept dying
 * @param aside the requests that were set aside and have not been replaced by a new report
 * @param damage why the heaters are locked, once the record was found damaged
 * @param damagedSeq number of the fact that says so, kept when the lock is released: what stands in the book
 *     from before may not be all that was said; 0 for never
 */
public record Lives(boolean running, List<Moment> exits, Optional<ConeBook.Latch> lock,
                    List<Change.SetAside> aside, Optional<ConeBook.Latch> damage,
                    long damagedSeq) {

    /** The latch's id, and its guard's. */
    public static final String LOOP = "crash-loop";
    /** Likewise: the record was damaged, and what could be read of it may not be all that was said. */
    public static final String DAMAGED = "record-damaged";

    /** So many unexpected exits within so long are a loop (style.md, leases). */
    static final int EXITS = 3;
    public static final long WITHIN_MS = 10 * Units.MINUTE_MS;

    private static final Ask SHUT = new Ask.Did(Step.VALVE_SHUT);

    public static final Lives NONE = new Lives(false, List.of(), Optional.empty(), List.of(),
            Optional.empty(), 0);

    /** As all these facts leave them; the batches are not looked at. */
    public static Lives of(List<Fact> facts) {
        Lives l = NONE;
        for (Fact f : facts) {
            l = l.after(f);
        }
        return l;
    }

    /** The lives after that fact. */
    public Lives after(Fact f) {
        return switch (f.change()) {
            case Change.Began(Optional<Moment> last) -> new Lives(true,
                    running ? exits(last.orElse(f.at())) : exits, lock, lock.isPresent() ? aside : List.of(),
                    damage, damagedSeq);
            case Change.Left _ -> new Lives(false, exits, lock, aside, damage, damagedSeq);
            case Change.SetAside a -> new Lives(running, exits, lock,
                    Stream.concat(aside.stream(), Stream.of(a)).toList(), damage, damagedSeq);
            case Change.Tripped(String guard, String why) when guard.equals(LOOP) -> new Lives(running, exits,
                    Optional.of(new ConeBook.Latch(guard, why, f.at())), aside, damage, damagedSeq);
            case Change.Tripped(String guard, String why) when guard.equals(DAMAGED) -> new Lives(running,
                    exits, lock, aside, Optional.of(new ConeBook.Latch(guard, why, f.at())), f.seq());
            case Change.Released(String guard, String _) when guard.equals(LOOP) ->
                    new Lives(running, exits, Optional.empty(), aside, damage, damagedSeq);
            case Change.Released(String guard, String _) when guard.equals(DAMAGED) ->
                    new Lives(running, exits, lock, aside, Optional.empty(), damagedSeq);
            case Change.Told _ when aside.isEmpty() -> this;
            case Change.Told(Ask ask) -> new Lives(running, exits, lock, aside.stream()
                    .filter(a -> !answers(ask, f.cone(), a)).toList(), damage, damagedSeq);
            case Change.Moved _ -> this;
            case Change.Tripped _ -> this;
            case Change.Released _ -> this;
            case Change.Doubted _ -> this;
            case Change.Undoubted _ -> this;
            case Change.AlarmRaised _ -> this;
            case Change.AlarmOver _ -> this;
            case Change.Bridged _ -> this;
            case Change.Tried _ -> this;
            case Change.Learned _ -> this;
            case Change.Worn _ -> this;
            case Change.ClockSet _ -> this;
            case Change.Taught _ -> this;
            case Change.Drawn _ -> this;
            case Change.Described _ -> this;
        };
    }

    /** What is locked for the whole site until a person has looked. */
    public List<ConeBook.Latch> locks() {
        return lock.isEmpty() && damage.isEmpty() ? List.of()
                : Stream.concat(lock.stream(), damage.stream()).toList();
    }

    /** That guard's among them. Every guard asks in every tick. */
    Optional<ConeBook.Latch> locked(String guard) {
        return lock.isPresent() && lock.get().guard().equals(guard) ? lock
                : damage.isPresent() && damage.get().guard().equals(guard) ? damage : Optional.empty();
    }

    /** Whether the last exits came within ten minutes; where no clock tells, it is taken that they did. */
    public boolean looping(Boots boots) {
        return died()
                && boots.between(exits.getFirst(), exits.getLast()).leastMs() <= WITHIN_MS;
    }

    /** Whether there were so many exits that it may be a loop, whenever they came. */
    public boolean died() {
        return exits.size() == EXITS;
    }

    private List<Moment> exits(Moment at) {
        List<Moment> next = new ArrayList<>(exits);
        next.add(at);
        return List.copyOf(next.subList(Math.max(0, next.size() - EXITS), next.size()));
    }

    /** How a request that is set aside is named. */
    public static String words(Ask ask, String cone) {
        return "'" + ask.word() + "'" + (cone.isEmpty() ? "" : " of cone " + cone);
    }

    /** Whether a person must say anew how its cone stands, if that is set aside. */
    public static boolean wanted(Ask ask) {
        return reports(ask) || ask.equals(SHUT);
    }

    /** Whether 'valve-shut' of that cone is set aside, and nobody has said since how its valve stands. */
    public boolean valveUnheard(String cone) {
        return !aside.isEmpty() && aside.stream().anyMatch(a -> a.what().equals(words(SHUT, cone)));
    }

    /** What has to be said again of that cone, as a clause; empty for nothing. */
    public Optional<String> wanted(String cone) {
        boolean other = aside.stream().anyMatch(a -> a.cone().equals(cone)
                && !a.what().equals(words(SHUT, cone)));
        String valve = "'valve-shut' or 'valve-open' of cone " + cone + ", as it is";
        return other ? Optional.of("how cone " + cone + " stands" + (valveUnheard(cone) ? ", and " + valve
                : "")) : valveUnheard(cone) ? Optional.of(valve) : Optional.empty();
    }

    /**
     * A shut valve is asked for by itself: nothing else says whether air gets in, and only of a clean cone
     * does it not matter.
     */
    private static boolean answers(Ask said, String cone, Change.SetAside a) {
        // Records of before name no cone with it; its words do.
        boolean valve = a.what().equals(words(SHUT, cone));
        return a.what().equals(words(said, cone)) || (valve
                ? said instanceof Ask.Did(Step s) && (s == Step.VALVE_OPEN || s == Step.CLEANED)
                : reports(said) && a.cone().equals(cone));
    }

    /** Whether that says how a cone stands: what is in it, or that the last word about it was wrong. */
    public static boolean reports(Ask ask) {
        return switch (ask) {
            case Ask.Did(Step step) -> step != Step.HANDS_IN && step != Step.VALVE_SHUT
                    && step != Step.VALVE_OPEN && step != Step.RELAY_EXCHANGED && step != Step.NONE_SEEN;
            case Ask.DidFill _ -> true;
            case Ask.DidStock _ -> true;
            case Ask.DidStockAsUsual _ -> true;
            case Ask.Withdraw _ -> true;
            case Ask.DidCount _ -> false;
            case Ask.DidWeigh _ -> false;
            case Ask.TinHolds _ -> false;
            case Ask.SetUsual _ -> false;
            case Ask.SetSetpoint _ -> false;
            case Ask.ReadyBy _ -> false;
            case Ask.Away _ -> false;
            case Ask.Acknowledge _ -> false;
            case Ask.Shelve _ -> false;
            case Ask.Alarms _ -> false;
        };
    }
}
