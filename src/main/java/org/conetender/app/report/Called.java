package org.conetender.app.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Minute.AlarmTurn;
import org.conetender.core.batch.Minute.Turn;
import org.conetender.core.unit.Lasted;
import org.conetender.core.unit.Moment;

/**
 * One alarm from its rise to its end.
 *
 * @param rise when it was raised, where, which, and its cause in words
 * @param seen when it was acknowledged first  @param over when it ended
 * @param lost why its end is not on record; empty where it is, or where it still stands
 */
record Called(AlarmTurn rise, Optional<Moment> seen, Optional<Moment> over, Optional<String> lost) {

    private static final String RESTARTED = "until conetender was started anew, or less";
    private static final String STORM = "nobody knows how long: more alarms turned that day than are kept";

    /** All that are on record, as they were raised. @param facts which tell when lives began */
    static List<Called> of(List<AlarmTurn> turns, List<Fact> facts, Ruler ruler) {
        List<Long> lives = facts.stream().filter(f -> f.change() instanceof Change.Began)
                .map(f -> ruler.lineMs(f.at())).toList();
        Map<Integer, Called> all = new LinkedHashMap<>();
        Map<String, Integer> open = new LinkedHashMap<>();
        boolean storm = false;
        for (AlarmTurn t : turns) {
            String key = t.cone() + "/" + t.alarm();
            Called was = all.get(open.getOrDefault(key, -1));
            boolean anew = was == null || restarted(lives, ruler.lineMs(was.rise.at()), ruler.lineMs(t.at()));
            switch (t.turn()) {
                case RAISED -> {
                    if (anew) {
                        open.put(key, all.size());
                        all.put(all.size(), new Called(t, Optional.empty(), Optional.empty(),
                                Optional.empty()));
                    }
                }
                case SEEN -> {
                    if (!anew && was.seen.isEmpty()) {
                        all.put(open.get(key), new Called(was.rise, Optional.of(t.at()), was.over, was.lost));
                    }
                }
                case OVER -> {
                    if (!anew) {
                        all.put(open.remove(key), new Called(was.rise, was.seen, Optional.of(t.at()),
                                was.lost));
                    }
                }
                case UNKEPT -> storm = true;
            }
        }
        boolean some = storm;
        List<Called> out = new ArrayList<>();
        all.values().forEach(c -> out.add(c.over.isPresent() ? c : c.ended(
                restarted(lives, ruler.lineMs(c.rise.at()), Long.MAX_VALUE), some && unkept(turns, c))));
        return out;
    }

    private static boolean restarted(List<Long> lives, long fromMs, long toMs) {
        return lives.stream().anyMatch(l -> l > fromMs && l <= toMs);
    }

    /** Whether the record had no room after its rise. */
    private static boolean unkept(List<AlarmTurn> turns, Called c) {
        return turns.subList(turns.indexOf(c.rise), turns.size()).stream()
                .anyMatch(t -> t.turn() == Turn.UNKEPT);
    }

    private Called ended(boolean restarted, boolean unkept) {
        return new Called(rise, seen, over, restarted ? Optional.of(RESTARTED)
                : unkept ? Optional.of(STORM) : Optional.empty());
    }

    /** How long it stood, and what was done, in words. */
    String stood(Ruler ruler) {
        long from = ruler.lineMs(rise.at());
        return over.map(o -> "stood " + Lasted.words(ruler.lineMs(o) - from))
                .orElseGet(() -> lost.map(l -> "stood " + l).orElse("stands"))
                + seen.map(s -> ", acknowledged after " + Lasted.words(ruler.lineMs(s) - from)).orElse("");
    }

    /** Whether it stood in that time. @param toMs not with this */
    boolean within(Ruler ruler, long fromMs, long toMs) {
        long from = ruler.lineMs(rise.at());
        return from < toMs
                && over.map(o -> ruler.lineMs(o) > fromMs).orElse(lost.isEmpty() || from >= fromMs);
    }

    /** Whether a fact tells of the same. */
    boolean is(Fact f) {
        boolean then = f.at().sameBoot(rise.at()) && f.at().monoMs() == rise.at().monoMs()
                && f.cone().equals(rise.cone());
        return then && switch (f.change()) {
            case Change.Tripped(String _, String why) -> why.equals(rise.what());
            case Change.AlarmRaised(String alarm, String _) -> alarm.equals(rise.alarm());
            default -> false;
        };
    }
}
