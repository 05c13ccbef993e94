package org.conetender.sim.trial;

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
            return new Pi(c, 240_000);
        }
    },
    PI_SOLID("PI by SIMC, 10 s windows") {
        @Override
        Law of(TrialCone c) {
            return new Pi(c, 10_000);
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

    private final String words;

    Laws(String words) {
        this.words = words;
    }

    /** The law for one run of this cone. */
    abstract Law of(TrialCone c);

    String words() {
        return words;
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
            double holding = cone.known().nominal().lossPerS() * (aim - s.roomC())
                    / cone.known().nominal().riseKPerS();
            hold = hold.after(aim - s.probeC(), aim, 1_000, new Hold.Plant(
                    cone.known().nominal().riseKPerS(), Math.max(0, holding), windowMs));
            credit = Share.after(credit, hold.duty(), s.wasOn(), new Share.Window(1_000, windowMs));
            return credit.wants();
        }
    }

    /** The law that knows the coast, with all that the daemon does about it. */
    static final class Ours implements Law {

        private final TrialCone cone;
        private final Predict.Switching kind;
        private Thermal known;
        private Predict law = Predict.IDLE;
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
            law = law.steered(known, aimC, new Predict.Around(s.roomC(), 1), wear.left(kind));
            return law.on();
        }

        Watch.Suspect suspect() {
            return known.watch().suspect();
        }

        void clear() {
            known = known.cleared();
        }
    }
}
