package org.conetender.agent;

import java.util.List;
import org.conetender.port.Clock;
import org.conetender.port.Contact;
import org.conetender.port.Probe;
import org.conetender.port.Requests;
import org.conetender.port.Store;
import org.conetender.port.Supervisor;
import org.conetender.port.Switch;
import org.conetender.port.Transport;

/**
 * Everything the agents reach the world through.
 *
 * @param clock the only source of time
 * @param devices probes, contacts, switches
 * @param store the record; the record agent's alone
 * @param outside people and machines
 */
public record Ports(Clock clock, Devices devices, Store store, Outside outside) {

    /** Ids are unique within each list. */
    public record Devices(List<Probe> probes, List<Contact> contacts, List<Switch> switches) {}

    /** @param transport MQTT  @param requests the local socket  @param supervisor the service manager */
    public record Outside(Transport transport, Requests requests, Supervisor supervisor) {}
}
