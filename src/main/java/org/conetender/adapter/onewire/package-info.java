/**
 * DS18B20 probes as the kernel's w1_therm driver shows them, read on threads of their own.
 *
 * <p>What is no temperature becomes a fault here; whether a temperature is to be believed is judged in
 * the core, and nothing is averaged, held or corrected on the way there.
 *
 * <p>Start with {@link org.conetender.adapter.onewire.OneWire}; what counts as a temperature is in
 * {@code W1Parser}.
 */
package org.conetender.adapter.onewire;
