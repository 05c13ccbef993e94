package org.conetender.sim.trial;

import java.util.Optional;
import org.conetender.core.heat.Hold;
import org.conetender.core.heat.Predict;
import org.conetender.core.heat.Share;
import org.conetender.core.heat.Wear;
import org.conetender.core.judge.Thermal;
import org.conetender.core.judge.Watch;

/** The laws that compete. */
enum Laws {
    THERMOSTAT("on/off, ±0.25 °C") {
        @Override
        Law of(TrialCone c) {
            return s -> s.probeC() - c.known().setpointC() < (s.wasOn() ? 0.25 : -0.25);
        }
    },
    PI_RELAY("PI by SIMC, 4 min windows") {
        @Override
        Law of(TrialCone c) {
            return new Pi(c, RELAY_MS);
        }
    },
    PI_SOLID("PI by SIMC, 10 s windows") {
        @Override
        Law of(TrialCone c) {
            return new Pi(c, SOLID_MS);
        }
    },
    OURS_150("ours, relay, 150 cycles a day") {
        @Override
        Law of(TrialCone c) {
            return new Ours(c, Switches.RELAY_150.kind());
        }
    },
    OURS_400("ours, relay, 400 cycles a day") {
        @Override
        Law of(TrialCone c) {
            return new Ours(c, Switches.RELAY_400.kind());
        }
    },
    OURS_SOLID("ours, solid-state") {
        @Override
        Law of(TrialCone c) {
            return new Ours(c, Switches.SOLID_STATE.kind());
        }
    };

    /** Windows of the plain law, ms (control.md §1.5). */
    private static final long RELAY_MS = 240_000;
    private static final long SOLID_MS = 10_000;

    private final String words;

    Laws(String words) {
        this.words = words;
    }

    /** The law for one run of this cone. */
    abstract Law of(TrialCone c);

    String words() {
        return words;
    }

    /** What the plain law is told of that cone. */
    private static Hold.Plant plant(TrialCone cone, Law.Seen s, long windowMs) {
        double holding = cone.known().nominal().lossPerS() * (cone.known().setpointC() - s.roomC())
                / cone.known().nominal().riseKPerS();
        return new Hold.Plant(cone.known().nominal().riseKPerS(), Math.max(0, holding), windowMs);
    }

    /** Proportional-integral, time-proportioned. */
    private static final class Pi implements Law {

        private final TrialCone cone;
        private final long windowMs;
        private Hold hold = Hold.IDLE;
        private Share.Credit credit = Share.Credit.NONE;

        Pi(TrialCone cone, long windowMs) {
            this.cone = cone;
            this.windowMs = windowMs;
        }

        @Override
        public boolean on(Seen s) {
            double aim = cone.known().setpointC();
            hold = hold.after(aim - s.probeC(), aim, 1_000, plant(cone, s, windowMs));
            credit = Share.after(credit, hold.duty(), s.wasOn(), new Share.Window(1_000, windowMs));
            return credit.wants();
        }
    }

    /** The law that knows the coast, with all that the daemon does about it. */
    static final class Ours implements Law {

        private final TrialCone cone;
        private final Predict.Switching kind;
        private Thermal known;
        private Hold hold = Hold.IDLE;
        private Share.Credit credit = Share.Credit.NONE;
        private Wear wear = Wear.begun(0);
        private boolean wasOn;

        Ours(TrialCone cone, Predict.Switching kind) {
            this.cone = cone;
            this.kind = kind;
        }

        @Override
        public boolean on(Seen s) {
            double aimC = cone.known().setpointC();
            known = known == null ? Thermal.from(cone.known().nominal(), s.probeC())
                    : known.after(s.step(), aimC);
            wear = wear.after(s.wasOn() && !wasOn, 1, kind);
            wasOn = s.wasOn();
            long windowMs = Double.isInfinite(kind.cyclesPerDay()) ? SOLID_MS : RELAY_MS;
            Hold.Plant plant = plant(cone, s, windowMs);
            double lacksK = aimC - s.probeC();
            hold = hold.after(lacksK, aimC, 1_000, plant)
                    .steered(known, new Predict.Around(s.roomC(), 1), wear.left(kind))
                    .beside(hold, new Hold.Real(s.wasOn(), lacksK, 1_000, plant));
            credit = hold.rules() ? Share.wanting(credit, hold.want(Optional.of(known)), s.wasOn(), 1_000)
                    : Share.after(credit, hold.duty(), s.wasOn(), new Share.Window(1_000,
                            Math.max(windowMs, (long) (86_400_000 / kind.cyclesPerDay()))));
            return credit.wants();
        }

        Watch.Suspect suspect() {
            return known.watch().suspect();
        }

        /** Whether water seems to have gone. */
        boolean falling() {
            return known.falling();
        }

        /** Whether a reading stands that cannot be asked to move. */
        boolean untestable() {
            return known.untestable();
        }

        void clear() {
            known = known.watched(Watch::cleared);
        }
    }
}
