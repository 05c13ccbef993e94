package org.conetender.core.judge;

import java.util.List;
import java.util.Optional;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Stage;
import org.conetender.core.image.Image;
import org.conetender.core.image.ProbeSample;
import org.conetender.core.image.Reading;
import org.conetender.core.settings.Cone;
import org.conetender.core.settings.Site;
import org.conetender.core.unit.Units;

/** The first step of every tick: what do we believe? Wants nothing, vetoes nothing. */
public final class Judge {

    /** A room's reading may be this old; rooms change slowly (guess). */
    private static final long ROOM_USABLE_MS = 10 * Units.MINUTE_MS;
    /**
     * A room without a probe may be this warm on a summer's day, °C (guess); it warms no faster than that.
     */
    private static final double WARMEST_ROOM_C = 35;
    /**
     * Water so far above what its heater was to hold, K, that rises with the heat off is suspected whatever
     * was learned of it: a switch that welds in the first warm-up is learned as a warm room. Four steps of
     * the probe, and until it is within two of them: it wants no heat there, and the cut-out need not close
     * (guesses).
     */
    static final double ABOVE_K = 4 * 0.0625;
    static final double NOT_ABOVE_K = 2 * 0.0625;

    /**
     * What is believed again this much lower, K, than before it was in doubt may hang in the air of a warm
     * room: it has to answer to little heat first. An open cone loses 0.4 K in the four minutes of a doubt
     * (science.md §9; guess).
     */
    private static final double LOWER_K = 0.5;

    private Judge() {}

    /**
     * What the last tick did to the cone, so many ms ago.
     *
     * @param heater how its switches were set, and whether the law wanted heat
     * @param airOn as it was set
     * @param aimC what its heater was to hold, °C; NaN for nothing
     */
    public record Did(Switches heater, boolean airOn, double aimC, long dtMs) {

        boolean heated() {
            return heater.conduct();
        }
    }

    /** @param own closed  @param cutOut closed  @param two whether a cut-out is fitted  @param wanted heat */
    public record Switches(boolean own, boolean cutOut, boolean two, boolean wanted) {

        /** Whether power reaches the heater, if the switches obey. */
        public boolean conduct() {
            return own && (cutOut || !two);
        }
    }

    /** The room's temperature, °C, where a probe tells it. */
    public static Optional<Double> room(Site site, Image image) {
        return site.roomProbe().map(image::probe)
                .filter(s -> s.ageMs() <= ROOM_USABLE_MS)
                .map(ProbeSample::reading)
                .filter(r -> r instanceof Reading.Value(double c) && c > -20 && c < 50 && c != 0.0)
                .map(r -> ((Reading.Value) r).degreesC());
    }

    /** The water of that batch, L: as filled, else as usual. */
    public static double litres(Cone cone, Batch batch) {
        return batch.fill().map(Batch.Fill::litres).orElse(cone.usual().litres());
    }

    /** The water that a heater has to warm, L: the whole bath where the cone stands in one. */
    public static double warmedLitres(Cone cone, Batch batch) {
        return Math.max(litres(cone, batch), cone.fittings().vessel().bathLitres());
    }

    /** Nominal losses to the room, W/K (science.md §9). @param litres that are warmed */
    public static double lossWPerK(Cone cone, double litres) {
        return Losses.wattsPerK(litres, cone.fittings().vessel());
    }

    /**
     * One cone.
     *
     * @param before what was believed of it
     * @param about the cone, its batch, and whether its water is being handled
     * @param image this tick's
     * @param did what the last tick did
     */
    public static ConeJudgement look(ConeJudgement before, About about, Image image, Did did) {
        Cone cone = about.cone();
        double litres = warmedLitres(cone, about.batch());
        List<ProbeSample> samples = image.probes(cone.fittings().probes().water());
        boolean loose = about.handled() || !(about.batch().stage().hasWater());
        Hearing hearing = new Hearing(samples, Water.slewKPerS(cone, litres), loose, false);
        Water water = before.water().after(hearing, image.now().monoMs());
        ConeJudgement next = new ConeJudgement(water, about.roomC(),
                before.level().after(image.contact(cone.id(), ".level"), did.dtMs()),
                before.heat(), before.thermal(), air(before, about, image, did), before.motion(),
                before.tried());
        boolean touched = loose || about.batch().stage() instanceof Stage.Clean
                || next.air().offForMs() > 0;
        boolean disturbed = touched || before.proving().part().misleads();
        Optional<Water.Doubt> ended = water.doubt().isEmpty() ? before.water().doubt() : Optional.empty();
        boolean elsewhere = ended.filter(d -> d.worn(image.now().monoMs())).isPresent();
        // The air of a warm room is as near to what the water was as cooler water that is poured in.
        boolean lower = ended.isPresent() && !loose && water.lastC() < before.water().lastC() - LOWER_K;
        Optional<Thermal> thermal = thermal(elsewhere ? next.unknown() : next, about, did,
                new Told(!disturbed, water.lastAtMs() != before.water().lastAtMs()));
        // One ladder for every departure, whoever finds it: untrusted, re-armed, latched (Water).
        if (suspect(thermal) == Watch.Suspect.IN_AIR) {
            water = before.water().after(hearing.gone(), image.now().monoMs());
            thermal = thermal.map(t -> t.watched(Watch::cleared)).map(Thermal::left);
        }
        HeatTrack heat = before.heat().after(new HeatTrack.Step(did.dtMs(), did.heated(), water.belief(),
                physics(cone, litres, next), water.lastAtMs() != before.water().lastAtMs()), disturbed);
        if (next.nearRoom() && water.belief() instanceof Belief.Trusted(double c)
                && c > did.aimC() + ABOVE_K && rises(heat, thermal)) {
            thermal = thermal.map(t -> t.watched(Watch::above));
        }
        if (suspect(thermal).heated() && !before.suspect().heated()) {
            heat = heat.suspected();
        }
        CutShort cut = cutShort(before, thermal,
                new Left(!disturbed, water.belief(), heat.warmsKPerS()), did);
        // What a room may have done is no fault once it is over; guards latch what is.
        boolean over = suspect(thermal) == Watch.Suspect.ABOVE
                ? water.belief() instanceof Belief.Trusted(double c) && c <= did.aimC() + NOT_ABOVE_K
                : (!next.coldRoom() || cut.wentOn()) && heat.noRiseForMs() >= HeatTrack.STILL_MS;
        if (over && suspect(thermal).heated() && !cut.tells()) {
            thermal = thermal.map(t -> t.watched(Watch::cleared));
        }
        Proving tried = proving(next, about, did, !touched);
        // Neither would end: a trial waits for heat that a suspicion withholds, and disturbs what ends it.
        return new ConeJudgement(water, next.roomC(), next.level(),
                elsewhere || lower ? heat.untested() : heat, thermal, next.air(),
                before.motion().after(water.belief(), did.dtMs()),
                new Tried(suspect(thermal).heated() ? tried.interrupted() : tried, cut));
    }

    /**
     * Whether it rises with the heat off, and not faster than its heater could, as told or as learned: what
     * does is poured in, or held in a hand.
     */
    private static boolean rises(HeatTrack heat, Optional<Thermal> thermal) {
        return heat.warmsKPerS() > 0 && thermal.filter(t -> heat.warmsKPerS() < Cause.STRONGER * Math.max(
                t.estimate().nominal().riseKPerS(), t.proof().traits().riseKPerS())).isPresent();
    }

    private static Watch.Suspect suspect(Optional<Thermal> thermal) {
        return thermal.map(t -> t.watch().suspect()).orElse(Watch.Suspect.NONE);
    }

    /**
     * @param alone whether the water was left alone and stirred
     * @param offKPerS how fast it warmed with the heat off, NaN for not known
     */
    private record Left(boolean alone, Belief water, double offKPerS) {}

    private static CutShort cutShort(ConeJudgement before, Optional<Thermal> thermal, Left left, Did did) {
        Switches s = did.heater();
        Watch.Suspect suspect = suspect(thermal);
        return !suspect.heated() || !s.two() ? CutShort.NONE
                : before.tried().cutShort().after(new CutShort.Seen(did.dtMs(), left.alone(), !s.cutOut(),
                        left.water(), suspect == Watch.Suspect.ABOVE ? Optional.of(left.offKPerS())
                        : Optional.empty(), thermal.get().proof().traits().riseKPerS()));
    }

    private static Proving proving(ConeJudgement j, About about, Did did, boolean may) {
        Cone.Heat heater = about.cone().fittings().heat();
        if (heater.kind() != Cone.HeatKind.IMMERSED) {
            return Proving.DONE;
        }
        double litres = warmedLitres(about.cone(), about.batch());
        double capacity = litres * Units.BRINE_J_PER_L_K;
        double roomK = j.roomC().map(r -> r - j.belief().middleC()).filter(Double::isFinite).orElse(0.0);
        Proving.Plant plant = new Proving.Plant(heater.cutOut(), heater.riseKPerS(litres),
                roomK * lossWPerK(about.cone(), litres) / capacity);
        Switches s = did.heater();
        return j.proving().after(new Proving.Seen(did.dtMs(), j.belief(), may, new Proving.Heater(s.wanted(),
                s.own(), s.cutOut(), j.heat().offForMs(), plant)));
    }

    /** @param proves whether the water was left alone  @param anew whether a reading came, not an old one */
    private record Told(boolean proves, boolean anew) {}

    /** What is known of the water after this tick: followed while it is seen. */
    private static Optional<Thermal> thermal(ConeJudgement j, About about, Did did, Told told) {
        Cone.Heat heater = about.cone().fittings().heat();
        if (heater.kind() != Cone.HeatKind.IMMERSED) {
            return Optional.empty();
        }
        if (!j.belief().known() || !about.batch().stage().hasWater()) {
            return j.thermal().map(Thermal::left);
        }
        double litres = warmedLitres(about.cone(), about.batch());
        Traits nominal = Traits.nominal(heater.watts(), lossWPerK(about.cone(), litres),
                litres * Units.BRINE_J_PER_L_K);
        double c = j.belief().middleC();
        Thermal t = j.thermal().filter(m -> m.estimate().nominal().equals(nominal))
                .orElseGet(() -> Thermal.from(nominal, about.prior(nominal, litres), c));
        if (did.dtMs() == 0) {
            // The first tick of a life: speeds cannot be told from no time.
            return Optional.of(t);
        }
        // A slow bus answers every few seconds; the same reading seen twice says nothing new.
        double probeC = told.anew() && j.belief() instanceof Belief.Trusted ? c : Double.NaN;
        return Optional.of(!t.following() ? t.again(c) : t.after(new Estimate.Step(did.dtMs() / 1000.0,
                did.heated() ? 1 : 0, j.roomOrUsualC(), probeC, told.proves()), did.aimC()));
    }

    private static AirTrack air(ConeJudgement before, About about, Image image, Did did) {
        AirTrack next = before.air().after(did.airOn(), did.dtMs(), about.cone().fittings().air(),
                image.contact(about.cone().id(), ".air-proof"));
        boolean arrives = did.airOn() && next.proof() != AirTrack.Proof.FAILED
                && !about.batch().marks().valveShut() && !about.valveUnheard() && !stuck(about.cone(), image);
        return next.with(next.breath().after(arrives, about, Breath.warmestC(before.belief()),
                did.dtMs()));
    }

    /** Whether the output that pauses the air does not obey: then nobody knows that air comes. */
    public static boolean stuck(Cone cone, Image image) {
        return image.pipes().unset(cone.id(), ".air-pause");
    }

    /**
     * @param book what is recorded of it, its batch among it
     * @param handled whether hands are in it or it was topped up just now  @param roomC if measured
     * @param naupliiPerGram that a gram of its lot gives
     * @param valveUnheard whether it was reported that its air valve is shut, and that was set aside
     */
    public record About(Cone cone, ConeBook book, boolean handled, Optional<Double> roomC,
                        double naupliiPerGram, boolean valveUnheard) {
        Batch batch() {
            return book.batch();
        }

        /** What was learned of this heater in so much water, in this life or one before. */
        private Traits prior(Traits nominal, double litres) {
            return book.heater().learned().filter(l -> l.fits(cone.fittings().heat().watts(), litres))
                    .map(l -> new Traits(l.rise() * nominal.riseKPerS(), l.loss() * nominal.lossPerS(),
                            l.lagS())).orElse(nominal);
        }
    }

    private static HeatTrack.Physics physics(Cone cone, double litres, ConeJudgement j) {
        double capacity = litres * Units.BRINE_J_PER_L_K;
        double c = j.belief().middleC();
        double over = Double.isNaN(c) ? 0 : c - j.roomOrUsualC();
        double loss = lossWPerK(cone, litres) / capacity;
        boolean measured = j.roomC().isPresent();
        double drift = measured || Double.isNaN(c) ? 0 : loss * Math.max(0, WARMEST_ROOM_C - c);
        boolean quick = cone.fittings().heat().kind() == Cone.HeatKind.IMMERSED;
        // In a warm room an immersed heater is asked with its cut-out (CutShort). Of any other nothing else
        // tells: there the room may be warmer still at the cone, and bubbles bring more of its warmth in.
        double warmsK = Math.max(0, ConeJudgement.COLD_ROOM_K - over);
        double room = !measured || Double.isNaN(c) ? drift : warmsK == 0 ? 0
                : quick && cone.fittings().heat().cutOut() ? Double.POSITIVE_INFINITY
                : HeatTrack.MOST_LOSSES * loss * warmsK;
        return new HeatTrack.Physics(cone.fittings().heat().riseKPerS(litres), loss * over, room, drift, loss,
                quick);
    }
}
