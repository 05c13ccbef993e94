package org.conetender.adapter.mqtt;

import java.net.ConnectException;
import java.net.NoRouteToHostException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import javax.net.ssl.SSLException;
import org.eclipse.paho.mqttv5.client.MqttClientException;
import org.eclipse.paho.mqttv5.common.MqttException;
import org.eclipse.paho.mqttv5.common.packet.MqttReturnCode;

/** Says for a person why there is no connection, and what to look at. */
final class Trouble {

    private final MqttOptions options;

    Trouble(MqttOptions options) {
        this.options = options;
    }

    /** Not tried yet. */
    String starting() {
        return "connecting to " + options.broker() + " for the first time";
    }

    /** No answer within the time an attempt may take. */
    String silent() {
        return options.broker() + " takes connections but does not answer in MQTT; is it a broker, and is "
                + "the port the right one (mqtts for TLS, mqtt without)?";
    }

    /** After several short connections in a row: two clients of one name throw each other out. */
    String again(int times) {
        return ", " + times + " times in a row soon after connecting; is a second daemon running that is"
                + " also called '" + options.clientId() + "'?";
    }

    /** In words what Paho threw. */
    String of(Throwable thrown) {
        for (Throwable cause = thrown; cause != null; cause = cause.getCause()) {
            String words = ofNetwork(cause);
            if (!words.isEmpty()) {
                return words;
            }
        }
        return thrown instanceof MqttException mqtt ? ofCode(mqtt) : "connection failed: " + thrown;
    }

    private String ofCode(MqttException mqtt) {
        int code = mqtt.getReasonCode();
        return switch (code) {
            case MqttClientException.REASON_CODE_CONNECTION_LOST,
                    MqttClientException.REASON_CODE_SERVER_DISCONNECTED,
                    MqttClientException.REASON_CODE_CLIENT_NOT_CONNECTED,
                    MqttClientException.REASON_CODE_CLIENT_DISCONNECTING ->
                "the connection to " + options.broker() + " broke off";
            case MqttClientException.REASON_CODE_CLIENT_TIMEOUT,
                    MqttClientException.REASON_CODE_WRITE_TIMEOUT ->
                options.broker() + " stopped answering";
            default -> code >= 0 && code <= 0xFF ? ofReason(code) : "connection failed: " + mqtt;
        };
    }

    /** In words a reason the broker gave, in CONNACK or DISCONNECT (MQTT 5, 2.4). */
    String ofReason(int code) {
        String who = options.broker() + " ";
        return switch (code) {
            case MqttReturnCode.RETURN_CODE_BAD_USERNAME_OR_PASSWORD,
                    MqttClientException.REASON_CODE_FAILED_AUTHENTICATION ->
                who + "does not know this user name and password";
            case MqttReturnCode.RETURN_CODE_NOT_AUTHORIZED, MqttClientException.REASON_CODE_NOT_AUTHORIZED ->
                who + "does not allow this: check user name, password and the broker's access list";
            case MqttReturnCode.RETURN_CODE_UNSUPPORTED_PROTOCOL_VERSION,
                    MqttClientException.REASON_CODE_INVALID_PROTOCOL_VERSION ->
                who + "does not speak MQTT 5; it needs a newer version or another setting";
            case MqttReturnCode.RETURN_CODE_SESSION_TAKEN_OVER ->
                who + "gave our place to another client called '" + options.clientId()
                        + "'; is a second daemon running for this site?";
            case MqttReturnCode.RETURN_CODE_SERVER_SHUTTING_DOWN -> who + "is shutting down";
            default -> who + "ended the connection with MQTT reason 0x" + Integer.toHexString(code);
        };
    }

    private String ofNetwork(Throwable cause) {
        return switch (cause) {
            case UnknownHostException unknown -> "the name " + options.broker().getHost() + " is not known; "
                    + "is it spelled right, and is the network up?";
            case NoRouteToHostException unreachable ->
                options.broker().getHost() + " cannot be reached from here";
            case ConnectException refused -> "nothing listens at " + options.broker()
                    + "; is the broker running?";
            case SocketTimeoutException slow -> options.broker() + " does not answer";
            case SSLException tls -> "no trusted TLS connection to " + options.broker() + ": "
                    + tls.getMessage() + "; a broker with a certificate of its own needs it in the trust"
                    + " store (-Djavax.net.ssl.trustStore=...)";
            default -> "";
        };
    }
}
