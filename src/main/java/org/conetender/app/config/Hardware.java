package org.conetender.app.config;

import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Where the fittings named in the settings are found on this machine.
 *
 * @param gpio the lines
 * @param oneWire the probes' bus
 * @param mqtt the broker; empty when there is none and only the local socket is used
 * @param paths files of our own
 */
public record Hardware(Gpio gpio, OneWire oneWire, Optional<Mqtt> mqtt, Paths paths) {

    /**
     * @param chip path of the GPIO character device
     * @param outputs every output, each line once; ids as {@code a.heat}, {@code a.cut-out},
     *     {@code a.air-pause}, {@code a.lamp}, {@code a.trigger}, {@code a.button-lamp},
     *     {@code site.heartbeat}
     * @param inputs every contact, each line once; ids as {@code a.level}, {@code a.air-proof},
     *     {@code a.button}
     */
    public record Gpio(Path chip, List<OutputLine> outputs, List<InputLine> inputs) {
        public Gpio {
            outputs = List.copyOf(outputs);
            inputs = List.copyOf(inputs);
        }
    }

    /** The pull resistor inside the chip. AS_IS leaves whatever the board's start has set. */
    public enum Bias { AS_IS, NONE, PULL_UP, PULL_DOWN }

    /**
     * One output; its safe level is always de-energised.
     *
     * @param id such as {@code a.heat}
     * @param line line offset on the chip (on a Raspberry Pi the BCM number)
     * @param activeLow whether the coil is energised while the line is low
     * @param bias pull resistor
     */
    public record OutputLine(String id, int line, boolean activeLow, Bias bias) {}

    /**
     * One contact.
     *
     * @param id such as {@code a.level}
     * @param line line offset on the chip
     * @param activeLow whether a closed contact pulls the line low
     * @param bias pull resistor
     */
    public record InputLine(String id, int line, boolean activeLow, Bias bias) {}

    /**
     * @param root folder in which the kernel shows its 1-wire devices
     * @param periodMs one round of readings this often, in milliseconds
     */
    public record OneWire(Path root, long periodMs) {}

    /**
     * @param uri {@code mqtt://host:port} or {@code mqtts://host:port}
     * @param domain first level of every topic, {@code homie} by default
     * @param user name at the broker, if it asks for one
     * @param passwordFile file whose first line is the password; present exactly when the user is
     */
    public record Mqtt(URI uri, String domain, Optional<String> user, Optional<Path> passwordFile) {}

    /**
     * @param store folder of the durable record
     * @param socket the local socket for {@code tell} without a broker
     */
    public record Paths(Path store, Path socket) {}
}
