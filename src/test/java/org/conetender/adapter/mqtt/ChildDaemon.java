package org.conetender.adapter.mqtt;

import java.net.URI;
import java.util.concurrent.CountDownLatch;

/** A process of its own that says it is ready and then goes on for ever, so that it can be killed. */
final class ChildDaemon {

    private ChildDaemon() {}

    public static void main(String[] args) throws InterruptedException {
        MqttTransport transport = TestSite.open(URI.create(args[0]));
        transport.offer(TestSite.kept("$state", "ready"));
        new CountDownLatch(1).await();
        transport.close();
    }
}
