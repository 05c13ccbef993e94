package org.conetender.sim;

import java.util.List;
import java.util.function.UnaryOperator;
import org.conetender.core.guard.Guard;
import org.conetender.core.guard.Guards;
import org.conetender.port.Store;
import org.conetender.port.Switch;

/**
 * What a simulated daemon is built from, where a test may bend something to see whether anybody notices.
 *
 * @param guards all of them, as a rule
 * @param store what stands between the daemon and its disk
 * @param wire what stands between the daemon and each of its switches
 */
public record Parts(List<Guard> guards, UnaryOperator<Store> store, UnaryOperator<Switch> wire) {

    /** As they should be. */
    public static final Parts WHOLE = with(Guards.ALL);

    /** Other guards; all else as it should be. */
    public static Parts with(List<Guard> guards) {
        return new Parts(guards, UnaryOperator.identity(), UnaryOperator.identity());
    }
}
