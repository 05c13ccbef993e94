package org.conetender.app.cli;

import java.net.URI;
import picocli.CommandLine.Option;

/** How to name a broker without a configuration, as on another machine. */
final class BrokerOptions {

    @Option(names = "--broker", paramLabel = "URI",
            description = "a broker instead of a configuration, such as mqtt://pi.local:1883; needs --site")
    URI broker;

    @Option(names = "--site", paramLabel = "ID", description = "id of the site at that broker")
    String site;
}
