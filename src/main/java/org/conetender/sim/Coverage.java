package org.conetender.sim;

import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.conetender.core.State;
import org.conetender.core.guard.Finding;
import org.conetender.core.judge.Watch;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;

/** What happened at least once: a test that never reaches a place proves nothing about it. */
public final class Coverage {

    private final Set<String> stages = new HashSet<>();
    private final Set<String> alarms = new HashSet<>();
    private final Set<String> guards = new HashSet<>();
    private final Map<String, Set<Finding.Clears>> ends = new TreeMap<>();
    private final Set<String> refusals = new TreeSet<>();
    private final Set<Watch.Suspect> suspects = EnumSet.noneOf(Watch.Suspect.class);

    void look(State s, Settings settings, Map<String, List<Finding>> findings) {
        for (Cone c : settings.cones()) {
            stages.add(s.book().cone(c.id()).batch().stage().word());
            s.live().cones().get(c.id()).judged().thermal()
                    .ifPresent(t -> suspects.add(t.watch().suspect()));
        }
        findings.values().forEach(found -> found.forEach(f -> {
            guards.add(f.guard());
            ends.computeIfAbsent(f.guard(), k -> EnumSet.noneOf(Finding.Clears.class)).add(f.clears());
        }));
        s.live().alarms().raised().forEach(a -> alarms.add(a.kind().id()));
    }

    /** An answer; kept, without its cone and figures, unless it says that something was recorded. */
    void heard(String sentence) {
        if (!sentence.contains("recorded. ") && !sentence.contains("withdrawn;")) {
            refusals.add(plain(sentence.replaceAll("^Cone [a-z0-9-]+: ", "")));
        }
    }

    /** A sentence, or a piece of one, without its figures. */
    static String plain(String sentence) {
        return sentence.replaceAll("[0-9.]+", "N");
    }

    /** In the order of the alphabet, as all that follow. */
    public Set<String> stages() {
        return new TreeSet<>(stages);
    }

    public Set<String> alarms() {
        return new TreeSet<>(alarms);
    }

    /** Ids of guards that found something. */
    public Set<String> guards() {
        return new TreeSet<>(guards);
    }

    /** By guard, what ended its findings. */
    public Map<String, Set<Finding.Clears>> ends() {
        return ends;
    }

    /** What the watch over a cone named. */
    public Set<Watch.Suspect> suspects() {
        return suspects;
    }

    public Set<String> refusals() {
        return refusals;
    }

    /** Takes over what another run reached. */
    public void add(Coverage other) {
        stages.addAll(other.stages);
        alarms.addAll(other.alarms);
        guards.addAll(other.guards);
        other.ends.forEach((guard, how) -> ends.computeIfAbsent(guard,
                k -> EnumSet.noneOf(Finding.Clears.class)).addAll(how));
        refusals.addAll(other.refusals);
        suspects.addAll(other.suspects);
    }
}
