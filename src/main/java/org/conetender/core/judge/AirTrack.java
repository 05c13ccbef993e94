package org.conetender.core.judge;

import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.settings.Cone;

/**
 * What is known of a cone's air.
 *
 * @param offForMs how long we have commanded it off without a break; 0 while on
 * @param onForMs how long we have commanded it on without a break; 0 while off
 * @param unprovenForMs how long the contact has said "no air" while it was commanded on; 0 otherwise
 * @param proof what the contact says
 */
public record AirTrack(long offForMs, long onForMs, long unprovenForMs, Proof proof) {

    /** Whether air really flows, as far as anything tells. */
    public enum Proof { PROVEN, FAILED, UNVERIFIED }

    public static AirTrack fresh() {
        return new AirTrack(0, 0, 0, Proof.UNVERIFIED);
    }

    /** The track after a tick of {@code dtMs} in which air was commanded {@code on}. */
    public AirTrack after(boolean on, long dtMs, Cone.Air air, Level contact) {
        Proof p = !air.proof() || contact == Level.UNKNOWN ? Proof.UNVERIFIED
                : contact == Level.CLOSED ? Proof.PROVEN : Proof.FAILED;
        long unproven = on && p == Proof.FAILED ? unprovenForMs + dtMs : 0;
        return new AirTrack(on ? 0 : offForMs + dtMs, on ? onForMs + dtMs : 0, unproven, p);
    }
}
