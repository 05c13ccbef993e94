package org.conetender.sim;

/** What brings power to a cone's heater: its own two switches, or another cone's where wires are crossed. */
final class Feed {

    private final Fixtures own;
    private Feed other = this;
    private Fault.Wiring wiring = Fault.Wiring.PLUGS;

    Feed(Fixtures own) {
        this.own = own;
    }

    /** From now on the heater follows that other's output as well or instead; if that is itself, its own. */
    void from(Feed another, Fault.Wiring how) {
        other = another;
        wiring = how;
    }

    /** Whether power reaches the heater, if there is any. */
    boolean conducts() {
        if (other == this) {
            return closed() && cutOut();
        }
        return switch (wiring) {
            case PLUGS -> other.closed() && other.cutOut();
            case SWITCHES -> other.closed() && cutOut();
            case SHORTED -> (closed() || other.closed()) && cutOut();
        };
    }

    /** Whether another cone's output is crossed with this one's. */
    boolean crossed() {
        return other != this;
    }

    /** Whether another cone's output heats it now and its own would not. */
    boolean strange() {
        return other != this && conducts() && !closed();
    }

    /** Whether a cut-out keeps all power from the heater, whatever the other switches do. */
    boolean cut() {
        return !(other == this || wiring != Fault.Wiring.PLUGS ? cutOut() : other.cutOut());
    }

    /** Whether it follows that one's output. */
    boolean follows(Feed another) {
        return other == another;
    }

    private boolean closed() {
        return own.conducts(Fixtures.HEAT, false);
    }

    private boolean cutOut() {
        return own.conducts(Fixtures.CUT_OUT, true);
    }
}
