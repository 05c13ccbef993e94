package org.conetender.adapter.mqtt;

import java.util.Optional;
import org.conetender.adapter.mqtt.Outbox.Entry;
import org.eclipse.paho.mqttv5.common.MqttException;
import org.eclipse.paho.mqttv5.common.packet.MqttReturnCode;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Moves messages from the outbox to a connection, a window at a time. Link keeper's thread only. */
final class Sender {

    private static final Logger LOG = LoggerFactory.getLogger(Sender.class);

    private final Outbox outbox;
    private final Tally tally;

    Sender(Outbox outbox, Tally tally) {
        this.outbox = outbox;
        this.tally = tally;
    }

    /** Sends until the window is full or nothing waits. */
    void pump(PahoLink link) throws MqttException {
        Optional<Entry> next = outbox.next(link.window());
        while (next.isPresent()) {
            // A broker ends the connection over a message that is too long, and would again each time.
            if (link.fits(next.get().message())) {
                link.publish(next.get());
            } else {
                settle(next.get(), MqttReturnCode.RETURN_CODE_PACKET_TOO_LARGE);
            }
            next = outbox.next(link.window());
        }
    }

    /** The broker has answered. What it refuses it would refuse again, so both end the matter. */
    void settle(Entry entry, int reason) {
        outbox.done(entry);
        if (reason < MqttReturnCode.RETURN_CODE_UNSPECIFIED_ERROR) {
            tally.acknowledged.increment();
            return;
        }
        tally.refused.increment();
        LOG.warn("the broker did not take a message of {} characters on {} (MQTT reason 0x{}); check its"
                        + " access list and its limits",
                entry.message().payload().length(), entry.message().topic(), Integer.toHexString(reason));
    }
}
