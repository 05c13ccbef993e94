package org.conetender.core.batch;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.conetender.core.hatch.Development;
import org.conetender.core.hatch.RoomDay;
import org.conetender.core.unit.Moment;

/**
 * What is written down once a minute so that a restart loses at most that minute of development.
 *
 * @param at when it was taken
 * @param temperatures every trusted reading of that moment
 * @param cones where the cysts of each cone stood
 * @param day the room's hours from midnight UTC on, where any was learnt; else empty
 */
public record Checkpoint(Moment at, List<Temperature> temperatures, List<ConePoint> cones,
                         List<RoomDay.Hour> day) {

    public Checkpoint {
        temperatures = List.copyOf(temperatures);
        cones = List.copyOf(cones);
        day = List.copyOf(day);
    }

    /** What that cone's animals had of air; empty where it is not known. */
    public Optional<Air> air(String cone) {
        return cones.stream().filter(p -> p.cone().equals(cone)).findFirst().flatMap(ConePoint::air);
    }

    /** Where nothing was learnt of the room. */
    public Checkpoint(Moment at, List<Temperature> temperatures, List<ConePoint> cones) {
        this(at, temperatures, cones, List.of());
    }

    /** @param series cone id, or {@code room}  @param degreesC °C */
    public record Temperature(String series, double degreesC) {}

    /**
     * @param cone its id
     * @param batch the batch's number, so that a point is never taken for another batch's
     * @param done what was measured of its development; what was bridged is in the book
     * @param at when it stood there: older than the checkpoint while no temperature is believed
     * @param heldC set-point that was chosen for the hour the batch is wanted at, °C; empty where none is
     * @param air what whoever breathes in the cone had of air at the checkpoint, of whatever batch; empty
     *     where a release before did not write it down
     */
    public record ConePoint(String cone, long batch, Development done, At at, OptionalDouble heldC,
                            Optional<Air> air) {

        /** Of a batch that is wanted at no hour, and of whose air nothing is known. */
        public ConePoint(String cone, long batch, Development done, At at) {
            this(cone, batch, done, at, OptionalDouble.empty(), Optional.empty());
        }
    }

    /** Both as {@link org.conetender.core.judge.Breath} has them. @param spent 0 to 1  @param withoutMs ms */
    public record Air(double spent, long withoutMs) {

        /** @throws IllegalArgumentException if nobody can have had that */
        public Air {
            if (!(spent >= 0 && spent <= 1 && withoutMs >= 0)) {
                throw new IllegalArgumentException("no air is " + spent + " spent for " + withoutMs + " ms");
            }
        }
    }

    /** A moment that is only used for its distance. @param boot id  @param monoMs monotonic ms in it */
    public record At(String boot, long monoMs) {

        /** The boot of a point whose moment was not written down: no clock can reach it. */
        static final String UNKNOWN = "?";
    }

    /** The moment of that point, with what is known of the hour. */
    public Moment momentOf(ConePoint p) {
        return p.at().boot().equals(at.boot()) ? at.plusMs(p.at().monoMs() - at.monoMs())
                : new Moment(p.at().boot(), p.at().monoMs(), 0, false);
    }
}
