package org.conetender.adapter.mqtt;

import java.util.function.BiConsumer;
import org.eclipse.paho.mqttv5.client.IMqttToken;
import org.eclipse.paho.mqttv5.client.MqttCallback;
import org.eclipse.paho.mqttv5.client.MqttDisconnectResponse;
import org.eclipse.paho.mqttv5.common.MqttException;
import org.eclipse.paho.mqttv5.common.MqttMessage;
import org.eclipse.paho.mqttv5.common.packet.MqttProperties;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Paho's callback of a client that only cares for what arrives; its tokens tell it the rest. */
final class Hearing implements MqttCallback {

    private static final Logger LOG = LoggerFactory.getLogger(Hearing.class);

    private final BiConsumer<String, MqttMessage> arrived;

    Hearing(BiConsumer<String, MqttMessage> arrived) {
        this.arrived = arrived;
    }

    @Override
    public void messageArrived(String topic, MqttMessage message) {
        arrived.accept(topic, message);
    }

    @Override
    public void disconnected(MqttDisconnectResponse response) {
        LOG.debug("the broker is gone: {}", response);
    }

    @Override
    public void mqttErrorOccurred(MqttException exception) {
        LOG.debug("MQTT error", exception);
    }

    @Override
    public void deliveryComplete(IMqttToken token) {
        // The token is waited for where it matters.
    }

    @Override
    public void connectComplete(boolean reconnect, String serverUri) {
        // The connect token says it.
    }

    @Override
    public void authPacketArrived(int reasonCode, MqttProperties properties) {
        // No extended authentication is ever started.
    }
}
