package org.conetender.adapter.mqtt;

import java.net.URI;
import java.util.List;
import java.util.Optional;

/**
 * How to reach the broker and what to listen to.
 *
 * @param broker {@code mqtt://host[:1883]}, or {@code mqtts://host[:8883]} with the trust store of this
 *     Java (another one: {@code -Djavax.net.ssl.trustStore=…})
 * @param clientId the same at every connection, so that the broker ends a connection it still believes
 *     in, and speaks its last will, before it takes up the new one
 * @param login user name and password, if the broker wants them
 * @param farewell what the broker keeps about us once we are gone
 * @param filters what to subscribe to at every connection; they must not overlap, because a broker may
 *     then deliver one command twice
 * @param outboxLimit messages that wait to be sent, at most; above 0
 */
public record MqttOptions(
        URI broker, String clientId, Optional<Login> login, Farewell farewell, List<String> filters,
        int outboxLimit) {

    /** Room for three cones' whole tree several times over: design.md's site has about 200 topics. */
    public static final int OUTBOX_LIMIT = 2_000;

    /** @throws IllegalArgumentException in words, when a part cannot be used */
    public MqttOptions {
        filters = List.copyOf(filters);
        require(host(broker) != null && scheme(broker).matches("mqtts?"),
                "broker address '" + broker + "': write mqtt://host:1883, or mqtts://host:8883 for TLS");
        require(broker.getUserInfo() == null,
                "broker address: leave user name and password out of it, they have settings of their own");
        require(!clientId.isBlank(), "client id: it must not be empty");
        require(outboxLimit > 0, "outbox limit " + outboxLimit + ": it must be above 0");
        Filters.requireUsable(filters);
        require(Filters.canPublish(farewell.topic()), "last will: '" + farewell.topic() + "' is no topic");
    }

    /** The usual options: no login, the usual outbox. */
    public static MqttOptions plain(URI broker, String clientId, Farewell farewell, List<String> filters) {
        return new MqttOptions(broker, clientId, Optional.empty(), farewell, filters, OUTBOX_LIMIT);
    }

    /** These options with a user name and password. */
    public MqttOptions withLogin(String user, String password) {
        return new MqttOptions(
                broker, clientId, Optional.of(new Login(user, password)), farewell, filters, outboxLimit);
    }

    /** The address as Paho writes it, with the port filled in. */
    String pahoUri() {
        boolean tls = scheme(broker).equals("mqtts");
        int port = broker.getPort() >= 0 ? broker.getPort() : tls ? 8883 : 1883;
        return (tls ? "ssl://" : "tcp://") + broker.getHost() + ":" + port;
    }

    private static String host(URI uri) {
        return uri.getHost();
    }

    private static String scheme(URI uri) {
        return uri.getScheme() == null ? "" : uri.getScheme();
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new IllegalArgumentException(otherwise);
        }
    }

    /** A user name and password; the password never shows when printed. */
    public record Login(String user, String password) {
        @Override
        public String toString() {
            return "Login[" + user + ", password not shown]";
        }
    }

    /**
     * The retained words about our own presence, all on one topic at QoS 1.
     *
     * @param topic the root device's state
     * @param ifLost spoken by the broker as our last will
     * @param whenClosed published by ourselves before a clean goodbye
     */
    public record Farewell(String topic, String ifLost, String whenClosed) {}
}
