package org.conetender.app.config;

import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.Optional;

/** Reads {@code [mqtt]}: the broker and how to log in there. */
final class MqttReader {

    /** Ports registered for MQTT without and with TLS. */
    private static final int PLAIN_PORT = 1883;
    private static final int TLS_PORT = 8883;

    private final Fields mqtt;

    MqttReader(Fields mqtt) {
        this.mqtt = mqtt;
    }

    /** The broker; empty if it could not be read, which has been told. */
    Optional<Hardware.Mqtt> read() {
        Optional<URI> uri = mqtt.text("uri").flatMap(this::uri);
        Optional<String> domain = Ids.id(mqtt, "domain");
        Optional<String> user = mqtt.text("user");
        Optional<Path> password = Ids.path(mqtt, "password-file");
        together();
        password.ifPresent(p -> PasswordFile.look(p).ifPresent(w -> mqtt.at().warn("password-file", w)));
        uri.ifPresent(this::warnOfTheOpen);
        return uri.flatMap(u -> domain.map(d -> new Hardware.Mqtt(u, d, user, password)));
    }

    private Optional<URI> uri(String text) {
        try {
            URI uri = new URI(text);
            boolean tls = "mqtts".equals(uri.getScheme());
            if (uri.getRawUserInfo() != null || text.contains("@")) {
                mqtt.at().wrong("uri", "no user or password belongs in an address; write them as mqtt.user "
                        + "and in the file of mqtt.password-file");
            } else if (!tls && !"mqtt".equals(uri.getScheme()) || uri.getHost() == null
                    || !uri.getRawPath().isEmpty() || uri.getRawQuery() != null
                    || uri.getRawFragment() != null
                    || uri.getPort() == 0 || uri.getPort() > 65_535) {
                mqtt.at().wrong("uri", "not the address of a broker; it must be mqtt://host or mqtts://host, "
                        + "with :port (1 to 65535) if it is not 1883 or 8883");
            } else {
                int port = uri.getPort() > 0 ? uri.getPort() : tls ? TLS_PORT : PLAIN_PORT;
                return Optional.of(URI.create(uri.getScheme() + "://" + uri.getHost() + ":" + port));
            }
        } catch (URISyntaxException e) {
            mqtt.at().wrong("uri", "not an address (" + e.getReason() + "); it must be mqtt://host or "
                    + "mqtts://host, with :port if it is not 1883 or 8883");
        }
        return Optional.empty();
    }

    /** Half a login would fail at the broker, hours later and far from this file. */
    private void together() {
        if (mqtt.given("user") && !mqtt.given("password-file")) {
            mqtt.at().wrong("user", "a user needs a password: name a file that holds it as "
                    + "mqtt.password-file");
        }
        if (!mqtt.given("user") && mqtt.given("password-file")) {
            mqtt.at().wrong("password-file", "a password needs a user: name it as mqtt.user");
        }
    }

    /** Whoever can reach an open broker can report steps and listen to the password. */
    private void warnOfTheOpen(URI uri) {
        boolean here = uri.getHost().equals("localhost") || uri.getHost().startsWith("127.")
                || uri.getHost().equals("[::1]");
        if (!here && uri.getScheme().equals("mqtt")) {
            mqtt.at().warn("uri", "steps and any password travel unencrypted through the network; use "
                    + "mqtts:// where others can reach it");
        }
    }
}
