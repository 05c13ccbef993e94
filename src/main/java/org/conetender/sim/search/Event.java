package org.conetender.sim.search;

import org.conetender.core.ConeLive;
import org.conetender.core.Result;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.Stage;
import org.conetender.core.image.Image;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Units;

/**
 * One tick, as the rules see it.
 *
 * @param cone its settings
 * @param before where the daemon stood
 * @param image what it was told
 * @param result what it decided
 * @param next where it stands now, with the memory that includes this tick
 */
record Event(Cone cone, Node before, Image image, Result result, Node next) {

    Cone.Fittings fitted() {
        return cone.fittings();
    }

    ConeLive live() {
        return next.live();
    }

    /** What is really switched: as handed to the devices. */
    ConeLive.ConeOut out() {
        return new ConeLive.ConeOut(on("heat"), on("cut-out"), on("air-pause"), on("lamp"), on("trigger"),
                false);
    }

    private boolean on(String outlet) {
        return result.outputs().getOrDefault(Fitted.CONE + "." + outlet, false);
    }

    /** The same, remembered like that. */
    Event with(Memory m) {
        return new Event(cone, before, image, result, new Node(next.state(), next.world().with(m)));
    }

    World.Senses senses() {
        return next.world().senses();
    }

    Memory memory() {
        return next.world().memory();
    }

    long nowMs() {
        return image.now().monoMs();
    }

    /** What a restart would have read when this was decided. */
    Batch durable() {
        return before.world().paper().durable().book().cone(Fitted.CONE).batch();
    }

    /** How long the air has been commanded off, ms, measured by the search. */
    long airOffForMs() {
        return memory().airOffSinceMs() < 0 ? 0 : nowMs() - memory().airOffSinceMs();
    }

    /** How long it may be, by the settings and the house's rule, ms. */
    long capMs() {
        return Units.msOfMinutes(next.batch().stage() instanceof Stage.Drawing ? Rules.HOUSE_CAP_MINUTES
                : Fitted.CAP_MINUTES);
    }

    /** What the probe says, °C; NaN while it does not answer. */
    double readingC() {
        return senses().gone() ? Double.NaN : senses().shownC();
    }
}
