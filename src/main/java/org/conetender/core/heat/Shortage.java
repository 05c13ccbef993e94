package org.conetender.core.heat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What a heater that wants all it can get has of a site's power that does not reach for all. Which of them
 * fit together and whose turn it is make that no ratio of watts, so the sharing itself is let run.
 */
public final class Shortage {

    /** It is let run for turns of the slowest, by parts of the quickest one's (guesses: ShortageTest). */
    private static final int TURNS = 40;
    private static final int PARTS = 8;

    private final Heater[] all;
    private final double limitW;
    private final long stepMs;
    private final String[] names;
    private final Share.Credit[] credits;
    private final boolean[] on;
    /** Of the present step: what each claims, and their places in the order in which they are served. */
    private final Share.Claim[] claims;
    private final int[] order;

    private Shortage(List<Heater> all, double limitW, long stepMs) {
        this.all = all.toArray(Heater[]::new);
        this.limitW = limitW;
        this.stepMs = stepMs;
        this.names = IntStream.range(0, all.size()).mapToObj(String::valueOf).toArray(String[]::new);
        this.credits = new Share.Credit[all.size()];
        Arrays.fill(credits, Share.Credit.NONE);
        this.on = new boolean[all.size()];
        this.claims = new Share.Claim[all.size()];
        this.order = new int[all.size()];
    }

    /**
     * @param watts of it, W  @param duty that it needs in the mean, 0..1
     * @param turnMs how long it runs before it gives way
     */
    public record Heater(double watts, double duty, long turnMs) {}

    /**
     * Its share of the time, 0..1.
     *
     * @param own which wants to be on always, whatever its duty  @param others beside it
     * @param limitW of all that are on together
     */
    public static double share(Heater own, List<Heater> others, double limitW) {
        if (own.watts + others.stream().mapToDouble(Heater::watts).sum() <= limitW || own.watts > limitW) {
            return own.watts > limitW ? 0 : 1;
        }
        List<Heater> all = new ArrayList<>(others);
        all.addFirst(new Heater(own.watts, 1, own.turnMs));
        long stepMs = all.stream().mapToLong(Heater::turnMs).min().orElseThrow() / PARTS;
        long steps = TURNS * all.stream().mapToLong(Heater::turnMs).max().orElseThrow() / stepMs;
        Shortage site = new Shortage(all, limitW, stepMs);
        int had = 0;
        for (long i = 0; i < steps; i++) {
            site.step();
            had += site.on[0] ? 1 : 0;
        }
        return had / (double) steps;
    }

    /** One of thousands, so nothing is gathered in lists, and who wants nothing now takes no place. */
    private void step() {
        int n = 0;
        for (int i = 0; i < on.length; i++) {
            Heater h = all[i];
            // What is owed while all others have their turn is kept: water that cools asks for it.
            credits[i] = Share.after(credits[i], h.duty, on[i],
                    new Share.Window(stepMs, on.length * h.turnMs));
            if (!credits[i].wants()) {
                on[i] = false;
                continue;
            }
            claims[i] = new Share.Claim(names[i], credits[i], on[i], h.turnMs);
            int place = n++;
            for (; place > 0 && Share.turns(claims[i], claims[order[place - 1]]) < 0; place--) {
                order[place] = order[place - 1];
            }
            order[place] = i;
        }
        Share.Supply supply = Share.Supply.of(limitW, 0);
        for (int k = 0; k < n; k++) {
            int i = order[k];
            on[i] = supply.takenW() + all[i].watts <= limitW;
            supply = supply.after(claims[i], all[i].watts, on[i]);
        }
    }
}
