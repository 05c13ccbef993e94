package org.conetender.app.demo;

import java.io.IOException;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.conetender.app.remote.RemoteSite;
import org.conetender.sim.Eyes;
import org.conetender.sim.Hands;

/**
 * How the simulated person reaches the daemon: as any client would, through a real broker. What the
 * broker does not take is not said by other means. One thread.
 */
final class ThroughBroker implements Eyes, Hands {

    private final RemoteSite site;
    private Optional<String> trouble = Optional.empty();
    private long said;

    ThroughBroker(RemoteSite site) {
        this.site = site;
    }

    @Override
    public String payload(String topic) {
        return site.topics().get(topic);
    }

    @Override
    public SortedMap<String, String> under(String prefix) {
        // One by one: a sorted map is copied by its size, and messages come and go meanwhile.
        SortedMap<String, String> now = new TreeMap<>();
        site.topics().subMap(prefix, prefix + Character.MAX_VALUE).forEach(now::put);
        return now;
    }

    @Override
    public void say(String cone, String step) {
        say(site.names().cone(cone) + "/hand/step/set", step, cone);
    }

    @Override
    public void acknowledge(String cone, String alert) {
        say(site.names().cone(cone) + "/hand/acknowledge/set", alert, cone);
    }

    @Override
    public void want(String cone, String hour) {
        say(site.names().cone(cone) + "/hatch/ready-by/set", hour, cone);
    }

    private void say(String topic, String payload, String cone) {
        try {
            site.say(topic, payload);
            said++;
        } catch (IOException e) {
            trouble = Optional.of("'" + payload + "' for cone " + cone + " could not be said: "
                    + e.getMessage());
        }
    }

    /** Why the last word that was not taken was not. */
    Optional<String> trouble() {
        return trouble;
    }

    /** How many words the broker took. */
    long said() {
        return said;
    }
}
