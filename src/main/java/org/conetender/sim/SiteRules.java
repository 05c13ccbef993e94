package org.conetender.sim;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.conetender.core.Opening;
import org.conetender.core.State;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Fact;
import org.conetender.core.batch.Stage;
import org.conetender.core.settings.Cone.HeatKind;

/** The rules that concern the whole site. */
final class SiteRules {

    /** Requests whose id begins so were sent twice on purpose and must be obeyed once. */
    static final String TWICE = "twice-";

    private final Rig rig;
    private final Invariants rules;
    /** What a full disk refused is offered again every minute; so long after it takes it, all is kept, s. */
    private static final long KEPT_S = 200;
    /** A refusal shows in the next tick, and with it what is left for others, s. */
    private static final long SEEN_S = 3;

    private long lastTickMs = -1;
    /** What was judged last: most seconds change neither the book nor the disk. */
    private Judged judged = new Judged(null, false, false);
    private OnDisk onDisk = new OnDisk(List.of(), null);

    /** @param of that book  @param stale, twice whether such requests were obeyed */
    private record Judged(Book of, boolean stale, boolean twice) {}

    /** @param book of these facts */
    private record OnDisk(List<Fact> facts, Book book) {}

    SiteRules(Rig rig, Invariants rules) {
        this.rig = rig;
        this.rules = rules;
    }

    void died() {
        lastTickMs = -1;
    }

    void look(State s) {
        rules.lasting("watts", "", watts() > rig.settings().site().supply().limitWatts() + 0.1, 0,
                "more watts were on together than the site allows");
        double all = watts() + atLarge();
        rules.lasting("watts-at-large", "", all > rig.settings().site().supply().limitWatts() + 0.1, SEEN_S,
                "with a heater that could not be switched off more watts were on than the site allows");
        rules.lasting("unkept", "", rig.process().diskTakes() && !s.ledger().pending().isEmpty(), KEPT_S,
                "what counts already was not in the record minutes after the disk could take it");
        if (judged.of() != s.book()) {
            judged = new Judged(s.book(), s.book().recentIds().stream()
                    .anyMatch(id -> id.startsWith(Invariants.STALE)), obeyedTwice(s));
        }
        rules.lasting("stale", "", judged.stale(), 0, "a stale command was obeyed");
        rules.lasting("twice", "", judged.twice(), 0, "a request was obeyed twice");
        Optional<List<Fact>> kept = rig.process().keptWhileFailing();
        rules.lasting("record", "", kept.isPresent() && !rules.told().anywhere("record"), 200,
                "the record could not be kept and nobody was told");
        boolean unset = !rig.world().clock().now().wallTrusted();
        rules.lasting("clock", "", unset && !rules.told().anywhere("clock"), 62 * 60,
                "the clock was not trusted for over an hour and nobody was told");
        heartbeat(s);
        unwritten(kept.orElse(List.of()));
    }

    /** Power must never rest on what only the daemon knows: a restart would not know it. */
    private void unwritten(List<Fact> kept) {
        if (onDisk.book() == null || onDisk.facts() != kept) {
            onDisk = new OnDisk(kept, Book.empty(rig.settings(), rig.world().clock().now())
                    .after(kept, Opening.aside(kept)));
        }
        for (SimCone c : rig.world().cones()) {
            Batch b = onDisk.book().cone(c.settings().id()).batch();
            boolean dry = !b.stage().hasWater() || b.stage() instanceof Stage.Abandoned;
            // A separation wants no heat of any kind; beside a shut valve a bath or a mat goes on.
            boolean still = b.stage().airOff() != null || b.marks().valveShut()
                    && c.settings().fittings().heat().kind() == HeatKind.IMMERSED;
            rules.lasting("unwritten-heat", c, !kept.isEmpty() && rules.on(c, "heat") && (dry || still), 3,
                    "a heater was on that no record allows");
            boolean rests = !b.stage().hasWater() && !c.settings().fittings().air().idleOn();
            rules.lasting("unwritten-air-off", c, !kept.isEmpty() && rules.on(c, "air-pause")
                    && b.stage().airOff() == null && !rests, 3, "the air was off though no record says so");
        }
    }

    private double watts() {
        double watts = 0;
        for (SimCone c : rig.world().cones()) {
            watts += rules.on(c, "heat") ? c.settings().fittings().heat().watts() : 0;
        }
        return watts;
    }

    /** Watts of heaters that are on though nobody commands them, where their output says so. */
    private double atLarge() {
        double watts = 0;
        for (SimCone c : rig.world().cones()) {
            SimSwitch heat = c.fixtures.switches.get(Fixtures.HEAT);
            boolean loose = heat != null && heat.refuses() && !heat.commanded() && heat.conducting();
            watts += loose && c.heaterOn() ? c.settings().fittings().heat().watts() : 0;
        }
        return watts;
    }

    private static boolean obeyedTwice(State s) {
        Map<String, Integer> count = new TreeMap<>();
        s.book().cones().values().forEach(b -> {
            for (Fact f : b.facts()) {
                if (f.source().startsWith(TWICE)) {
                    count.merge(f.source(), 1, Integer::sum);
                }
            }
        });
        return count.values().stream().anyMatch(n -> n > 1);
    }

    /** In the tick that came too late the heart must not beat. */
    private void heartbeat(State s) {
        long tick = s.live().timers().last().orElseThrow().monoMs();
        SimSwitch heart = rig.world().devices().switches().get("site.heartbeat");
        boolean late = lastTickMs >= 0 && tick - lastTickMs > 4_000;
        rules.lasting("heartbeat", "", late && heart != null && heart.commanded(), 0,
                "the heart beat on in a tick that came late");
        lastTickMs = tick;
    }
}
