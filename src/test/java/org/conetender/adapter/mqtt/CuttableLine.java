package org.conetender.adapter.mqtt;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** A wire between client and broker that can swallow the broker's replies, be cut and be mended. */
final class CuttableLine implements AutoCloseable {

    private final ServerSocket server;
    private final int brokerPort;
    private final List<Socket> sockets = new CopyOnWriteArrayList<>();
    private volatile boolean swallowReplies;
    private volatile boolean severed;

    CuttableLine(int brokerPort) {
        try {
            this.server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        this.brokerPort = brokerPort;
        Thread.ofVirtual().start(this::accept);
    }

    URI uri() {
        return URI.create("mqtt://127.0.0.1:" + server.getLocalPort());
    }

    /** From now on the broker hears the client, but not the other way round. */
    void swallowReplies() {
        swallowReplies = true;
    }

    /** Cuts every connection; new ones are cut as well until {@link #mend}. */
    void cut() {
        severed = true;
        sockets.forEach(CuttableLine::end);
        sockets.clear();
    }

    void mend() {
        swallowReplies = false;
        severed = false;
    }

    private void accept() {
        try {
            while (!server.isClosed()) {
                connect(server.accept());
            }
        } catch (IOException closed) {
            cut();
        }
    }

    private void connect(Socket client) {
        try {
            if (severed) {
                client.close();
                return;
            }
            Socket broker = new Socket(InetAddress.getLoopbackAddress(), brokerPort);
            sockets.addAll(List.of(client, broker));
            Thread.ofVirtual().start(() -> copy(client, broker, false));
            Thread.ofVirtual().start(() -> copy(broker, client, true));
        } catch (IOException noBroker) {
            end(client);
        }
    }

    private void copy(Socket from, Socket to, boolean replies) {
        byte[] buffer = new byte[8_192];
        try {
            InputStream in = from.getInputStream();
            OutputStream out = to.getOutputStream();
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                if (!(replies && swallowReplies)) {
                    out.write(buffer, 0, n);
                }
            }
        } catch (IOException cut) {
            severCopy(from, to);
            return;
        }
        severCopy(from, to);
    }

    private static void severCopy(Socket from, Socket to) {
        end(from);
        end(to);
    }

    private static void end(Socket socket) {
        try {
            socket.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        try {
            server.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        cut();
    }
}
