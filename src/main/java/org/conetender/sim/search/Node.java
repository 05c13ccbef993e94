package org.conetender.sim.search;

import org.conetender.core.ConeLive;
import org.conetender.core.State;
import org.conetender.core.batch.Batch;
import org.conetender.core.batch.ConeBook;

/** A real state of the daemon and the truth around it. */
record Node(State state, World world) {

    ConeLive live() {
        return state.live().cones().get(Fitted.CONE);
    }

    ConeBook book() {
        return state.book().cone(Fitted.CONE);
    }

    Batch batch() {
        return book().batch();
    }

    /** Whether nothing is on its way to the record. */
    boolean settled() {
        return state.ledger().pending().isEmpty() && world.paper().queue().isEmpty();
    }
}
