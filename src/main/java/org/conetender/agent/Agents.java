package org.conetender.agent;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import org.conetender.core.Damage;
import org.conetender.core.Opening;
import org.conetender.core.Result;
import org.conetender.core.State;
import org.conetender.core.Tick;
import org.conetender.core.batch.Change;
import org.conetender.core.batch.Fact;
import org.conetender.core.face.Names;
import org.conetender.core.face.Outage;
import org.conetender.core.face.Versions;
import org.conetender.core.guard.Guard;
import org.conetender.core.image.Image;
import org.conetender.core.settings.Settings;
import org.conetender.core.unit.Moment;
import org.conetender.port.Store;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The daemon's three duties, joined. Production gives each a thread; the simulation runs them by hand
 * in this order.
 */
public record Agents(ControlAgent control, RecordAgent record, PublishAgent publish, Settings settings) {

    private static final Logger LOG = LoggerFactory.getLogger(Agents.class);

    /**
     * Reads the record and stands where it stood; nothing is energised yet.
     *
     * @throws Store.StoreException if the record cannot be read
     */
    public static Agents begin(Settings settings, List<Guard> guards, Ports ports, Names names)
            throws Store.StoreException {
        return begin(settings, new Tick(settings, guards)::step, ports, names);
    }

    /**
     * The same with another tick than the real one; for the simulation that plants bugs in it.
     *
     * @throws Store.StoreException if the record cannot be read
     */
    public static Agents begin(Settings settings, BiFunction<State, Image, Result> tick, Ports ports,
                               Names names) throws Store.StoreException {
        Store.Kept kept = ports.store().load();
        Moment now = ports.clock().now();
        Mail mail = new Mail(now.boot().substring(0, Math.min(8, now.boot().length())) + "-" + now.monoMs());
        RecordAgent record = new RecordAgent(ports.store(), mail);
        List<Fact> facts = new ArrayList<>(kept.facts());
        List<Fact> damage = Damage.facts(facts, kept.damages(), now);
        if (!damage.isEmpty()) {
            record.append(damage);
            facts.addAll(damage);
        }
        // Durable before anything is carried on: whatever kills us from here on is counted.
        List<Fact> opening = Opening.facts(settings, facts, kept.checkpoint(), now);
        record.append(opening);
        State state = State.begin(settings, facts, kept.checkpoint(), opening);
        Optional<Moment> last = opening.getFirst().change() instanceof Change.Began(Optional<Moment> seen)
                ? seen : Optional.empty();
        last.flatMap(l -> Outage.words(state.book().since(l, now))).ifPresent(LOG::info);
        return new Agents(new ControlAgent(ports, mail, tick, state),
                record,
                new PublishAgent(new Face(settings, names, Versions.of(Stream.concat(facts.stream(),
                        opening.stream()).toList())), ports.outside().transport(), mail,
                        new PowerBack(last, now, settings.site().feeding().zone())),
                settings);
    }

    /** The last thing that is done after a stop in good order: it is recorded that it was one. */
    public void leave() {
        control.leave(settings);
        record.doWork();
    }

    /** One round by hand: control, then the record, then the world. */
    public void round() {
        control.doWork();
        record.doWork();
        publish.doWork();
    }
}
