package org.conetender.app.demo;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.apache.activemq.artemis.core.config.Configuration;
import org.apache.activemq.artemis.core.config.impl.ConfigurationImpl;
import org.apache.activemq.artemis.core.remoting.impl.netty.NettyAcceptor;
import org.apache.activemq.artemis.core.server.ActiveMQServer;
import org.apache.activemq.artemis.core.server.impl.ActiveMQServerImpl;
import org.apache.activemq.artemis.core.settings.impl.AddressSettings;

/**
 * The broker of the demonstration: a whole MQTT 5 broker inside this process, so that nothing need be
 * installed. It listens on 127.0.0.1 only, lets everybody on this machine in, and keeps nothing.
 *
 * <p>Two things it does less well than a broker for real use: a command sent with RETAIN=1 while the
 * daemon listens through a wildcard arrives without its mark (it carries it at the next connection), and
 * what is published in the moment in which a client subscribes may never reach that client.
 */
public final class LoopbackBroker implements AutoCloseable {

    /** Held so that the level stays: the broker says much that concerns nobody here. */
    private static final List<Logger> CHATTER =
            Stream.of("org.apache.activemq", "io.netty", "org.apache.commons")
                    .map(Logger::getLogger).toList();

    private final ActiveMQServer server;
    private final Path folder;
    private final URI uri;

    private LoopbackBroker(ActiveMQServer server, Path folder, URI uri) {
        this.server = server;
        this.folder = folder;
        this.uri = uri;
    }

    /**
     * Starts a broker on a free port; it takes connections when this returns.
     *
     * @throws IOException if it could not be started, in words
     */
    public static LoopbackBroker start() throws IOException {
        CHATTER.forEach(logger -> logger.setLevel(Level.SEVERE));
        Path folder = Files.createTempDirectory("conetender-broker");
        try {
            ActiveMQServer server = new ActiveMQServerImpl(configuration(folder));
            server.start();
            return new LoopbackBroker(server, folder, URI.create("mqtt://127.0.0.1:" + port(server)));
        } catch (Exception e) {
            Folder.remove(folder);
            throw new IOException("the demonstration's own broker could not be started: " + e, e);
        }
    }

    private static Configuration configuration(Path folder) throws Exception {
        ConfigurationImpl configuration = new ConfigurationImpl();
        configuration.setBrokerInstance(folder.toFile());
        return configuration
                .setPersistenceEnabled(false)
                .setSecurityEnabled(false)
                .setJMXManagementEnabled(false)
                .setMessageCounterEnabled(false)
                // The demonstration may run on a full disk or a small machine: neither concerns it.
                .setMaxDiskUsage(-1)
                .setGracefulShutdownEnabled(false)
                // Port 0 lets the system choose. What stays unsent to a client that went is dropped at once.
                .addAcceptorConfiguration("mqtt",
                        "tcp://127.0.0.1:0?protocols=MQTT&useEpoll=false&defaultMqttSessionExpiryInterval=0")
                .addAddressSetting("#",
                        new AddressSettings().setAutoCreateAddresses(true).setAutoCreateQueues(true));
    }

    private static int port(ActiveMQServer server) throws IOException {
        NettyAcceptor acceptor = (NettyAcceptor) server.getRemotingService().getAcceptor("mqtt");
        int port = acceptor == null ? -1 : acceptor.getActualPort();
        if (port <= 0) {
            throw new IOException("it listens nowhere");
        }
        return port;
    }

    /** Where it listens, such as {@code mqtt://127.0.0.1:40123}. */
    public URI uri() {
        return uri;
    }

    /** Ends every connection, gives the port back and removes its folder. */
    @Override
    public void close() throws IOException {
        try {
            server.stop();
        } catch (Exception e) {
            throw new IOException("the demonstration's own broker did not stop in good order: " + e, e);
        } finally {
            Folder.remove(folder);
        }
    }
}
