/**
 * Relays and contacts on the GPIO lines of a Linux board: Pi4J above, the kernel's GPIO character
 * device (ABI v2) below, spoken through the foreign-function API without any native library, and
 * leases kept by a thread of their own. No decisions live here, and no other adapter is seen: a level
 * is asked for and set, an input is read, and what fails says what to do. Start with
 * {@link org.conetender.adapter.gpio.GpioBoard}, then {@link org.conetender.adapter.gpio.Leases}, and
 * read {@link org.conetender.adapter.gpio.Abi} beside the kernel's {@code linux/gpio.h}.
 */
package org.conetender.adapter.gpio;
