package org.conetender.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Settings;

/**
 * What will go wrong in one run.
 *
 * @param faults in order of their beginning
 */
public record FaultPlan(List<Fault> faults) {

    /** Nothing goes wrong. */
    public static final FaultPlan NONE = new FaultPlan(List.of());

    /** Guess: on average one fault in so many hours, which is far more than life brings. */
    private static final double HOURS_BETWEEN = 8;
    private static final long MINUTE_MS = 60_000;
    private static final long FIRST_MS = 5 * MINUTE_MS;

    /** A button that chatters would be a person; what a chattering proof does is a theme of its own. */
    private static final SimContact.Fault[] CONTACTS = Arrays.stream(SimContact.Fault.values())
            .filter(f -> f != SimContact.Fault.CHATTERING).toArray(SimContact.Fault[]::new);

    public FaultPlan {
        faults = faults.stream().sorted(Comparator.comparingLong((Fault f) -> f.when().atMs())).toList();
    }

    /**
     * A plan drawn from the seed: every kind of fault can come but crossed wires and a room's probe, at any
     * hour, for minutes to hours. Crossed wires have themes of their own ({@link HeatScripts}).
     */
    public static FaultPlan random(long seed, Settings settings, double hours) {
        SplittableRandom r = Seeds.of(seed, "faults");
        int count = 1 + r.nextInt((int) Math.max(1, Math.round(2 * hours / HOURS_BETWEEN)));
        List<Fault> all = new ArrayList<>();
        boolean swapped = false;
        for (int i = 0; i < count; i++) {
            long at = FIRST_MS + (long) (r.nextDouble() * hours * 60 * MINUTE_MS);
            Fault f = one(r, settings, at);
            // Two exchanges at once could not be undone in any order, so there is one at most.
            if (!(f instanceof Fault.Swapped) || !swapped) {
                all.add(f);
            }
            swapped |= f instanceof Fault.Swapped;
        }
        return new FaultPlan(all);
    }

    private static Fault one(SplittableRandom r, Settings settings, long atMs) {
        Cone cone = settings.cones().get(r.nextInt(settings.cones().size()));
        String id = cone.id();
        Fault.When hours = lasting(r, atMs, 5, 180);
        Fault.When minutes = lasting(r, atMs, 1, 40);
        return switch (r.nextInt(8)) {
            case 0, 1 -> new Fault.OfProbe(id, r.nextInt(cone.fittings().probes().water().size()),
                    pick(r, SimProbe.Fault.values()), hours);
            case 2 -> new Fault.OfSwitch(id, outlet(r), pick(r, SimSwitch.Fault.values()), minutes);
            case 3 -> new Fault.OfContact(id, contact(r), pick(r, CONTACTS), hours);
            case 4 -> new Fault.OfAir(id, pick(r, Air.Fault.values()), minutes);
            case 5 -> new Fault.OfWater(id, pick(r, Fault.Water.values()), minutes);
            case 6 -> site(r, hours, minutes);
            default -> swap(r, settings, id, hours);
        };
    }

    private static Fault swap(SplittableRandom r, Settings settings, String id, Fault.When when) {
        String other = settings.cones().get(r.nextInt(settings.cones().size())).id();
        return other.equals(id) ? new Fault.OfProbe(id, 0, SimProbe.Fault.IN_AIR, when)
                : new Fault.Swapped(id, other, when);
    }

    private static Fault site(SplittableRandom r, Fault.When hours, Fault.When minutes) {
        Fault.Trouble kind = Fault.Trouble.values()[r.nextInt(Fault.Trouble.values().length)];
        return new Fault.OfSite(kind, kind == Fault.Trouble.POWER_CUT ? minutes : hours);
    }

    private static String outlet(SplittableRandom r) {
        return List.of(Fixtures.HEAT, Fixtures.HEAT, Fixtures.AIR_PAUSE, Fixtures.CUT_OUT, Fixtures.HARVEST)
                .get(r.nextInt(5));
    }

    private static String contact(SplittableRandom r) {
        return List.of(Fixtures.LEVEL, Fixtures.PROOF, Fixtures.BUTTON).get(r.nextInt(3));
    }

    /** Any but the first, which means that nothing is wrong. */
    private static <E extends Enum<E>> E pick(SplittableRandom r, E[] kinds) {
        int first = kinds[0].name().equals("NONE") ? 1 : 0;
        return kinds[r.nextInt(first, kinds.length)];
    }

    private static Fault.When lasting(SplittableRandom r, long atMs, int leastMin, int mostMin) {
        return new Fault.When(atMs, MINUTE_MS * r.nextInt(leastMin, mostMin));
    }
}
