package org.conetender.sim;

/** The only way in which a person speaks to the daemon: plain words, as any client could send them. */
public interface Hands {

    /** Reports or asks for a hand step. @param cone its id  @param step its word, such as {@code drained} */
    void say(String cone, String step);

    /** An alert has been seen. @param cone its id, empty for the site  @param alert id of the alert */
    void acknowledge(String cone, String alert);

    /** Wants that cone's batch ready by an hour. @param hour as a person says it */
    void want(String cone, String hour);

    /** Hands that publish to the broker of a world, below {@code homie/5/}. @param site the root's id */
    static Hands through(SimBroker broker, String site) {
        return new Hands() {
            @Override
            public void say(String cone, String step) {
                broker.set(Topics.device(site, cone) + "/hand/step/set", step);
            }

            @Override
            public void acknowledge(String cone, String alert) {
                broker.set(Topics.device(site, cone) + "/hand/acknowledge/set", alert);
            }

            @Override
            public void want(String cone, String hour) {
                broker.set(Topics.device(site, cone) + "/hatch/ready-by/set", hour);
            }
        };
    }
}
