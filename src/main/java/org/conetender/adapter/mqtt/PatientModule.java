package org.conetender.adapter.mqtt;

import java.io.FilterInputStream;
import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InterruptedIOException;
import java.io.OutputStream;
import java.net.SocketTimeoutException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.eclipse.paho.mqttv5.client.internal.NetworkModule;
import org.eclipse.paho.mqttv5.common.MqttException;

/**
 * A connection on which nothing is heard before the first byte was said.
 *
 * <p>Paho 1.2.5 starts three threads one after the other and waits, with no end, until it has seen each
 * of them run. If the other side hangs up in that moment (a TLS port, a proxy without a broker behind
 * it), they have already ended: the starting thread then looks every 0.1 s for ever, one more at each
 * attempt. An MQTT broker says nothing before CONNECT, and CONNECT is written after all have started.
 */
final class PatientModule implements NetworkModule {

    /** As Paho's own read timeout: so often it looks whether it should stop, milliseconds. */
    private static final long LOOK_MS = 1_000;

    private final NetworkModule inner;
    private final CountDownLatch spoken;

    /** @param spoken released when the first byte is written */
    PatientModule(NetworkModule inner, CountDownLatch spoken) {
        this.inner = inner;
        this.spoken = spoken;
    }

    @Override
    public void start() throws IOException, MqttException {
        inner.start();
    }

    @Override
    public void stop() throws IOException {
        inner.stop();
    }

    @Override
    public String getServerURI() {
        return inner.getServerURI();
    }

    @Override
    public InputStream getInputStream() throws IOException {
        return new FilterInputStream(inner.getInputStream()) {
            @Override
            public int available() throws IOException {
                return spoken.getCount() > 0 ? 0 : super.available();
            }

            @Override
            public int read() throws IOException {
                awaitSpoken();
                return super.read();
            }

            @Override
            public int read(byte[] into, int offset, int length) throws IOException {
                awaitSpoken();
                return super.read(into, offset, length);
            }
        };
    }

    @Override
    public OutputStream getOutputStream() throws IOException {
        return new FilterOutputStream(inner.getOutputStream()) {
            @Override
            public void write(int one) throws IOException {
                spoken.countDown();
                out.write(one);
            }

            @Override
            public void write(byte[] from, int offset, int length) throws IOException {
                spoken.countDown();
                out.write(from, offset, length);
            }
        };
    }

    private void awaitSpoken() throws IOException {
        try {
            if (!spoken.await(LOOK_MS, TimeUnit.MILLISECONDS)) {
                throw new SocketTimeoutException("nothing was said yet");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new InterruptedIOException("interrupted before anything was said");
        }
    }
}
