package org.conetender.sim;

/** Where a person looks: the topics of mqtt.md, built here by hand so that the world needs no core face. */
final class Topics {

    private Topics() {}

    /** {@code homie/5/larkmoor-a}, or the root for an empty cone. */
    static String device(String site, String cone) {
        return "homie/5/" + site + (cone.isEmpty() ? "" : "-" + cone);
    }
}
