/**
 * The three duties of the daemon: control, record, publish, and the mail between them. They move what
 * the core decided and decide nothing; no adapter is named here. Start with
 * {@link org.conetender.agent.ControlAgent}, then {@link org.conetender.agent.Mail} for what is shared.
 */
package org.conetender.agent;
