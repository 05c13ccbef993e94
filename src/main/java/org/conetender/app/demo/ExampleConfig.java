package org.conetender.app.demo;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import org.conetender.app.config.Config;
import org.conetender.app.config.ConfigLoader;
import org.conetender.app.config.Hardware;
import org.conetender.app.config.Outcome;

/** The example configuration that comes with the program, at the demonstration's own broker. */
final class ExampleConfig {

    private ExampleConfig() {}

    /**
     * @param resource where in the program it lies
     * @param broker where to publish instead
     * @param folder where the record goes
     * @throws IOException if the program lacks it, or it is refused
     */
    static Config of(String resource, URI broker, Path folder) throws IOException {
        try (InputStream in = ExampleConfig.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IOException("the example " + resource + " is not in the program; build it again");
            }
            Outcome outcome = ConfigLoader.parse(new String(in.readAllBytes(), StandardCharsets.UTF_8));
            return switch (outcome) {
                case Outcome.Refused r -> throw new IOException("the example " + resource + " is refused: "
                        + r.errors().getFirst().text(resource));
                case Outcome.Accepted(Config c, var effective, var warnings) ->
                        new Config(c.settings(), at(c.hardware(), broker, folder));
            };
        }
    }

    private static Hardware at(Hardware usual, URI broker, Path folder) {
        return new Hardware(usual.gpio(), usual.oneWire(),
                Optional.of(new Hardware.Mqtt(broker, "homie", Optional.empty(), Optional.empty())),
                new Hardware.Paths(folder, folder.resolve("socket")));
    }
}
