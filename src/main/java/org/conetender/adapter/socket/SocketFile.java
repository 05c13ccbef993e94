package org.conetender.adapter.socket;

import java.io.IOException;
import java.net.StandardProtocolFamily;
import java.net.UnixDomainSocketAddress;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;

/**
 * The socket's file. A daemon that was killed leaves its file behind, on which nobody listens any
 * more: that one is replaced; one on which somebody listens, or a file of another kind, never is.
 */
final class SocketFile implements AutoCloseable {

    /** The owner and the group may ask; the folder decides who is in the group. */
    private static final String MODE = "rw-rw----";

    private final Path path;
    private final ServerSocketChannel server;
    private final Object key;

    private SocketFile(Path path, ServerSocketChannel server, Object key) {
        this.path = path;
        this.server = server;
        this.key = key;
    }

    /** @throws IOException with a sentence if somebody listens there already or the place will not do */
    static SocketFile listen(Path path, int backlog) throws IOException {
        clear(path);
        Path unready = path.resolveSibling(path.getFileName() + ".new");
        Files.deleteIfExists(unready);
        ServerSocketChannel server = ServerSocketChannel.open(StandardProtocolFamily.UNIX);
        try {
            // Bound under another name until its mode is right, so that nobody slips in before.
            server.bind(UnixDomainSocketAddress.of(unready), backlog);
            Files.setPosixFilePermissions(unready, PosixFilePermissions.fromString(MODE));
            Files.move(unready, path, StandardCopyOption.ATOMIC_MOVE);
            return new SocketFile(path, server, attributes(path).fileKey());
        } catch (IOException e) {
            server.close();
            Files.deleteIfExists(unready);
            throw new IOException("cannot listen at " + path + " (" + e.getMessage() + "): its folder must"
                    + " exist, belong to the user conetender, and its path be shorter than 100 letters", e);
        }
    }

    private static void clear(Path path) throws IOException {
        if (!Files.exists(path, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        if (!attributes(path).isOther()) {
            throw new IOException(path + " is not a socket; name another path for it, or move that file"
                    + " away");
        }
        try (SocketChannel probe = SocketChannel.open(StandardProtocolFamily.UNIX)) {
            probe.connect(UnixDomainSocketAddress.of(path));
        } catch (IOException nobodyListens) {
            Files.delete(path);
            return;
        }
        throw new IOException("another conetender listens at " + path + ": stop that one first (systemctl"
                + " stop conetender), or give this one a socket of its own");
    }

    private static BasicFileAttributes attributes(Path path) throws IOException {
        return Files.readAttributes(path, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
    }

    ServerSocketChannel server() {
        return server;
    }

    /** Removes the file only if it is still ours and not a successor's. */
    @Override
    public void close() throws IOException {
        server.close();
        if (Files.exists(path, LinkOption.NOFOLLOW_LINKS) && attributes(path).fileKey().equals(key)) {
            Files.delete(path);
        }
    }
}
