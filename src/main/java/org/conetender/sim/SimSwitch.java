package org.conetender.sim;

import org.conetender.port.Switch;

/**
 * One output with its lease: the coil, as commanded unless its line is deaf, and the contact as it
 * really is. The world calls {@link #expire} at every step, which is what the lease thread does in the
 * real adapter.
 */
public final class SimSwitch implements Switch {

    /** What can be wrong with a relay or solid-state switch. */
    public enum Fault {
        NONE,
        /** The contact no longer opens (science.md §12, control.md §1.5). */
        WELDED,
        /** The contact, the wire or what hangs on it no longer conducts. */
        OPEN,
        /** A board that conducts when its input is low: the contact is the opposite of the coil. */
        INVERTED,
        /** The line cannot be driven: {@link SimSwitch#hold} answers false and the coil falls off. */
        REFUSING,
        /** The line takes no level: {@link SimSwitch#hold} answers false and the coil stays as it was. */
        DEAF,
        /** The contact opens and closes every second while its coil is driven (guess). */
        CHATTERING
    }

    private final String id;
    private final SimClock clock;
    private Fault fault = Fault.NONE;
    private boolean coil;
    /** What was asked for last and has not expired: the coil, unless the line is deaf. */
    private boolean asked;
    private boolean contact;
    private long heldAtMs;
    private long expiresAtMs;
    private long cycles;
    private boolean powered = true;

    public SimSwitch(String id, SimClock clock) {
        this.id = id;
        this.clock = clock;
    }

    @Override
    public String id() {
        return id;
    }

    @Override
    public boolean hold(boolean energised, long validForMs) {
        if (validForMs <= 0) {
            throw new IllegalArgumentException(id + ": a lease must last longer than 0 ms: " + validForMs);
        }
        boolean can = powered && !refuses();
        asked = energised && (can || fault == Fault.DEAF);
        follow();
        heldAtMs = clock.elapsedMs();
        expiresAtMs = heldAtMs + validForMs;
        settle();
        return can;
    }

    /** How long ago it was set, as the world counts. */
    long heldForMs() {
        return clock.elapsedMs() - heldAtMs;
    }

    /** Lets go of a coil whose lease is over. */
    void expire() {
        if (fault == Fault.CHATTERING) {
            settle();
        }
        if (asked && clock.elapsedMs() >= expiresAtMs) {
            asked = false;
            follow();
            settle();
        }
    }

    /** Supply to the control box. Without it no coil holds, though a welded contact still conducts. */
    void power(boolean on) {
        powered = on;
        asked &= on;
        coil &= on;
        settle();
    }

    public void fail(Fault what) {
        fault = what;
        asked &= what != Fault.REFUSING;
        follow();
        settle();
    }

    /** Whether it can be set at all. */
    boolean refuses() {
        return fault == Fault.REFUSING || fault == Fault.DEAF;
    }

    /** A deaf line keeps its level, also when its lease runs out. */
    private void follow() {
        coil = fault == Fault.DEAF ? coil : asked;
    }

    /** What the daemon commands, lease and all: the coil or gate is driven so, unless its line is deaf. */
    public boolean commanded() {
        return asked;
    }

    /** Whether the contact conducts now: what really happens to the load. */
    public boolean conducting() {
        return contact;
    }

    /** How often the contact has closed since the beginning. */
    public long cycles() {
        return cycles;
    }

    private void settle() {
        boolean next = switch (fault) {
            case NONE, REFUSING, DEAF -> coil;
            case WELDED -> true;
            case OPEN -> false;
            case INVERTED -> powered && !coil;
            case CHATTERING -> coil && clock.elapsedMs() / 1_000 % 2 == 0;
        };
        if (next && !contact) {
            cycles++;
        }
        contact = next;
    }
}
