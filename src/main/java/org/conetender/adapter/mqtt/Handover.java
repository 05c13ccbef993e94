package org.conetender.adapter.mqtt;

import org.conetender.adapter.mqtt.Outbox.Entry;
import org.eclipse.paho.mqttv5.common.MqttMessage;

/** What Paho's threads report, handed to the link keeper's thread or into the inbox; nothing else. */
final class Handover implements PahoLink.Listener {

    private final LinkKeeper keeper;
    private final OneThread thread;
    private final Inbox inbox;

    Handover(LinkKeeper keeper, OneThread thread, Inbox inbox) {
        this.keeper = keeper;
        this.thread = thread;
        this.inbox = inbox;
    }

    @Override
    public void connected(PahoLink link) {
        thread.now(() -> keeper.connected(link));
    }

    @Override
    public void subscribed(PahoLink link, int[] reasons) {
        int[] copy = reasons == null ? new int[0] : reasons.clone();
        thread.now(() -> keeper.subscribed(link, copy));
    }

    @Override
    public void ended(PahoLink link, String why) {
        thread.now(() -> keeper.ended(link, why));
    }

    @Override
    public void done(PahoLink link, Entry entry, int reason) {
        thread.now(() -> keeper.settled(link, entry, reason));
    }

    @Override
    public void arrived(String topic, MqttMessage message) {
        inbox.accept(topic, message);
    }
}
