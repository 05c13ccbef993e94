package org.conetender.core;

import java.util.Optional;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Book;
import org.conetender.core.batch.Checkpoint;
import org.conetender.core.batch.ConeBook;
import org.conetender.core.batch.Moves;
import org.conetender.core.hatch.Forecast;
import org.conetender.core.hatch.Growth;
import org.conetender.core.hatch.Harvest;
import org.conetender.core.hatch.Known;
import org.conetender.core.hatch.RoomDay;
import org.conetender.core.heat.Hold;
import org.conetender.core.heat.Share;
import org.conetender.core.heat.Wear;
import org.conetender.core.judge.AirTrack;
import org.conetender.core.judge.Belief;
import org.conetender.core.judge.Beside;
import org.conetender.core.judge.Breath;
import org.conetender.core.judge.ConeJudgement;
import org.conetender.core.judge.HeatTrack;
import org.conetender.core.judge.LevelTrack;
import org.conetender.core.judge.Judge;
import org.conetender.core.judge.Motion;
import org.conetender.core.judge.Proving;
import org.conetender.core.judge.Tried;
import org.conetender.core.judge.Water;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Boots;
import org.conetender.core.unit.Moment;
import org.conetender.core.unit.Units;

/**
 * What is remembered of one cone between ticks and rebuilt after a restart.
 *
 * @param judged what was believed last
 * @param beside what it has to do with its neighbours
 * @param growth how far its cysts are
 * @param heating what its heating remembers
 * @param out what its outputs were last set to
 * @param outlook when it will be ready
 * @param known what is known of its lot
 * @param pressedForMs how long the hand button has been held
 */
public record ConeLive(ConeJudgement judged, Beside beside, Growth growth, Heating heating, ConeOut out,
                       Outlook outlook, Known known, long pressedForMs) {

    /**
     * What its heating remembers.
     *
     * @param hold the law  @param credit its share of power  @param wear what the heater's switch has done
     * @param felt the day of a room that nobody measures, as its water feels it
     * @param power share of the time in which the site's watts reach for its heater, 0..1, as it was in the
     *     last minute
     */
    public record Heating(Hold hold, Share.Credit credit, Wear wear, RoomDay felt, double power) {}

    /**
     * @param forecast the last one; empty while no cysts develop or no temperature is known
     * @param harvest when its food is best, made with it
     * @param atMs when it was made, monotonic ms
     * @param water the belief it was made from
     * @param promise the feed for which it was to be ready
     * @param appointment what is done about the hour it is wanted at
     */
    public record Outlook(Optional<Forecast> forecast, Optional<Harvest> harvest, long atMs, Belief water,
                          Promise promise, Optional<Appointment> appointment) {
        static final Outlook NONE = new Outlook(Optional.empty(), Optional.empty(), 0,
                new Belief.Untrusted("nothing heard yet"), Promise.NONE, Optional.empty());

        /** What was foreseen holds so long after the water was last measured (*guess*). */
        private static final long HOLDS_MS = 15 * Units.MINUTE_MS;

        /** Whether the water is unmeasured for so long that nobody knows when it will be ready. */
        public boolean lapsed(Moment now) {
            return forecast.isPresent() && !water.known() && now.monoMs() - atMs > HOLDS_MS;
        }

        /** The forecast, while it holds. */
        public Optional<Forecast> foretold(Moment now) {
            return lapsed(now) ? Optional.empty() : forecast;
        }
    }

    /**
     * The outputs of one cone; all false is the safe level.
     *
     * @param heat the heater's own switch
     * @param cutOut the second switch in series, closed
     * @param airPause the relay that pauses the air
     * @param lamp the harvest lamp
     * @param trigger the trigger light
     * @param button the lamp in the hand button
     */
    public record ConeOut(boolean heat, boolean cutOut, boolean airPause, boolean lamp, boolean trigger,
                          boolean button) {
        public static final ConeOut SAFE = new ConeOut(false, false, false, false, false, false);
    }

    public Hold hold() {
        return heating.hold();
    }

    /** How its heater's switches were set. */
    Judge.Switches switches(Cone c) {
        return new Judge.Switches(out.heat(), out.cutOut(), c.fittings().heat().cutOut(), hold().duty() > 0);
    }

    Share.Credit credit() {
        return heating.credit();
    }

    public Wear wear() {
        return heating.wear();
    }

    /** Degree-hours of the hour that was announced for its batch, °C·h; NaN while none is. */
    double needed() {
        return outlook.forecast().map(Forecast::neededDegreeHours).orElse(Double.NaN);
    }

    /** Whether its cysts are short of the harvest point for certain. */
    public boolean unripe(Batch b) {
        return growth.unripe(b, needed());
    }

    /** Whether they are known to be at it, as far as anybody can tell. */
    boolean ripe(Batch b) {
        return growth.doneOf(b).mostDegreeHours() >= needed();
    }

    /**
     * When it is called ready, in hours after the forecast was made: what was left behind a part that was
     * drawn not before its time, however ripe it is.
     *
     * @param foretoldH as the forecast has it
     */
    public double readyH(double foretoldH, Batch b, Moment now, Boots boots) {
        long restMs = Moves.restMs(b, now, boots);
        return restMs == 0 ? foretoldH
                : Math.max(foretoldH, Units.hours(now.monoMs() - outlook.atMs() + restMs));
    }

    ConeLive judged(ConeJudgement j) {
        return new ConeLive(j, beside, growth, heating, out, outlook, known, pressedForMs);
    }

    ConeLive worn(Wear w) {
        return new ConeLive(judged, beside, growth, new Heating(hold(), credit(), w, heating.felt(),
                heating.power()),
                out, outlook, known, pressedForMs);
    }

    ConeLive knowing(Known of) {
        return new ConeLive(judged, beside, growth, heating, out, outlook, of, pressedForMs);
    }

    static ConeLive begin(String cone, Book all, Optional<Checkpoint> checkpoint, Moment now) {
        ConeBook book = all.cone(cone);
        ConeJudgement judged = new ConeJudgement(Water.unheard(), Optional.empty(), LevelTrack.NONE,
                HeatTrack.fresh(), Optional.empty(), AirTrack.begun(Breath.begun(cone, all,
                checkpoint, now)),
                Motion.NONE, Tried.of(book.heater().tried(book.batch()) ? Proving.DONE : Proving.DUE));
        return new ConeLive(judged, Beside.NONE, Growth.resumed(cone, all, checkpoint),
                new Heating(Hold.IDLE, Share.Credit.NONE, Wear.begun(0), RoomDay.NONE, 1),
                ConeOut.SAFE, new Outlook(Optional.empty(), Optional.empty(), 0, Outlook.NONE.water(),
                        Promise.NONE, Appointment.resumed(cone, book.batch(), checkpoint)),
                Known.NONE, 0);
    }
}
