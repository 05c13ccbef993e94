/**
 * The MQTT 5 transport: it moves messages, keeps the connection and knows nothing of what they mean.
 * No topic of the tree, no stage and no sentence for the person at the cone may be made here, and Paho
 * is seen nowhere else.
 * Start at {@link org.conetender.adapter.mqtt.MqttTransport}, then {@code LinkKeeper}, the one thread
 * that calls Paho.
 */
package org.conetender.adapter.mqtt;
