package org.conetender.app;

import java.net.URI;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.conetender.adapter.mqtt.Observer;
import org.conetender.homie.Homie5Checker;
import org.conetender.homie.Homie5Stream;
import org.conetender.homie.Homie5Stream.Kept;
import org.conetender.homie.Homie5Stream.Said;

/** Somebody at a broker who hears every message from now on, in its order. */
final class Witness implements AutoCloseable {

    private final URI broker;
    private final boolean flags;
    private final Observer ear;
    private final Map<String, String> before = new TreeMap<>();
    private final int began;

    private Witness(URI broker, boolean flags) {
        this.broker = broker;
        this.flags = flags;
        this.ear = Observer.at(broker);
        List<Observer.Heard> first = ear.heard();
        first.stream().filter(h -> ours(h.topic())).forEach(h -> before.put(h.topic(), h.payload()));
        this.began = first.size();
    }

    /** At a broker that passes the retain flag on to whoever asks for it. */
    static Witness at(URI broker) {
        return new Witness(broker, true);
    }

    /** At the demonstration's, which does not: there a newcomer tells what was kept. */
    static Witness atLoopback(URI broker) {
        return new Witness(broker, false);
    }

    private static boolean ours(String topic) {
        return topic.startsWith("homie/5/");
    }

    private List<Said> heard() {
        List<Observer.Heard> all = ear.heard();
        return all.subList(began, all.size()).stream().filter(h -> ours(h.topic()))
                .map(h -> new Said(h.topic(), h.payload(),
                        !flags ? Kept.UNTOLD : h.retained() ? Kept.YES : Kept.NO)).toList();
    }

    /** Violations in all that was said since. */
    List<String> wrong() {
        return Homie5Stream.check(before, heard());
    }

    /** Violations in what a newcomer is given: commands and logs among them, were they ever retained. */
    List<String> wrongWithWhatIsKept() {
        return Homie5Checker.check(kept()).stream().filter(v -> !v.endsWith("is described but has no value"))
                .toList();
    }

    private Map<String, String> kept() {
        Map<String, String> kept = new TreeMap<>(Observer.retainedAt(broker));
        kept.keySet().removeIf(t -> !ours(t));
        return kept;
    }

    /** Whether a newcomer is given the last word on every topic, and nothing else. */
    boolean theLastWordIsKept() {
        ear.sync();
        Map<String, String> last = new TreeMap<>(before);
        heard().stream().filter(s -> !s.topic().endsWith("/set") && !s.topic().contains("/$log/"))
                .forEach(s -> last.put(s.topic(), s.payload()));
        last.values().removeIf(String::isEmpty);
        return last.equals(kept());
    }

    /** Every word on that topic, in order. */
    List<String> words(String topic) {
        return heard().stream().filter(s -> s.topic().equals(topic)).map(Said::payload).toList();
    }

    /** How often something was said on topics that end so. */
    long said(String end) {
        return heard().stream().filter(s -> s.topic().endsWith(end)).count();
    }

    /** Says something wrong, retained; it has been heard when this returns. */
    void plant(String topic, String payload) {
        ear.say(topic, payload, 1, true);
        ear.sync();
    }

    @Override
    public void close() {
        ear.close();
    }
}
