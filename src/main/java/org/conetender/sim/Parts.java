package org.conetender.sim;

import java.util.List;
import java.util.function.BiFunction;
import java.util.function.UnaryOperator;
import org.conetender.core.Result;
import org.conetender.core.State;
import org.conetender.core.guard.Guard;
import org.conetender.core.guard.Guards;
import org.conetender.core.image.Image;
import org.conetender.port.Store;
import org.conetender.port.Switch;

/**
 * What a simulated daemon is built from, where a test may bend something to see whether anybody notices.
 *
 * @param guards all of them, as a rule
 * @param store what stands between the daemon and its disk
 * @param wire what stands between the daemon and each of its switches
 * @param tick what becomes of each of its decisions, and of what it remembers
 */
public record Parts(List<Guard> guards, UnaryOperator<Store> store, UnaryOperator<Switch> wire,
                    UnaryOperator<BiFunction<State, Image, Result>> tick) {

    /** As they should be. */
    public static final Parts WHOLE = with(Guards.ALL);

    /** Other guards; all else as it should be. */
    public static Parts with(List<Guard> guards) {
        return new Parts(guards, UnaryOperator.identity(), UnaryOperator.identity(),
                UnaryOperator.identity());
    }
}
