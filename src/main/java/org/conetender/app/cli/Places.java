package org.conetender.app.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.conetender.adapter.mqtt.Onlooker;
import org.conetender.app.Unavailable;
import org.conetender.app.Wiring;
import org.conetender.app.config.Config;
import org.conetender.app.config.Hardware;
import org.conetender.app.remote.RemoteSite;
import org.conetender.core.face.Names;
import org.conetender.port.Clock;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** Where a running daemon can be found, from what was typed. */
final class Places {

    /**
     * @param broker its address  @param names the site's topics; empty like the broker
     * @param socket on this machine
     * @param refused the configuration was, and it has been said
     */
    record Found(Optional<Onlooker.Address> broker, Optional<Names> names, Optional<Path> socket,
                 boolean refused) {

        /** @throws IOException with a sentence */
        RemoteSite connect(Clock clock) throws IOException {
            return RemoteSite.connect(broker.orElseThrow(), names.orElseThrow(), clock);
        }
    }

    private Places() {}

    /** With an end, where it has none. */
    static String sentence(String words) {
        return words.endsWith(".") || words.endsWith("?") ? words : words + ".";
    }

    /** What a broker's trouble is, as a sentence. @param words such as {@code it does not answer} */
    static String broker(String words) {
        return sentence("The broker: " + words);
    }

    static Found find(CommandLine line, ConfigFile file, BrokerOptions options) {
        if (options.broker != null) {
            if (options.site == null || !options.site.matches("[a-z0-9-]+")) {
                throw new ParameterException(line,
                        "Which site at that broker? Name it with --site, as in --site "
                        + "larkmoor: lower-case letters, digits and -.");
            }
            return new Found(Optional.of(new Onlooker.Address(options.broker, Optional.empty())),
                    Optional.of(new Names("homie", options.site)), Optional.empty(), false);
        }
        if (!file.there()) {
            throw new ParameterException(line,
                    "Where is the daemon? Name its configuration with --config FILE, or "
                    + "its broker with --broker URI --site ID.");
        }
        Optional<Config> config = file.load(line.getErr());
        return config.map(c -> of(line, c))
                .orElse(new Found(Optional.empty(), Optional.empty(), Optional.empty(), true));
    }

    private static Found of(CommandLine line, Config c) {
        Optional<Path> socket = Optional.of(c.hardware().paths().socket());
        Optional<Hardware.Mqtt> mqtt = c.hardware().mqtt();
        if (mqtt.isEmpty()) {
            return new Found(Optional.empty(), Optional.empty(), socket, false);
        }
        try {
            Onlooker.Address at = new Onlooker.Address(mqtt.get().uri(), Wiring.login(mqtt.get()));
            return new Found(Optional.of(at), Optional.of(Names.of(mqtt.get().domain(), c.settings())),
                    socket, false);
        } catch (Unavailable e) {
            line.getErr().println(e.getMessage() + " Trying the local socket.");
            return new Found(Optional.empty(), Optional.empty(), socket, false);
        }
    }
}
