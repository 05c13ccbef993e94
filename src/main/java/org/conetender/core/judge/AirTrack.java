package org.conetender.core.judge;

import org.conetender.core.image.ContactSample.Level;
import org.conetender.core.settings.Cone;
import org.conetender.core.unit.Units;

/**
 * What is known of a cone's air.
 *
 * @param offForMs how long we have commanded it off without a break; 0 while on
 * @param onForMs how long we have commanded it on without a break; 0 while off
 * @param unprovenForMs how long air has been commanded on without proof since the contact said "no air";
 *     0 otherwise
 * @param provenForMs how long the contact has said "air" without a break
 * @param proof what the contact amounts to
 * @param breath how short of oxygen the animals may be
 */
public record AirTrack(long offForMs, long onForMs, long unprovenForMs, long provenForMs, Proof proof,
                       Breath breath) {

    /**
     * After "no air" the contact must say "air" for so long without a break before it is believed (guess:
     * five times the damping of a flow contact, and a third of the 30 s after which a lack is told): one that
     * chatters, or cannot be read, proves nothing.
     */
    static final long PROOF_HELD_MS = 10 * Units.SECOND_MS;

    /** Whether air really flows, as far as anything tells. */
    public enum Proof { PROVEN, FAILED, UNVERIFIED }

    /** @param breath what may be missing from before */
    public static AirTrack begun(Breath breath) {
        return new AirTrack(0, 0, 0, 0, Proof.UNVERIFIED, breath);
    }

    /** The track after a tick of {@code dtMs} in which air was commanded {@code on}. */
    public AirTrack after(boolean on, long dtMs, Cone.Air air, Level contact) {
        Proof says = !air.proof() || contact == Level.UNKNOWN ? Proof.UNVERIFIED
                : contact == Level.CLOSED ? Proof.PROVEN : Proof.FAILED;
        long proven = says == Proof.PROVEN ? provenForMs + dtMs : 0;
        Proof p = proof == Proof.FAILED && proven < PROOF_HELD_MS ? Proof.FAILED : says;
        long unproven = on && p == Proof.FAILED ? unprovenForMs + dtMs : 0;
        return new AirTrack(on ? 0 : offForMs + dtMs, on ? onForMs + dtMs : 0, unproven, proven, p, breath);
    }

    AirTrack with(Breath b) {
        return new AirTrack(offForMs, onForMs, unprovenForMs, provenForMs, proof, b);
    }
}
